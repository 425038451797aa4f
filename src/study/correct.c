/* Many marches to the moment of the last weigh-in give the covariance of every part's state with what was measured on
 * the way; the measurements are taken in one by one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/correct.h"

#include <math.h>
#include <string.h>

#include "season/edit.h"
#include "season/measured.h"
#include "season/text.h"
#include "study/chance.h"
#include "study/design.h"
#include "study/kalman.h"
#include "study/spread.h"

#define SEED 1
#define SAMPLES 64        /* of a step, to read weigh-ins between its ends */
#define LEAST_S 1e-3      /* of a step that has only begun */
#define LATE 1e-9         /* minutes */
#define SLIGHT 1e-5       /* a shift that is less is none */

/* What is looked at in one march, a column each: every part's states, the fresh moisture, what each weigh-in should
 * show, and the outcomes at the end. */
typedef struct
{
  LwChance chance;
  const LwBatch *batch;
  GArray *weighed;        /* LwWeighed */
  guint step;
  double minute;
  guint n_parts;
  guint fresh;            /* columns */
  guint first_reading;
  guint first_outcome;
  guint n;
  double *luck;
  double *rows;           /* of all samples; NAN where one cannot be computed */
} Work;

static void
work_clear (Work *work)
{
  lw_chance_clear (&work->chance);
  g_clear_pointer (&work->weighed, g_array_unref);
  g_free (work->luck);
  g_free (work->rows);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Work, work_clear)

/* Marches only to the moment. FALSE if that cannot be done. */
static gboolean
look (const Work *work,
      LwPlan     *plan,
      LwMarch    *march,
      double     *row)
{
  g_autoptr (LwTrack) track = NULL;
  LwOutcome end;

  plan->n_steps = work->step + 1;
  plan->steps[work->step].duration_s = fmax (60 * work->minute, LEAST_S);
  track = lw_plan_march (plan, march, (LwSampling) { .samples = SAMPLES });
  if (track->failure.failed)
    return FALSE;

  memcpy (row, lw_track_state (track, work->step, 0, track->steps[work->step]->n - 1), work->n_parts * sizeof (LwState));
  row[work->fresh] = lw_wet_basis_pct (plan->leaf.fresh_water);
  for (guint i = 0; i < work->weighed->len; i++)
    {
      const LwWeighed *seen = &g_array_index (work->weighed, LwWeighed, i);
      LwOutcome outcome = lw_track_outcome_at (track, seen->step, -1, 60 * seen->weigh_in.minute);

      row[work->first_reading + i] = lw_foretold (&seen->weigh_in, &outcome, work->batch->fresh_kg);
    }
  end = lw_track_end (track, work->step, -1);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    row[work->first_outcome + q] = lw_quantity_of (q, &end);

  return TRUE;
}

static gboolean
look_at (const Work *work,
         LwSeason   *season,
         double     *row)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, work->chance.batch);
  g_autoptr (LwMarch) march = lw_march_new ();

  return plan != NULL && march != NULL && look (work, plan, march, row);
}

static void
sample_one (guint    i,
            LwMarch *march,
            gpointer data)
{
  const Work *work = data;
  g_autoptr (LwPlan) plan = lw_chance_plan (&work->chance, work->luck + (gsize) i * work->chance.n_dims);
  double *row = work->rows + (gsize) i * work->n;

  if (plan == NULL || !look (work, plan, march, row))
    row[0] = NAN;
}

/* The samples' covariance, n * n; FALSE where there are too few. */
static gboolean
covariance_of (const Work *work,
               double     *covariance)
{
  g_autofree double *mean = g_new0 (double, work->n);
  guint n = 0;

  for (guint i = 0; i < LW_CORRECT_SAMPLES; i++)
    for (guint k = 0; k < work->n && !isnan (work->rows[(gsize) i * work->n]); k++)
      {
        mean[k] += work->rows[(gsize) i * work->n + k];
        n += k == 0;
      }
  if (n < LW_CORRECT_SAMPLES / 2)
    return FALSE;
  for (guint k = 0; k < work->n; k++)
    mean[k] /= n;

  memset (covariance, 0, (gsize) work->n * work->n * sizeof *covariance);
  for (guint i = 0; i < LW_CORRECT_SAMPLES; i++)
    {
      const double *row = work->rows + (gsize) i * work->n;

      for (guint a = 0; a < work->n && !isnan (row[0]); a++)
        for (guint b = 0; b < work->n; b++)
          covariance[(gsize) a * work->n + b] += (row[a] - mean[a]) * (row[b] - mean[b]) / (n - 1);
    }

  return TRUE;
}

/* Those that count: up to the moment asked for, and none after its step's end. The moment becomes that of the last. */
static gboolean
gather (Work               *work,
        const LwCorrectAsk *ask)
{
  work->weighed = lw_weighed_until (work->batch, ask->step, ask->minute);
  for (guint i = work->weighed->len; i-- > 0;)
    {
      const LwWeighed *one = &g_array_index (work->weighed, LwWeighed, i);

      if (one->weigh_in.minute > lw_step_get (&work->batch->steps[one->step], LW_SET_MINUTES) + LATE)
        g_array_remove_index (work->weighed, i);
    }

  for (guint i = 0; i < work->weighed->len; i++)
    {
      const LwWeighed *one = &g_array_index (work->weighed, LwWeighed, i);

      work->minute = one->step > work->step ? one->weigh_in.minute : fmax (work->minute, one->weigh_in.minute);
      work->step = one->step;
    }

  return work->weighed->len > 0;
}

static void
lay_out (Work *work)
{
  const LwProfile *leaf = lw_season_profile (work->chance.season, work->batch->leaf);

  work->n_parts = leaf->n_parts;
  work->fresh = work->n_parts * LW_N_STATE;
  work->first_reading = work->fresh + 1;
  work->first_outcome = work->first_reading + work->weighed->len;
  work->n = work->first_outcome + LW_N_QUANTITIES;
}

static double
round_off (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  return fabs (value) < SLIGHT ? 0 : g_ascii_strtod (g_ascii_formatd (digits, sizeof digits, "%.4g", value), NULL);
}

/* (transfer full) (nullable) the season with what takes the model to `mean`. The leaf is as wet when plucked as `mean` has
 * it from the start; the states are shifted by what the model then still misses. */
static LwSeason *
corrected (const Work   *work,
           const double *nominal,
           const double *mean)
{
  double points = round_off (mean[work->fresh] - nominal[work->fresh]);
  g_autofree LwState *shifts = g_new0 (LwState, work->n_parts);
  g_autofree double *row = g_new (double, work->n);
  g_autoptr (LwSeason) fresh = NULL;
  LwCorrection *correction = lw_correction_new (work->batch, work->step, work->minute, points, shifts, work->n_parts);

  fresh = lw_edit_correct (work->chance.season, work->chance.batch, work->step, correction);
  if (!look_at (work, fresh, row))
    return NULL;

  for (guint i = 0; i < work->n_parts; i++)
    {
      LwState state = ((const LwState *) mean)[i];

      lw_state_bound (&state);
      for (gsize k = 0; k < LW_N_STATE; k++)
        ((double *) &shifts[i])[k] = round_off (((const double *) &state)[k] - row[i * LW_N_STATE + k]);
    }
  correction = lw_correction_new (work->batch, work->step, work->minute, points, shifts, work->n_parts);

  return lw_edit_correct (work->chance.season, work->chance.batch, work->step, correction);
}

/* Keeps the further of the two. */
static void
note_off (LwCorrectPoint *point,
          double          foretold,
          double          variance)
{
  const LwWeighIn *seen = &point->weighed.weigh_in;
  double off = (seen->value - foretold) / hypot (sqrt (fmax (variance, 0)), seen->sd);

  if (fabs (off) < fabs (point->off))
    return;

  point->off = off;
  point->off_from = foretold;
}

/* FALSE if it cannot be computed. */
static gboolean
combine (const Work *work,
         LwCorrect  *correct)
{
  g_autofree double *nominal = g_new (double, work->n), *mean = NULL, *after = g_new (double, work->n);
  g_autofree double *covariance = g_new (double, (gsize) work->n * work->n);

  if (!look_at (work, work->chance.season, nominal) || !covariance_of (work, covariance))
    return FALSE;

  correct->n = work->weighed->len;
  correct->points = g_new0 (LwCorrectPoint, correct->n);
  mean = g_memdup2 (nominal, work->n * sizeof *mean);
  for (guint i = 0; i < correct->n; i++)
    {
      guint at = work->first_reading + i;
      LwCorrectPoint *point = &correct->points[i];

      point->weighed = g_array_index (work->weighed, LwWeighed, i);
      point->expected = nominal[at];
      point->expected_sd = sqrt (covariance[(gsize) at * work->n + at]);
      note_off (point, nominal[at], covariance[(gsize) at * work->n + at]);
    }
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      guint at = work->first_outcome + q;

      correct->of[q].expected = nominal[at];
      correct->of[q].expected_sd = sqrt (covariance[(gsize) at * work->n + at]);
    }

  for (guint i = 0; i < correct->n; i++)
    {
      const LwWeighIn *seen = &correct->points[i].weighed.weigh_in;
      guint at = work->first_reading + i;

      note_off (&correct->points[i], mean[at], covariance[(gsize) at * work->n + at]);
      lw_kalman_take (mean, covariance, work->n, at, seen->value, seen->sd * seen->sd);
    }

  correct->season = corrected (work, nominal, mean);
  if (correct->season == NULL || !look_at (work, correct->season, after))
    return FALSE;

  for (guint i = 0; i < correct->n; i++)
    {
      guint at = work->first_reading + i;

      correct->points[i].combined = mean[at];
      correct->points[i].combined_sd = sqrt (fmax (covariance[(gsize) at * work->n + at], 0));
    }
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      guint at = work->first_outcome + q;

      correct->of[q].combined = after[at];
      correct->of[q].combined_sd = sqrt (fmax (covariance[(gsize) at * work->n + at], 0));
    }

  return TRUE;
}

LwCorrect *
lw_correct_new (LwSeason           *season,
                guint               batch,
                const LwCorrectAsk *ask,
                GCancellable       *cancellable,
                GError            **error)
{
  g_autoptr (LwSeason) plain = lw_edit_uncorrect (season, batch);
  g_autoptr (LwCorrect) correct = g_new0 (LwCorrect, 1);
  g_auto (Work) work = { .batch = plain->batches[batch] };
  LwMany many = {
    .threads = ask->threads, .tolerance = LW_SPREAD_TOLERANCE,
    .progress = ask->progress, .progress_data = ask->progress_data,
  };
  LwVary varies[LW_N_VARY];

  /* A clock says how long a step took. */
  lw_vary_usual (varies);
  varies[LW_VARY_TIME].sd = 0;
  lw_chance_init (&work.chance, plain, batch, varies);
  if (!gather (&work, ask))
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND,
                   _ ("%s: nothing that tells of the leaf was weighed or judged up to there"), work.batch->name);
      return NULL;
    }

  correct->step = work.step;
  correct->minute = work.minute;
  lay_out (&work);
  work.luck = lw_design_new (LW_CORRECT_SAMPLES, work.chance.n_dims, SEED);
  work.rows = g_new (double, (gsize) LW_CORRECT_SAMPLES * work.n);
  if (!lw_many_run (&many, LW_CORRECT_SAMPLES, sample_one, &work, cancellable))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CANCELLED, _ ("Cancelled."));
      return NULL;
    }
  if (!combine (&work, correct))
    {
      g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("%s: the batch cannot be computed up to there"),
                   work.batch->name);
      return NULL;
    }

  return g_steal_pointer (&correct);
}

void
lw_correct_free (LwCorrect *correct)
{
  g_clear_pointer (&correct->season, lw_season_unref);
  g_free (correct->points);
  g_free (correct);
}

gboolean
lw_correct_is_far (const LwCorrectPoint *point)
{
  return !(fabs (point->off) <= LW_CORRECT_FAR);
}

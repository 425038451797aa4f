/* Marches of the batches, each with its leaf changed; slopes by small differences. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/fit-model.h"

#include <math.h>
#include <string.h>

#include "season/correction.h"
#include "season/measured.h"

#define SAMPLES 300       /* in a step; weigh-ins stand between them, and between two all is straight */
#define NUDGE 0.05        /* spreads, for slopes */
#define ROUNDS 50
#define ENOUGH 1e-4       /* of chi-square: moves nothing by a hundredth of its standard error */
#define SMALL 1e-6        /* spreads */

/* What one thread does: the next batch that nobody has taken yet, until there is none. */
typedef struct
{
  const LwFitModel *model;
  const double *x;
  double *r;              /* NULL: only the slopes are wanted */
  double *slopes;         /* (nullable) */
  int *next;              /* atomic */
  int *failed;            /* atomic */
} Work;

typedef struct
{
  const Work *work;
  LwMarch *march;
} Hand;

static gboolean
concerns (const LwFitParam *param,
          const LwSeason   *season,
          guint             batch)
{
  if (param->batch >= 0)
    return (guint) param->batch == batch;

  return lw_fit_param_is_of (param, season->batches[batch]->leaf);
}

LwSeason *
lw_fit_changed (LwSeason         *season,
                guint             batch,
                const LwFitParam *params,
                const double     *changes,
                guint             n)
{
  LwSeason *next = lw_season_copy (season);
  LwBatch *own = lw_batch_copy (season->batches[batch]);
  LwProfile *leaf = lw_profile_copy (lw_season_profile (season, own->leaf));

  /* What the leaf must be like is asked of the model as it is, not as it was corrected. */
  lw_batch_drop_corrections (own);
  if (isnan (own->fresh_moisture_pct))
    own->fresh_moisture_pct = leaf->fresh_moisture_pct;
  for (guint i = 0; i < n; i++)
    if (concerns (&params[i], season, batch))
      lw_fit_apply (params[i].what, changes[i], leaf, own);

  lw_season_put_profile (next, leaf);
  lw_season_put_batch (next, batch, own);

  return next;
}

/* The model's miss at each point of batch `k`, in standard deviations. */
static gboolean
look (const LwFitModel *model,
      guint             k,
      LwMarch          *march,
      const double     *x,
      double           *r)
{
  g_autofree double *changes = g_new (double, model->n_x);
  guint at = model->batches[k].batch;
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (LwPlan) plan = NULL;
  g_autoptr (LwTrack) track = NULL;

  for (guint i = 0; i < model->n_x; i++)
    changes[i] = x[i] * lw_fit_row (model->params[i].what)->spread;
  season = lw_fit_changed (model->season, at, model->params, changes, model->n_x);
  plan = lw_plan_new (season, at);
  if (plan == NULL)
    return FALSE;

  plan->n_steps = model->points[model->first[k + 1] - 1].step + 1;
  track = lw_plan_march (plan, march, (LwSampling) { .samples = SAMPLES });
  if (track->failure.failed)
    return FALSE;

  for (guint i = model->first[k]; i < model->first[k + 1]; i++)
    {
      const LwFitPoint *point = &model->points[i];
      const LwWeighIn *seen = &season->batches[at]->steps[point->step].weigh_ins[point->weigh_in];
      LwQuantity of = (LwQuantity) lw_measure_row (seen->of)->quantity;
      LwOutcome outcome = lw_track_outcome_at (track, point->step, -1, 60 * seen->minute);
      double fresh_kg = season->batches[at]->fresh_kg, measured, one_up;

      lw_measured (seen, of, fresh_kg, 0, 0, &measured);
      lw_measured (seen, of, fresh_kg, 0, 1, &one_up);
      r[i - model->first[k]] = (lw_quantity_of (of, &outcome) - measured) / (one_up - measured);
    }

  return TRUE;
}

/* The fresh weights come first: they change no march, and so it is still remembered. */
static gboolean
slopes_of (const LwFitModel *model,
           guint             k,
           LwMarch          *march,
           const double     *x,
           const double     *r,
           double           *slopes)
{
  guint n = model->first[k + 1] - model->first[k];
  g_autofree double *at = g_memdup2 (x, model->n_x * sizeof *x);
  g_autofree double *there = g_new (double, n);

  memset (slopes, 0, (gsize) n * model->n_x * sizeof *slopes);
  for (guint j = model->n_x; j-- > 0;)
    {
      double by = x[j] + NUDGE > model->high[j] ? -NUDGE : NUDGE;

      if (!concerns (&model->params[j], model->season, model->batches[k].batch))
        continue;
      if (g_cancellable_is_cancelled (model->cancellable))
        return FALSE;

      at[j] = x[j] + by;
      if (!look (model, k, march, at, there))
        return FALSE;
      at[j] = x[j];
      for (guint i = 0; i < n; i++)
        slopes[(gsize) i * model->n_x + j] = (there[i] - r[i]) / by;
    }

  return TRUE;
}

gboolean
lw_fit_model_batch (const LwFitModel *model,
                    guint             k,
                    LwMarch          *march,
                    const double     *x,
                    double           *r,
                    double           *slopes)
{
  return look (model, k, march, x, r) && (slopes == NULL || slopes_of (model, k, march, x, r, slopes));
}

static gpointer
hand_run (gpointer data)
{
  const Hand *hand = data;
  const Work *work = hand->work;
  const LwFitModel *model = work->model;
  guint k;

  while (!g_atomic_int_get (work->failed)
         && (k = (guint) g_atomic_int_add (work->next, 1)) < model->n_batches)
    {
      guint first = model->first[k];
      double *slopes = work->slopes != NULL ? work->slopes + (gsize) first * model->n_x : NULL;

      if ((int) k == model->left_out)
        continue;
      if (g_cancellable_is_cancelled (model->cancellable)
          || !lw_fit_model_batch (model, k, hand->march, work->x, work->r + first, slopes))
        g_atomic_int_set (work->failed, TRUE);
    }

  return NULL;
}

/* `r` gets the points; `slopes` (nullable) theirs. */
static gboolean
share_out (const LwFitModel *model,
           const double     *x,
           double           *r,
           double           *slopes)
{
  int next = 0, failed = FALSE;
  Work work = { model, x, r, slopes, &next, &failed };
  g_autofree Hand *hands = g_new (Hand, model->n_threads);
  g_autofree GThread **threads = g_new (GThread *, model->n_threads);

  for (guint i = 0; i < model->n_threads; i++)
    hands[i] = (Hand) { &work, model->marches[i] };
  for (guint i = 1; i < model->n_threads; i++)
    threads[i] = g_thread_new ("fit", hand_run, &hands[i]);
  hand_run (&hands[0]);
  for (guint i = 1; i < model->n_threads; i++)
    g_thread_join (threads[i]);

  return !failed;
}

gboolean
lw_fit_model_residuals (const double *x,
                        double       *r,
                        gpointer      data)
{
  const LwFitModel *model = data;

  memset (r, 0, model->n_points * sizeof *r);
  memcpy (r + model->n_points, x, model->n_x * sizeof *r);

  return share_out (model, x, r, NULL);
}

gboolean
lw_fit_model_slopes (const double *x,
                     const double *r,
                     double       *slopes,
                     gpointer      data)
{
  const LwFitModel *model = data;
  g_autofree double *again = g_new (double, model->n_points);

  memset (slopes, 0, (gsize) (model->n_points + model->n_x) * model->n_x * sizeof *slopes);
  for (guint i = 0; i < model->n_x; i++)
    slopes[(gsize) (model->n_points + i) * model->n_x + i] = 1;

  return share_out (model, x, again, slopes);
}

LwSquares
lw_fit_squares (const LwFitModel *model,
                LwResiduals       residuals,
                LwSlopes          slopes,
                gpointer          data)
{
  return (LwSquares) {
    .n_x = model->n_x, .n_r = model->n_points + model->n_x, .low = model->low, .high = model->high,
    .residuals = residuals, .slopes = slopes, .data = data,
    .most_rounds = ROUNDS, .enough = ENOUGH, .small = SMALL,
  };
}

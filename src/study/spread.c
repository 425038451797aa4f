/* The marches of a spread: one sample each, then those that tell the sources apart. What they come to is counted in
 * spread-sum.c. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/spread.h"

#include <math.h>

#include "study/design.h"
#include "study/spread-private.h"

void
lw_spread_ask_init (LwSpreadAsk *ask)
{
  *ask = (LwSpreadAsk) { .samples = 2000, .rows = 128, .seed = 1 };
  lw_vary_usual (ask->varies);
}

static void
add_end (LwSpread *spread,
         guint     step)
{
  spread->ends = g_renew (LwSpreadEnd, spread->ends, spread->n_ends + 1);
  spread->ends[spread->n_ends++] = (LwSpreadEnd) { .step = step };
}

/* What is asked for, nothing computed yet. */
static LwSpread *
spread_blank (const LwSeason    *season,
              guint              batch,
              const LwSpreadAsk *ask)
{
  const LwBatch *here = season->batches[batch];
  g_autoptr (GArray) wants = lw_wants_of_aims (here);
  LwSpread *spread = g_new0 (LwSpread, 1);

  spread->samples = ask->samples;
  spread->rows = MIN (ask->rows, ask->samples);
  spread->points = ask->points;
  spread->n_steps = here->n_steps;
  for (guint i = 0; i < here->n_steps; i++)
    if (here->steps[i].n_aims > 0 || i + 1 == here->n_steps)
      add_end (spread, i);

  spread->n_aims = wants->len;
  spread->aims = g_new0 (LwSpreadAim, wants->len);
  for (guint i = 0; i < wants->len; i++)
    spread->aims[i].want = g_array_index (wants, LwWant, i);

  spread->sources = g_new (LwVarySource, LW_N_VARY);
  for (guint s = 0; s < LW_N_VARY; s++)
    if (lw_chance_has (season, batch, s, 0))
      spread->sources[spread->n_sources++] = s;

  return spread;
}

static void
put_outcomes (const LwSpread *spread,
              const LwTrack  *track,
              double         *to)
{
  gboolean whole = track != NULL && !track->failure.failed && track->n_steps == spread->n_steps;

  for (guint e = 0; e < spread->n_ends; e++)
    {
      LwOutcome outcome = { 0 };

      if (whole)
        outcome = lw_track_end (track, spread->ends[e].step, -1);
      for (guint q = 0; q < LW_N_QUANTITIES; q++)
        *to++ = whole ? lw_quantity_of (q, &outcome) : NAN;
    }
}

static void
put_bands (const LwSpread *spread,
           const LwTrack  *track,
           float          *to)
{
  gboolean whole = track != NULL && !track->failure.failed && track->n_steps == spread->n_steps;

  for (guint s = 0; s < spread->n_steps; s++)
    for (guint i = 0; i <= spread->points; i++)
      {
        LwOutcome outcome = { 0 };

        if (whole)
          outcome = lw_track_outcome (track, s, -1, i);
        for (guint q = 0; q < LW_N_QUANTITIES; q++)
          *to++ = whole ? (float) lw_quantity_of (q, &outcome) : NAN;
      }
}

/* (transfer full) (nullable) */
static LwTrack *
march_luck (const LwSpreadRun *run,
            const double      *luck,
            guint              samples,
            LwMarch           *march)
{
  g_autoptr (LwPlan) plan = lw_chance_plan (&run->chance, luck);

  return plan != NULL ? lw_plan_march (plan, march, (LwSampling) { .samples = samples }) : NULL;
}

static void
sample_one (guint    i,
            LwMarch *march,
            gpointer data)
{
  LwSpreadRun *run = data;
  g_autoptr (LwTrack) track = march_luck (run, run->luck + i * run->stride, MAX (run->spread->points, 1), march);

  put_outcomes (run->spread, track, run->a + i * run->columns);
  if (run->bands != NULL)
    put_bands (run->spread, track, run->bands + i * run->band_columns);
}

/* The second sample's row, or the first's with one source from the second. */
static void
sources_one (guint    i,
             LwMarch *march,
             gpointer data)
{
  LwSpreadRun *run = data;
  guint each = run->n_straying + 1, row = i / each, which = i % each;
  const LwChance *chance = &run->chance;
  const double *first = run->luck + row * run->stride, *second = first + chance->n_dims;
  g_autofree double *luck = g_memdup2 (which == 0 ? second : first, chance->n_dims * sizeof *luck);
  g_autoptr (LwTrack) track = NULL;

  if (which > 0)
    {
      LwVarySource source = run->straying[which - 1];

      for (guint k = 0; k < chance->dims[source]; k++)
        luck[chance->first[source] + k] = second[chance->first[source] + k];
    }

  track = march_luck (run, luck, 1, march);
  put_outcomes (run->spread, track, run->b + ((gsize) which * run->spread->rows + row) * run->columns);
}

static void
run_clear (LwSpreadRun *run)
{
  lw_chance_clear (&run->chance);
  g_free (run->luck);
  g_free (run->a);
  g_free (run->b);
  g_free (run->bands);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LwSpreadRun, run_clear)

static void
run_init (LwSpreadRun       *run,
          LwSpread          *spread,
          LwSeason          *season,
          guint              batch,
          const LwSpreadAsk *ask)
{
  *run = (LwSpreadRun) { .spread = spread, .seed = ask->seed, .columns = spread->n_ends * LW_N_QUANTITIES };
  lw_chance_init (&run->chance, season, batch, ask->varies);
  for (guint s = 0; s < LW_N_VARY; s++)
    if (run->chance.dims[s] > 0)
      run->straying[run->n_straying++] = s;

  run->stride = 2 * run->chance.n_dims;
  run->luck = lw_design_new (spread->samples, (guint) run->stride, ask->seed);
  run->a = g_new (double, spread->samples * run->columns);
  if (spread->rows > 0)
    run->b = g_new (double, (run->n_straying + 1) * spread->rows * run->columns);
  if (spread->points > 0)
    {
      run->band_columns = (gsize) spread->n_steps * (spread->points + 1) * LW_N_QUANTITIES;
      run->bands = g_new (float, spread->samples * run->band_columns);
    }
}

static gboolean
can_be_computed (LwSeason *season,
                 guint     batch)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;

  if (plan == NULL || march == NULL || plan->n_steps == 0)
    return FALSE;
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });

  return !track->failure.failed;
}

LwSpread *
lw_spread_new (LwSeason          *season,
               guint              batch,
               const LwSpreadAsk *ask,
               GCancellable      *cancellable)
{
  g_autoptr (LwSpread) spread = NULL;
  g_auto (LwSpreadRun) run = { 0 };
  LwMany many = {
    .threads = ask->threads, .tolerance = LW_SPREAD_TOLERANCE,
    .progress = ask->progress, .progress_data = ask->progress_data,
  };
  guint more;

  g_return_val_if_fail (ask->samples >= 2 && ask->samples <= LW_SPREAD_MOST, NULL);
  g_return_val_if_fail (ask->points <= LW_SPREAD_MOST_POINTS && ask->seed >= 1, NULL);

  if (g_cancellable_is_cancelled (cancellable) || !can_be_computed (season, batch))
    return NULL;

  spread = spread_blank (season, batch, ask);
  run_init (&run, spread, season, batch, ask);
  more = spread->rows * (run.n_straying + 1);
  many.total = spread->samples + more;
  if (!lw_many_run (&many, spread->samples, sample_one, &run, cancellable))
    return NULL;

  many.done = spread->samples;
  if (!lw_many_run (&many, more, sources_one, &run, cancellable))
    return NULL;

  lw_spread_sum (&run);

  return g_steal_pointer (&spread);
}

void
lw_spread_free (LwSpread *spread)
{
  g_free (spread->ends);
  g_free (spread->aims);
  g_free (spread->sources);
  g_free (spread->indices);
  g_free (spread->bands);
  g_free (spread);
}

const LwIndex *
lw_spread_index (const LwSpread *spread,
                 guint           end,
                 LwQuantity      of,
                 guint           source)
{
  return &spread->indices[(end * LW_N_QUANTITIES + of) * spread->n_sources + source];
}

const LwSpan *
lw_spread_band (const LwSpread *spread,
                guint           step,
                guint           point,
                LwQuantity      of)
{
  return &spread->bands[(step * (spread->points + 1) + point) * LW_N_QUANTITIES + of];
}

guint
lw_spread_end (const LwSpread *spread,
               guint           step)
{
  for (guint e = 0; e < spread->n_ends; e++)
    if (spread->ends[e].step == step)
      return e;

  g_return_val_if_reached (0);
}

/* The search, its answer on usable notches, and the full run that judges each. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/reach.h"

#include <math.h>

#include "study/notches.h"
#include "study/search.h"

#define ELSEWHERE 2     /* other starts, where the first does not lead there */
#define ROUNDINGS 6     /* choices of notches judged by a full run */
#define AS_GOOD 1.02    /* of a sum of squares: how much worse an answer may be that is easier to set */

/* Assumed, no source: about what a careful maker's scale, thermometer and palate tell apart. */
static const double tolerances[LW_N_QUANTITIES] = {
  [LW_MOISTURE] = 0.3, [LW_OXIDATION] = 0.4, [LW_RUPTURE] = 0.6, [LW_LEAF_TEMP] = 1, [LW_ENZYME] = 0.5,
  [LW_ROAST] = 0.3, [LW_GREEN] = 0.01, [LW_BROKEN] = 0.5, [LW_TWIST] = 1, [LW_WEIGHT] = 0.005, [LW_UNEVEN] = 0.5,
  [LW_NEARLY_DRY] = 2, [LW_ROASTED] = 2,
};

double
lw_want_tolerance (LwQuantity of)
{
  return tolerances[of] > 0 ? tolerances[of] : 1;
}

static void
add_wants (GArray      *wants,
           guint        step,
           const LwAim *aims,
           guint        n)
{
  for (guint i = 0; i < n; i++)
    {
      LwWant want = { step, aims[i].of, aims[i].low, aims[i].high, aims[i].weight };

      g_array_append_val (wants, want);
    }
}

GArray *
lw_wants_of_aims (const LwBatch *batch)
{
  GArray *wants = g_array_new (FALSE, FALSE, sizeof (LwWant));

  for (guint i = 0; i < batch->n_steps; i++)
    add_wants (wants, i, batch->steps[i].aims, batch->steps[i].n_aims);
  if (batch->n_steps > 0)
    add_wants (wants, batch->n_steps - 1, batch->aims, batch->n_aims);

  return wants;
}

gboolean
lw_reach_turns (LwKind    kind,
                LwSetting setting)
{
  return setting == LW_SET_MINUTES || setting == LW_SET_COVER_PCT || setting == LW_SET_PRESS_KPA
         || setting == lw_kind_row (kind)->leading;
}

GArray *
lw_reach_free (const LwSeason *season,
               guint           batch,
               guint           from)
{
  g_autoptr (GArray) all = lw_handles_of (season, batch);
  GArray *chosen = g_array_new (FALSE, FALSE, sizeof (LwHandle));

  for (guint i = 0; i < all->len && chosen->len < LW_REACH_FREE; i++)
    {
      LwHandle handle = g_array_index (all, LwHandle, i);

      if (handle.step >= from && lw_reach_turns (season->batches[batch]->steps[handle.step].kind, handle.setting))
        g_array_append_val (chosen, handle);
    }

  return chosen;
}

static LwMet
met_of (const LwWant  *want,
        const LwTrack *track)
{
  LwOutcome outcome = lw_track_end (track, want->step, -1);
  double value = lw_quantity_of (want->of, &outcome);
  double missed = value > want->high ? value - want->high : value < want->low ? value - want->low : 0;

  return (LwMet) { value, missed, fabs (missed) <= lw_want_tolerance (want->of) };
}

/* With a march at its usual tolerance, as on the screen. */
static LwReached *
judge (LwSeason     *season,
       guint         batch,
       const GArray *wants,
       LwMarch      *march)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwTrack) track = NULL;
  LwReached *reached;

  if (plan == NULL || plan->n_steps == 0)
    return NULL;

  track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });
  if (track->failure.failed)
    return NULL;

  reached = g_new0 (LwReached, 1);
  reached->season = lw_season_ref (season);
  reached->end = lw_track_end (track, track->n_steps - 1, -1);
  reached->n = wants->len;
  reached->wants = g_new0 (LwMet, reached->n);
  reached->all_met = TRUE;
  for (guint i = 0; i < reached->n; i++)
    {
      reached->wants[i] = met_of (&g_array_index (wants, LwWant, i), track);
      reached->all_met &= reached->wants[i].met;
    }

  return reached;
}

LwReached *
lw_reach_judge (LwSeason     *season,
                guint         batch,
                const GArray *wants)
{
  g_autoptr (LwMarch) march = lw_march_new ();

  return march != NULL ? judge (season, batch, wants, march) : NULL;
}

/* Sum of squares of what is missed, in tolerances. */
static double
badness (const LwReached *reached,
         const GArray    *wants)
{
  double sum = 0;

  for (guint i = 0; i < reached->n; i++)
    {
      const LwWant *want = &g_array_index (wants, LwWant, i);
      double off = want->weight * reached->wants[i].missed / lw_want_tolerance (want->of);

      sum += off * off;
    }

  return sum;
}

/* Whether `a` is clearly the better of the two (nullable). What meets every want is as good as anything can be. */
static gboolean
better (const LwReached *a,
        const LwReached *b,
        const GArray    *wants)
{
  if (a == NULL || b == NULL)
    return a != NULL;
  if (a->all_met || b->all_met)
    return !b->all_met;

  return badness (a, wants) * AS_GOOD < badness (b, wants);
}

static void
keep_better (LwReached   **kept,
             LwReached    *reached,
             const GArray *wants)
{
  if (better (reached, *kept, wants))
    {
      g_clear_pointer (kept, lw_reached_free);
      *kept = reached;
    }
  else if (reached != NULL)
    {
      lw_reached_free (reached);
    }
}

static LwReached *
judge_values (const LwSearch *search,
              const double   *values,
              LwMarch        *march)
{
  g_autoptr (LwSeason) season = lw_search_season (search, values);

  return judge (season, search->batch, search->wants, march);
}

/* (transfer full) (nullable) the best answer near `x` that stands on notches. `goal`: at `x` all wants are met. */
static LwReached *
round_off (LwSearch     *search,
           const double *x,
           gboolean      goal,
           LwMarch      *march)
{
  guint n = search->wants->len;
  g_autofree double *stands = g_new (double, n), *slopes = g_new (double, (gsize) n * search->n_x);
  g_autofree double *truly = g_new (double, n);
  LwReached *kept = NULL;
  LwNotches notches;

  if (!lw_search_look (search, x, stands) || !lw_search_slopes (search, x, stands, slopes))
    return NULL;

  lw_notches_init (&notches, search, x, stands, slopes, goal);
  lw_notches_choose (&notches);
  for (guint i = 0; i < ROUNDINGS && !g_cancellable_is_cancelled (search->cancellable); i++)
    {
      LwReached *reached;

      while (!lw_notches_serve (&notches) && lw_notches_refine (&notches))
        continue;

      reached = judge_values (search, notches.values, march);
      if (reached == NULL)
        break;
      for (guint k = 0; k < n; k++)
        truly[k] = search->targets[k].per_unit * reached->wants[k].value;
      keep_better (&kept, reached, search->wants);
      if (!goal || kept->all_met)
        break;

      lw_notches_learn (&notches, truly);
      if (!lw_notches_choose (&notches) && !lw_notches_refine (&notches))
        break;
    }

  return kept;
}

static void
start_from (const LwSearch *search,
            LwSeason       *near,
            double         *x)
{
  for (guint k = 0; k < search->n_x; k++)
    {
      const LwUnknown *unknown = &search->x[k];

      x[k] = unknown->start;
      if (near != NULL)
        x[k] = lw_search_measure (unknown, lw_step_get (&near->batches[search->batch]->steps[unknown->handle.step],
                                                        unknown->handle.setting));
    }
}

static LwReached *
reach (LwSeason     *season,
       guint         batch,
       const GArray *wants,
       const GArray *free,
       LwSeason     *near,
       LwInstant      now,
       GCancellable *cancellable)
{
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwReached) answer = NULL;
  g_autoptr (LwSearch) search = NULL;
  double x[LW_REACH_FREE], values[LW_REACH_FREE];
  LwReached *exact, *rounded;

  g_return_val_if_fail (free->len <= LW_REACH_FREE, NULL);

  answer = march != NULL ? judge (season, batch, wants, march) : NULL;
  if (answer == NULL || free->len == 0 || answer->all_met)
    return g_steal_pointer (&answer);

  search = lw_search_new (season, batch, wants, free, cancellable);
  if (search == NULL)
    return NULL;
  lw_search_pass (search, now);

  /* Never worse than it was; on usable notches where they do, else as found. */
  start_from (search, near, x);
  if (lw_search_run (search, x, near == NULL ? ELSEWHERE : 0))
    {
      for (guint k = 0; k < search->n_x; k++)
        values[k] = lw_search_value (&search->x[k], x[k]);
      exact = judge_values (search, values, march);
      rounded = round_off (search, x, exact != NULL && exact->all_met, march);
      keep_better (&answer, rounded, wants);
      keep_better (&answer, exact, wants);
    }

  return g_cancellable_is_cancelled (cancellable) ? NULL : g_steal_pointer (&answer);
}

LwReached *
lw_reach (LwSeason     *season,
          guint         batch,
          const GArray *wants,
          const GArray *free,
          LwSeason     *near,
          GCancellable *cancellable)
{
  return reach (season, batch, wants, free, near, (LwInstant) { 0, 0 }, cancellable);
}

LwReached *
lw_reach_from (LwSeason     *season,
               guint         batch,
               const GArray *wants,
               const GArray *free,
               LwInstant      now,
               GCancellable *cancellable)
{
  return reach (season, batch, wants, free, NULL, now, cancellable);
}

void
lw_reached_free (LwReached *reached)
{
  lw_season_unref (reached->season);
  g_free (reached->wants);
  g_free (reached);
}

/* Advice by knock-on numbers and marches from the step's end on. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/advice.h"

#include <math.h>

#include "season/edit.h"
#include "study/reach.h"

#define OFF_SHARE 0.042      /* of the leaf's weight, before it is rounded down */
#define MOST_OF_WATER 0.4    /* that may be missing */
#define MOST_PACE 8.0        /* of drying */
#define HALVINGS 50
#define MOST_NOTCHES 40
#define MOST_TRIED 4
#define MOST_ROUNDS 8
#define NEAR 0.03            /* % points: near enough before rounding */

static const LwSampling ends = { .samples = 1 };

/* One leaf that weighs more or less than planned, and how it goes on from there. */
typedef struct
{
  LwSeason *season;
  guint batch;
  guint step;
  LwMarch *march;
  LwState *states;       /* of its parts at the step's end */
  LwOutcome planned;     /* the finished tea */
} Case;

/* What all parts hold if each has dried `pace` times as fast as it did, its water falling exponentially. */
static double
water_at_pace (const LwTrack *track,
               guint          step,
               double         pace,
               LwState       *states)
{
  double fresh = track->leaf.fresh_water, water = 0;

  for (guint part = 0; part < track->n_parts; part++)
    {
      states[part] = *lw_track_state (track, step, part, track->steps[step]->n - 1);
      states[part].water = fresh * pow (states[part].water / fresh, pace);
      water += track->parts[part].share * states[part].water;
    }

  return water;
}

/* Gives the leaf `by` kg per kg fresh more water: each part has dried slower, or faster, by the same share. Where that
 * cannot be, as in leaf that has lost nothing, every part holds more in proportion. FALSE if there is not as much. */
static gboolean
add_water (const LwTrack *track,
           guint          step,
           double         by,
           LwState       *states)
{
  double water = water_at_pace (track, step, 1, states), more = by * (1 + track->leaf.fresh_water);
  double slow = by > 0 ? 0 : 1, fast = by > 0 ? 1 : MOST_PACE;

  if (water + more <= 0)
    return FALSE;

  if (water_at_pace (track, step, slow, states) > water + more && water_at_pace (track, step, fast, states) < water + more)
    {
      for (guint i = 0; i < HALVINGS; i++)
        {
          double pace = (slow + fast) / 2;

          if (water_at_pace (track, step, pace, states) > water + more)
            slow = pace;
          else
            fast = pace;
        }
      return TRUE;
    }

  water_at_pace (track, step, 1, states);
  for (guint part = 0; part < track->n_parts; part++)
    states[part].water *= 1 + more / water;

  return TRUE;
}

/* The case's finished tea by the steps from `from` on of its batch in `season`. */
static gboolean
finish (const Case *it,
        LwSeason   *season,
        guint       from,
        LwOutcome  *end)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, it->batch);
  g_autoptr (LwTrack) track = NULL;

  if (plan->n_steps == from)
    {
      *end = lw_outcome_mean (&plan->leaf, it->states);
      return TRUE;
    }

  track = lw_march_run_from (it->march, &plan->leaf, it->states, plan->steps + from, plan->n_steps - from, ends);
  if (track->failure.failed)
    return FALSE;
  *end = lw_track_end (track, track->n_steps - 1, -1);

  return TRUE;
}

/* The batch with the step going on for so long: as one more step of the same kind. */
static LwSeason *
longer (const Case *it,
        double      minutes)
{
  LwSeason *next = lw_season_copy (it->season);
  LwBatch *own = lw_batch_copy (it->season->batches[it->batch]);
  LwStep more = lw_step_copy (&own->steps[it->step]);

  lw_step_set (&more, LW_SET_MINUTES, minutes);
  lw_batch_insert_step (own, it->step + 1, more);
  lw_season_put_batch (next, it->batch, own);

  return next;
}

static gboolean
finish_with (const Case     *it,
             const LwAdvice *advice,
             LwOutcome      *end)
{
  g_autoptr (LwSeason) next = NULL;

  if (advice->kind == LW_ADVICE_LONGER && advice->to > 0)
    next = longer (it, advice->to);
  else if (advice->kind == LW_ADVICE_CHANGE)
    next = lw_edit_set (it->season, it->batch, advice->handle.step, advice->handle.setting, advice->to);
  else
    next = lw_season_ref (it->season);

  return finish (it, next, it->step + 1, end);
}

/* How far the finished moisture is off with it; NAN if that cannot be computed. */
static double
miss_with (const Case     *it,
           const LwAdvice *advice,
           LwOutcome      *end)
{
  return finish_with (it, advice, end) ? end->moisture_wb_pct - it->planned.moisture_wb_pct : NAN;
}

gboolean
lw_advice_spoils (const LwOutcome *then,
                  const LwOutcome *planned)
{
  static const LwQuantity kept[] = { LW_OXIDATION, LW_RUPTURE, LW_BROKEN, LW_ROAST };

  for (guint i = 0; i < G_N_ELEMENTS (kept); i++)
    {
      double was = lw_quantity_of (kept[i], planned);

      double most = kept[i] == LW_ROAST ? fmax (LW_ADVICE_SPOILS, LW_ADVICE_SPOILS_SHARE * was) : LW_ADVICE_SPOILS;

      if (fabs (lw_quantity_of (kept[i], then) - was) > most)
        return TRUE;
    }

  return FALSE;
}

double
lw_advice_far (LwSetting setting)
{
  return g_str_equal (lw_setting_row (setting)->unit, "°C") ? LW_ADVICE_FAR_HEAT : LW_ADVICE_FAR;
}

/* Moves the setting until the finished moisture is as planned, then to a notch. FALSE if its range does not do, or if it
 * spoils something else. */
static gboolean
solve (const Case *it,
       LwAdvice   *advice,
       double      slope)
{
  LwKind kind = it->season->batches[it->batch]->steps[advice->handle.step].kind;
  const LwKindSetting *range = lw_kind_setting (kind, advice->handle.setting);
  gboolean more = advice->kind == LW_ADVICE_LONGER;
  double low = more ? 0 : range->low, high = range->high;
  double x = advice->from, miss = advice->missed;
  LwOutcome end;

  if (more)
    high = MIN (high, lw_step_get (&it->season->batches[it->batch]->steps[it->step], LW_SET_MINUTES));
  else if (advice->from > 0)
    {
      low = MAX (low, advice->from / lw_advice_far (advice->handle.setting));
      high = MIN (high, advice->from * lw_advice_far (advice->handle.setting));
    }

  for (guint i = 0; i < MOST_ROUNDS && fabs (miss) > NEAR; i++)
    {
      double next = CLAMP (x - miss / slope, low, high), then;

      if (next == x)
        break;
      advice->to = next;
      then = miss_with (it, advice, &end);
      if (isnan (then) || then == miss)
        return FALSE;
      slope = (then - miss) / (next - x);
      x = next;
      miss = then;
    }

  for (int fine = 0; fine <= 1; fine++)
    {
      double notch = lw_minutes_notch (x, fine);

      advice->to = more ? round (x / notch) * notch : lw_kind_snap (kind, advice->handle.setting, x, fine);
      advice->left = miss_with (it, advice, &end);
      if (fabs (advice->left) <= LW_ADVICE_TOLERANCE && advice->to != advice->from)
        return !lw_advice_spoils (&end, &it->planned);
    }

  return FALSE;
}

/* Notches that a setting would need; infinite where it does nothing or is none to turn here. */
static double
notches_for (const Case    *it,
             const LwKnock *knock,
             double         missed)
{
  LwKind kind = it->season->batches[it->batch]->steps[knock->handle.step].kind;
  double effect = knock->effect[LW_MOISTURE];
  gboolean here = knock->handle.step == it->step;

  if (here ? knock->handle.setting != LW_SET_MINUTES || missed < 0
           : knock->handle.step != it->step + 1 || !lw_reach_turns (kind, knock->handle.setting))
    return INFINITY;
  /* Time that has passed is not taken back. */
  if (here && effect / knock->notch >= 0)
    return INFINITY;

  return isfinite (effect) && effect != 0 ? fabs (missed / effect) : INFINITY;
}

static void
choose (const Case   *it,
        const GArray *knocks,
        LwAdvice     *advice)
{
  g_autofree gboolean *tried = g_new0 (gboolean, knocks->len);

  for (guint round = 0; round < MOST_TRIED; round++)
    {
      double least = MOST_NOTCHES;
      int best = -1;
      const LwKnock *knock;
      LwAdvice found = *advice;

      for (guint i = 0; i < knocks->len; i++)
        {
          double notches = notches_for (it, &g_array_index (knocks, LwKnock, i), advice->missed);

          if (!tried[i] && notches < least)
            {
              least = notches;
              best = (int) i;
            }
        }
      if (best < 0)
        return;

      tried[best] = TRUE;
      knock = &g_array_index (knocks, LwKnock, best);
      found.kind = knock->handle.step == it->step ? LW_ADVICE_LONGER : LW_ADVICE_CHANGE;
      found.handle = knock->handle;
      found.from = found.kind == LW_ADVICE_LONGER ? 0
                   : lw_step_get (&it->season->batches[it->batch]->steps[knock->handle.step], knock->handle.setting);
      if (solve (it, &found, knock->effect[LW_MOISTURE] / knock->notch))
        {
          *advice = found;
          return;
        }
    }
}

static LwAdvice
advise_one (Case          *it,
            const LwTrack *track,
            const GArray  *knocks,
            double         off)
{
  LwAdvice advice = { .kind = LW_ADVICE_NONE, .off = off, .missed = NAN, .left = NAN, .handle = { .step = it->step } };
  LwOutcome end;

  if (!add_water (track, it->step, off, it->states))
    return advice;

  advice.missed = advice.left = miss_with (it, &advice, &end);
  if (fabs (advice.missed) <= LW_ADVICE_TOLERANCE)
    advice.kind = LW_ADVICE_FINE;
  else if (!isnan (advice.missed))
    choose (it, knocks, &advice);

  return advice;
}

/* The round number, 1, 2 or 5 times a power of ten, that is nearest below. */
static double
round_below (double value)
{
  double ten = pow (10, floor (log10 (value))), times = value / ten;

  return ten * (times >= 5 ? 5 : times >= 2 ? 2 : 1);
}

static LwTrack *
track_of (LwSeason *season,
          guint     batch,
          LwMarch  *march)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwTrack) track = plan != NULL && plan->n_steps > 0 ? lw_plan_march (plan, march, ends) : NULL;

  return track != NULL && !track->failure.failed ? g_steal_pointer (&track) : NULL;
}

GArray *
lw_advise (LwSeason     *season,
           guint         batch,
           double        load_kg,
           GCancellable *cancellable)
{
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = march != NULL ? track_of (season, batch, march) : NULL;
  g_autoptr (GArray) knocks = track != NULL ? lw_knock_on (season, batch, -1, cancellable) : NULL;
  g_autoptr (GArray) checkpoints = g_array_new (FALSE, FALSE, sizeof (LwCheckpoint));
  g_autofree LwState *states = track != NULL ? g_new (LwState, track->n_parts) : NULL;
  Case it = { .season = season, .batch = batch, .march = march, .states = states };

  if (knocks == NULL)
    return NULL;

  it.planned = lw_track_end (track, track->n_steps - 1, -1);
  for (it.step = 0; it.step < track->n_steps; it.step++)
    {
      LwOutcome end = lw_track_end (track, it.step, -1);
      double kg = end.kg_per_kg_fresh, water = kg * end.moisture_wb_pct / 100;
      double more = round_below (OFF_SHARE * kg * load_kg) / load_kg;
      double less = fmin (more, round_below (MOST_OF_WATER * water * load_kg) / load_kg);
      LwCheckpoint checkpoint = { .kg_per_kg_fresh = kg, .moisture_pct = end.moisture_wb_pct };

      if (g_cancellable_is_cancelled (cancellable))
        return NULL;

      checkpoint.more = advise_one (&it, track, knocks, more);
      checkpoint.less = advise_one (&it, track, knocks, -less);
      g_array_append_val (checkpoints, checkpoint);
    }

  return g_steal_pointer (&checkpoints);
}

gboolean
lw_advice_try (LwSeason       *season,
               guint           batch,
               guint           step,
               double          off,
               const LwAdvice *advice,
               LwOutcome      *end)
{
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = march != NULL ? track_of (season, batch, march) : NULL;
  g_autofree LwState *states = track != NULL ? g_new (LwState, track->n_parts) : NULL;
  const LwAdvice none = { .kind = LW_ADVICE_NONE };
  Case it = { .season = season, .batch = batch, .step = step, .march = march, .states = states };

  return track != NULL && add_water (track, step, off, states) && finish_with (&it, advice ? advice : &none, end);
}

/* Weigh-ins. INVENTED: no leaf was ever weighed. They are drawn from a leaf that differs
 * from the shipped profiles (the hidden leaf of garden.c), by running it through the
 * batch, and then given the scatter of a real scale, thermometer and judging eye. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo/scale.h"

#include "demo/dice.h"
#include "demo/garden.h"
#include "season/surround.h"

/* Far finer than what is noted, so that no solver's version changes a digit. */
#define TOLERANCE 1e-9
#define EVERY_S 30

/* How finely people note what they see: parts of a unit. */
static const double per_unit[LW_N_MEASURES] = {
  [LW_WEIGHED_KG] = 100,
  [LW_LEAF_C] = 1,
  [LW_WALL_C] = 0.2,
  [LW_METER_PCT] = 2,
  [LW_JUDGED_OXIDATION_PCT] = 0.2,
  [LW_JUDGED_BROKEN_PCT] = 0.2,
};

static LwTrack *
hidden_track (const LwSeason *season,
              const LwBatch  *batch)
{
  g_autoptr (LwSeason) hidden = demo_hidden_season (season, batch);
  g_autoptr (LwPlan) plan = lw_plan_new (hidden, 0);
  g_autoptr (LwMarch) march = lw_march_new ();
  LwTrack *track;

  if (plan == NULL || march == NULL)
    g_error ("%s names a leaf or weather that is not there", batch->name);

  lw_march_set_tolerance (march, TOLERANCE);
  track = lw_plan_march (plan, march, (LwSampling) { .every_s = EVERY_S });
  if (track->failure.failed)
    g_error ("%s: step %u could not be computed", batch->name, track->failure.step + 1);

  return track;
}

/* What a perfect instrument would show. */
static double
truth (const LwTrack  *track,
       const LwStep   *step,
       guint           at,
       const DemoLook *look,
       double          minute,
       double          true_kg)
{
  const LwMeasureRow *row = lw_measure_row (look->of);
  LwOutcome outcome;

  if (row->quantity < 0)
    return lw_step_get (step, LW_SET_WALL_C);

  outcome = lw_track_outcome_at (track, at, -1, 60 * minute);

  return lw_quantity_of ((LwQuantity) row->quantity, &outcome)
         * (look->of == LW_WEIGHED_KG ? true_kg : 1);
}

static double
noted (LwMeasure of,
       double    value,
       GRand    *dice)
{
  const LwMeasureRow *row = lw_measure_row (of);
  double shown = value + row->sd * demo_scatter (dice);

  return demo_round (CLAMP (shown, row->low, row->high), per_unit[of]);
}

static void
weigh_step (LwBatch        *batch,
            guint           at,
            const LwTrack  *track,
            const DemoLook *look,
            double          true_kg,
            GRand          *dice)
{
  const LwStep *step = &batch->steps[at];
  double minute = look->minute == DEMO_END ? lw_step_get (step, LW_SET_MINUTES) : look->minute;
  double value = truth (track, step, at, look, minute, true_kg) + look->tare_kg;

  lw_batch_add_weigh_in (batch, at,
                         (LwWeighIn) {
                           .minute = minute,
                           .of = look->of,
                           .value = noted (look->of, value, dice),
                           .sd = lw_measure_row (look->of)->sd,
                           .tare_kg = look->tare_kg,
                           .note = g_strdup (look->note),
                         });
}

void
demo_weigh (const LwSeason  *season,
            LwBatch         *batch,
            const DemoBatch *script,
            guint32          seed)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (seed);
  g_autoptr (LwTrack) track = hidden_track (season, batch);

  batch->fresh_kg = noted (LW_WEIGHED_KG, script->true_kg, dice);
  for (guint i = 0; i < batch->n_steps; i++)
    for (const DemoLook *look = script->steps[i].looks; look->minute != 0; look++)
      weigh_step (batch, i, track, look, script->true_kg, dice);
}

/* Running trials and reading them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include <math.h>

#define MID_APRIL_S G_GINT64_CONSTANT (1776211200) /* 2026-04-15T00:00 */

LwTrack *
trial_run (double           fresh_pct,
           double           hour,
           const TrialStep *steps,
           guint            n)
{
  g_autoptr (LwSeason) season = lw_season_new ("published");
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwPlan) plan = NULL;
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new ("1");
  LwTrack *track;

  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  batch->fresh_moisture_pct = fresh_pct;
  batch->when_s = MID_APRIL_S + (gint64) (hour * 3600);
  for (guint i = 0; i < n; i++)
    {
      LwStep step = lw_step_new (steps[i].kind);

      lw_step_set (&step, LW_SET_MINUTES, steps[i].minutes);
      for (guint k = 0; k < TRIAL_SETTINGS && steps[i].given[k].setting != LW_SET_MINUTES; k++)
        lw_step_set (&step, steps[i].given[k].setting, steps[i].given[k].value);
      lw_batch_insert_step (batch, i, step);
    }
  season->latitude_deg = 25;
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);

  plan = lw_plan_new (season, 0);
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 2000 });
  g_assert_false (track->failure.failed);

  return track;
}

LwOutcome
trial_at (const LwTrack *track,
          double         minutes)
{
  return lw_track_outcome_at (track, track->n_steps - 1, -1, 60 * minutes);
}

LwOutcome
trial_end (const LwTrack *track)
{
  return lw_track_end (track, track->n_steps - 1, -1);
}

double
trial_minutes_until (const LwTrack *track,
                     LwQuantity     quantity,
                     double         value)
{
  guint step = track->n_steps - 1;
  const LwSegment *segment = track->steps[step];
  double before = NAN;

  for (guint i = 0; i < segment->n; i++)
    {
      LwOutcome outcome = lw_track_outcome (track, step, -1, i);
      double now = lw_quantity_of (quantity, &outcome);

      if (i > 0 && (before - value) * (now - value) <= 0)
        return (segment->time_s[i - 1]
                + (segment->time_s[i] - segment->time_s[i - 1]) * (value - before) / (now - before)) / 60;
      before = now;
    }

  return INFINITY;
}

double
trial_loss_pct (LwOutcome outcome)
{
  return 100 * (1 - outcome.kg_per_kg_fresh);
}

double
trial_lewis_h (const LwTrack *track,
               double         rest)
{
  double begin = lw_dry_basis (trial_at (track, 0).moisture_wb_pct);
  double tenth = lw_wet_basis_pct (rest + 0.1 * (begin - rest));

  return log (10) / (trial_minutes_until (track, LW_MOISTURE, tenth) / 60);
}

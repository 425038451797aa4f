/* Making the batches. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "made.h"

#include <math.h>

#include "season/edit.h"

LwSeason *
made_season (const LwKind *kinds,
             guint         n)
{
  LwSeason *season = lw_season_new ("S");
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new ("1");

  season->altitude_m = 1250;
  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  batch->when_s = 8 * 3600;
  for (guint i = 0; i < n; i++)
    lw_batch_insert_step (batch, i, lw_step_new (kinds[i]));
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);

  return season;
}

void
made_set (LwSeason **season,
          guint      step,
          LwSetting  setting,
          double     value)
{
  LwSeason *next = lw_edit_set (*season, 0, step, setting, value);

  lw_season_unref (*season);
  *season = next;
}

double
made_get (const LwSeason *season,
          guint           step,
          LwSetting       setting)
{
  return lw_step_get (&season->batches[0]->steps[step], setting);
}

LwOutcome
made_end (LwSeason *season,
          guint     step,
          double    tolerance)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;

  if (tolerance > 0)
    lw_march_set_tolerance (march, tolerance);
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });
  g_assert_cmpuint (track->n_steps, >, step);

  return lw_track_end (track, step, -1);
}

void
made_aim (LwSeason **season,
          int        step,
          LwQuantity of,
          double     low,
          double     high)
{
  LwSeason *next = lw_edit_put_aim (*season, 0, step, (LwAim) { of, low, high, 1, NULL });

  lw_season_unref (*season);
  *season = next;
}

const LwKind made_two[2] = { LW_KIND_FIX_PAN, LW_KIND_ROLL };

LwSeason *
made_aimed (void)
{
  LwSeason *season = made_season (made_two, 2);
  LwOutcome pan = made_end (season, 0, 0), end = made_end (season, 1, 0);

  made_aim (&season, 0, LW_MOISTURE, pan.moisture_wb_pct - 2, pan.moisture_wb_pct + 2);
  made_aim (&season, -1, LW_RUPTURE, end.rupture_pct - 3, INFINITY);

  return season;
}

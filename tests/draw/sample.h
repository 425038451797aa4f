/* A season with one made batch of five steps, with aims and weigh-ins, and its track. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "season/surround.h"

#define SAMPLE_NAME "14 long wither"

static inline LwBatch *
sample_batch (const char *leaf)
{
  static const struct { LwKind kind; double minutes; } steps[] = {
    { LW_KIND_WITHER, 1140 }, { LW_KIND_FIX_PAN, 35 }, { LW_KIND_ROLL, 3 },
    { LW_KIND_DRY_SUN, 480 }, { LW_KIND_ROAST, 20 },
  };
  LwBatch *batch = lw_batch_new (SAMPLE_NAME);

  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf);
  batch->fresh_kg = 10;
  batch->made = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    {
      LwStep step = lw_step_new (steps[i].kind);

      lw_step_set (&step, LW_SET_MINUTES, steps[i].minutes);
      lw_batch_insert_step (batch, i, step);
    }
  lw_batch_add_aim (batch, 0, (LwAim) { LW_MOISTURE, 68, 72, 1 });
  lw_batch_add_aim (batch, 2, (LwAim) { LW_RUPTURE, 60, 70, 1 });
  lw_batch_add_aim (batch, -1, (LwAim) { LW_OXIDATION, -INFINITY, 5, 1 });
  lw_batch_add_weigh_in (batch, 0, (LwWeighIn) { 1140, LW_WEIGHED_KG, 7.1, 0.15, 0, NULL });
  lw_batch_add_weigh_in (batch, 3, (LwWeighIn) { 200, LW_METER_PCT, 12, 2, 0, NULL });

  return batch;
}

static inline LwSeason *
sample_season (void)
{
  LwSeason *season = lw_season_new ("Ondry Ridge, spring 2026");
  LwProfile *leaf = lw_profile_start ();

  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, sample_batch (leaf->id));

  return season;
}

static inline LwTrack *
sample_track (LwSeason *season,
              guint     samples)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwMarch) march = lw_march_new ();

  return lw_plan_march (plan, march, (LwSampling) { .samples = samples, .turns = TRUE });
}

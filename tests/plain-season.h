/* A season of one batch of the starting leaf with usual steps, for tests that only need some batch. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

static inline LwSeason *
plain_season (const LwKind *kinds,
              guint         n)
{
  LwSeason *season = lw_season_new ("S");
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new ("1");

  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  for (guint i = 0; i < n; i++)
    lw_batch_insert_step (batch, i, lw_step_new (kinds[i]));
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);

  return season;
}

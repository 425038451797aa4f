/* Seasons share what an edit leaves alone, so pointers tell what stayed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/asked.h"

void
lw_asked_take (LwAsked       *asked,
               const LwAsked *other)
{
  LwSeason *season = lw_season_ref (other->season);

  lw_asked_clear (asked);
  *asked = (LwAsked) { season, other->batch };
}

void
lw_asked_clear (LwAsked *asked)
{
  g_clear_pointer (&asked->season, lw_season_unref);
}

gboolean
lw_asked_holds (const LwAsked *asked,
                LwSession     *session)
{
  const LwSeason *then = asked->season, *now = lw_session_season (session);
  const LwBatch *batch = lw_session_batch (session);

  if (then == NULL || batch == NULL || (guint) lw_session_batch_index (session) != asked->batch)
    return FALSE;
  if (then == now)
    return TRUE;

  return batch == then->batches[asked->batch] && now->latitude_deg == then->latitude_deg
         && now->altitude_m == then->altitude_m
         && lw_season_profile (now, batch->leaf) == lw_season_profile (then, batch->leaf)
         && (batch->weather == NULL
             || lw_season_weather (now, batch->weather) == lw_season_weather (then, batch->weather));
}

GArray *
lw_asked_changes (const LwAsked  *asked,
                  const LwSeason *season)
{
  const LwBatch *was = asked->season->batches[asked->batch], *is = season->batches[asked->batch];
  GArray *changes = g_array_new (FALSE, FALSE, sizeof (LwChange));

  for (guint i = 0; i < was->n_steps; i++)
    for (guint s = 0; s < LW_N_SETTINGS; s++)
      if (lw_kind_setting (was->steps[i].kind, s) != NULL
          && lw_step_get (&was->steps[i], s) != lw_step_get (&is->steps[i], s))
        {
          LwChange change = { i, s, lw_step_get (&is->steps[i], s) };

          g_array_append_val (changes, change);
        }

  return changes;
}

gboolean
lw_asked_same (const LwSpreadAsk *a,
               const LwSpreadAsk *b)
{
  for (guint i = 0; i < LW_N_VARY; i++)
    if (a->varies[i].sd != b->varies[i].sd || a->varies[i].percent != b->varies[i].percent
        || a->varies[i].each_step != b->varies[i].each_step || a->varies[i].only != b->varies[i].only)
      return FALSE;

  return a->samples == b->samples && a->seed == b->seed;
}

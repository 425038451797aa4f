/* Edits of a batch's logs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/edit.h"

LwSeason *
lw_edit_add_log (const LwSeason *season,
                 guint           batch,
                 LwBatchLog      log)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_batch_add_log (own, log);

  return next;
}

LwSeason *
lw_edit_remove_log (const LwSeason *season,
                    guint           batch,
                    const char     *id)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_batch_remove_log (own, id);

  return next;
}

LwSeason *
lw_edit_follow_log (const LwSeason *season,
                    guint           batch,
                    guint           step,
                    LwSetting       setting,
                    const char     *id)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  lw_step_set_log (&own->steps[step], setting, id);

  return next;
}

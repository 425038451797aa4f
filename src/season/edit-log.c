/* Edits of a batch's logs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/edit.h"

static LwBatch *
own_batch (LwSeason *next,
           guint     at)
{
  LwBatch *own = lw_batch_copy (next->batches[at]);

  lw_season_put_batch (next, at, own);

  return own;
}

LwSeason *
lw_edit_add_log (const LwSeason *season,
                 guint           batch,
                 LwBatchLog      log)
{
  LwSeason *next = lw_season_copy (season);

  lw_batch_add_log (own_batch (next, batch), log);

  return next;
}

LwSeason *
lw_edit_remove_log (const LwSeason *season,
                    guint           batch,
                    const char     *id)
{
  LwSeason *next = lw_season_copy (season);

  lw_batch_remove_log (own_batch (next, batch), id);

  return next;
}

LwSeason *
lw_edit_follow_log (const LwSeason *season,
                    guint           batch,
                    guint           step,
                    LwSetting       setting,
                    const char     *id)
{
  LwSeason *next = lw_season_copy (season);

  lw_step_set_log (&own_batch (next, batch)->steps[step], setting, id);

  return next;
}

/* Edits of a batch's name and of whether it is there: lessons that show it follow. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/edit.h"
#include "season/lesson.h"

LwSeason *
lw_edit_remove_batch (const LwSeason *season,
                      guint           batch)
{
  LwSeason *next = lw_season_copy (season);

  lw_season_lessons_follow (next, season->batches[batch]->name, NULL);
  lw_season_remove_batch (next, batch);

  return next;
}

LwSeason *
lw_edit_rename_batch (const LwSeason *season,
                      guint           batch,
                      const char     *name)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  g_free (own->name);
  own->name = g_strdup (name);
  lw_season_lessons_follow (next, season->batches[batch]->name, name);

  return next;
}

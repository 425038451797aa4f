/* Edits of the season's lessons. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/edit.h"
#include "season/lesson.h"

LwSeason *
lw_edit_put_lesson (const LwSeason *season,
                    int             at,
                    LwLesson       *lesson)
{
  LwSeason *next = lw_season_copy (season);

  if (at >= 0)
    lw_season_put_lesson (next, (guint) at, lesson);
  else
    lw_season_add_lesson (next, lesson);

  return next;
}

LwSeason *
lw_edit_remove_lesson (const LwSeason *season,
                       guint           at)
{
  LwSeason *next = lw_season_copy (season);

  lw_season_remove_lesson (next, at);

  return next;
}

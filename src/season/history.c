/* Undo and redo over immutable seasons: going back is taking up the earlier value. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/edit.h"

typedef struct
{
  LwSeason *season;
  char *label; /* of the edit that led here */
} Moment;

struct _LwHistory
{
  GArray *moments;
  guint now;
  int saved; /* -1: what was saved can no longer be reached */
};

static void
moment_clear (Moment *moment)
{
  lw_season_unref (moment->season);
  g_free (moment->label);
}

static Moment *
moment_at (const LwHistory *history,
           guint            i)
{
  return &g_array_index (history->moments, Moment, i);
}

LwHistory *
lw_history_new (LwSeason *season)
{
  LwHistory *history = g_new0 (LwHistory, 1);
  Moment first = { lw_season_ref (season), NULL };

  history->moments = g_array_new (FALSE, FALSE, sizeof (Moment));
  g_array_set_clear_func (history->moments, (GDestroyNotify) moment_clear);
  g_array_append_val (history->moments, first);

  return history;
}

void
lw_history_free (LwHistory *history)
{
  g_array_unref (history->moments);
  g_free (history);
}

LwSeason *
lw_history_now (const LwHistory *history)
{
  return moment_at (history, history->now)->season;
}

void
lw_history_push (LwHistory  *history,
                 LwSeason   *season,
                 const char *label)
{
  Moment next = { lw_season_ref (season), g_strdup (label) };

  g_array_set_size (history->moments, history->now + 1);
  if (history->saved > (int) history->now)
    history->saved = -1;

  g_array_append_val (history->moments, next);
  history->now++;
}

gboolean
lw_history_amend (LwHistory *history,
                  LwSeason  *season)
{
  Moment *moment = moment_at (history, history->now);

  if (history->now == 0 || history->now + 1 < history->moments->len || history->saved == (int) history->now)
    return FALSE;

  lw_season_ref (season);
  lw_season_unref (moment->season);
  moment->season = season;

  return TRUE;
}

gboolean
lw_history_undo (LwHistory *history)
{
  if (history->now == 0)
    return FALSE;

  history->now--;
  return TRUE;
}

gboolean
lw_history_redo (LwHistory *history)
{
  if (history->now + 1 >= history->moments->len)
    return FALSE;

  history->now++;
  return TRUE;
}

const char *
lw_history_undo_label (const LwHistory *history)
{
  return moment_at (history, history->now)->label;
}

const char *
lw_history_redo_label (const LwHistory *history)
{
  return history->now + 1 < history->moments->len ? moment_at (history, history->now + 1)->label : NULL;
}

void
lw_history_mark_saved (LwHistory *history)
{
  history->saved = (int) history->now;
}

gboolean
lw_history_is_saved (const LwHistory *history)
{
  return history->saved == (int) history->now;
}

/* What stays while the season is edited: the session's side of the hold. An answer takes the place of the preview
 * while something is dragged, and becomes one with the edit after it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/session-private.h"

#include "bench/telling.h"
#include "season/text.h"

static guint
batch_of (LwSession *self)
{
  return (guint) self->batch;
}

static void
say (LwSession *self,
     char      *words)
{
  g_free (self->said);
  self->said = words;
  lw_session_emit (self, LW_SESSION_SAID);
}

/* Columns whose time the search moved keep their place and fit it; the one in hand follows the pointer. */
static void
move_columns (LwSession *self)
{
  const LwBatch *base = lw_session_base (self)->batches[batch_of (self)];
  const LwBatch *wanted = self->wanted->batches[batch_of (self)], *shown = self->preview->batches[batch_of (self)];

  for (guint i = 0; i < shown->n_steps && i < self->scale.n && shown->n_steps == base->n_steps; i++)
    if (lw_step_get (&wanted->steps[i], LW_SET_MINUTES) == lw_step_get (&base->steps[i], LW_SET_MINUTES))
      lw_scale_fit_minutes (&self->scale, i, lw_step_get (&shown->steps[i], LW_SET_MINUTES));
}

static void
show (LwSession *self,
      LwSeason  *season)
{
  g_clear_pointer (&self->preview, lw_season_unref);
  self->preview = season;
  move_columns (self);
  lw_session_mark_stale (self);
}

/* The answer to an edit that is made already. */
static void
take (LwSession *self,
      LwSeason  *season)
{
  if (self->reaching)
    {
      lw_session_push (self, lw_season_ref (season), _ ("Reach the aims"));
      return;
    }

  if (lw_history_amend (self->history, season))
    lw_session_changed (self);
  else
    lw_session_push (self, lw_season_ref (season), _ ("Hold the result"));
}

static void
found_cb (LwSeason        *edited,
          const GArray    *wants,
          const LwReached *reached,
          gpointer         data)
{
  LwSession *self = data;

  if (self->wanted == NULL)
    return;
  if (edited != self->wanted)
    {
      /* Of an earlier motion, but nearer than what is shown. */
      if (self->dragging && reached != NULL)
        show (self, lw_session_follow (self, self->wanted));
      return;
    }

  if (reached != NULL && self->dragging)
    {
      show (self, lw_season_ref (reached->season));
    }
  else if (!self->dragging)
    {
      if (reached != NULL && reached->season != edited)
        take (self, reached->season);
      g_clear_pointer (&self->wanted, lw_season_unref);
    }
  say (self, lw_tell_reached (wants, reached, self->reaching));
}

void
lw_session_init_hold (LwSession *self)
{
  self->hold = lw_hold_new (found_cb, self);
}

void
lw_session_stop_seeking (LwSession *self)
{
  lw_hold_stop (self->hold);
  self->reaching = FALSE;
  g_clear_pointer (&self->wanted, lw_season_unref);
  if (self->said != NULL)
    say (self, NULL);
}

void
lw_session_seek (LwSession *self,
                 LwSeason  *base,
                 LwSeason  *season)
{
  g_clear_pointer (&self->wanted, lw_season_unref);
  if (self->batch < 0 || self->batch >= (int) MIN (base->n_batches, season->n_batches))
    return;

  if (lw_hold_seek (self->hold, base, season, batch_of (self)))
    self->wanted = lw_season_ref (season);
}

LwSeason *
lw_session_follow (LwSession *self,
                   LwSeason  *season)
{
  return lw_hold_follow (self->hold, lw_session_base (self), season, batch_of (self));
}

void
lw_session_lock (LwSession *self,
                 int        step,
                 LwQuantity of,
                 gboolean   locked)
{
  LwOutcome outcome;

  lw_session_compute (self);
  if (!locked)
    lw_locks_unlock (lw_hold_locks (self->hold), step, of);
  else if (lw_session_outcome (self, self->track, step, &outcome))
    lw_locks_lock (lw_hold_locks (self->hold), step, of, lw_quantity_of (of, &outcome));
  lw_hold_forget (self->hold);
  lw_session_emit (self, LW_SESSION_LOCKS);
}

gboolean
lw_session_locked (LwSession *self,
                   int        step,
                   LwQuantity of,
                   double    *value)
{
  return lw_locks_locked (lw_hold_locks (self->hold), step, of, value);
}

guint
lw_session_n_locks (LwSession *self)
{
  return lw_locks_n (lw_hold_locks (self->hold));
}

void
lw_session_unlock (LwSession *self)
{
  lw_locks_open (lw_hold_locks (self->hold));
  lw_hold_forget (self->hold);
  lw_session_emit (self, LW_SESSION_LOCKS);
}

void
lw_session_pin (LwSession *self,
                guint      step,
                LwSetting  setting,
                gboolean   pinned)
{
  lw_locks_pin (lw_hold_locks (self->hold), (LwHandle) { step, setting }, pinned);
  lw_hold_forget (self->hold);
}

gboolean
lw_session_pinned (LwSession *self,
                   guint      step,
                   LwSetting  setting)
{
  return lw_locks_pinned (lw_hold_locks (self->hold), (LwHandle) { step, setting });
}

gboolean
lw_session_stays (LwSession *self,
                  guint      step,
                  LwSetting  setting)
{
  return lw_locks_stays (lw_hold_locks (self->hold), (LwHandle) { step, setting });
}

void
lw_session_pass (LwSession *self,
                 guint      n_steps)
{
  lw_locks_pass (lw_hold_locks (self->hold), n_steps);
}

gboolean
lw_session_reach (LwSession *self)
{
  if (self->dragging || self->batch < 0)
    return FALSE;

  lw_session_stop_seeking (self);
  if (!lw_hold_reach (self->hold, lw_session_base (self), batch_of (self)))
    return FALSE;

  self->reaching = TRUE;
  self->wanted = lw_season_ref (lw_session_base (self));
  say (self, g_strdup (_ ("Searching for settings…")));

  return TRUE;
}

gboolean
lw_session_seeks (LwSession *self)
{
  return lw_hold_seeks (self->hold);
}

const char *
lw_session_said (LwSession *self)
{
  return self->said;
}

const LwSeason *
lw_session_before (LwSession *self)
{
  return self->before;
}

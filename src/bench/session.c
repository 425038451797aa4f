/* The edit session. An edit marks the result stale; whoever owns a frame clock asks
 * for it once a frame, so that a drag never computes more often than it is seen. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/session-private.h"

#include "season/document.h"

static guint signals[LW_SESSION_N_SIGNALS];

G_DEFINE_FINAL_TYPE (LwSession, lw_session, G_TYPE_OBJECT)

static void
lw_session_finalize (GObject *object)
{
  LwSession *self = LW_SESSION (object);

  g_free (self->path);
  g_clear_pointer (&self->filed, lw_season_unref);
  g_free (self->last_key);
  g_free (self->trouble);
  g_free (self->said);
  g_clear_pointer (&self->hold, lw_hold_free);
  g_clear_pointer (&self->wanted, lw_season_unref);
  g_clear_pointer (&self->before, lw_season_unref);
  g_clear_pointer (&self->history, lw_history_free);
  g_clear_pointer (&self->preview, lw_season_unref);
  g_clear_pointer (&self->track, lw_track_unref);
  g_clear_pointer (&self->ghost, lw_track_unref);
  g_clear_pointer (&self->march, lw_march_free);
  g_array_unref (self->track_minutes);
  g_array_unref (self->ghost_minutes);

  G_OBJECT_CLASS (lw_session_parent_class)->finalize (object);
}

static void
lw_session_class_init (LwSessionClass *klass)
{
  static const char *const names[LW_SESSION_N_SIGNALS] = { "season", "track", "stale", "reading", "step",
                                                            "said", "locks", "opened" };

  G_OBJECT_CLASS (klass)->finalize = lw_session_finalize;

  for (guint i = 0; i < LW_SESSION_N_SIGNALS; i++)
    signals[i] = g_signal_new (names[i], G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
}

static void
lw_session_init (LwSession *self)
{
  self->batch = -1;
  self->step = -1;
  self->march = lw_march_new ();
  lw_session_init_hold (self);
  self->track_minutes = g_array_new (FALSE, FALSE, sizeof (double));
  self->ghost_minutes = g_array_new (FALSE, FALSE, sizeof (double));
  if (self->march == NULL)
    g_error ("the solver could not be made: out of memory");
}

void
lw_session_emit (LwSession *self,
                 int        signal)
{
  g_signal_emit (self, signals[signal], 0);
}

LwSession *
lw_session_new (void)
{
  return g_object_new (LW_TYPE_SESSION, NULL);
}

void
lw_session_mark_stale (LwSession *self)
{
  self->stale = TRUE;
  lw_session_emit (self, LW_SESSION_STALE);
}

/* Keeps batch and step in hand within the season. */
static void
keep_in_season (LwSession *self)
{
  const LwSeason *season = lw_session_season (self);
  const LwBatch *batch;

  self->batch = MIN (MAX (self->batch, 0), (int) season->n_batches - 1);
  batch = lw_session_batch (self);
  self->step = MIN (self->step, batch != NULL ? (int) batch->n_steps - 1 : -1);
  if (self->reading && (batch == NULL || self->reading_step >= batch->n_steps))
    self->reading = FALSE;
}

void
lw_session_changed (LwSession *self)
{
  keep_in_season (self);
  if (lw_session_batch (self) != NULL)
    lw_locks_check (lw_hold_locks (self->hold), lw_session_batch (self));
  lw_session_emit (self, LW_SESSION_SEASON);
  lw_session_mark_stale (self);
}

void
lw_session_open (LwSession  *self,
                 LwSeason   *season,
                 const char *path)
{
  lw_session_stop_seeking (self);
  lw_locks_clear (lw_hold_locks (self->hold));
  g_clear_pointer (&self->history, lw_history_free);
  g_clear_pointer (&self->preview, lw_season_unref);
  g_clear_pointer (&self->last_key, g_free);
  g_clear_pointer (&self->track, lw_track_unref);
  lw_session_drop_ghost (self);
  self->dragging = FALSE;
  self->reading = FALSE;
  self->history = lw_history_new (season);
  g_free (self->path);
  self->path = g_strdup (path);
  g_clear_pointer (&self->filed, lw_season_unref);
  self->filed = path != NULL ? lw_season_ref (season) : NULL;
  self->batch = 0;
  self->step = -1;
  lw_session_changed (self);
  lw_session_emit (self, LW_SESSION_OPENED);
}

const char *
lw_session_path (LwSession *self)
{
  return self->path;
}

LwSeason *
lw_session_filed (LwSession *self)
{
  return self->filed;
}

LwSeason *
lw_session_season (LwSession *self)
{
  return self->preview != NULL ? self->preview : lw_session_base (self);
}

LwSeason *
lw_session_base (LwSession *self)
{
  return lw_history_now (self->history);
}

gboolean
lw_session_save (LwSession  *self,
                 const char *path,
                 GError    **error)
{
  if (!lw_document_save (lw_session_base (self), path, error))
    return FALSE;

  if (path != self->path)
    {
      g_free (self->path);
      self->path = g_strdup (path);
    }
  g_clear_pointer (&self->filed, lw_season_unref);
  self->filed = lw_season_ref (lw_session_base (self));
  g_clear_pointer (&self->last_key, g_free);
  lw_history_mark_saved (self->history);
  lw_session_emit (self, LW_SESSION_SEASON);

  return TRUE;
}

gboolean
lw_session_is_saved (LwSession *self)
{
  return lw_history_is_saved (self->history);
}

int
lw_session_batch_index (LwSession *self)
{
  return self->batch;
}

const LwBatch *
lw_session_batch (LwSession *self)
{
  const LwSeason *season = lw_session_season (self);

  return self->batch >= 0 && self->batch < (int) season->n_batches ? season->batches[self->batch] : NULL;
}

void
lw_session_choose (LwSession *self,
                   guint      batch)
{
  if (self->batch == (int) batch)
    return;

  lw_session_stop_seeking (self);
  lw_locks_clear (lw_hold_locks (self->hold));
  g_clear_pointer (&self->last_key, g_free);
  self->batch = (int) batch;
  self->step = -1;
  self->reading = FALSE;
  g_clear_pointer (&self->track, lw_track_unref);
  lw_session_drop_ghost (self);
  lw_session_changed (self);
}

void
lw_session_push (LwSession  *self,
                 LwSeason   *season,
                 const char *label)
{
  lw_session_compute (self);
  lw_session_take_ghost (self);
  lw_history_push (self->history, season, label);
  lw_season_unref (season);
  g_clear_pointer (&self->last_key, g_free);
  lw_session_changed (self);
}

void
lw_session_edit (LwSession  *self,
                 LwSeason   *season,
                 const char *label,
                 const char *key)
{
  g_autoptr (LwSeason) base = lw_season_ref (lw_session_base (self));
  g_autoptr (LwSeason) edited = lw_season_ref (season);

  lw_session_stop_seeking (self);
  if (key != NULL && g_strcmp0 (key, self->last_key) == 0 && lw_history_amend (self->history, season))
    {
      lw_season_unref (season);
      lw_session_changed (self);
    }
  else
    {
      lw_session_push (self, season, label);
      self->last_key = g_strdup (key);
    }
  lw_session_seek (self, base, edited);
}

void
lw_session_put (LwSession  *self,
                LwSeason   *season,
                const char *label)
{
  lw_session_stop_seeking (self);
  lw_session_push (self, season, label);
}

void
lw_session_edit_batch (LwSession  *self,
                       LwSeason   *season,
                       const char *label,
                       guint       batch)
{
  lw_session_edit (self, season, label, NULL);
  self->batch = -1;
  lw_session_choose (self, batch);
}

/* To the neighbouring moment of the history, by lw_history_undo or lw_history_redo. */
static void
go (LwSession *self,
    gboolean (*move) (LwHistory *history))
{
  const LwBatch *batch = lw_session_batch (self);
  g_autofree char *name = batch != NULL ? g_strdup (batch->name) : NULL;

  if (self->dragging)
    return;

  lw_session_stop_seeking (self);
  lw_session_compute (self);
  lw_session_take_ghost (self);
  if (!move (self->history))
    return;

  /* Another batch may stand in the place of the one in hand. */
  batch = lw_session_batch (self);
  if (batch == NULL || g_strcmp0 (name, batch->name) != 0)
    lw_locks_clear (lw_hold_locks (self->hold));
  g_clear_pointer (&self->last_key, g_free);
  lw_session_changed (self);
}

void
lw_session_undo (LwSession *self)
{
  go (self, lw_history_undo);
}

void
lw_session_redo (LwSession *self)
{
  go (self, lw_history_redo);
}

const char *
lw_session_undo_label (LwSession *self)
{
  return lw_history_undo_label (self->history);
}

const char *
lw_session_redo_label (LwSession *self)
{
  return lw_history_redo_label (self->history);
}

void
lw_session_drag_begin (LwSession *self)
{
  lw_session_stop_seeking (self);
  lw_session_compute (self);
  lw_session_take_ghost (self);
  self->dragging = TRUE;
}

void
lw_session_preview (LwSession *self,
                    LwSeason  *season)
{
  g_return_if_fail (self->dragging);

  g_clear_pointer (&self->preview, lw_season_unref);
  self->preview = lw_session_follow (self, season);
  lw_session_seek (self, lw_session_base (self), season);
  lw_season_unref (season);
  lw_session_mark_stale (self);
}

void
lw_session_drag_commit (LwSession  *self,
                        const char *label)
{
  g_autoptr (LwSeason) season = g_steal_pointer (&self->preview);

  self->dragging = FALSE;
  g_clear_pointer (&self->last_key, g_free);
  if (season != NULL)
    lw_history_push (self->history, season, label);
  if (!lw_hold_seeks (self->hold))
    g_clear_pointer (&self->wanted, lw_season_unref);
  lw_session_changed (self);
}

void
lw_session_drag_cancel (LwSession *self)
{
  self->dragging = FALSE;
  lw_session_stop_seeking (self);
  g_clear_pointer (&self->preview, lw_season_unref);
  lw_session_drop_ghost (self);
  lw_session_changed (self);
}

gboolean
lw_session_is_dragging (LwSession *self)
{
  return self->dragging;
}

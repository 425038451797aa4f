/* The running batch. What changes it goes through the session's edits; "season" tells of all of them, undo included, and
 * each is written down. An undo that takes a step's end back takes the run back with it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/running-private.h"

#include <math.h>

#include "bench/clock.h"
#include "season/text.h"

#define TICK_MS 1000
#define TICK_LEAST_MS 50

enum
{
  MOVED,
  TOLD,
  ASKS,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (LwRunning, lw_running, G_TYPE_OBJECT)

static gboolean
tick_cb (gpointer data)
{
  lw_running_follow_clock (data);
  g_signal_emit (data, signals[MOVED], 0);

  return G_SOURCE_CONTINUE;
}

void
lw_running_moved (LwRunning *self)
{
  gboolean ticks = self->run.on && !lw_run_is_paused (&self->run);
  guint every = (guint) CLAMP (TICK_MS / lw_clock_pace (), TICK_LEAST_MS, TICK_MS);

  if (ticks && self->tick == 0)
    self->tick = g_timeout_add (every, tick_cb, self);
  if (!ticks)
    g_clear_handle_id (&self->tick, g_source_remove);
  lw_session_pass (self->session, lw_running_in_hand (self) ? self->run.step + 1 : 0);
  g_signal_emit (self, signals[MOVED], 0);
}

void
lw_running_tell (LwRunning  *self,
                 const char *words)
{
  g_signal_emit (self, signals[TOLD], 0, words);
}

void
lw_running_ask (LwRunning *self)
{
  g_signal_emit (self, signals[ASKS], 0);
}

/* What the session does */

int
lw_running_batch (LwRunning *self)
{
  return self->name != NULL ? lw_season_batch (lw_session_base (self->session), self->name) : -1;
}

/* The batch has another name than in the season last seen: it is in its place. */
static void
follow_name (LwRunning *self)
{
  const LwSeason *base = lw_session_base (self->session), *was = self->seen;
  int at = was != NULL ? lw_season_batch (was, self->name) : -1;

  if (lw_running_batch (self) >= 0 || at < 0 || was->n_batches != base->n_batches
      || lw_season_batch (was, base->batches[at]->name) >= 0)
    return;

  g_free (self->name);
  self->name = g_strdup (base->batches[at]->name);
}

/* Whether the session has just opened another season: nothing was done in it. */
static gboolean
is_opening (LwRunning *self)
{
  return self->seen != lw_session_base (self->session) && lw_session_undo_label (self->session) == NULL
         && lw_session_redo_label (self->session) == NULL;
}

static void
see (LwRunning *self)
{
  g_clear_pointer (&self->seen, lw_season_unref);
  self->seen = lw_season_ref (lw_session_base (self->session));
}

static void
season_cb (LwRunning *self)
{
  LwRun before = self->run;
  const LwSeason *base = lw_session_base (self->session);
  gboolean marked, ended;
  int at;

  if (self->name == NULL || lw_session_is_dragging (self->session) || is_opening (self))
    return;

  follow_name (self);
  see (self);
  marked = lw_running_follow_history (self);
  at = lw_running_batch (self);
  if (at >= 0 && self->run.on && self->run.step < base->batches[at]->n_steps)
    lw_run_plan (&self->run, lw_step_get (&base->batches[at]->steps[self->run.step], LW_SET_MINUTES), lw_clock_now_s ());
  if (at >= 0 && (base->batches[at] != self->batch || !lw_run_same (&before, &self->run)))
    {
      g_clear_pointer (&self->batch, lw_batch_unref);
      self->batch = lw_batch_ref (base->batches[at]);
      lw_running_keep (self);
    }
  /* What a search made of an edit is another season, to which redo may lead. */
  if (!marked && self->run.on && lw_session_redo_label (self->session) == NULL)
    lw_running_mark (self);
  /* By undo it has only not begun. */
  ended = !self->run.on && lw_session_redo_label (self->session) == NULL;
  if (at >= 0 && lw_session_is_saved (self->session)
      && (ended || lw_session_filed (self->session) != self->filed
          || g_strcmp0 (self->path, lw_session_path (self->session)) != 0))
    lw_running_saved (self);
  lw_running_moved (self);
}

static void
opened_cb (LwRunning *self)
{
  see (self);
  lw_running_take_up (self);
  see (self);
  lw_running_moved (self);
}

/* What is told of it */

gboolean
lw_running_in_hand (LwRunning *self)
{
  int at = self->run.on ? lw_running_batch (self) : -1;

  return at >= 0 && at == lw_session_batch_index (self->session);
}

gboolean
lw_running_now (LwRunning *self,
                guint     *step,
                double    *minute)
{
  int at = self->run.on ? lw_running_batch (self) : -1;

  if (at < 0 || self->run.step >= lw_session_base (self->session)->batches[at]->n_steps)
    return FALSE;

  *step = self->run.step;
  *minute = lw_run_minute (&self->run, lw_clock_now_s ());

  return TRUE;
}

double
lw_running_planned (LwRunning *self)
{
  return self->run.planned;
}

gboolean
lw_running_is_paused (LwRunning *self)
{
  return self->run.on && lw_run_is_paused (&self->run);
}

const char *
lw_running_trouble (LwRunning *self)
{
  return self->trouble;
}

/* What is asked of it */

/* An edit that moves the run: both sides of it are marked, so that undo and redo move the run as well. */
static void
edit (LwRunning  *self,
      LwSeason   *next,
      LwRun       run,
      const char *label)
{
  lw_running_mark (self);
  lw_running_add_mark (self, next, run);
  lw_session_edit (self->session, next, label, NULL);
}

gboolean
lw_running_may_start (LwRunning *self,
                      GError   **error)
{
  const LwBatch *batch = lw_session_batch (self->session);
  const char *why = NULL;

  if (self->run.on)
    why = _ ("Another batch of this season is running.");
  else if (batch == NULL || batch->n_steps == 0)
    why = _ ("A batch without steps cannot be started.");
  else if (batch->made)
    why = _ ("This batch was made already. Repeat it, and start that.");
  else if (self->name != NULL && !g_str_equal (self->name, batch->name) && !lw_session_is_saved (self->session))
    why = _ ("Save the season first: the batch that ran before is not in its file yet.");
  else if (lw_session_path (self->session) == NULL)
    why = _ ("Save the season first: what is entered while a batch runs is kept for its file.");
  if (why != NULL)
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, why);

  return why == NULL && !lw_running_is_elsewhere (self, error);
}

gboolean
lw_running_start (LwRunning *self,
                  GError   **error)
{
  const LwBatch *batch;
  LwRun run;

  if (lw_running_take_over (self))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED,
                           self->run.on ? _ ("A batch of this season ran in a window that is gone: it goes on here.")
                                        : _ ("A window that is gone left something of a run: see to that first."));
      return FALSE;
    }
  if (!lw_running_may_start (self, error))
    return FALSE;

  lw_running_follow_clock (self);
  batch = lw_session_batch (self->session);
  run = lw_run_start (floor (lw_clock_now_s ()));
  g_free (self->name);
  self->name = g_strdup (batch->name);
  g_free (self->file_name);
  self->file_name = g_strdup (batch->name);
  g_free (self->path);
  self->path = g_strdup (lw_session_path (self->session));
  self->fresh = self->file == NULL;
  edit (self, lw_edit_begin_batch (lw_session_base (self->session), (guint) lw_session_batch_index (self->session),
                                   lw_clock_place_s (run.start_s)), run, _ ("Start the batch"));

  return TRUE;
}

void
lw_running_pause (LwRunning *self,
                  gboolean   paused)
{
  double now_s = floor (lw_clock_now_s ());

  if (!self->run.on || paused == lw_run_is_paused (&self->run))
    return;

  lw_running_follow_clock (self);
  if (paused)
    lw_run_pause (&self->run, now_s);
  else
    lw_run_go_on (&self->run, now_s);
  lw_running_mark_step (self);
  lw_running_keep (self);
  lw_running_moved (self);
}

void
lw_running_next (LwRunning *self)
{
  LwRun run;
  double minute;
  int at = lw_running_batch (self);
  guint step;

  lw_running_follow_clock (self);
  run = self->run;
  if (lw_session_is_dragging (self->session) || !lw_running_now (self, &step, &minute))
    return;
  if (step + 1 >= lw_session_base (self->session)->batches[at]->n_steps)
    {
      lw_running_end (self);
      return;
    }

  lw_run_next (&run, floor (lw_clock_now_s ()));
  edit (self, lw_edit_end_step (lw_session_base (self->session), (guint) at, step, minute), run, _ ("Next step"));
}

void
lw_running_end (LwRunning *self)
{
  LwRun run;
  double minute;
  guint step;

  lw_running_follow_clock (self);
  run = self->run;
  if (lw_session_is_dragging (self->session) || !lw_running_now (self, &step, &minute))
    return;

  run.on = FALSE;
  edit (self, lw_edit_end_batch (lw_session_base (self->session), (guint) lw_running_batch (self), step, minute), run,
        _ ("End the batch"));
}

static void
lw_running_dispose (GObject *object)
{
  LwRunning *self = LW_RUNNING (object);

  g_clear_handle_id (&self->tick, g_source_remove);
  g_clear_handle_id (&self->again, g_source_remove);
  g_clear_pointer (&self->seen, lw_season_unref);
  g_clear_pointer (&self->batch, lw_batch_unref);
  g_clear_pointer (&self->name, g_free);
  g_clear_pointer (&self->file_name, g_free);
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->trouble, g_free);
  g_clear_pointer (&self->file, lw_journal_file_close);
  lw_running_drop_left (self);
  g_clear_pointer (&self->filed, lw_season_unref);
  g_clear_pointer (&self->marks, g_array_unref);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_running_parent_class)->dispose (object);
}

static void
lw_running_class_init (LwRunningClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lw_running_dispose;

  signals[MOVED] = g_signal_new ("moved", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
  signals[TOLD] = g_signal_new ("told", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[ASKS] = g_signal_new ("asks", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
}

static void
lw_running_init (LwRunning *self)
{
  self->run.paused_s = NAN;
  self->clock_s = NAN;
  self->marks = lw_running_marks_new ();
}

LwRunning *
lw_running_new (LwSession *session)
{
  LwRunning *self = g_object_new (LW_TYPE_RUNNING, NULL);

  self->session = g_object_ref (session);
  g_signal_connect_object (session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "opened", G_CALLBACK (opened_cb), self, G_CONNECT_SWAPPED);

  return self;
}

/* Running a batch in the window: start, pause, next step, end; the bar, and the line at the present moment. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"

#include <math.h>

#include "bench/ask.h"
#include "bench/now-line.h"
#include "bench/run-bar.h"
#include "season/text.h"
#include "season/wording.h"

static void
started_cb (int         answer,
            const char *text,
            gpointer    data)
{
  g_autoptr (LwWindow) self = data;
  g_autoptr (GError) error = NULL;

  if (answer != 1)
    return;
  if (lw_running_start (self->running, &error))
    lw_window_say (self, _ ("The batch is running. M enters what is measured, F7 lets its clock stand, F8 ends a step."));
  else
    lw_window_say (self, error->message);
}

/* Not while the window lags behind its file: to read that again takes the run up, too. */
static gboolean
take_over (LwWindow *self)
{
  return lw_window_disk_check (self, FALSE) == LW_DISK_SAME && lw_running_take_over (self->running);
}

static void
start (GSimpleAction *action,
       GVariant      *target,
       gpointer       data)
{
  LwWindow *self = data;
  const char *answers[] = { _ ("Cancel"), _ ("Start"), NULL };
  const LwBatch *batch;
  g_autofree char *heading = NULL, *words = NULL;
  g_autoptr (GError) error = NULL;

  /* What happened is told by then. */
  if (take_over (self))
    return;
  batch = lw_session_batch (self->session);
  if (!lw_running_may_start (self->running, &error))
    {
      lw_window_say (self, error->message);
      return;
    }

  heading = g_strdup_printf (_ ("Start “%s” now?"), batch->name);
  /* Translators: a kind of step */
  words = g_strdup_printf (_ ("Its clock starts with step 1, %s. The bench keeps time and tells when a step's time is over; "
                              "you end the step. It gives no instructions for hot walls, steam, fumes and machines: follow "
                              "local codes and licensed practice."), _ (lw_kind_row (batch->steps[0].kind)->label));
  lw_ask (GTK_WINDOW (self), heading, words, answers, NULL, started_cb, g_object_ref (self));
}

static void
pause_run (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  LwWindow *self = data;

  lw_running_pause (self->running, !lw_running_is_paused (self->running));
  if (lw_running_is_paused (self->running))
    lw_window_say (self, _ ("The batch's clock stands. The curves leave the pause out, as if the leaf did not change in it."));
}

static void
show_run (GSimpleAction *action,
          GVariant      *target,
          gpointer       data)
{
  LwWindow *self = data;
  int batch = lw_running_batch (self->running);

  if (batch >= 0)
    lw_session_choose (self->session, (guint) batch);
}

static void
next_step (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  LwWindow *self = data;
  guint step, now;
  double minute, counts, unused;

  if (!lw_running_now (self->running, &step, &minute))
    return;

  lw_running_next (self->running);
  if (!lw_running_now (self->running, &now, &unused))
    {
      lw_window_say (self, _ ("The batch is made. Save the season to keep what was entered in its file."));
      return;
    }

  counts = lw_step_get (&lw_session_base (self->session)->batches[lw_running_batch (self->running)]->steps[step],
                        LW_SET_MINUTES);
  if (fabs (counts - minute) > 1.5 / 60)
    {
      g_autofree char *time = lw_say_minutes (counts);
      g_autofree char *words = g_strdup_printf (_ ("A step of that kind cannot have that time: it counts as %s."), time);

      lw_window_say (self, words);
    }
  else if (now != step)
    {
      lw_window_say (self, _ ("The step that ended has the time it lasted. Undo goes back into it."));
    }
}

static void
ended_cb (int         answer,
          const char *text,
          gpointer    data)
{
  g_autoptr (LwWindow) self = data;

  if (answer != 1)
    return;

  lw_running_end (self->running);
  lw_window_say (self, _ ("The batch is made. Save the season to keep what was entered in its file."));
}

static void
end_batch (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  LwWindow *self = data;
  const char *answers[] = { _ ("Cancel"), _ ("End the batch"), NULL };

  if (lw_running_batch (self->running) >= 0)
    lw_ask (GTK_WINDOW (self), _ ("End the running batch now?"),
            _ ("It counts as made. Steps that have not begun are taken off; undo brings them back."), answers, NULL,
            ended_cb, g_object_ref (self));
}

static void
moved_cb (LwWindow *self)
{
  const LwBatch *batch = lw_session_batch (self->session);
  double minute;
  guint step;
  gboolean runs = lw_running_now (self->running, &step, &minute);

  lw_window_enable (self, "run-start", !runs && batch != NULL && !batch->made && batch->n_steps > 0);
  lw_window_enable (self, "run-pause", runs);
  lw_window_enable (self, "run-next", runs);
  lw_window_enable (self, "run-end", runs);
}

/* Another window may have been closed meanwhile, and have left its run. */
static void
active_cb (LwWindow *self)
{
  if (gtk_window_is_active (GTK_WINDOW (self)))
    take_over (self);
}

static void
told_cb (LwWindow   *self,
         const char *words)
{
  lw_window_say (self, words);
}

/* The line lies over the board, which gets another parent for that. */
static void
lay_line (LwWindow *self)
{
  g_autoptr (GtkWidget) board = GTK_WIDGET (g_object_ref (self->board));
  GtkWidget *overlay = gtk_overlay_new ();

  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), NULL);
  gtk_overlay_set_child (GTK_OVERLAY (overlay), board);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), lw_now_line_new (self->session, self->running, self->board));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), overlay);
}

void
lw_window_add_run (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "run-start", .activate = start },
    { .name = "run-show", .activate = show_run },
    { .name = "run-pause", .activate = pause_run },
    { .name = "run-next", .activate = next_step },
    { .name = "run-end", .activate = end_batch },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  self->running = lw_running_new (self->session);
  gtk_box_prepend (GTK_BOX (gtk_widget_get_parent (self->side_paned)), lw_run_bar_new (self->session, self->running));
  lay_line (self);
  g_signal_connect_object (self->running, "moved", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "season", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->running, "told", G_CALLBACK (told_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (active_cb), NULL);
}

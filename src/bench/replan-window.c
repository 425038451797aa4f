/* The window. The answer comes from a thread and is shown on the board, too, until it is taken or left. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/replan-window.h"

#include "bench/look.h"
#include "bench/modal.h"
#include "bench/replan-card.h"
#include "bench/replan-moments.h"
#include "season/text.h"

#define WIDTH 760       /* with letters of USUAL_PX */
#define MOST_WIDTH 1000
#define USUAL_PX 13.4
#define HEIGHT 660
#define LOOK_MS 100  /* how often the progress is looked at */

/* How far a thread is; shared with it. */
typedef struct
{
  gint done;         /* atomic, as is `total` */
  gint total;
} Progress;

/* What a thread is asked. */
typedef struct
{
  LwSeason *season;
  guint batch;
  LwInstant now;
  GArray *pinned;          /* LwHandle */
  Progress *progress;
} Asked;

typedef struct
{
  GtkWidget *window;
  LwSession *session;
  LwSeason *season;        /* that was asked about */
  guint batch;
  GArray *moments;         /* LwInstant, in the choice's order */
  LwReplan *replan;        /* (nullable) the answer */
  gboolean previewing;     /* on the board */
  GCancellable *job;       /* (nullable) of the answer that is wanted */
  Progress *progress;      /* (nullable) of that */
  guint look;              /* source */

  GtkWidget *choice;
  GtkWidget *bar;
  GtkWidget *said;         /* while it is computed, or why it cannot be */
  GtkWidget *scrolled;
  GtkWidget *caution;
  GtkWidget *forget;
  GtkWidget *leave;
  GtkWidget *take;
} Replanning;

static void
asked_free (Asked *asked)
{
  lw_season_unref (asked->season);
  g_array_unref (asked->pinned);
  g_atomic_rc_box_release (asked->progress);
  g_free (asked);
}

static void
progress_cb (guint    done,
             guint    total,
             gpointer data)
{
  Progress *progress = data;

  g_atomic_int_set (&progress->total, (gint) total);
  g_atomic_int_set (&progress->done, (gint) done);
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  Asked *asked = data;
  LwReplanAsk ask = { .now = asked->now, .pinned = asked->pinned, .progress = progress_cb, .progress_data = asked->progress };
  GError *error = NULL;
  LwReplan *replan = lw_replan_new (asked->season, asked->batch, &ask, cancellable, &error);

  if (replan != NULL)
    g_task_return_pointer (task, replan, (GDestroyNotify) lw_replan_free);
  else
    g_task_return_error (task, error);
}

/* The board shows the batch as it is again. */
static void
end_preview (Replanning *self)
{
  if (self->previewing && lw_session_is_dragging (self->session))
    lw_session_drag_cancel (self->session);
  self->previewing = FALSE;
}

/* Locks would move what is shown. */
static void
preview (Replanning *self)
{
  if (lw_session_n_locks (self->session) > 0 || lw_session_is_dragging (self->session))
    return;

  lw_session_drag_begin (self->session);
  lw_session_preview (self->session, lw_season_ref (self->replan->season));
  self->previewing = TRUE;
}

static void
call_off (Replanning *self)
{
  if (self->job != NULL)
    g_cancellable_cancel (self->job);
  g_clear_object (&self->job);
  g_clear_pointer (&self->progress, g_atomic_rc_box_release);
  if (self->look != 0)
    g_source_remove (self->look);
  self->look = 0;
  end_preview (self);
  g_clear_pointer (&self->replan, lw_replan_free);
}

static void
replanning_free (Replanning *self)
{
  call_off (self);
  g_array_unref (self->moments);
  lw_season_unref (self->season);
  g_object_unref (self->session);
  g_free (self);
}

static gboolean
look_cb (gpointer data)
{
  Replanning *self = data;
  int done = g_atomic_int_get (&self->progress->done), total = g_atomic_int_get (&self->progress->total);

  /* The search that comes after the marches tells no share. */
  if (total > 0 && done < total)
    gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->bar), (double) done / total);
  else
    gtk_progress_bar_pulse (GTK_PROGRESS_BAR (self->bar));

  return G_SOURCE_CONTINUE;
}

static void
show_answer (Replanning   *self,
             const GError *error)
{
  GtkWidget *card = self->replan != NULL ? lw_replan_card_new (self->replan, self->season->batches[self->batch]) : NULL;

  gtk_widget_set_visible (self->bar, FALSE);
  gtk_label_set_label (GTK_LABEL (self->said), error != NULL ? error->message : "");
  gtk_widget_set_visible (self->said, error != NULL);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), card);
  gtk_widget_set_sensitive (self->take, card != NULL);
  gtk_button_set_label (GTK_BUTTON (self->leave), _ ("Leave it"));
  if (card == NULL)
    return;

  gtk_widget_grab_focus (self->take);
  preview (self);
}

static void
answered_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  GTask *task = G_TASK (result);
  g_autoptr (GError) error = NULL;
  LwReplan *replan = g_task_propagate_pointer (task, &error);
  Replanning *self = data;

  /* Called off: the window may be gone. */
  if (g_cancellable_is_cancelled (g_task_get_cancellable (task)))
    {
      g_clear_pointer (&replan, lw_replan_free);
      return;
    }

  g_clear_object (&self->job);
  g_source_remove (self->look);
  self->look = 0;
  self->replan = replan;
  show_answer (self, error);
}

/* (transfer full) array of LwHandle. */
static GArray *
pinned_of (Replanning *self)
{
  g_autoptr (GArray) all = lw_reach_free (self->season, self->batch, 0);
  GArray *pinned = g_array_new (FALSE, FALSE, sizeof (LwHandle));

  for (guint i = 0; i < all->len; i++)
    {
      LwHandle handle = g_array_index (all, LwHandle, i);

      if (lw_session_pinned (self->session, handle.step, handle.setting))
        g_array_append_val (pinned, handle);
    }

  return pinned;
}

static void
ask (Replanning *self)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->choice));
  g_autoptr (GTask) task = NULL;
  Asked *asked;

  call_off (self);
  if (chosen >= self->moments->len)
    return;

  self->progress = g_atomic_rc_box_new0 (Progress);
  asked = g_new (Asked, 1);
  *asked = (Asked) { lw_season_ref (self->season), self->batch, g_array_index (self->moments, LwInstant, chosen),
                     pinned_of (self), g_atomic_rc_box_acquire (self->progress) };
  self->job = g_cancellable_new ();
  self->look = g_timeout_add (LOOK_MS, look_cb, self);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->bar), 0);
  gtk_widget_set_visible (self->bar, TRUE);
  gtk_label_set_label (GTK_LABEL (self->said), _ ("Computing what the weigh-ins say, and what is best done now…"));
  gtk_widget_set_visible (self->said, TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), NULL);
  gtk_widget_set_sensitive (self->take, FALSE);
  gtk_button_set_label (GTK_BUTTON (self->leave), _ ("Cancel"));

  task = g_task_new (NULL, self->job, answered_cb, self);
  g_task_set_task_data (task, asked, (GDestroyNotify) asked_free);
  g_task_run_in_thread (task, work);
}

/* Closes the window and makes `season` (transfer full) the present. */
static void
finish (Replanning *self,
        LwSeason   *season,
        const char *label)
{
  g_autoptr (LwSession) session = g_object_ref (self->session);

  end_preview (self);
  gtk_window_destroy (GTK_WINDOW (self->window));
  lw_session_put (session, season, label);
}

static void
take_cb (Replanning *self)
{
  finish (self, lw_season_ref (self->replan->season), _ ("Re-plan the rest"));
}

static void
forget_cb (Replanning *self)
{
  finish (self, lw_edit_uncorrect (self->season, self->batch), _ ("Remove the correction"));
}

/* The window */

static GtkWidget *
label_new (const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);

  return label;
}

/* Whether a step of the batch holds a correction. */
static gboolean
is_corrected (const LwBatch *batch)
{
  for (guint i = 0; i < batch->n_steps; i++)
    if (batch->steps[i].correction != NULL)
      return TRUE;

  return FALSE;
}

static GtkWidget *
buttons_new (Replanning *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8), *gap = gtk_label_new (NULL);

  self->forget = gtk_button_new_with_label (_ ("Remove the correction"));
  gtk_widget_set_tooltip_text (self->forget, _ ("Show the batch as it is foretold without its weigh-ins; settings stay"));
  gtk_widget_set_visible (self->forget, is_corrected (self->season->batches[self->batch]));
  g_signal_connect_swapped (self->forget, "clicked", G_CALLBACK (forget_cb), self);
  gtk_widget_set_hexpand (gap, TRUE);
  gtk_box_append (GTK_BOX (row), self->forget);
  gtk_box_append (GTK_BOX (row), gap);
  self->leave = gtk_button_new_with_label (_ ("Cancel"));
  gtk_widget_set_tooltip_text (self->leave, _ ("Leave the batch as it is"));
  g_signal_connect_swapped (self->leave, "clicked", G_CALLBACK (gtk_window_close), self->window);
  self->take = gtk_button_new_with_label (_ ("Take the new plan"));
  gtk_widget_add_css_class (self->take, "suggested-action");
  gtk_widget_set_tooltip_text (self->take, _ ("Correct the batch by its weigh-ins and set the rest anew; undo takes both back"));
  g_signal_connect_swapped (self->take, "clicked", G_CALLBACK (take_cb), self);
  gtk_box_append (GTK_BOX (row), self->leave);
  gtk_box_append (GTK_BOX (row), self->take);

  return row;
}

static void
window_new (Replanning *self,
            GtkWindow  *parent,
            GPtrArray  *names,
            guint       chosen)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);

  self->window = lw_modal_new (parent, _ ("Re-plan the rest"));
  /* Larger letters need a wider table. */
  gtk_window_set_default_size (GTK_WINDOW (self->window),
                               (int) CLAMP (WIDTH * lw_look_letter (self->window).base_px / USUAL_PX, WIDTH, MOST_WIDTH), HEIGHT);

  self->choice = gtk_drop_down_new_from_strings ((const char *const *) names->pdata);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->choice), chosen);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->choice), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("How far it has come"), -1);
  gtk_widget_set_tooltip_text (self->choice, _ ("From when on the rest is planned anew"));
  self->said = label_new ("");
  self->caution = label_new (lw_replan_caution ());
  gtk_widget_add_css_class (self->caution, "dim-label");
  self->bar = gtk_progress_bar_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->bar), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Progress"), -1);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_widget_set_vexpand (self->scrolled, TRUE);
  gtk_widget_set_focusable (self->scrolled, TRUE);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_AUTOMATIC, GTK_POLICY_AUTOMATIC);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scrolled), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("New plan"), -1);

  gtk_widget_add_css_class (box, "ask");
  gtk_box_append (GTK_BOX (box), self->choice);
  gtk_box_append (GTK_BOX (box), self->said);
  gtk_box_append (GTK_BOX (box), self->bar);
  gtk_box_append (GTK_BOX (box), self->scrolled);
  gtk_box_append (GTK_BOX (box), self->caution);
  gtk_box_append (GTK_BOX (box), buttons_new (self));
  gtk_window_set_child (GTK_WINDOW (self->window), box);
  gtk_window_set_default_widget (GTK_WINDOW (self->window), self->take);
  g_signal_connect_swapped (self->choice, "notify::selected", G_CALLBACK (ask), self);
  /* At once, though others may hold the window a little longer. */
  g_signal_connect_swapped (self->window, "destroy", G_CALLBACK (call_off), self);
  g_object_set_data_full (G_OBJECT (self->window), "replanning", self, (GDestroyNotify) replanning_free);
}

gboolean
lw_replan_window_open (GtkWindow      *parent,
                       LwSession      *session,
                       const LwInstant *now)
{
  int batch = lw_session_batch_index (session);
  g_autoptr (GPtrArray) names = NULL;
  LwInstant last;
  guint chosen = 0;
  Replanning *self;

  if (batch < 0 || lw_session_is_dragging (session) || !lw_replan_last (lw_session_batch (session), &last))
    return FALSE;

  self = g_new0 (Replanning, 1);
  self->session = g_object_ref (session);
  self->season = lw_season_ref (lw_session_base (session));
  self->batch = (guint) batch;
  self->moments = g_array_new (FALSE, FALSE, sizeof (LwInstant));
  names = lw_replan_moments (self->season->batches[self->batch], now, self->moments, &chosen);
  window_new (self, parent, names, chosen);
  ask (self);
  gtk_window_present (GTK_WINDOW (self->window));

  return TRUE;
}

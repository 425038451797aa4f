/* The bar. Its clocks go on silently; a screen reader is told when a step is about to end and when its time is over. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/run-bar.h"

#include <math.h>

#include "bench/fold-box.h"
#include "season/text.h"
#include "season/wording.h"

#define GAP 12

typedef enum
{
  ON_TIME,
  SOON,
  OVER,
} Due;

struct _LwRunBar
{
  GtkWidget parent_instance;

  LwSession *session;
  LwRunning *running;
  GtkWidget *step;
  GtkWidget *batch;
  GtkWidget *passed;
  GtkWidget *left;
  GtkWidget *left_word;
  GtkWidget *show;     /* where another batch is in hand */
  GtkWidget *pause;
  GtkWidget *next;
  GtkWidget *replan;
  GtkWidget *notice;   /* what a screen reader is told */
  guint told_step;     /* of what `told` was said */
  Due told;
};

G_DEFINE_FINAL_TYPE (LwRunBar, lw_run_bar, GTK_TYPE_WIDGET)

static void
set_label (GtkWidget  *label,
           const char *words)
{
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (label)), words) != 0)
    gtk_label_set_label (GTK_LABEL (label), words);
}

static void
set_class (LwRunBar   *self,
           const char *name,
           gboolean    set)
{
  if (set)
    gtk_widget_add_css_class (GTK_WIDGET (self), name);
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), name);
}

/* By the desktop's own soft bell; where the window is not looked at, by its notice, too. */
static void
signal_due (LwRunBar   *self,
            const char *words)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GApplication *app = g_application_get_default ();

  set_label (self->notice, words);
  gtk_widget_set_visible (self->notice, TRUE);
  gdk_display_beep (gtk_widget_get_display (GTK_WIDGET (self)));
  if (app != NULL && GTK_IS_WINDOW (root) && !gtk_window_is_active (GTK_WINDOW (root)))
    {
      g_autoptr (GNotification) notice = g_notification_new (words);

      g_notification_set_body (notice, gtk_label_get_label (GTK_LABEL (self->batch)));
      g_application_send_notification (app, "step", notice);
    }
}

static void
tell_due (LwRunBar     *self,
          guint         step,
          const LwStep *here,
          double        left)
{
  double notice = lw_run_notice (lw_running_planned (self->running));
  Due due = left <= 0 ? OVER : left <= notice ? SOON : ON_TIME;
  const char *kind = _ (lw_kind_row (here->kind)->label);
  g_autofree char *words = NULL;

  set_class (self, "soon", due == SOON);
  set_class (self, "over", due == OVER);
  if (step == self->told_step && due <= self->told)
    return;

  self->told_step = step;
  self->told = due;
  if (due == SOON)
    /* Translators: a kind of step */
    words = g_strdup_printf (_ ("%s: its time is almost over."), kind);
  else if (due == OVER)
    /* Translators: a kind of step */
    words = g_strdup_printf (_ ("%s: its time is over. It goes on until you end it."), kind);
  if (words != NULL)
    signal_due (self, words);
  else
    gtk_widget_set_visible (self->notice, FALSE);
}

/* Hours need no seconds. `up`: what is left, which is over only when it is nothing. */
static char *
say_time (double   minutes,
          gboolean up)
{
  double per_minute = minutes < 60 ? 60 : 1;

  return lw_say_minutes ((up ? ceil (minutes * per_minute) : floor (minutes * per_minute)) / per_minute);
}

static void
show_time (LwRunBar      *self,
           const LwBatch *batch,
           guint          step,
           double         minute)
{
  const LwStep *here = &batch->steps[step];
  double left = lw_running_planned (self->running) - minute;
  gboolean last = step + 1 == batch->n_steps;
  g_autofree char *passed = say_time (minute, FALSE), *rest = say_time (fabs (left), left > 0);
  /* Translators: number of a step, how many there are, its kind */
  g_autofree char *title = g_strdup_printf (_ ("Step %u of %u: %s"), step + 1, batch->n_steps,
                                            _ (lw_kind_row (here->kind)->label));

  set_label (self->step, title);
  set_label (self->passed, passed);
  set_label (self->left, rest);
  /* Translators: under a time: that it is the step's rest, or that the step lasts so much longer than it was to */
  set_label (self->left_word, left > 0 ? _ ("left") : _ ("over its time"));
  gtk_button_set_label (GTK_BUTTON (self->next), last ? _ ("End the batch") : _ ("Next step"));
  tell_due (self, step, here, left);
}

static void
moved_cb (LwRunBar *self)
{
  const LwSeason *season = lw_session_base (self->session);
  gboolean paused = lw_running_is_paused (self->running);
  const char *trouble = lw_running_trouble (self->running);
  int at = lw_running_batch (self->running);
  g_autofree char *name = NULL;
  double minute;
  guint step;

  if (!lw_running_now (self->running, &step, &minute))
    {
      gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
      self->told = ON_TIME;
      return;
    }

  /* Translators: a batch that is made now; then: its clock stands */
  name = g_strdup_printf (paused ? _ ("%s · paused: the batch's clock stands") : "%s", season->batches[at]->name);
  set_label (self->batch, trouble != NULL ? trouble : name);
  set_class (self, "paused", paused);
  set_class (self, "unkept", trouble != NULL);
  gtk_widget_set_visible (self->show, !lw_running_in_hand (self->running));
  gtk_widget_set_visible (self->replan, lw_running_in_hand (self->running));
  gtk_button_set_label (GTK_BUTTON (self->pause), paused ? _ ("Go on") : _ ("Pause"));
  show_time (self, season->batches[at], step, minute);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
}

static GtkWidget *
label_new (const char *class)
{
  GtkWidget *label = gtk_label_new ("");

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, class);

  return label;
}

/* A large time over the word that says what it is. */
static GtkWidget *
time_new (GtkWidget *time,
          GtkWidget *word)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_label_set_width_chars (GTK_LABEL (time), 10);
  gtk_box_append (GTK_BOX (box), time);
  gtk_box_append (GTK_BOX (box), word);

  return box;
}

static GtkWidget *
button_new (const char *words,
            const char *action,
            const char *tip)
{
  GtkWidget *button = gtk_button_new_with_label (words);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, tip);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);

  return button;
}

static void
lw_run_bar_dispose (GObject *object)
{
  LwRunBar *self = LW_RUN_BAR (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->session);
  g_clear_object (&self->running);

  G_OBJECT_CLASS (lw_run_bar_parent_class)->dispose (object);
}

static void
lw_run_bar_class_init (LwRunBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_run_bar_dispose;
  gtk_widget_class_set_css_name (widget_class, "runbar");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lw_run_bar_init (LwRunBar *self)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *passed_word = label_new ("run-word");
  GtkWidget *times = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, GAP), *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, GAP);
  GtkWidget *fold;

  self->step = label_new ("run-step");
  self->batch = label_new ("run-word");
  gtk_widget_add_css_class (self->batch, "run-batch");
  self->passed = label_new ("run-time");
  self->left = label_new ("run-time");
  self->left_word = label_new ("run-word");
  /* Translators: under a time: so long the step has lasted */
  gtk_label_set_label (GTK_LABEL (passed_word), _ ("passed"));
  gtk_label_set_ellipsize (GTK_LABEL (self->step), PANGO_ELLIPSIZE_END);
  gtk_label_set_wrap (GTK_LABEL (self->batch), TRUE);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  self->notice = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, "xalign", 0.0, "wrap", TRUE,
                               NULL);
  gtk_widget_add_css_class (self->notice, "run-notice");
  gtk_widget_set_visible (self->notice, FALSE);
  gtk_box_append (GTK_BOX (words), self->step);
  gtk_box_append (GTK_BOX (words), self->batch);
  gtk_box_append (GTK_BOX (words), self->notice);

  self->show = button_new (_ ("Show"), "win.run-show", _ ("Take the running batch in hand"));
  self->pause = button_new ("", "win.run-pause", _ ("Let the batch's clock stand, or go on (F7)"));
  self->next = button_new ("", "win.run-next", _ ("The step ends now (F8)"));
  self->replan = button_new (_ ("Re-plan the rest…"), "win.replan",
                             _ ("Correct the batch by what was measured and plan what is ahead anew (Ctrl+J)"));
  gtk_widget_add_css_class (self->next, "suggested-action");
  gtk_box_append (GTK_BOX (times), self->show);
  gtk_box_append (GTK_BOX (times), time_new (self->passed, passed_word));
  gtk_box_append (GTK_BOX (times), time_new (self->left, self->left_word));
  gtk_box_append (GTK_BOX (buttons), button_new (_ ("Weigh-in"), "win.weigh-in-now", _ ("Enter what is measured now (M)")));
  gtk_box_append (GTK_BOX (buttons), self->pause);
  gtk_box_append (GTK_BOX (buttons), self->next);
  gtk_box_append (GTK_BOX (buttons), self->replan);
  gtk_widget_set_valign (buttons, GTK_ALIGN_CENTER);
  fold = lw_fold_box_new (words, times, buttons);
  gtk_widget_set_hexpand (fold, TRUE);
  gtk_widget_set_parent (fold, GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Running batch"), -1);
}

GtkWidget *
lw_run_bar_new (LwSession *session,
                LwRunning *running)
{
  LwRunBar *self = g_object_new (LW_TYPE_RUN_BAR, NULL);

  self->session = g_object_ref (session);
  self->running = g_object_ref (running);
  g_signal_connect_object (running, "moved", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}

/* The fit window as a whole, and the run. It does not hold the main window: the season may change meanwhile, and what was
 * found is then of the season as it was, which is said. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fit-window-private.h"

#include "season/text.h"

#define POLL_MS 100

GtkWidget *
lw_fit_label (const char *text,
              const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);

  return label;
}

GtkWidget *
lw_fit_group (const char *name,
              int         spacing)
{
  GtkWidget *box = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", spacing,
                                 "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);

  gtk_accessible_update_property (GTK_ACCESSIBLE (box), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);

  return box;
}

GtkWidget *
lw_fit_button (LwFitWindow *self,
               GtkWidget   *box,
               const char  *label,
               GCallback    clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);

  g_signal_connect_swapped (button, "clicked", clicked, self);
  gtk_box_append (GTK_BOX (box), button);

  return button;
}

void
lw_fit_clear (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_box_remove (GTK_BOX (box), child);
}

static void
say (LwFitWindow *self,
     const char  *words)
{
  gtk_label_set_label (GTK_LABEL (self->state), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->state), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

void
lw_fit_window_check (LwFitWindow *self)
{
  g_autoptr (GArray) batches = lw_fit_choice_batches (self);
  guint free = lw_fit_choice_free (self);
  gboolean ready = batches->len > 0 && free != 0;

  gtk_widget_set_sensitive (self->run, ready && self->job == NULL);
  gtk_widget_set_sensitive (self->stop, self->job != NULL);
  gtk_widget_set_visible (self->progress, self->job != NULL);
  if (self->job != NULL)
    return;

  if (batches->len == 0)
    say (self, _ ("Tick a batch that was weighed."));
  else if (free == 0)
    say (self, _ ("Tick something that may differ."));
  else
    {
      g_autofree char *words = g_strdup_printf (ngettext ("%u batch is ticked.", "%u batches are ticked.", batches->len),
                                                batches->len);

      say (self, words);
    }
}

static void
end_run (LwFitWindow *self)
{
  self->job = NULL;
  g_clear_handle_id (&self->poll, g_source_remove);
  lw_fit_window_check (self);
}

static void
done_cb (LwFit        *fit,
         const GError *error,
         gpointer      data)
{
  LwFitWindow *self = data;

  end_run (self);
  if (fit == NULL)
    {
      say (self, error->message);
      return;
    }

  lw_fit_answer_show (self, fit);
  say (self, fit->enough ? _ ("Done.") : _ ("Done, but there is not enough data."));
}

static gboolean
poll_cb (gpointer data)
{
  LwFitWindow *self = data;

  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), lw_fit_job_share (self->job));

  return G_SOURCE_CONTINUE;
}

void
lw_fit_window_run (LwFitWindow *self)
{
  g_autoptr (GArray) batches = lw_fit_choice_batches (self);
  guint free = lw_fit_choice_free (self);

  if (self->job != NULL || batches->len == 0 || free == 0)
    return;

  self->job = lw_fit_job_start (self->shown, batches, free,
                                gtk_check_button_get_active (GTK_CHECK_BUTTON (self->leave_out)), done_cb, self);
  self->poll = g_timeout_add (POLL_MS, poll_cb, self);
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), 0);
  lw_fit_window_check (self);
  say (self, _ ("Fitting …"));
}

static void
stop (LwFitWindow *self)
{
  if (self->job == NULL)
    return;

  lw_fit_job_cancel (self->job);
  end_run (self);
  say (self, self->fit != NULL ? _ ("Stopped. What is shown is from the run before.") : _ ("Stopped; nothing was found."));
}

/* Escape first stops a run. */
static gboolean
escape_cb (GtkWidget *widget,
           GVariant  *arguments,
           gpointer   data)
{
  LwFitWindow *self = data;

  if (self->job != NULL)
    stop (self);
  else
    gtk_window_close (GTK_WINDOW (self->window));

  return TRUE;
}

static void
season_cb (LwFitWindow *self)
{
  lw_fit_choice_fill (self);
  lw_fit_answer_refresh (self);
  lw_fit_keep_refresh (self);
}

static void
fit_window_free (LwFitWindow *self)
{
  g_clear_pointer (&self->fit, lw_fit_free);
  g_clear_pointer (&self->shown, lw_season_unref);
  g_clear_pointer (&self->leaves, g_ptr_array_unref);
  g_ptr_array_unref (self->kept);
  g_ptr_array_unref (self->ticks);
  g_ptr_array_unref (self->entries);
  g_object_unref (self->session);
  g_free (self);
}

static void
session_cb (GtkWidget *window)
{
  season_cb (g_object_get_data (G_OBJECT (window), "fit"));
}

/* The widgets go now, the struct only with the last reference to the window. */
static void
destroy_cb (GtkWidget   *window,
            LwFitWindow *self)
{
  g_signal_handlers_disconnect_by_func (self->session, session_cb, window);
  g_clear_handle_id (&self->poll, g_source_remove);
  if (self->job != NULL)
    lw_fit_job_cancel (self->job);
  self->job = NULL;
}

static GtkWidget *
running_new (LwFitWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->leave_out = gtk_check_button_new_with_label (_ ("Foretell each batch from the others"));
  gtk_widget_set_tooltip_text (self->leave_out, _ ("Leaves out one batch after the other, to see how well an unseen one is "
                                                   "foretold; takes several times as long"));
  self->progress = gtk_progress_bar_new ();
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Work done"), -1);
  self->state = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, "wrap", TRUE, "xalign", 0.0f,
                              NULL);
  gtk_box_append (GTK_BOX (box), self->leave_out);
  gtk_box_append (GTK_BOX (box), self->progress);
  gtk_box_append (GTK_BOX (box), self->state);
  gtk_widget_set_halign (row, GTK_ALIGN_END);
  self->stop = lw_fit_button (self, row, _ ("Stop"), G_CALLBACK (stop));
  self->run = lw_fit_button (self, row, _ ("Fit"), G_CALLBACK (lw_fit_window_run));
  gtk_widget_add_css_class (self->run, "suggested-action");
  gtk_box_append (GTK_BOX (box), row);
  gtk_widget_add_css_class (box, "fit-run");

  return box;
}

static void
add_shortcut (GtkEventController *shortcuts,
              guint               key,
              GdkModifierType     modifiers,
              GtkShortcutAction  *action)
{
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (shortcuts),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (key, modifiers), action));
}

/* Undo, redo and saving are the main window's. */
static void
window_new (LwFitWindow *self,
            GtkWindow   *parent)
{
  GtkEventController *shortcuts = gtk_shortcut_controller_new ();

  self->window = gtk_window_new ();
  gtk_window_set_title (GTK_WINDOW (self->window), _ ("Fit the leaf"));
  gtk_window_set_transient_for (GTK_WINDOW (self->window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (self->window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (self->window), 1180, 680);
  gtk_widget_add_css_class (self->window, "bench");
  gtk_widget_insert_action_group (self->window, "win", G_ACTION_GROUP (parent));
  add_shortcut (shortcuts, GDK_KEY_Escape, 0, gtk_callback_action_new (escape_cb, self, NULL));
  add_shortcut (shortcuts, GDK_KEY_w, GDK_CONTROL_MASK, gtk_named_action_new ("window.close"));
  add_shortcut (shortcuts, GDK_KEY_z, GDK_CONTROL_MASK, gtk_named_action_new ("win.undo"));
  add_shortcut (shortcuts, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK, gtk_named_action_new ("win.redo"));
  add_shortcut (shortcuts, GDK_KEY_s, GDK_CONTROL_MASK, gtk_named_action_new ("win.save"));
  gtk_widget_add_controller (self->window, shortcuts);
  g_object_set_data_full (G_OBJECT (self->window), "fit", self, (GDestroyNotify) fit_window_free);
}

/* (transfer none) (nullable) the one that is open over `parent`. */
static GtkWindow *
find_open (GtkWindow *parent)
{
  GtkWindow *found = NULL;
  GList *all = gtk_window_list_toplevels ();

  for (GList *l = all; l != NULL && found == NULL; l = l->next)
    if (g_object_get_data (l->data, "fit") != NULL && gtk_window_get_transient_for (l->data) == parent)
      found = l->data;
  g_list_free (all);

  return found;
}

void
lw_fit_window_open (GtkWindow *parent,
                    LwSession *session)
{
  GtkWindow *open = find_open (parent);
  GtkWidget *sides, *left;
  LwFitWindow *self;

  if (open != NULL)
    {
      gtk_window_present (open);
      return;
    }

  self = g_new0 (LwFitWindow, 1);
  self->session = g_object_ref (session);
  self->ticks = g_ptr_array_new ();
  self->entries = g_ptr_array_new ();
  self->kept = g_ptr_array_new_with_free_func (g_free);
  window_new (self, parent);

  sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  left = lw_fit_group (_ ("What is fitted"), 0);
  /* What grows in it must not make it grow. */
  gtk_widget_set_hexpand (left, FALSE);
  gtk_widget_add_css_class (left, "fit-choice");
  gtk_box_append (GTK_BOX (left), lw_fit_choice_new (self));
  gtk_box_append (GTK_BOX (left), running_new (self));
  gtk_box_append (GTK_BOX (sides), left);
  gtk_box_append (GTK_BOX (sides), lw_fit_answer_new (self));
  gtk_window_set_child (GTK_WINDOW (self->window), sides);
  gtk_window_set_default_widget (GTK_WINDOW (self->window), self->run);

  lw_fit_choice_fill (self);
  g_signal_connect (self->window, "destroy", G_CALLBACK (destroy_cb), self);
  g_signal_connect_object (session, "season", G_CALLBACK (session_cb), self->window, G_CONNECT_SWAPPED);
  gtk_window_set_focus (GTK_WINDOW (self->window), self->run);
  gtk_window_present (GTK_WINDOW (self->window));
}

/* The window: where to look, what is under way, what is opened. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/find-window-private.h"

#include "bench/ask.h"
#include "season/text.h"

void
lw_find_window_look (LwFindWindow *self)
{
  g_autofree char *folder = NULL;

  if (!lw_find_in_folder (self))
    {
      lw_finder_season (self->finder, lw_session_base (self->session));
      return;
    }

  folder = g_filename_from_utf8 (gtk_editable_get_text (GTK_EDITABLE (self->folder)), -1, NULL, NULL, NULL);
  if (folder != NULL && folder[0] != '\0')
    lw_finder_folder (self->finder, folder);
}

static void
look_cb (LwFindWindow *self)
{
  if (gtk_widget_get_visible (self->window) && gtk_window_is_active (GTK_WINDOW (self->window)))
    lw_find_window_look (self);
}

static void
season_cb (LwFindWindow *self)
{
  if (gtk_widget_get_visible (self->window) && !lw_find_in_folder (self))
    lw_find_window_look (self);
}

/* What is under way, in parts. */
static void
status_cb (LwFindWindow *self)
{
  LwFinderState state = lw_finder_state (self->finder);
  guint n = g_list_model_get_n_items (lw_finder_found (self->finder));
  g_autoptr (GString) said = g_string_new (NULL);

  g_string_append_printf (said, ngettext ("%u of %u batch", "%u of %u batches", state.batches), n, state.batches);
  if (state.listing)
    g_string_append_printf (said, " · %s", _ ("looking through the folder …"));
  else if (state.read < state.files)
    {
      g_string_append (said, " · ");
      g_string_append_printf (said, ngettext ("%u of %u file read …", "%u of %u files read …", state.files),
                              state.read, state.files);
    }
  if (state.asked > 0)
    {
      g_string_append (said, " · ");
      g_string_append_printf (said, ngettext ("%u outcome still to come …", "%u outcomes still to come …", state.asked),
                              state.asked);
    }
  else if (state.later > 0)
    {
      g_string_append (said, " · ");
      g_string_append_printf (said, ngettext ("%u batch not looked at: stopped", "%u batches not looked at: stopped",
                                              state.later), state.later);
    }
  if (self->wrong != NULL)
    g_string_append_printf (said, " · %s", self->wrong);
  gtk_label_set_label (GTK_LABEL (self->status), said->str);
  gtk_widget_set_visible (self->stop, state.asked > 0);
  gtk_widget_set_visible (self->problems, state.broken > 0);
}

static void
problems_cb (LwFindWindow *self)
{
  g_auto (GStrv) lines = lw_finder_problems (self->finder);
  guint n = g_strv_length (lines);
  g_autofree char *words = g_strdup_printf (ngettext ("%u file or folder is left out of the search.",
                                                      "%u files or folders are left out of the search.", n), n);

  lw_tell_list (GTK_WINDOW (self->window), _ ("What could not be read"), words, lines);
}

/* While everything is still there: rows and sorter may outlive the window for a moment, what they look at does not. */
void
lw_find_window_close (GtkWidget *window)
{
  LwFindWindow *self = g_object_get_data (G_OBJECT (window), "find");

  g_signal_handlers_disconnect_by_data (gtk_column_view_get_sorter (GTK_COLUMN_VIEW (self->list)), self);
  g_signal_handlers_disconnect_by_data (self->finder, self);
  g_signal_handlers_disconnect_by_data (self->session, self);
  g_signal_handlers_disconnect_by_data (self->window, self);
  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->list), NULL);
  gtk_window_set_transient_for (GTK_WINDOW (window), NULL);
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
close_cb (GtkWidget *window)
{
  lw_find_window_close (window);

  return TRUE;
}

static void
open_found (LwFindWindow *self,
            LwFound      *found)
{
  g_autofree char *path = g_strdup (lw_found_path (found));
  g_autofree char *name = g_strdup (lw_found_head (found)->name);

  LwFindChosen chosen = self->chosen;
  gpointer data = self->data;

  lw_find_window_close (self->window);
  chosen (path, name, data);
}

static void
activate_cb (LwFindWindow *self,
             guint         position)
{
  g_autoptr (LwFound) found = g_list_model_get_item (G_LIST_MODEL (self->selection), position);

  if (found != NULL)
    open_found (self, found);
}

static void
open_selected (LwFindWindow *self)
{
  LwFound *found = gtk_single_selection_get_selected_item (self->selection);

  if (found != NULL)
    open_found (self, found);
}

/* From the words straight down into the list; F5 looks again. */
static gboolean
key_cb (LwFindWindow          *self,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        GtkEventControllerKey *controller)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self->window));

  /* A drop-down that is open takes its own keys. */
  if (focus != NULL && gtk_widget_get_ancestor (focus, GTK_TYPE_POPOVER) != NULL)
    return FALSE;

  if (key == GDK_KEY_F5)
    lw_find_window_look (self);
  else if (key == GDK_KEY_Escape)
    gtk_window_close (GTK_WINDOW (self->window));
  else if (key == GDK_KEY_Down && focus != NULL && gtk_widget_is_ancestor (focus, self->words))
    gtk_widget_grab_focus (self->list);
  /* GTK 4.8 may leave the focus between the rows when these have changed. */
  else if ((key == GDK_KEY_Return || key == GDK_KEY_KP_Enter)
           && (focus == NULL || focus == self->list || gtk_widget_is_ancestor (focus, self->list)))
    open_selected (self);
  else
    return FALSE;

  return TRUE;
}

static void
find_window_free (LwFindWindow *self)
{
  g_signal_handlers_disconnect_by_data (self->session, self);
  g_signal_handlers_disconnect_by_data (self->finder, self);
  g_object_unref (self->finder);
  g_object_unref (self->selection);
  g_object_unref (self->session);
  g_free (self);
}

static GtkWidget *
foot_new (LwFindWindow *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  self->status = g_object_new (GTK_TYPE_LABEL, "xalign", 0.0, "hexpand", TRUE, "ellipsize", PANGO_ELLIPSIZE_END,
                               "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, NULL);
  gtk_widget_add_css_class (self->status, "status");
  gtk_box_append (GTK_BOX (row), self->status);
  self->problems = gtk_button_new_with_label (_ ("What could not be read…"));
  g_signal_connect_swapped (self->problems, "clicked", G_CALLBACK (problems_cb), self);
  gtk_box_append (GTK_BOX (row), self->problems);
  self->stop = gtk_button_new_with_label (_ ("Stop"));
  gtk_widget_set_tooltip_text (self->stop, _ ("Compute no more outcomes than those in view"));
  g_signal_connect_swapped (self->stop, "clicked", G_CALLBACK (lw_finder_stop), self->finder);
  gtk_box_append (GTK_BOX (row), self->stop);

  return row;
}

static void
connect (LwFindWindow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (self->window, keys);
  g_signal_connect_swapped (self->words, "activate", G_CALLBACK (open_selected), self);
  g_signal_connect_swapped (self->list, "activate", G_CALLBACK (activate_cb), self);
  g_signal_connect_swapped (self->finder, "changed", G_CALLBACK (status_cb), self);
  g_signal_connect_swapped (self->session, "season", G_CALLBACK (season_cb), self);
  g_signal_connect_swapped (self->window, "notify::is-active", G_CALLBACK (look_cb), self);
  g_signal_connect (self->window, "close-request", G_CALLBACK (close_cb), NULL);
}

/* Where was searched last; at first the folder of the open file. */
static void
propose_folder (LwFindWindow *self)
{
  const char *path = lw_session_path (self->session), *last = lw_finder_where (self->finder);
  g_autofree char *folder = last != NULL ? g_strdup (last) : path != NULL ? g_path_get_dirname (path) : g_strdup (g_get_home_dir ());
  g_autofree char *shown = g_filename_display_name (folder);

  gtk_editable_set_text (GTK_EDITABLE (self->folder), shown);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->place), last != NULL);
}

GtkWidget *
lw_find_window_new (GtkWindow   *parent,
                    LwSession   *session,
                    LwFinder    *finder,
                    LwFindChosen chosen,
                    gpointer     data)
{
  LwFindWindow *self = g_new0 (LwFindWindow, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);

  self->session = g_object_ref (session);
  self->finder = g_object_ref (finder);
  self->chosen = chosen;
  self->data = data;
  self->window = gtk_window_new ();
  gtk_window_set_title (GTK_WINDOW (self->window), _ ("Find batches"));
  gtk_window_set_transient_for (GTK_WINDOW (self->window), parent);
  gtk_window_set_application (GTK_WINDOW (self->window), gtk_window_get_application (parent)); /* for its keys */
  gtk_window_set_default_size (GTK_WINDOW (self->window), 1220, 620);
  gtk_widget_add_css_class (self->window, "bench");
  gtk_widget_add_css_class (box, "find");
  g_object_set_data_full (G_OBJECT (self->window), "find", self, (GDestroyNotify) find_window_free);

  gtk_box_append (GTK_BOX (box), lw_find_fields_new (self));
  gtk_box_append (GTK_BOX (box), lw_find_columns_new (self));
  gtk_box_append (GTK_BOX (box), foot_new (self));
  gtk_window_set_child (GTK_WINDOW (self->window), box);
  propose_folder (self);
  connect (self);

  /* The latest batch first. */
  self->sorting = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->sort), 1);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->downwards), TRUE);
  lw_find_columns_show_sort (self, 1, TRUE);
  self->sorting = FALSE;
  lw_find_fields_ask (self);
  lw_find_window_look (self);
  gtk_window_set_focus (GTK_WINDOW (self->window), self->words);

  return self->window;
}

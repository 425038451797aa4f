/* The window: what it shows, its keys, its size. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"

#include "bench/batch-list.h"
#include "bench/desktop.h"
#include "season/document.h"
#include "season/text.h"

G_DEFINE_FINAL_TYPE (LwWindow, lw_window, GTK_TYPE_APPLICATION_WINDOW)

void
lw_window_say (LwWindow   *self,
               const char *text)
{
  gtk_label_set_label (GTK_LABEL (self->status), text);
  /* The line may be too short for it. */
  gtk_widget_set_tooltip_text (self->status, text);
}

void
lw_window_enable (LwWindow   *self,
                  const char *action,
                  gboolean    enabled)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), action)), enabled);
}

static void
show_undo (GtkWidget  *button,
           const char *verb,
           const char *label)
{
  /* Translators: undo or redo, and what: "Undo: Set time of fix in pan" */
  g_autofree char *tip = label != NULL ? g_strdup_printf (_ ("%s: %s"), verb, label) : g_strdup (verb);

  gtk_widget_set_tooltip_text (button, tip);
}

static void
show_title (LwWindow *self)
{
  const LwSeason *season = lw_session_season (self->session);
  const LwBatch *batch = lw_session_batch (self->session);
  const char *path = lw_session_path (self->session);
  g_autofree char *file = path != NULL ? g_path_get_basename (path) : g_strdup (_ ("not in a file yet"));
  gboolean saved = lw_session_is_saved (self->session);
  g_autofree char *where = saved ? g_strdup (file)
                                 /* Translators: a file's name, with unsaved changes */
                                 : g_strdup_printf (_ ("%s, changed"), file);
  /* Translators: season, batch */
  g_autofree char *title = batch != NULL ? g_strdup_printf (_ ("%s — %s"), season->name, batch->name)
                                         : g_strdup (season->name);

  gtk_label_set_label (GTK_LABEL (self->title), title);
  gtk_label_set_label (GTK_LABEL (self->subtitle), where);
  gtk_window_set_title (GTK_WINDOW (self), title);
}

static void
season_cb (LwWindow *self)
{
  const char *undo = lw_session_undo_label (self->session), *redo = lw_session_redo_label (self->session);
  const LwBatch *batch = lw_session_batch (self->session);
  gboolean some = batch != NULL, room = lw_session_season (self->session)->n_batches < LW_MAX_BATCHES;

  show_title (self);
  lw_window_enable (self, "undo", undo != NULL);
  lw_window_enable (self, "redo", redo != NULL);
  lw_window_enable (self, "repeat-batch", some && room);
  lw_window_enable (self, "add-planned", some && room && batch->plan != NULL);
  lw_window_enable (self, "batch-facts", some);
  lw_window_enable (self, "fit-leaf", some);
  lw_window_enable (self, "remove-batch", some);
  show_undo (self->undo_button, _ ("Undo"), undo);
  show_undo (self->redo_button, _ ("Redo"), redo);
}

static void
track_cb (LwWindow *self)
{
  const char *trouble = lw_session_trouble (self->session);

  gtk_label_set_label (GTK_LABEL (self->trouble), trouble != NULL ? trouble : "");
  gtk_widget_set_visible (self->trouble, trouble != NULL);
}

static void
undo (GSimpleAction *action,
      GVariant      *target,
      gpointer       data)
{
  lw_session_undo (LW_WINDOW (data)->session);
}

static void
redo (GSimpleAction *action,
      GVariant      *target,
      gpointer       data)
{
  lw_session_redo (LW_WINDOW (data)->session);
}

static void
about (GSimpleAction *action,
       GVariant      *target,
       gpointer       data)
{
  gtk_show_about_dialog (GTK_WINDOW (data),
                         "program-name", "Leafwend",
                         "version", LW_VERSION,
                         "logo-icon-name", LW_APP_ID,
                         "comments", _ ("A workbench for designing how tea leaf is processed. Its numbers are a model's "
                                        "estimate: they replace neither scale nor thermometer nor care with hot walls, "
                                        "steam, fumes, machines and food. Follow local codes and licensed practice."),
                         "license-type", GTK_LICENSE_GPL_3_0,
                         NULL);
}

/* Escape while dragging comes first, whatever has the focus. */
static gboolean
capture_key_cb (LwWindow              *self,
                guint                  key,
                guint                  code,
                GdkModifierType        state,
                GtkEventControllerKey *controller)
{
  if (key != GDK_KEY_Escape || !lw_session_is_dragging (self->session))
    return FALSE;
  if (!lw_lane_drop_drag (lw_board_lane (self->board)))
    lw_session_drag_cancel (self->session);

  return TRUE;
}

static gboolean
key_cb (LwWindow              *self,
        guint                  key,
        guint                  code,
        GdkModifierType        state,
        GtkEventControllerKey *controller)
{
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return FALSE;

  switch (key)
    {
    case GDK_KEY_comma:
      lw_board_read (self->board, -1);
      return TRUE;
    case GDK_KEY_period:
      lw_board_read (self->board, 1);
      return TRUE;
    case GDK_KEY_Escape:
      if (!lw_board_zoom_out (self->board))
        lw_session_read_off (self->session);
      return TRUE;
    default:
      return FALSE;
    }
}

static void
add_keys (LwWindow *self)
{
  GtkEventController *capture = gtk_event_controller_key_new ();
  GtkEventController *bubble = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (capture, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (capture, "key-pressed", G_CALLBACK (capture_key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), capture);
  g_signal_connect_swapped (bubble, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), bubble);
}

static void
restore_size (LwWindow *self)
{
  if (self->settings == NULL)
    return;

  gtk_window_set_default_size (GTK_WINDOW (self), g_settings_get_int (self->settings, "window-width"),
                               g_settings_get_int (self->settings, "window-height"));
  if (g_settings_get_boolean (self->settings, "window-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
}

static void
keep_size (LwWindow *self)
{
  int width, height;

  if (self->settings == NULL)
    return;

  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set_int (self->settings, "window-width", width);
  g_settings_set_int (self->settings, "window-height", height);
  g_settings_set_boolean (self->settings, "window-maximized", gtk_window_is_maximized (GTK_WINDOW (self)));
}

static void
close_now (LwWindow *self,
           gpointer  data)
{
  keep_size (self);
  gtk_window_destroy (GTK_WINDOW (self));
}

static gboolean
lw_window_close_request (GtkWindow *window)
{
  lw_window_when_safe (LW_WINDOW (window), close_now, NULL, NULL);

  return TRUE;
}

static void
lw_window_dispose (GObject *object)
{
  LwWindow *self = LW_WINDOW (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), LW_TYPE_WINDOW);
  g_clear_object (&self->running);
  g_clear_object (&self->session);
  g_clear_object (&self->settings);
  g_clear_pointer (&self->teas, lw_season_unref);
  g_clear_pointer (&self->disk, lw_window_disk_free);

  G_OBJECT_CLASS (lw_window_parent_class)->dispose (object);
}

static void
lw_window_class_init (LwWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = lw_window_close_request;

  gtk_widget_class_set_template_from_resource (widget_class, "/page/leafwend/Leafwend/window.ui");
  gtk_widget_class_bind_template_child (widget_class, LwWindow, title);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, subtitle);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, undo_button);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, redo_button);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, batch_button);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, paned);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, side_paned);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, scrolled);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, trouble);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, status);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, recent_menu);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, leaf_menu);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, weather_menu);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, log_menu);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, tea_menu);
  gtk_widget_class_bind_template_child (widget_class, LwWindow, panels_menu);
}

static void
lw_window_init (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "undo", .activate = undo },
    { .name = "redo", .activate = redo },
    { .name = "about", .activate = about },
  };

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_add_css_class (GTK_WIDGET (self), "bench");
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  lw_window_add_file_actions (self);
  lw_window_add_batch_actions (self);
  lw_window_add_guide_action (self);

  self->session = lw_session_new ();
  lw_window_add_leaf_actions (self);
  lw_window_add_weather_actions (self);
  lw_window_add_log_actions (self);
  lw_window_add_tea_actions (self);
  lw_window_add_over_actions (self);
  lw_window_add_card_actions (self);
  lw_window_add_lesson_action (self);
  self->settings = lw_desktop_settings ();
  self->board = LW_BOARD (lw_board_new (self->session));
  lw_window_add_view_actions (self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), GTK_WIDGET (self->board));
  gtk_paned_set_start_child (GTK_PANED (self->paned), lw_batch_list_new (self->session));
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);

  lw_window_add_side (self);
  lw_window_add_weigh_actions (self);
  lw_window_add_replan_action (self);
  lw_window_add_run (self);
  lw_window_add_left (self);
  lw_window_add_logout (self);
  lw_window_add_disk (self);
  lw_window_add_find (self);
  add_keys (self);
  restore_size (self);
  lw_window_refill_recent (self);
}

GtkWidget *
lw_window_new (GtkApplication *application,
               LwSeason       *season,
               const char     *path)
{
  LwWindow *self = g_object_new (LW_TYPE_WINDOW, "application", application, NULL);

  lw_session_open (self->session, season, path);
  lw_window_disk_took (self, path != NULL ? lw_stamp_take (path) : NULL);
  lw_window_say (self, _ ("Drag a block's end for its time, its line for heat, its body to move it; double-click it for more."));

  return GTK_WIDGET (self);
}

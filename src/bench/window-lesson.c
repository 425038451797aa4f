/* The action that opens the window of lessons. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/lesson-window.h"
#include "bench/window-private.h"

static void
forget (LwWindow *self)
{
  g_object_set_data (G_OBJECT (self), "lesson", NULL);
}

static void
lesson (GSimpleAction *action,
        GVariant      *target,
        gpointer       data)
{
  LwWindow *self = data;
  GtkWidget *window = g_object_get_data (G_OBJECT (self), "lesson");

  if (window == NULL)
    {
      window = lw_lesson_window_new (GTK_WINDOW (self), self->session);
      g_object_set_data (G_OBJECT (self), "lesson", window);
      g_signal_connect_object (window, "destroy", G_CALLBACK (forget), self, G_CONNECT_SWAPPED);
    }
  gtk_window_present (GTK_WINDOW (window));
}

static void
season_cb (LwWindow *self)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "lesson")),
                               lw_session_batch (self->session) != NULL);
}

void
lw_window_add_lesson_action (LwWindow *self)
{
  static const GActionEntry entries[] = { { .name = "lesson", .activate = lesson } };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}

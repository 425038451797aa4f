/* The actions that open the window of lessons, and the season of lessons that ships with the program. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/lesson-window.h"
#include "bench/window-private.h"
#include "season/document.h"
#include "season/shipped.h"
#include "season/text.h"

#define DEMO "ondry-ridge-lessons" LW_SEASON_SUFFIX

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

/* As a copy without a file, so that the demo stays whole. */
static void
open_demo_now (LwWindow *self,
               gpointer  data)
{
  g_autofree char *path = lw_shipped_path (DEMO);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_load (path, problems);

  if (season == NULL)
    {
      lw_window_say (self, _ ("The lessons that ship with the program are not there."));
      return;
    }

  lw_session_open (self->session, season, NULL);
  lw_window_disk_took (self, NULL);
}

static void
demo_lessons (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  lw_window_when_safe (data, open_demo_now, NULL, NULL);
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
  static const GActionEntry entries[] = {
    { .name = "lesson", .activate = lesson },
    { .name = "demo-lessons", .activate = demo_lessons },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}

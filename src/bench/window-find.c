/* Finding batches from the window: what is found is taken in hand, from another file after the usual question. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/find-window.h"
#include "bench/window-private.h"
#include "season/text.h"

typedef struct
{
  char *path;
  char *batch;
} Goal;

static void
goal_free (Goal *goal)
{
  g_free (goal->path);
  g_free (goal->batch);
  g_free (goal);
}

static void
take_batch (LwWindow   *self,
            const char *name)
{
  g_autofree char *words = NULL;

  if (lw_window_choose_batch (self, name))
    return;

  words = g_strdup_printf (_ ("The season has no batch “%s” any more."), name);
  lw_window_say (self, words);
}

static void
open_goal (LwWindow *self,
           gpointer  data)
{
  const Goal *goal = data;

  if (lw_window_open_now (self, goal->path))
    take_batch (self, goal->batch);
}

static void
found_cb (const char *path,
          const char *batch,
          gpointer    data)
{
  LwWindow *self = data;
  Goal *goal;

  gtk_window_present (GTK_WINDOW (self));
  if (path == NULL || g_strcmp0 (path, lw_session_path (self->session)) == 0)
    {
      take_batch (self, batch);
      return;
    }

  goal = g_new0 (Goal, 1);
  goal->path = g_strdup (path);
  goal->batch = g_strdup (batch);
  lw_window_when_safe (self, open_goal, goal, (GDestroyNotify) goal_free);
}

static void
closed_cb (LwWindow *self)
{
  g_object_set_data (G_OBJECT (self), "find-window", NULL);
}

/* The finder is kept with all it has read; the window is made anew, since accessibility in GTK 4.8 fails over windows that
 * are only hidden. */
static void
find_batches (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  LwWindow *self = data;
  GtkWidget *window = g_object_get_data (G_OBJECT (self), "find-window");
  LwFinder *finder = g_object_get_data (G_OBJECT (self), "finder");

  if (window == NULL)
    {
      window = lw_find_window_new (GTK_WINDOW (self), self->session, finder, found_cb, self);
      g_object_set_data (G_OBJECT (self), "find-window", window);
      g_signal_connect_object (window, "destroy", G_CALLBACK (closed_cb), self, G_CONNECT_SWAPPED);
    }
  gtk_window_present (GTK_WINDOW (window));
}

/* GTK would take it away too late, when it looks for a parent that is no more. */
static void
destroy_cb (LwWindow *self)
{
  GtkWidget *window = g_object_get_data (G_OBJECT (self), "find-window");
  LwFinder *finder = g_object_get_data (G_OBJECT (self), "finder");

  if (window != NULL)
    lw_find_window_close (window);
  g_object_run_dispose (G_OBJECT (finder));
}

void
lw_window_add_find (LwWindow *self)
{
  static const GActionEntry entries[] = { { .name = "find-batches", .activate = find_batches } };

  g_object_set_data_full (G_OBJECT (self), "finder", lw_finder_new (), g_object_unref);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect (self, "destroy", G_CALLBACK (destroy_cb), NULL);
}

/* Re-planning the rest of the batch in hand, in the window. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"

#include "bench/replan-window.h"
#include "season/text.h"

static void
replan (GSimpleAction *action,
        GVariant      *target,
        gpointer       data)
{
  LwWindow *self = data;
  LwInstant now;
  gboolean runs = lw_running_in_hand (self->running) && lw_running_now (self->running, &now.step, &now.minute);

  if (!lw_replan_window_open (GTK_WINDOW (self), self->session, runs ? &now : NULL))
    lw_window_say (self, _ ("There is nothing to re-plan by: the batch has no weigh-in that tells of its leaf."));
}

static void
season_cb (LwWindow *self)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "replan");

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), lw_session_batch (self->session) != NULL);
}

void
lw_window_add_replan_action (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "replan", .activate = replan },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}

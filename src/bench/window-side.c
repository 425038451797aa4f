/* The side column in the window, and the search for settings that meet the aims. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"

#include "bench/caution-line.h"
#include "bench/side.h"
#include "season/text.h"

static void
shown_cb (GSimpleAction *action,
          GVariant      *shown,
          gpointer       data)
{
  LwWindow *self = data;

  g_simple_action_set_state (action, shown);
  gtk_widget_set_visible (self->side, g_variant_get_boolean (shown));
  if (self->settings != NULL)
    g_settings_set_boolean (self->settings, "side-shown", g_variant_get_boolean (shown));
}

static void
reach (GSimpleAction *action,
       GVariant      *target,
       gpointer       data)
{
  LwWindow *self = data;

  if (!lw_session_reach (self->session))
    lw_window_say (self, _ ("There is nothing to reach: set an aim in the result first, or by dragging beside a panel's "
                            "column edge."));
}

static void
said_cb (LwWindow *self)
{
  const char *said = lw_session_said (self->session);

  if (said != NULL)
    lw_window_say (self, said);
}

static void
season_cb (LwWindow *self)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "reach-aims");

  g_simple_action_set_enabled (G_SIMPLE_ACTION (action), lw_session_batch (self->session) != NULL);
}

void
lw_window_add_side (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "show-side", .state = "true", .change_state = shown_cb },
    { .name = "reach-aims", .activate = reach },
  };
  gboolean shown = self->settings == NULL || g_settings_get_boolean (self->settings, "side-shown");

  self->side = lw_side_new (self->session, lw_board_lane (self->board));
  gtk_paned_set_end_child (GTK_PANED (self->side_paned), self->side);
  gtk_widget_insert_before (lw_caution_line_new (self->session), gtk_widget_get_parent (self->status), self->status);
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_action_group_change_action_state (G_ACTION_GROUP (self), "show-side", g_variant_new_boolean (shown));
  g_signal_connect_object (self->session, "said", G_CALLBACK (said_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}

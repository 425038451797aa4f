/* Actions that put the batch in hand on paper or into a picture: the wall card's window, and a picture of the board. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/card-window.h"
#include "bench/picture-window.h"
#include "bench/window-private.h"

static void
forget_card (LwWindow *self)
{
  g_object_set_data (G_OBJECT (self), "card", NULL);
}

/* The window that is open, or else a new one. */
static LwCardWindow *
card_window (LwWindow *self)
{
  GtkWidget *window = g_object_get_data (G_OBJECT (self), "card");

  if (window == NULL)
    {
      window = lw_card_window_new (GTK_WINDOW (self), self->session);
      g_object_set_data (G_OBJECT (self), "card", window);
      g_signal_connect_object (window, "destroy", G_CALLBACK (forget_card), self, G_CONNECT_SWAPPED);
    }
  gtk_window_present (GTK_WINDOW (window));

  return LW_CARD_WINDOW (window);
}

static void
wall_card (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  card_window (data);
}

static void
save_card (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  lw_card_window_save (card_window (data), g_variant_get_bytestring (target));
}

static void
print_card (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  lw_card_window_print (card_window (data), g_variant_get_bytestring (target));
}

static void
save_picture (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  lw_picture_window_open (data, LW_WINDOW (data)->session);
}

static void
season_cb (LwWindow *self)
{
  gboolean some = lw_session_batch (self->session) != NULL;

  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "wall-card")), some);
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), "save-picture")), some);
}

void
lw_window_add_card_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "wall-card", .activate = wall_card },
    { .name = "save-card", .activate = save_card, .parameter_type = "ay" },
    { .name = "print-card", .activate = print_card, .parameter_type = "ay" },
    { .name = "save-picture", .activate = save_picture },
  };

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}

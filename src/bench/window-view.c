/* How the board shows the batch: time by the clock, which panels, their heights, one
 * step large. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"

#include "season/text.h"

#define PANEL "panel-" /* and the quantity's name in a document */

static void
set_by_clock (GSimpleAction *action,
              GVariant      *state,
              gpointer       data)
{
  LwWindow *self = data;

  lw_board_set_by_clock (self->board, g_variant_get_boolean (state));
  /* Not while something is dragged. */
  g_simple_action_set_state (action, g_variant_new_boolean (lw_board_is_by_clock (self->board)));
}

static void
show_panel (GSimpleAction *action,
            GVariant      *state,
            gpointer       data)
{
  LwWindow *self = data;
  int quantity = lw_quantity_find (g_action_get_name (G_ACTION (action)) + strlen (PANEL));

  lw_panel_stack_show (lw_board_panels (self->board), quantity, g_variant_get_boolean (state));
  g_simple_action_set_state (action, state);
}

static void
even_panels (GSimpleAction *action,
             GVariant      *target,
             gpointer       data)
{
  lw_panel_stack_even (lw_board_panels (LW_WINDOW (data)->board));
}

static void
zoom_step (GSimpleAction *action,
           GVariant      *target,
           gpointer       data)
{
  LwWindow *self = data;

  if (lw_session_batch (self->session) != NULL)
    gtk_widget_activate_action (GTK_WIDGET (self->board), "board.zoom", "u",
                                (guint) MAX (lw_session_step (self->session), 0));
}

/* Told, too, for those who do not see the columns move. */
static void
zoom_cb (LwWindow *self,
         int       step)
{
  const LwBatch *batch = lw_session_batch (self->session);
  g_autofree char *words = NULL;

  if (batch == NULL || step >= (int) batch->n_steps)
    return;

  /* Translators: a kind of step */
  words = step < 0 ? g_strdup (_ ("All steps of the batch."))
                   : g_strdup_printf (_ ("Step %d, %s, over the width. Z or Escape shows all steps again."), step + 1,
                                      _ (lw_kind_row (batch->steps[step].kind)->label));
  lw_window_say (self, words);
}

static void
add_toggle (LwWindow   *self,
            const char *name,
            gboolean    on,
            void      (*set) (GSimpleAction *action, GVariant *state, gpointer data))
{
  g_autoptr (GSimpleAction) action = g_simple_action_new_stateful (name, NULL, g_variant_new_boolean (on));

  g_signal_connect (action, "change-state", G_CALLBACK (set), self);
  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
}

static void
add_panel (LwWindow  *self,
           LwQuantity quantity)
{
  const LwQuantityRow *row = lw_quantity_row (quantity);
  g_autofree char *name = g_strconcat (PANEL, row->id, NULL), *action = g_strconcat ("win.", name, NULL);
  /* Translators: a panel's name and its unit */
  g_autofree char *label = row->unit[0] != '\0' ? g_strdup_printf (_ ("%s, %s"), _ (row->label), _ (row->unit))
                                                 : g_strdup (_ (row->label));

  add_toggle (self, name, lw_panel_stack_shows (lw_board_panels (self->board), quantity), show_panel);
  g_menu_append (self->panels_menu, label, action);
}

static gboolean
take_keys_back (gpointer data)
{
  LwWindow *self = data;
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if (focus != NULL && !gtk_widget_get_mapped (focus) && gtk_widget_get_root (GTK_WIDGET (self->board)) != NULL)
    lw_lane_focus (lw_board_lane (self->board), (guint) MAX (lw_session_step (self->session), 0));

  return G_SOURCE_REMOVE;
}

/* GTK 4.8 leaves the keyboard in a submenu that has closed, where no key does anything. */
static void
menu_closed_cb (LwWindow *self)
{
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, take_keys_back, g_object_ref (self), g_object_unref);
}

static void
watch_menu (LwWindow  *self,
            GtkWidget *button)
{
  g_signal_connect_object (gtk_menu_button_get_popover (GTK_MENU_BUTTON (button)), "closed",
                           G_CALLBACK (menu_closed_cb), self, G_CONNECT_SWAPPED);
}

void
lw_window_add_view_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "even-panels", .activate = even_panels },
    { .name = "zoom-step", .activate = zoom_step },
  };
  const LwQuantity *extra;
  guint n;

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  add_toggle (self, "by-clock", lw_board_is_by_clock (self->board), set_by_clock);
  extra = lw_panel_stack_extra (&n);
  for (guint i = 0; i < n; i++)
    add_panel (self, extra[i]);
  g_signal_connect_object (self->board, "zoom", G_CALLBACK (zoom_cb), self, G_CONNECT_SWAPPED);
  watch_menu (self, self->batch_button);
  watch_menu (self, self->menu_button);
}

/* Weigh-ins in the window: where they are entered, by key, menu or pointer. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/window-private.h"

#include <math.h>

#include "bench/weigh-entry.h"
#include "season/text.h"

#define KEY GDK_KEY_m

/* The widget that had the keyboard gets it back, or else the step's block. */
typedef struct
{
  LwWindow *window;
  GtkWidget *before; /* (nullable) */
  guint step;
} Back;

static void
back_free (Back     *back,
           GClosure *closure)
{
  g_clear_object (&back->before);
  g_free (back);
}

static void
closed_cb (GtkPopover *popover,
           Back       *back)
{
  LwBoard *board = back->window->board;

  if (board != NULL && (back->before == NULL || gtk_widget_get_root (back->before) == NULL
                        || !gtk_widget_get_mapped (back->before) || !gtk_widget_grab_focus (back->before)))
    lw_lane_focus (lw_board_lane (board), back->step);
}

static void
open_entry (LwWindow    *self,
            LwWeighPlace place)
{
  GtkWidget *board = GTK_WIDGET (self->board), *focus = gtk_window_get_focus (GTK_WINDOW (self)), *popover;
  const LwBatch *batch = lw_session_batch (self->session);
  double minute = place.at >= 0 ? batch->steps[place.step].weigh_ins[place.at].minute : place.minute;
  double x = lw_scale_x (lw_session_scale (self->session), place.step,
                         MIN (minute, lw_step_get (&batch->steps[place.step], LW_SET_MINUTES)));
  int under = gtk_widget_get_height (GTK_WIDGET (lw_board_lane (self->board)));
  GdkRectangle spot = { (int) CLAMP (x, 0, gtk_widget_get_width (board)), under, 1, 1 };
  Back *back = g_new0 (Back, 1);

  *back = (Back) { self, focus != NULL ? g_object_ref (focus) : NULL, place.step };
  popover = lw_weigh_entry_open (board, &spot, self->session, place);
  g_signal_connect_data (popover, "closed", G_CALLBACK (closed_cb), back, (GClosureNotify) back_free, 0);
}

/* Whole seconds are all that the entry can tell. */
static double
round_minute (double minute)
{
  return round (minute * 60) / 60;
}

/* Where a new one belongs: in a running batch now, else at the reading line, or else at the end of the step in hand or of the batch. */
static void
weigh_in (GSimpleAction *action,
          GVariant      *target,
          gpointer       data)
{
  LwWindow *self = data;
  const LwBatch *batch = lw_session_batch (self->session);
  LwWeighPlace place = { .at = -1 };
  int step = lw_session_step (self->session);

  if (batch == NULL || batch->n_steps == 0 || lw_session_is_dragging (self->session))
    return;
  place.goes_on = lw_running_in_hand (self->running) && lw_running_now (self->running, &place.step, &place.minute);
  if (place.goes_on)
    {
      place.minute = round_minute (place.minute);
      open_entry (self, place);
      return;
    }
  if (!lw_session_reading (self->session, &place.step, &place.minute) || place.step >= batch->n_steps)
    {
      place.step = step >= 0 ? (guint) step : batch->n_steps - 1;
      place.minute = lw_step_get (&batch->steps[place.step], LW_SET_MINUTES);
    }
  place.minute = MIN (round_minute (place.minute), lw_step_get (&batch->steps[place.step], LW_SET_MINUTES));
  open_entry (self, place);
}

/* What is measured now is of the batch that runs, whichever is looked at. */
static void
weigh_in_now (GSimpleAction *action,
              GVariant      *target,
              gpointer       data)
{
  LwWindow *self = data;
  int runs = lw_running_batch (self->running);
  double minute;
  guint step;

  if (lw_running_now (self->running, &step, &minute) && !lw_running_in_hand (self->running)
      && !lw_session_is_dragging (self->session))
    {
      lw_session_choose (self->session, (guint) runs);
      lw_session_compute (self->session);
      lw_window_say (self, _ ("The running batch is in hand again."));
    }
  weigh_in (action, target, data);
}

static void
weigh_in_at (GSimpleAction *action,
             GVariant      *target,
             gpointer       data)
{
  LwWindow *self = data;
  const LwBatch *batch = lw_session_batch (self->session);
  LwWeighPlace place = { .at = -1 };

  g_variant_get (target, "(ud)", &place.step, &place.minute);
  if (batch == NULL || place.step >= batch->n_steps)
    return;

  place.minute = CLAMP (round_minute (place.minute), 0, lw_step_get (&batch->steps[place.step], LW_SET_MINUTES));
  open_entry (self, place);
}

static gboolean
is_there (LwWindow *self,
          guint     step,
          guint     at)
{
  const LwBatch *batch = lw_session_batch (self->session);

  return batch != NULL && step < batch->n_steps && at < batch->steps[step].n_weigh_ins;
}

static void
change (GSimpleAction *action,
        GVariant      *target,
        gpointer       data)
{
  LwWindow *self = data;
  guint step, at;

  g_variant_get (target, "(uu)", &step, &at);
  if (is_there (self, step, at))
    open_entry (self, (LwWeighPlace) { .step = step, .at = (int) at });
}

static void
remove_one (GSimpleAction *action,
            GVariant      *target,
            gpointer       data)
{
  LwWindow *self = data;
  guint step, at;

  g_variant_get (target, "(uu)", &step, &at);
  if (!is_there (self, step, at))
    return;

  lw_weigh_entry_remove (self->session, step, at);
  lw_window_say (self, _ ("The weigh-in is removed. Undo brings it back."));
}

static gboolean
key_cb (LwWindow       *self,
        guint           key,
        guint           code,
        GdkModifierType state)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));

  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) || gdk_keyval_to_lower (key) != KEY
      || (focus != NULL && gtk_widget_get_ancestor (focus, GTK_TYPE_POPOVER) != NULL))
    return FALSE;

  g_action_group_activate_action (G_ACTION_GROUP (self), "weigh-in-now", NULL);

  return TRUE;
}

static void
season_cb (LwWindow *self)
{
  const LwBatch *batch = lw_session_batch (self->session);

  lw_window_enable (self, "weigh-in", batch != NULL && batch->n_steps > 0);
}

void
lw_window_add_weigh_actions (LwWindow *self)
{
  static const GActionEntry entries[] = {
    { .name = "weigh-in", .activate = weigh_in },
    { .name = "weigh-in-now", .activate = weigh_in_now },
    { .name = "weigh-in-at", .activate = weigh_in_at, .parameter_type = "(ud)" },
    { .name = "weigh-in-change", .activate = change, .parameter_type = "(uu)" },
    { .name = "weigh-in-remove", .activate = remove_one, .parameter_type = "(uu)" },
  };
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_object (self->session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
}

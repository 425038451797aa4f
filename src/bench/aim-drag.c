/* The gesture: previews like any other drag, and one undo. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/aim-drag.h"

#include <math.h>

#include "bench/look.h"
#include "bench/telling.h"
#include "draw/aim-grip.h"
#include "draw/outcome.h"

#define THRESHOLD 3.0

typedef struct
{
  LwStatePanel *panel;  /* owns this */
  LwSession *session;   /* outlives the panel */
  LwAimGrip grip;
  double press_x;
  double press_y;
  gboolean dragging;
} Drag;

static LwAimGrip
grip_at (const Drag *drag,
         double      x,
         double      y)
{
  LwPanelLook look = lw_state_panel_look (drag->panel);
  LwAxis axis = lw_state_panel_axis (drag->panel);
  LwLetter letter = lw_look_letter (GTK_WIDGET (drag->panel));

  if (lw_session_track (drag->session) == NULL)
    return (LwAimGrip) { .part = LW_AIM_NONE };

  return lw_aim_grip_at (&look, &axis, &letter, gtk_widget_get_height (GTK_WIDGET (drag->panel)), x, y);
}

static void
drag_begin_cb (Drag           *drag,
               double          x,
               double          y,
               GtkGestureDrag *gesture)
{
  drag->dragging = FALSE;
  drag->press_x = x;
  drag->press_y = y;
  drag->grip = lw_session_is_dragging (drag->session) ? (LwAimGrip) { .part = LW_AIM_NONE } : grip_at (drag, x, y);
  if (drag->grip.part == LW_AIM_NONE)
    gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_DENIED);
  /* The batch that lends it may go. */
  drag->grip.aim.note = g_strdup (drag->grip.aim.note);
}

static void
start (Drag           *drag,
       GtkGestureDrag *gesture)
{
  drag->dragging = TRUE;
  gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
  lw_session_drag_begin (drag->session);
  lw_state_panel_hold_axis (drag->panel, TRUE);
}

static void
drag_update_cb (Drag           *drag,
                double          dx,
                double          dy,
                GtkGestureDrag *gesture)
{
  GdkModifierType held = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));
  gboolean fine = (held & (GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0;
  LwAxis axis = lw_state_panel_axis (drag->panel);
  LwLetter letter = lw_look_letter (GTK_WIDGET (drag->panel));
  guint batch = (guint) lw_session_batch_index (drag->session);
  g_autofree char *words = NULL;
  LwAim aim;

  if (drag->grip.part == LW_AIM_NONE)
    return;
  if (!drag->dragging)
    {
      if (fabs (dy) < THRESHOLD)
        return;
      start (drag, gesture);
    }
  /* Escape ended it. */
  if (!lw_session_is_dragging (drag->session))
    return;

  aim = lw_aim_grip_drag (&drag->grip, &axis, &letter, gtk_widget_get_height (GTK_WIDGET (drag->panel)),
                          drag->press_y + dy, fine);
  lw_session_preview (drag->session,
                      lw_edit_put_aim (lw_session_base (drag->session), batch, drag->grip.step, aim));
  words = lw_outcome_window (aim.of, aim.low, aim.high);
  lw_state_panel_say (drag->panel, words);
}

static void
end (Drag    *drag,
     gboolean commit)
{
  g_autofree char *label = lw_tell_aim (drag->grip.aim.of);
  gboolean dragged = drag->dragging && lw_session_is_dragging (drag->session);

  if (drag->dragging)
    lw_state_panel_hold_axis (drag->panel, FALSE);
  drag->dragging = FALSE;
  drag->grip.part = LW_AIM_NONE;
  g_clear_pointer (&drag->grip.aim.note, g_free);
  if (dragged && commit)
    lw_session_drag_commit (drag->session, label);
  else if (dragged)
    lw_session_drag_cancel (drag->session);
  lw_state_panel_say (drag->panel, NULL);
}

static void
drag_end_cb (Drag *drag)
{
  end (drag, TRUE);
}

static void
cancel_cb (Drag *drag)
{
  end (drag, FALSE);
}

static void
motion_cb (Drag  *drag,
           double x,
           double y)
{
  static const char *const cursors[] = {
    [LW_AIM_NONE] = NULL, [LW_AIM_LOW] = "ns-resize", [LW_AIM_HIGH] = "ns-resize", [LW_AIM_BOTH] = "grab",
    [LW_AIM_NEW] = "crosshair",
  };

  if (!lw_session_is_dragging (drag->session))
    gtk_widget_set_cursor_from_name (GTK_WIDGET (drag->panel), cursors[grip_at (drag, x, y).part]);
}

static void
drag_free (Drag *drag)
{
  g_free (drag->grip.aim.note);
  g_free (drag);
}

void
lw_aim_drag_add (LwStatePanel *panel,
                 LwSession    *session)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *gesture = gtk_gesture_drag_new ();
  Drag *drag = g_new0 (Drag, 1);

  drag->panel = panel;
  drag->session = session;
  g_object_set_data_full (G_OBJECT (panel), "aim-drag", drag, (GDestroyNotify) drag_free);

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (gesture), GDK_BUTTON_PRIMARY);
  g_signal_connect_swapped (gesture, "drag-begin", G_CALLBACK (drag_begin_cb), drag);
  g_signal_connect_swapped (gesture, "drag-update", G_CALLBACK (drag_update_cb), drag);
  g_signal_connect_swapped (gesture, "drag-end", G_CALLBACK (drag_end_cb), drag);
  g_signal_connect_swapped (gesture, "cancel", G_CALLBACK (cancel_cb), drag);
  gtk_widget_add_controller (GTK_WIDGET (panel), GTK_EVENT_CONTROLLER (gesture));
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), drag);
  gtk_widget_add_controller (GTK_WIDGET (panel), motion);
}

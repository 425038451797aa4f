/* Dragging on the lane. The gesture sits on the lane, which stays, not on the blocks,
 * which move. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/lane-private.h"

#include <math.h>

#include "bench/look.h"
#include "bench/telling.h"
#include "draw/block.h"
#include "season/text.h"
#include "season/wording.h"

#define THRESHOLD 3.0   /* px of motion before a press becomes a drag */
#define TAG_OFF 18.0

/* Values of the blocks' lines; `values` has room for every step a scale can hold. */
static void
leading_values (LwLane *self,
                double *values)
{
  const LwSeason *season = lw_session_season (self->session);
  const LwBatch *batch = lw_session_batch (self->session);
  gboolean on_weather;

  for (guint i = 0; batch != NULL && i < MIN (batch->n_steps, LW_SCALE_MAX_STEPS); i++)
    values[i] = lw_block_leading (season, batch, i, &on_weather);
}

static LwGrip
grip_at (LwLane *self,
         double  x,
         double  y)
{
  const LwBatch *batch = lw_session_batch (self->session);
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  double leading[LW_SCALE_MAX_STEPS];

  if (batch == NULL)
    return (LwGrip) { 0 };

  leading_values (self, leading);

  return lw_grip_at (lw_session_scale (self->session), batch, leading, self->add_height, lw_lane_block_height (self),
                     &letter, x, y);
}

void
lw_lane_snapshot_tag (LwLane      *self,
                      GtkSnapshot *snapshot)
{
  const LwPalette *palette = lw_look_palette (GTK_WIDGET (self));
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  double width = gtk_widget_get_width (GTK_WIDGET (self)), text_width, text_height, x, y;
  cairo_t *cr;

  if (self->tag == NULL)
    return;

  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width,
                                           (float) gtk_widget_get_height (GTK_WIDGET (self))));

  lw_letter_size (cr, &letter, 1, TRUE, self->tag, &text_width, &text_height);
  /* Beside the line, or over the edge: never on the block's own words. */
  x = self->grip.part == LW_GRIP_LINE ? self->tag_x + TAG_OFF : self->tag_x - text_width / 2;
  y = self->grip.part == LW_GRIP_LINE ? self->tag_y - text_height / 2 : 3;
  x = CLAMP (x, 8, MAX (width - text_width - 8, 8));

  lw_ink_use (cr, palette->choice);
  cairo_rectangle (cr, x - 8, y - 3, text_width + 16, text_height + 6);
  cairo_fill (cr);
  lw_ink_use (cr, palette->card);
  lw_letter_draw (cr, &letter, x, y, LW_TEXT_START, 1, TRUE, 0, self->tag);
  cairo_destroy (cr);
}

static void
set_tag (LwLane *self,
         double  x,
         double  y)
{
  const LwBatch *batch = lw_session_batch (self->session);
  int setting = lw_grip_setting (&self->grip, batch);

  g_clear_pointer (&self->tag, g_free);
  self->tag_x = x;
  self->tag_y = y;
  if (self->dragging && setting >= 0)
    self->tag = lw_say_setting ((LwSetting) setting,
                                lw_step_get (&batch->steps[self->grip.step], (LwSetting) setting));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
end_drag (LwLane  *self,
          gboolean keep)
{
  g_autofree char *label = NULL;
  const LwBatch *batch = lw_session_batch (self->session), *before;
  int setting = lw_grip_setting (&self->grip, batch);

  self->pressed = FALSE;
  if (!self->dragging)
    return;

  self->dragging = FALSE;
  g_clear_pointer (&self->tag, g_free);
  /* The step as it was knows whether it followed a log. */
  before = lw_session_base (self->session)->batches[lw_session_batch_index (self->session)];
  label = setting >= 0 ? lw_tell_set (&before->steps[self->grip.step], (LwSetting) setting)
                       /* Translators: a kind of step */
                       : g_strdup_printf (_ ("Move %s"), _ (lw_kind_row (batch->steps[self->grip.step].kind)->label));
  if (keep)
    lw_session_drag_commit (self->session, label);
  else
    lw_session_drag_cancel (self->session);
}

gboolean
lw_lane_drop_drag (LwLane *self)
{
  if (!self->dragging)
    return FALSE;

  end_drag (self, FALSE);
  gtk_gesture_set_state (self->gesture, GTK_EVENT_SEQUENCE_DENIED);

  return TRUE;
}

static void
drag_begin_cb (LwLane         *self,
               double          x,
               double          y,
               GtkGestureDrag *gesture)
{
  self->grip = grip_at (self, x, y);
  if (self->grip.part == LW_GRIP_NONE)
    {
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }

  self->pressed = TRUE;
  self->press_x = x;
  self->press_y = y;
  lw_session_choose_step (self->session, (int) self->grip.step);
  lw_lane_focus (self, self->grip.step);
}

static void
drag_update_cb (LwLane         *self,
                double          dx,
                double          dy,
                GtkGestureDrag *gesture)
{
  GdkModifierType held = gtk_event_controller_get_current_event_state (GTK_EVENT_CONTROLLER (gesture));
  /* Some desktops keep Alt with the pointer for themselves; Shift does the same. */
  gboolean fine = (held & (GDK_ALT_MASK | GDK_SHIFT_MASK)) != 0;
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));
  double x = self->press_x + dx, y = self->press_y + dy;
  LwSeason *next;

  if (!self->pressed)
    return;
  if (!self->dragging)
    {
      if (hypot (dx, dy) < THRESHOLD)
        return;
      self->dragging = TRUE;
      gtk_gesture_set_state (GTK_GESTURE (gesture), GTK_EVENT_SEQUENCE_CLAIMED);
      lw_session_drag_begin (self->session);
    }

  next = lw_grip_drag (&self->grip, lw_session_base (self->session),
                       (guint) lw_session_batch_index (self->session), lw_session_scale (self->session),
                       &letter, x, y, fine);
  if (next != NULL)
    {
      if (self->grip.part == LW_GRIP_BODY)
        lw_session_choose_step (self->session, (int) self->grip.step);
      lw_session_preview (self->session, next);
    }
  set_tag (self, x, y);
}

static void
drag_end_cb (LwLane         *self,
             double          dx,
             double          dy,
             GtkGestureDrag *gesture)
{
  guint step = self->grip.step;
  gboolean dragged = self->dragging;

  end_drag (self, TRUE);
  if (dragged)
    lw_lane_focus (self, step);
}

static void
drag_cancel_cb (LwLane           *self,
                GdkEventSequence *sequence,
                GtkGesture       *gesture)
{
  end_drag (self, FALSE);
}

static void
click_cb (LwLane          *self,
          int              n_press,
          double           x,
          double           y,
          GtkGestureClick *gesture)
{
  LwGrip grip = grip_at (self, x, y);
  guint button = gtk_gesture_single_get_current_button (GTK_GESTURE_SINGLE (gesture));

  if (grip.part == LW_GRIP_NONE)
    return;
  if ((button == GDK_BUTTON_PRIMARY && n_press == 2) || (button == GDK_BUTTON_SECONDARY && n_press == 1))
    {
      lw_session_choose_step (self->session, (int) grip.step);
      lw_lane_settings (self, grip.step);
    }
}

static void
motion_cb (LwLane *self,
           double  x,
           double  y)
{
  static const char *const cursors[] = {
    [LW_GRIP_NONE] = NULL, [LW_GRIP_EDGE] = "ew-resize", [LW_GRIP_LINE] = "ns-resize", [LW_GRIP_BODY] = "grab",
  };

  if (!self->dragging)
    gtk_widget_set_cursor_from_name (GTK_WIDGET (self), cursors[grip_at (self, x, y).part]);
}

void
lw_lane_add_pointer (LwLane *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->gesture = gtk_gesture_drag_new ();
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (self->gesture), GDK_BUTTON_PRIMARY);
  g_signal_connect_swapped (self->gesture, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (self->gesture, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (self->gesture, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect_swapped (self->gesture, "cancel", G_CALLBACK (drag_cancel_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (self->gesture));

  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (click), 0);
  g_signal_connect_swapped (click, "released", G_CALLBACK (click_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  gtk_gesture_group (click, self->gesture);

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

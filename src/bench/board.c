/* The board. While something is dragged the columns stay, but for the dragged one,
 * so that the pointer stays on what it holds. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/board-private.h"

#include <math.h>

#include "bench/desktop.h"
#include "bench/look.h"
#include "bench/panel-over.h"
#include "bench/time-ruler.h"
#include "draw/ticks.h"

#define GAP 8
#define LEAST_PANELS 200 /* height of what is seen of the panels */
#define TICK_APART 40.0

G_DEFINE_FINAL_TYPE (LwBoard, lw_board, GTK_TYPE_WIDGET)

static int
natural_height (GtkWidget *child)
{
  int natural;

  gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, -1, NULL, &natural, NULL, NULL);

  return natural;
}

static void
lw_board_measure (GtkWidget     *widget,
                  GtkOrientation orientation,
                  int            for_size,
                  int           *minimum,
                  int           *natural,
                  int           *minimum_baseline,
                  int           *natural_baseline)
{
  LwBoard *self = LW_BOARD (widget);
  double minutes[LW_SCALE_MAX_STEPS];
  int least, usual;
  guint n;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      /* A drag must not push the window about. */
      n = lw_board_step_minutes (self, minutes);
      *minimum = lw_session_is_dragging (self->session)
                   ? 1 : (int) ceil (lw_scale_least_width_view (self->view, minutes, n)
                                      + lw_panel_over_gutter (self->session, 0, 0)) + 2 * LW_BOARD_EDGE;
      *natural = *minimum;
      return;
    }

  *minimum = *natural = natural_height (self->lane) + natural_height (self->ruler) + GAP / 2
                        + lw_over_rows_height (LW_OVER_ROWS (self->rows), 0, 0);
  gtk_widget_measure (self->scrolled, orientation, -1, &least, &usual, NULL, NULL);
  *minimum += least + GAP;
  *natural += usual + GAP;
}

static void
allocate (GtkWidget *child,
          int        y,
          int        width,
          int        height)
{
  gtk_widget_size_allocate (child, &(GtkAllocation) { 0, y, width, MAX (height, 1) }, -1);
}

static void
lw_board_size_allocate (GtkWidget *widget,
                        int        width,
                        int        height,
                        int        baseline)
{
  LwBoard *self = LW_BOARD (widget);
  int y = natural_height (self->lane), ruler = natural_height (self->ruler);
  int rows;

  lw_board_lay_out (self);
  rows = lw_over_rows_height (LW_OVER_ROWS (self->rows), width, height);
  allocate (self->lane, 0, width, y);
  allocate (self->ruler, y, width, ruler);
  y += ruler + GAP / 2;
  if (rows > 0)
    {
      allocate (self->rows, y, width, rows);
      y += rows + GAP / 2;
    }
  allocate (self->scrolled, y, width, height - y - GAP);
}

static void
track_cb (LwBoard *self)
{
  if (self->batch != lw_session_batch_index (self->session))
    {
      self->batch = lw_session_batch_index (self->session);
      self->view.zoomed = -1;
    }
  lw_board_lay_out (self);
  lw_board_columns_moved (self);
  if (!lw_session_is_dragging (self->session))
    gtk_widget_queue_resize (GTK_WIDGET (self));
}

/* On blocks a double click opens the settings. */
static void
click_cb (LwBoard         *self,
          int              n_press,
          double           x,
          double           y,
          GtkGestureClick *gesture)
{
  guint step;
  double minute;

  if (n_press == 2 && y >= natural_height (self->lane)
      && lw_scale_at (lw_session_scale (self->session), x, &step, &minute))
    lw_board_zoom (self, step);
}

static gboolean
tick_cb (GtkWidget     *widget,
         GdkFrameClock *clock,
         gpointer       data)
{
  LwBoard *self = LW_BOARD (widget);

  self->tick = 0;
  lw_session_compute (self->session);

  return G_SOURCE_REMOVE;
}

static void
stale_cb (LwBoard *self)
{
  if (self->tick == 0)
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick_cb, NULL, NULL);
}

LwLane *
lw_board_lane (LwBoard *self)
{
  return LW_LANE (self->lane);
}

LwPanelStack *
lw_board_panels (LwBoard *self)
{
  return LW_PANEL_STACK (self->panels);
}

void
lw_board_read (LwBoard *self,
               int      by)
{
  const LwScale *scale = lw_session_scale (self->session);
  double minute = 0, gap;
  guint step = 0;

  if (scale->n == 0)
    return;

  if (lw_session_reading (self->session, &step, &minute))
    {
      gap = lw_ticks_minutes (scale->minutes[step], scale->width[step], TICK_APART);
      minute = by > 0 ? (floor (minute / gap + 1e-6) + by) * gap : (ceil (minute / gap - 1e-6) + by) * gap;
    }

  if (minute > scale->minutes[step] - 1e-6 && step + 1 < scale->n)
    {
      step++;
      minute = 0;
    }
  else if (minute < -1e-6 && step > 0)
    {
      step--;
      gap = lw_ticks_minutes (scale->minutes[step], scale->width[step], TICK_APART);
      minute = (ceil (scale->minutes[step] / gap - 1e-6) - 1) * gap;
    }

  lw_session_read_at (self->session, step, CLAMP (minute, 0, scale->minutes[step]));
}

static void
lw_board_dispose (GObject *object)
{
  LwBoard *self = LW_BOARD (object);

  g_clear_pointer (&self->scrolled, gtk_widget_unparent);
  g_clear_pointer (&self->lane, gtk_widget_unparent);
  g_clear_pointer (&self->ruler, gtk_widget_unparent);
  g_clear_pointer (&self->rows, gtk_widget_unparent);
  g_clear_object (&self->session);
  g_clear_object (&self->settings);

  G_OBJECT_CLASS (lw_board_parent_class)->dispose (object);
}

static void
lw_board_class_init (LwBoardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_board_dispose;
  widget_class->measure = lw_board_measure;
  widget_class->size_allocate = lw_board_size_allocate;

  lw_board_class_add_view (widget_class);
  gtk_widget_class_set_css_name (widget_class, "board");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lw_board_init (LwBoard *self)
{
  GtkGesture *click = gtk_gesture_click_new ();

  self->view = LW_SCALE_BY_STEP;
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (click_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

GtkWidget *
lw_board_new (LwSession *session)
{
  LwBoard *self = g_object_new (LW_TYPE_BOARD, NULL);

  self->session = g_object_ref (session);
  self->lane = lw_lane_new (session);
  self->ruler = lw_time_ruler_new (session);
  self->rows = lw_over_rows_new (session);
  self->settings = lw_desktop_settings ();
  self->panels = lw_panel_stack_new (session, self->settings);
  self->view.by_clock = self->settings != NULL && g_settings_get_boolean (self->settings, LW_BOARD_BY_CLOCK);
  self->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->scrolled), TRUE);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (self->scrolled), LEAST_PANELS);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scrolled), self->panels);
  gtk_widget_set_parent (self->lane, GTK_WIDGET (self));
  gtk_widget_set_parent (self->ruler, GTK_WIDGET (self));
  gtk_widget_set_parent (self->rows, GTK_WIDGET (self));
  gtk_widget_set_parent (self->scrolled, GTK_WIDGET (self));

  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (lw_overlays_of (session), "changed", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "stale", G_CALLBACK (stale_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}

/* The board. While something is dragged the columns stay, but for the dragged one,
 * so that the pointer stays on what it holds. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/board.h"

#include <math.h>

#include "bench/look.h"
#include "bench/state-panel.h"
#include "bench/time-ruler.h"
#include "draw/ticks.h"

#define EDGE 14   /* left and right of the columns: half a "+" button */
#define GAP 8
#define TICK_APART 40.0

static const LwQuantity shown[] = { LW_MOISTURE, LW_OXIDATION, LW_RUPTURE };

struct _LwBoard
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *lane;
  GtkWidget *ruler;
  GPtrArray *panels;
  guint tick;
};

G_DEFINE_FINAL_TYPE (LwBoard, lw_board, GTK_TYPE_WIDGET)

static guint
step_minutes (LwSession *session,
              double    *minutes)
{
  const LwBatch *batch = lw_session_batch (session);
  guint n = batch != NULL ? MIN (batch->n_steps, LW_SCALE_MAX_STEPS) : 0;

  for (guint i = 0; i < n; i++)
    minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);

  return n;
}

static void
lay_out_columns (LwBoard *self,
                 int      width)
{
  double minutes[LW_SCALE_MAX_STEPS];
  guint n;

  if (lw_session_is_dragging (self->session))
    return;

  n = step_minutes (self->session, minutes);
  lw_scale_fill (lw_session_scale (self->session), minutes, n, EDGE, MAX (width - 2 * EDGE, 1),
                 lw_look_is_rtl (GTK_WIDGET (self)));
}

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
  guint n;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      /* A drag must not push the window about. */
      n = step_minutes (self->session, minutes);
      *minimum = lw_session_is_dragging (self->session) ? 1 : (int) ceil (lw_scale_least_width (minutes, n)) + 2 * EDGE;
      *natural = *minimum;
      return;
    }

  *minimum = *natural = natural_height (self->lane) + natural_height (self->ruler) + GAP / 2;
  for (guint i = 0; i < self->panels->len; i++)
    {
      int least, usual;

      gtk_widget_measure (g_ptr_array_index (self->panels, i), orientation, -1, &least, &usual, NULL, NULL);
      *minimum += least + GAP;
      *natural += usual + GAP;
    }
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
  int y = natural_height (self->lane), ruler = natural_height (self->ruler), n = (int) self->panels->len;

  lay_out_columns (self, width);
  allocate (self->lane, 0, width, y);
  allocate (self->ruler, y, width, ruler);
  y += ruler + GAP / 2;

  for (int i = 0; i < n; i++)
    {
      int bottom = y + (height - y + GAP) / (n - i) - GAP;

      allocate (g_ptr_array_index (self->panels, i), y, width, bottom - y);
      y = bottom + GAP;
    }
}

/* Columns may have moved: all that stands on them is drawn anew. */
static void
track_cb (LwBoard *self)
{
  lay_out_columns (self, gtk_widget_get_width (GTK_WIDGET (self)));
  gtk_widget_queue_allocate (self->lane);
  lw_time_ruler_moved (LW_TIME_RULER (self->ruler));
  for (guint i = 0; i < self->panels->len; i++)
    lw_state_panel_moved (g_ptr_array_index (self->panels, i));
  if (!lw_session_is_dragging (self->session))
    gtk_widget_queue_resize (GTK_WIDGET (self));
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

  g_clear_pointer (&self->panels, g_ptr_array_unref);
  g_clear_pointer (&self->lane, gtk_widget_unparent);
  g_clear_pointer (&self->ruler, gtk_widget_unparent);
  g_clear_object (&self->session);

  G_OBJECT_CLASS (lw_board_parent_class)->dispose (object);
}

static void
lw_board_class_init (LwBoardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_board_dispose;
  widget_class->measure = lw_board_measure;
  widget_class->size_allocate = lw_board_size_allocate;

  gtk_widget_class_set_css_name (widget_class, "board");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
lw_board_init (LwBoard *self)
{
  self->panels = g_ptr_array_new_with_free_func ((GDestroyNotify) gtk_widget_unparent);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
lw_board_new (LwSession *session)
{
  LwBoard *self = g_object_new (LW_TYPE_BOARD, NULL);

  self->session = g_object_ref (session);
  self->lane = lw_lane_new (session);
  self->ruler = lw_time_ruler_new (session);
  gtk_widget_set_parent (self->lane, GTK_WIDGET (self));
  gtk_widget_set_parent (self->ruler, GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (shown); i++)
    {
      GtkWidget *panel = lw_state_panel_new (session, shown[i]);

      gtk_widget_set_parent (panel, GTK_WIDGET (self));
      g_ptr_array_add (self->panels, panel);
    }

  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "stale", G_CALLBACK (stale_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}

/* The board's columns: by step, by clock, or one of them large. Another view comes by a
 * short glide, for the eye to follow. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/board-private.h"

#include "bench/look.h"
#include "bench/panel-over.h"
#include "bench/time-ruler.h"

#define GLIDE_US 180000.0

static guint zoom_signal;

guint
lw_board_step_minutes (LwBoard *self,
                       double  *minutes)
{
  const LwBatch *batch = lw_session_batch (self->session);
  guint n = batch != NULL ? MIN (batch->n_steps, LW_SCALE_MAX_STEPS) : 0;

  for (guint i = 0; i < n; i++)
    minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);

  return n;
}

/* Where the columns belong, also while they glide there. */
static void
fill (LwBoard *self,
      LwScale *scale)
{
  double minutes[LW_SCALE_MAX_STEPS];
  guint n = lw_board_step_minutes (self, minutes);
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  gboolean rtl = lw_look_is_rtl (GTK_WIDGET (self));
  double gutter = lw_panel_over_gutter (self->session, width - 2 * LW_BOARD_EDGE,
                                        lw_scale_least_width_view (self->view, minutes, n));

  lw_scale_fill_view (scale, self->view, minutes, n, LW_BOARD_EDGE + (rtl ? gutter : 0),
                      MAX (width - 2 * LW_BOARD_EDGE - gutter, 1), rtl);
}

void
lw_board_lay_out (LwBoard *self)
{
  if (!lw_session_is_dragging (self->session) && self->glide == 0)
    fill (self, lw_session_scale (self->session));
}

void
lw_board_columns_moved (LwBoard *self)
{
  gtk_widget_queue_allocate (self->lane);
  lw_over_rows_moved (LW_OVER_ROWS (self->rows));
  lw_time_ruler_moved (LW_TIME_RULER (self->ruler));
  lw_panel_stack_moved (LW_PANEL_STACK (self->panels));
}

static gboolean
glide_cb (GtkWidget     *widget,
          GdkFrameClock *clock,
          gpointer       data)
{
  LwBoard *self = LW_BOARD (widget);
  double way = MIN ((double) (gdk_frame_clock_get_frame_time (clock) - self->glide_us) / GLIDE_US, 1);
  LwScale to;

  /* Taken hold of, or another batch: what stands now is what is held, or is wrong. */
  if (lw_session_is_dragging (self->session))
    way = 1;
  fill (self, &to);
  if (to.n != self->from.n)
    way = 1;

  if (way < 1)
    lw_scale_blend (lw_session_scale (self->session), &self->from, &to, 1 - (1 - way) * (1 - way));
  else
    *lw_session_scale (self->session) = to;
  lw_board_columns_moved (self);
  if (way < 1)
    return G_SOURCE_CONTINUE;

  self->glide = 0;

  return G_SOURCE_REMOVE;
}

static void
change_view (LwBoard    *self,
             LwScaleView view)
{
  GtkWidget *widget = GTK_WIDGET (self);
  gboolean glides = FALSE;

  if (lw_session_is_dragging (self->session))
    return;

  self->view = view;
  self->from = *lw_session_scale (self->session);
  /* At once: the ruler is as high as its way of time needs. */
  lw_session_scale (self->session)->view = view;
  g_object_get (gtk_widget_get_settings (widget), "gtk-enable-animations", &glides, NULL);
  if (glides && gtk_widget_get_mapped (widget) && self->glide == 0)
    self->glide = gtk_widget_add_tick_callback (widget, glide_cb, NULL, NULL);
  if (self->glide != 0)
    self->glide_us = gdk_frame_clock_get_frame_time (gtk_widget_get_frame_clock (widget));
  else
    lw_board_lay_out (self);

  lw_board_columns_moved (self);
  gtk_widget_queue_resize (self->ruler);
}

static void
zoom_to (LwBoard *self,
         int      step)
{
  if (lw_session_is_dragging (self->session))
    return;

  change_view (self, (LwScaleView) { self->view.by_clock, step, self->view.logs });
  g_signal_emit (self, zoom_signal, 0, step);
}

void
lw_board_zoom (LwBoard *self,
               guint    step)
{
  zoom_to (self, (int) step == self->view.zoomed ? -1 : (int) step);
}

static void
zoom (GtkWidget  *widget,
      const char *name,
      GVariant   *target)
{
  lw_board_zoom (LW_BOARD (widget), g_variant_get_uint32 (target));
}

static void
follow (GtkWidget  *widget,
        const char *name,
        GVariant   *target)
{
  LwBoard *self = LW_BOARD (widget);
  int step = (int) g_variant_get_uint32 (target);

  if (self->view.zoomed >= 0 && step != self->view.zoomed)
    zoom_to (self, step);
}

void
lw_board_class_add_view (GtkWidgetClass *widget_class)
{
  zoom_signal = g_signal_new ("zoom", G_TYPE_FROM_CLASS (widget_class), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                              G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_install_action (widget_class, "board.zoom", "u", zoom);
  gtk_widget_class_install_action (widget_class, "board.follow", "u", follow);
}

gboolean
lw_board_zoom_out (LwBoard *self)
{
  if (self->view.zoomed < 0)
    return FALSE;

  zoom_to (self, -1);

  return TRUE;
}

void
lw_board_set_by_clock (LwBoard *self,
                       gboolean by_clock)
{
  if (self->view.by_clock == by_clock)
    return;

  change_view (self, (LwScaleView) { by_clock, self->view.zoomed, self->view.logs });
  if (self->settings != NULL)
    g_settings_set_boolean (self->settings, LW_BOARD_BY_CLOCK, self->view.by_clock);
}

void
lw_board_show_logs (LwBoard *self,
                    gboolean logs)
{
  self->view.logs = lw_session_scale (self->session)->view.logs = logs;
  lw_board_columns_moved (self);
}

gboolean
lw_board_is_by_clock (LwBoard *self)
{
  return self->view.by_clock;
}

/* The line. It is drawn anew only where it would stand elsewhere: as time goes on, and as the columns move. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/now-line.h"

#include <math.h>

#include "bench/look.h"
#include "season/text.h"

#define WIDE 2
#define DASH 7
#define GAP 4
#define HEAD 6   /* of the sign at its top, px to either side */
#define PAD 4

struct _LwNowLine
{
  GtkWidget parent_instance;

  LwSession *session;
  LwRunning *running;
  LwBoard *board;      /* under this */
  double x;            /* where it stands; NAN: nowhere */
  GdkFrameClock *clock;
  gulong update;
};

G_DEFINE_FINAL_TYPE (LwNowLine, lw_now_line, GTK_TYPE_WIDGET)

static double
place (LwNowLine *self)
{
  const LwScale *scale = lw_session_scale (self->session);
  double minute;
  guint step;

  if (!lw_running_in_hand (self->running) || !lw_running_now (self->running, &step, &minute) || step >= scale->n)
    return NAN;

  return floor (lw_scale_x (scale, step, MIN (minute, scale->minutes[step])));
}

static void
moved_cb (LwNowLine *self)
{
  double x = place (self);

  if (x == self->x || (isnan (x) && isnan (self->x)))
    return;

  self->x = x;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
draw_tag (LwNowLine   *self,
          GtkSnapshot *snapshot,
          GdkRGBA      ink,
          GdkRGBA      card)
{
  /* Translators: the present moment, at a line */
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), _ ("now"));
  int width, height, y = gtk_widget_get_height (GTK_WIDGET (lw_board_lane (self->board))) + 1;
  float x;

  pango_layout_get_pixel_size (layout, &width, &height);
  x = (float) CLAMP (self->x - width / 2.0, PAD, MAX (gtk_widget_get_width (GTK_WIDGET (self)) - width - PAD, PAD));
  gtk_snapshot_append_color (snapshot, &ink, &GRAPHENE_RECT_INIT (x - PAD, (float) y, (float) width + 2 * PAD,
                                                                  (float) height));
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (x, (float) y));
  gtk_snapshot_append_layout (snapshot, layout, &card);
  gtk_snapshot_restore (snapshot);
}

static void
lw_now_line_snapshot (GtkWidget   *widget,
                      GtkSnapshot *snapshot)
{
  LwNowLine *self = LW_NOW_LINE (widget);
  const LwPalette *palette = lw_look_palette (widget);
  GdkRGBA ink = lw_look_rgba (palette->ink), card = lw_look_rgba (palette->card);
  int height = gtk_widget_get_height (widget);

  if (isnan (self->x))
    return;

  for (int y = 0; y < height; y += DASH + GAP)
    gtk_snapshot_append_color (snapshot, &ink, &GRAPHENE_RECT_INIT ((float) self->x, (float) y, WIDE,
                                                                    (float) MIN (DASH, height - y)));
  for (int i = 0; i < HEAD; i++)
    gtk_snapshot_append_color (snapshot, &ink, &GRAPHENE_RECT_INIT ((float) self->x - (float) (HEAD - i) + 1, (float) i,
                                                                    (float) (2 * (HEAD - i)), 1));
  draw_tag (self, snapshot, ink, card);
}

/* The columns may glide or be dragged: any frame may move them. */
static void
lw_now_line_realize (GtkWidget *widget)
{
  LwNowLine *self = LW_NOW_LINE (widget);

  GTK_WIDGET_CLASS (lw_now_line_parent_class)->realize (widget);
  self->clock = g_object_ref (gtk_widget_get_frame_clock (widget));
  self->update = g_signal_connect_swapped (self->clock, "layout", G_CALLBACK (moved_cb), self);
}

static void
lw_now_line_unrealize (GtkWidget *widget)
{
  LwNowLine *self = LW_NOW_LINE (widget);

  g_clear_signal_handler (&self->update, self->clock);
  g_clear_object (&self->clock);
  GTK_WIDGET_CLASS (lw_now_line_parent_class)->unrealize (widget);
}

static void
lw_now_line_dispose (GObject *object)
{
  LwNowLine *self = LW_NOW_LINE (object);

  g_clear_object (&self->session);
  g_clear_object (&self->running);

  G_OBJECT_CLASS (lw_now_line_parent_class)->dispose (object);
}

static void
lw_now_line_class_init (LwNowLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_now_line_dispose;
  widget_class->snapshot = lw_now_line_snapshot;
  widget_class->realize = lw_now_line_realize;
  widget_class->unrealize = lw_now_line_unrealize;

  gtk_widget_class_set_css_name (widget_class, "nowline");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
lw_now_line_init (LwNowLine *self)
{
  self->x = NAN;
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

GtkWidget *
lw_now_line_new (LwSession *session,
                 LwRunning *running,
                 LwBoard   *board)
{
  LwNowLine *self = g_object_new (LW_TYPE_NOW_LINE, NULL);

  self->session = g_object_ref (session);
  self->running = g_object_ref (running);
  self->board = board;
  g_signal_connect_object (running, "moved", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}

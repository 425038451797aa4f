/* The bar. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/share-bar.h"

#include <math.h>

#include "bench/look.h"

#define HEIGHT 10
#define LEAST_WIDTH 40
#define HATCH_APART 4.0

struct _LwShareBar
{
  GtkWidget parent_instance;

  double share;
  double more;
  double error;
};

G_DEFINE_FINAL_TYPE (LwShareBar, lw_share_bar, GTK_TYPE_WIDGET)

static void
fill (cairo_t *cr,
      LwInk    ink,
      double   from,
      double   to,
      double   top)
{
  cairo_rectangle (cr, from, top, to - from, HEIGHT);
  lw_ink_use (cr, ink);
  cairo_fill (cr);
}

static void
hatch (cairo_t *cr,
       LwInk    ink,
       double   from,
       double   to,
       double   top)
{
  cairo_save (cr);
  cairo_rectangle (cr, from, top, to - from, HEIGHT);
  cairo_clip_preserve (cr);
  for (double x = from - HEIGHT; x < to; x += HATCH_APART)
    {
      cairo_move_to (cr, x, top + HEIGHT);
      cairo_line_to (cr, x + HEIGHT, top);
    }
  cairo_set_line_width (cr, 1.2);
  lw_ink_use (cr, ink);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
lw_share_bar_snapshot (GtkWidget   *widget,
                       GtkSnapshot *snapshot)
{
  LwShareBar *self = LW_SHARE_BAR (widget);
  const LwPalette *palette = lw_look_palette (widget);
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double top = floor ((height - HEIGHT) / 2), share = width * CLAMP (self->share, 0, 1);
  double end = isnan (self->more) ? share : MAX (width * CLAMP (self->more, 0, 1), share);
  double low = MAX (end - width * self->error, 0), high = MIN (end + width * self->error, width);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  if (lw_look_is_rtl (widget))
    {
      cairo_translate (cr, width, 0);
      cairo_scale (cr, -1, 1);
    }
  fill (cr, lw_ink_thin (palette->rule, 0.6), 0, width, top);
  fill (cr, palette->choice, 0, share, top);
  if (end > share)
    hatch (cr, palette->choice, share, end, top);

  cairo_rectangle (cr, low, top + HEIGHT / 2.0 - 0.5, high - low, 1);
  cairo_rectangle (cr, floor (low), top - 1, 1, HEIGHT + 2);
  cairo_rectangle (cr, MIN (floor (high), width - 1), top - 1, 1, HEIGHT + 2);
  lw_ink_use (cr, palette->ink);
  cairo_fill (cr);
  cairo_destroy (cr);
}

static void
lw_share_bar_measure (GtkWidget     *widget,
                      GtkOrientation orientation,
                      int            for_size,
                      int           *minimum,
                      int           *natural,
                      int           *minimum_baseline,
                      int           *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_VERTICAL ? HEIGHT + 4 : LEAST_WIDTH;
}

static void
lw_share_bar_class_init (LwShareBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = lw_share_bar_snapshot;
  widget_class->measure = lw_share_bar_measure;

  gtk_widget_class_set_css_name (widget_class, "sharebar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_METER);
}

static void
lw_share_bar_init (LwShareBar *self)
{
}

GtkWidget *
lw_share_bar_new (double      share,
                  double      more,
                  double      error,
                  const char *name,
                  const char *words)
{
  LwShareBar *self = g_object_new (LW_TYPE_SHARE_BAR, "hexpand", TRUE, NULL);

  self->share = share;
  self->more = more;
  self->error = error;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words, GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, 0.0,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, 1.0, GTK_ACCESSIBLE_PROPERTY_VALUE_NOW,
                                  CLAMP (share, 0, 1), -1);

  return GTK_WIDGET (self);
}

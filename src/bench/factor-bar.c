/* The bar. Shares run from 0 to 1; times on a logarithmic scale from a tenth to ten, 1 in the middle. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/factor-bar.h"

#include <math.h>

#include "bench/look.h"

#define HEIGHT 10
#define LEAST_WIDTH 48

struct _LwFactorBar
{
  GtkWidget parent_instance;

  double value;
  gboolean times;
  gboolean strong;
};

G_DEFINE_FINAL_TYPE (LwFactorBar, lw_factor_bar, GTK_TYPE_WIDGET)

/* Where the bar begins and ends, as shares of its width. */
static void
extent (const LwFactorBar *self,
        double            *from,
        double            *to)
{
  *from = self->times ? 0.5 : 0;
  *to = self->value;
  if (self->times)
    *to = self->value > 0 ? 0.5 + 0.5 * CLAMP (log10 (self->value), -1, 1) : 0;
  *to = CLAMP (*to, 0, 1);
}

static void
append (GtkSnapshot *snapshot,
        LwInk        ink,
        double       x,
        double       y,
        double       width,
        double       height)
{
  GdkRGBA color = lw_look_rgba (ink);

  gtk_snapshot_append_color (snapshot, &color,
                             &GRAPHENE_RECT_INIT ((float) x, (float) y, (float) width, (float) height));
}

static void
lw_factor_bar_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  LwFactorBar *self = LW_FACTOR_BAR (widget);
  const LwPalette *palette = lw_look_palette (widget);
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  double top = floor ((height - HEIGHT) / 2), from, to, begin;

  extent (self, &from, &to);
  begin = width * MIN (from, to);
  if (lw_look_is_rtl (widget))
    begin = width - width * MAX (from, to);

  append (snapshot, lw_ink_thin (palette->rule, 0.6), 0, top, width, HEIGHT);
  append (snapshot, self->strong ? palette->warning : palette->choice, begin, top, MAX (width * fabs (to - from), 1),
          HEIGHT);
  if (self->times)
    append (snapshot, palette->ink, floor (width / 2), top - 2, 1, HEIGHT + 4);
}

static void
lw_factor_bar_measure (GtkWidget     *widget,
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
lw_factor_bar_class_init (LwFactorBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = lw_factor_bar_snapshot;
  widget_class->measure = lw_factor_bar_measure;

  gtk_widget_class_set_css_name (widget_class, "factorbar");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_METER);
}

static void
lw_factor_bar_init (LwFactorBar *self)
{
}

GtkWidget *
lw_factor_bar_new (void)
{
  return g_object_new (LW_TYPE_FACTOR_BAR, NULL);
}

void
lw_factor_bar_set (LwFactorBar *self,
                   double       value,
                   gboolean     times,
                   gboolean     strong)
{
  if (value == self->value && times == self->times && strong == self->strong)
    return;

  self->value = value;
  self->times = times;
  self->strong = strong;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
lw_factor_bar_tell (LwFactorBar *self,
                    const char  *name,
                    const char  *value)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, value,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MIN, 0.0,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_MAX, self->times ? 10.0 : 1.0,
                                  GTK_ACCESSIBLE_PROPERTY_VALUE_NOW, CLAMP (self->value, 0, self->times ? 10.0 : 1.0),
                                  -1);
}

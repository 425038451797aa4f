/* The strip. What stays is the last child, so that it is drawn over the cells and picked before them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-strip.h"

#include "bench/look.h"

struct _LwKnockStrip
{
  GtkWidget parent_instance;

  const LwKnockColumns *columns;
  GtkWidget *first;
  GtkWidget *cells[LW_N_QUANTITIES];
};

G_DEFINE_FINAL_TYPE (LwKnockStrip, lw_knock_strip, GTK_TYPE_WIDGET)

static void
lw_knock_strip_measure (GtkWidget     *widget,
                        GtkOrientation orientation,
                        int            for_size,
                        int           *minimum,
                        int           *natural,
                        int           *minimum_baseline,
                        int           *natural_baseline)
{
  LwKnockStrip *self = LW_KNOCK_STRIP (widget);
  const LwKnockColumns *columns = self->columns;
  int least, usual;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = columns->first;
      *natural = columns->first + columns->starts[LW_N_QUANTITIES];
      return;
    }

  gtk_widget_measure (self->first, orientation, columns->first, &least, &usual, NULL, NULL);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      int height;

      gtk_widget_measure (self->cells[q], orientation, columns->starts[q + 1] - columns->starts[q], &height, NULL, NULL,
                          NULL);
      least = MAX (least, height);
    }
  *minimum = *natural = least;
}

static void
place (LwKnockStrip *self,
       GtkWidget    *child,
       int           x,
       int           width,
       int           all,
       int           height)
{
  gtk_widget_size_allocate (child, &(GtkAllocation) { lw_look_is_rtl (GTK_WIDGET (self)) ? all - x - width : x, 0, width,
                                                      height }, -1);
}

static void
lw_knock_strip_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  LwKnockStrip *self = LW_KNOCK_STRIP (widget);
  const LwKnockColumns *columns = self->columns;

  /* A column that has no room whole, if it is not the only one, waits beyond the edge: half a number would be another
   * number. */
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      int x = columns->first + columns->starts[q] - columns->offset, wide = columns->starts[q + 1] - columns->starts[q];

      place (self, self->cells[q], x + wide <= width || x <= columns->first ? x : MAX (x, width), wide, width, height);
    }
  place (self, self->first, 0, columns->first, width, height);
}

static void
lw_knock_strip_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (lw_knock_strip_parent_class)->dispose (object);
}

static void
lw_knock_strip_class_init (LwKnockStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_knock_strip_dispose;
  widget_class->measure = lw_knock_strip_measure;
  widget_class->size_allocate = lw_knock_strip_size_allocate;

  gtk_widget_class_set_css_name (widget_class, "knockstrip");
}

static void
lw_knock_strip_init (LwKnockStrip *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
lw_knock_strip_new (const LwKnockColumns *columns,
                    GtkWidget            *first,
                    GtkWidget *const      cells[LW_N_QUANTITIES],
                    GtkAccessibleRole     role)
{
  LwKnockStrip *self = g_object_new (LW_TYPE_KNOCK_STRIP, "accessible-role", role, NULL);

  self->columns = columns;
  self->first = first;
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      self->cells[q] = cells[q];
      gtk_widget_set_parent (cells[q], GTK_WIDGET (self));
    }
  gtk_widget_set_parent (first, GTK_WIDGET (self));

  return GTK_WIDGET (self);
}

GtkWidget *
lw_knock_strip_first (LwKnockStrip *self)
{
  return self->first;
}

GtkWidget *
lw_knock_strip_cell (LwKnockStrip *self,
                     LwQuantity    of)
{
  return self->cells[of];
}

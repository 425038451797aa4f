/* The table's layout: headings above, rows in sight under them, both on the same columns. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-table-private.h"
#include "bench/look.h"

#define LEAST_WIDTH 160
#define LEAST_ROWS 3

static void
configure (LwKnockTable  *self,
           GtkOrientation orientation,
           double         upper,
           double         page,
           double         step)
{
  GtkAdjustment *adjustment = self->adjustments[orientation];
  gboolean mirrored = orientation == GTK_ORIENTATION_HORIZONTAL && lw_look_is_rtl (GTK_WIDGET (self));
  double value = gtk_adjustment_get_value (adjustment);

  upper = MAX (upper, page);
  /* Read from the right, the start is at the far end. */
  if (mirrored)
    value = upper - page - self->columns.offset;
  gtk_adjustment_configure (adjustment, CLAMP (value, 0, upper - page), 0, upper, step, 0.9 * page, page);
}

/* The first column that begins there or later: half a number, its sign cut off, would be another number. */
static int
whole_columns (const LwKnockColumns *columns,
               double                offset)
{
  guint q = 0;

  while (q + 1 < LW_N_QUANTITIES && columns->starts[q] < (int) offset)
    q++;

  return columns->starts[q];
}

void
lw_knock_table_move_columns (LwKnockTable *self)
{
  GtkAdjustment *across = self->adjustments[GTK_ORIENTATION_HORIZONTAL];
  double value = gtk_adjustment_get_value (across);
  int offset;

  if (lw_look_is_rtl (GTK_WIDGET (self)))
    value = gtk_adjustment_get_upper (across) - gtk_adjustment_get_page_size (across) - value;
  offset = whole_columns (&self->columns, value);
  if (self->columns.offset == offset)
    return;

  self->columns.offset = offset;
  gtk_widget_queue_allocate (self->heads);
  for (guint i = 0; i < self->slots->len; i++)
    gtk_widget_queue_allocate (self->slots->pdata[i]);
}

static int
height_of (GtkWidget *strip)
{
  int height;

  gtk_widget_measure (strip, GTK_ORIENTATION_VERTICAL, -1, &height, NULL, NULL, NULL);

  return height;
}

static void
ensure_columns (LwKnockTable *self,
                int           width)
{
  if (!self->columns_due && width == self->width)
    return;

  self->columns_due = FALSE;
  self->width = width;
  lw_knock_columns_measure (self, width);
  gtk_widget_queue_resize (self->heads);
}

static void
lay_out (LwKnockTable *self,
         int           width,
         int           height)
{
  guint slots;

  ensure_columns (self, width);
  self->head_height = height_of (self->heads);
  self->row_height = MAX (height_of (self->slots->pdata[0]), 1);
  slots = (guint) (MAX (height - self->head_height, 0) / self->row_height) + 2;
  if (slots > self->slots->len)
    lw_knock_table_unbind (self);
  while (self->slots->len < slots)
    lw_knock_table_add_slot (self);

  configure (self, GTK_ORIENTATION_HORIZONTAL, self->columns.starts[LW_N_QUANTITIES],
             MAX (width - self->columns.first, 0), 0.5 * self->columns.first);
  configure (self, GTK_ORIENTATION_VERTICAL, self->row_height * (double) lw_knock_table_n_rows (self),
             MAX (height - self->head_height, 0), self->row_height);
}

void
lw_knock_table_size_allocate (GtkWidget *widget,
                              int        width,
                              int        height,
                              int        baseline)
{
  LwKnockTable *self = LW_KNOCK_TABLE (widget);
  double scrolled;

  self->laying_out = TRUE;
  lay_out (self, width, height);
  self->laying_out = FALSE;
  lw_knock_table_move_columns (self);
  lw_knock_table_bind (self);
  scrolled = gtk_adjustment_get_value (self->adjustments[GTK_ORIENTATION_VERTICAL]);
  for (guint i = 0; i < self->slots->len; i++)
    {
      int row = g_array_index (self->slot_rows, int, i);

      /* GTK wants to be asked before. */
      height_of (self->slots->pdata[i]);
      if (row >= 0)
        gtk_widget_size_allocate (self->slots->pdata[i],
                                  &(GtkAllocation) { 0, self->head_height + row * self->row_height - (int) scrolled, width,
                                                     self->row_height }, -1);
    }
  gtk_widget_size_allocate (self->heads, &(GtkAllocation) { 0, 0, width, self->head_height }, -1);
}

void
lw_knock_table_measure (GtkWidget     *widget,
                        GtkOrientation orientation,
                        int            for_size,
                        int           *minimum,
                        int           *natural,
                        int           *minimum_baseline,
                        int           *natural_baseline)
{
  LwKnockTable *self = LW_KNOCK_TABLE (widget);

  *minimum = *natural = LEAST_WIDTH;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;

  ensure_columns (self, self->width);
  *minimum = *natural = height_of (self->heads) + LEAST_ROWS * height_of (self->slots->pdata[0]);
}

/* The table's rows. Only those in sight have widgets; each keeps its slot while it is in sight, so that
 * scrolling by a row fills one slot anew. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-cell.h"
#include "bench/knock-table-private.h"
#include "bench/look.h"
#include "draw/words.h"

guint
lw_knock_table_n_rows (LwKnockTable *self)
{
  return self->list != NULL ? self->list->rows->len : 0;
}

int
lw_knock_table_page (LwKnockTable *self)
{
  return MAX ((gtk_widget_get_height (GTK_WIDGET (self)) - self->head_height) / MAX (self->row_height, 1), 1);
}

void
lw_knock_table_add_slot (LwKnockTable *self)
{
  GtkWidget *cells[LW_N_QUANTITIES], *slot;
  int nothing = -1;

  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    cells[q] = lw_knock_cell_new ();
  slot = lw_knock_strip_new (&self->columns, lw_knock_name_new (), cells, GTK_ACCESSIBLE_ROLE_ROW);
  /* Under the headings. */
  gtk_widget_insert_before (slot, GTK_WIDGET (self), self->heads);
  gtk_widget_set_child_visible (slot, FALSE);
  g_ptr_array_add (self->slots, slot);
  g_array_append_val (self->slot_rows, nothing);
}

static void
show_cell (LwKnockTable *self,
           LwKnockCell  *cell,
           guint         row,
           LwQuantity    quantity)
{
  const LwKnock *knock = lw_knock_list_row (self->list, row);
  g_autofree char *number = lw_words_change (quantity, knock->effect[quantity]);
  g_autofree char *said = lw_knock_list_tell (self->list, row, quantity);

  lw_knock_cell_set (cell, number, said, lw_knock_list_share (self->list, row, quantity),
                     lw_knock_list_is_faint (self->list, row, quantity));
  lw_knock_cell_mark (cell, self->chosen && self->chosen_quantity == quantity
                              && self->chosen_handle.step == knock->handle.step
                              && self->chosen_handle.setting == knock->handle.setting);
}

/* A slot that gets a row where the keyboard is not lets go of it: the table has it until an arrow is pressed. */
static void
show_row (LwKnockTable *self,
          guint         at,
          int           row)
{
  LwKnockStrip *slot = self->slots->pdata[at];
  int *shown = &g_array_index (self->slot_rows, int, at);

  if (*shown == row)
    return;
  if (row != self->row && gtk_widget_get_focus_child (GTK_WIDGET (slot)) != NULL)
    gtk_root_set_focus (gtk_widget_get_root (GTK_WIDGET (self)), GTK_WIDGET (self));

  *shown = row;
  gtk_widget_set_child_visible (GTK_WIDGET (slot), row >= 0);
  if (row < 0)
    return;

  lw_knock_name_set (lw_knock_strip_first (slot), self->list, (guint) row);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    show_cell (self, LW_KNOCK_CELL (lw_knock_strip_cell (slot, q)), (guint) row, q);
}

static int
first_row (LwKnockTable *self)
{
  return (int) gtk_adjustment_get_value (self->adjustments[GTK_ORIENTATION_VERTICAL]) / MAX (self->row_height, 1);
}

void
lw_knock_table_bind (LwKnockTable *self)
{
  int n = (int) self->slots->len, first = first_row (self);

  for (int row = first; row < first + n; row++)
    show_row (self, (guint) (row % n), row < (int) lw_knock_table_n_rows (self) ? row : -1);
}

void
lw_knock_table_unbind (LwKnockTable *self)
{
  for (guint i = 0; i < self->slots->len; i++)
    g_array_index (self->slot_rows, int, i) = -2;
}

GtkWidget *
lw_knock_table_widget (LwKnockTable *self,
                       int           row,
                       int           column)
{
  LwKnockStrip *strip = LW_KNOCK_STRIP (self->heads);

  if (row != LW_KNOCK_HEADS)
    {
      guint at = (guint) row % self->slots->len;

      if (g_array_index (self->slot_rows, int, at) != row)
        return NULL;
      strip = self->slots->pdata[at];
    }

  return column == LW_KNOCK_FIRST ? lw_knock_strip_first (strip) : lw_knock_strip_cell (strip, (LwQuantity) column);
}

static void
show_sight (GtkAdjustment *adjustment,
            gboolean       mirrored,
            double         from,
            double         to)
{
  double upper = gtk_adjustment_get_upper (adjustment);

  gtk_adjustment_clamp_page (adjustment, mirrored ? upper - to : from, mirrored ? upper - from : to);
}

void
lw_knock_table_go (LwKnockTable *self,
                   int           row,
                   int           column)
{
  GtkWidget *widget;

  self->row = CLAMP (row, LW_KNOCK_HEADS, (int) lw_knock_table_n_rows (self) - 1);
  self->column = CLAMP (column, self->row == LW_KNOCK_HEADS ? LW_KNOCK_FIRST : 0, LW_N_QUANTITIES - 1);
  if (self->row >= 0)
    show_sight (self->adjustments[GTK_ORIENTATION_VERTICAL], FALSE, self->row * self->row_height,
                (self->row + 1) * self->row_height);
  if (self->column >= 0)
    show_sight (self->adjustments[GTK_ORIENTATION_HORIZONTAL], lw_look_is_rtl (GTK_WIDGET (self)),
                self->columns.starts[self->column], self->columns.starts[self->column + 1]);
  lw_knock_table_bind (self);

  widget = lw_knock_table_widget (self, self->row, self->column);
  if (widget != NULL)
    gtk_widget_grab_focus (widget);
}

void
lw_knock_table_choose (LwKnockTable *self,
                       int           row,
                       int           column)
{
  self->chosen = TRUE;
  self->chosen_handle = lw_knock_list_row (self->list, (guint) row)->handle;
  self->chosen_quantity = (LwQuantity) column;
  lw_knock_table_unbind (self);
  lw_knock_table_go (self, row, column);
  g_signal_emit_by_name (self, "chosen", (guint) row, (guint) column);
}

/* The keyboard stays with its setting where the order changed. */
static int
same_row (LwKnockTable      *self,
          const LwKnockList *next)
{
  int row = self->row;

  if (row < 0 || row >= (int) lw_knock_table_n_rows (self) || next == NULL)
    return row;

  row = lw_knock_list_find (next, &lw_knock_list_row (self->list, (guint) row)->handle);

  return row >= 0 ? row : MIN (self->row, (int) next->rows->len - 1);
}

void
lw_knock_table_show (LwKnockTable *self,
                     LwKnockList  *list)
{
  GtkWidget *focus = gtk_widget_get_focus_child (GTK_WIDGET (self));

  if (list != NULL)
    lw_knock_list_sort (list, self->by);
  else
    self->chosen = FALSE;
  self->row = same_row (self, list);
  g_clear_pointer (&self->list, lw_knock_list_free);
  self->list = list;
  self->columns_due = TRUE;
  lw_knock_table_unbind (self);
  lw_knock_table_bind (self);
  if (focus != NULL && self->row >= 0 && lw_knock_table_n_rows (self) > 0)
    lw_knock_table_go (self, self->row, self->column);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

const LwKnockList *
lw_knock_table_list (LwKnockTable *self)
{
  return self->list;
}

/* What the table's files share: knock-table.c is the widget, knock-layout.c puts rows and
 * columns in their places, knock-rows.c fills the rows in sight, knock-table-keys.c takes
 * the keys, knock-columns.c makes headings and names and says how wide the columns are. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/knock-strip.h"
#include "bench/knock-table.h"

#define LW_KNOCK_HEADS (-1)   /* as a row: the headings */
#define LW_KNOCK_FIRST (-1)   /* as a column: what stays in sight; only the heading can have the keyboard */

struct _LwKnockTable
{
  GtkWidget parent_instance;

  LwKnockList *list;
  int by;                     /* the order of the rows, as in LwKnockList */
  LwKnockColumns columns;
  gboolean columns_due;
  gboolean laying_out;        /* what changes about scrolling is then no wish of the maker's */

  GtkWidget *heads;           /* LwKnockStrip of toggle buttons */
  GPtrArray *slots;           /* LwKnockStrip: row `i` of the list is shown by slot `i` modulo their number */
  GArray *slot_rows;          /* int: what each shows, -1 nothing */
  int width;                  /* that the columns were measured for */
  int row_height;
  int head_height;

  int row;                    /* where the keyboard is or was */
  int column;
  gboolean chosen;            /* whether there is a cell that was chosen last: */
  LwHandle chosen_handle;
  LwQuantity chosen_quantity;

  GtkAdjustment *adjustments[2];   /* by GtkOrientation */
  GtkScrollablePolicy policies[2];
};

/* knock-rows.c: makes the slots show the rows in sight; forgets what they show; makes one more. */
void       lw_knock_table_bind        (LwKnockTable *self);
void       lw_knock_table_unbind      (LwKnockTable *self);
void       lw_knock_table_add_slot    (LwKnockTable *self);
/* Scrolls the cell into sight and gives it the keyboard. */
void       lw_knock_table_go          (LwKnockTable *self,
                                       int           row,
                                       int           column);
void       lw_knock_table_choose      (LwKnockTable *self,
                                       int           row,
                                       int           column);
/* (nullable) the widget of a cell or heading; NULL where it is out of sight. */
GtkWidget *lw_knock_table_widget      (LwKnockTable *self,
                                       int           row,
                                       int           column);
guint      lw_knock_table_n_rows      (LwKnockTable *self);
/* Rows that fit. */
int        lw_knock_table_page        (LwKnockTable *self);

/* knock-columns.c: the words of a heading, and the widths of all columns in a table that is `width` wide. */
GtkWidget *lw_knock_heading_new       (LwQuantity    quantity);
GtkWidget *lw_knock_corner_new        (void);
GtkWidget *lw_knock_name_new          (void);
void       lw_knock_name_set          (GtkWidget         *name,
                                       const LwKnockList *list,
                                       guint              row);
void       lw_knock_columns_measure   (LwKnockTable *self,
                                       int           width);

/* knock-layout.c; the columns follow how far they are scrolled away from their start. */
void       lw_knock_table_move_columns (LwKnockTable *self);
void       lw_knock_table_measure     (GtkWidget     *widget,
                                       GtkOrientation orientation,
                                       int            for_size,
                                       int           *minimum,
                                       int           *natural,
                                       int           *minimum_baseline,
                                       int           *natural_baseline);
void       lw_knock_table_size_allocate (GtkWidget   *widget,
                                       int            width,
                                       int            height,
                                       int            baseline);

/* knock-table-keys.c */
void       lw_knock_table_add_keys    (LwKnockTable *self);

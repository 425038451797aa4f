/* The knock-on table: settings down, outcomes across. First column and headings stay in
 * sight while it scrolls; every cell can have the keyboard; a heading orders the rows. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/knock-list.h"

#define LW_TYPE_KNOCK_TABLE (lw_knock_table_get_type ())
G_DECLARE_FINAL_TYPE (LwKnockTable, lw_knock_table, LW, KNOCK_TABLE, GtkWidget)

/* Scrollable; put it in a GtkScrolledWindow. Signal
 * "chosen" (guint row, guint quantity): a cell was clicked, or Return or Space pressed on it. */
GtkWidget         *lw_knock_table_new  (void);

/* `list` (transfer full) (nullable) takes the place of what was shown, in the order that the maker chose. */
void               lw_knock_table_show (LwKnockTable *self,
                                        LwKnockList  *list);
/* (nullable) */
const LwKnockList *lw_knock_table_list (LwKnockTable *self);

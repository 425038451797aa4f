/* The rows of all batches laid over, under the blocks of the batch in hand. Many scroll. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/overlays.h"

#define LW_TYPE_OVER_ROWS (lw_over_rows_get_type ())
G_DECLARE_FINAL_TYPE (LwOverRows, lw_over_rows, LW, OVER_ROWS, GtkWidget)

GtkWidget *lw_over_rows_new    (LwSession  *session);

/* To be called when the session's columns were laid out anew. */
void       lw_over_rows_moved  (LwOverRows *self);

/* Height to give them on a board of that size: rows that are whole and take at most a share of it, and under them the
 * names that have no room in them. */
int        lw_over_rows_height (LwOverRows *self,
                                int         width,
                                int         height);

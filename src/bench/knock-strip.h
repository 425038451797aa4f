/* A strip of the knock-on table, a row or the headings: one widget that stays at the
 * start, and one for each outcome that scrolls along under it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "season/quantity.h"

/* What all strips of a table share, in pixels. */
typedef struct
{
  int first;                         /* width of what stays */
  int starts[LW_N_QUANTITIES + 1];   /* where the columns begin, from the end of `first`, and where the last ends */
  int offset;                        /* how far they are scrolled away from the start */
} LwKnockColumns;

#define LW_TYPE_KNOCK_STRIP (lw_knock_strip_get_type ())
G_DECLARE_FINAL_TYPE (LwKnockStrip, lw_knock_strip, LW, KNOCK_STRIP, GtkWidget)

/* `columns` is borrowed and outlives the strip. */
GtkWidget *lw_knock_strip_new   (const LwKnockColumns *columns,
                                 GtkWidget            *first,
                                 GtkWidget *const      cells[LW_N_QUANTITIES],
                                 GtkAccessibleRole     role);
GtkWidget *lw_knock_strip_first (LwKnockStrip         *self);
GtkWidget *lw_knock_strip_cell  (LwKnockStrip         *self,
                                 LwQuantity            of);

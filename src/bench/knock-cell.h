/* A cell of the knock-on table: a number on a shade. Can have the keyboard. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Before a number with a sign: keeps the sign there where people read from the right. */
#define LW_KNOCK_SIGN_FIRST "\u200e"

#define LW_TYPE_KNOCK_CELL (lw_knock_cell_get_type ())
G_DECLARE_FINAL_TYPE (LwKnockCell, lw_knock_cell, LW, KNOCK_CELL, GtkWidget)

GtkWidget *lw_knock_cell_new (void);

/* `share` as for lw_ink_of_change; `said` is for screen readers and tooltips. */
void       lw_knock_cell_set (LwKnockCell *self,
                              const char  *number,
                              const char  *said,
                              double       share,
                              gboolean     faint);
/* Marks the cell that was chosen last. */
void       lw_knock_cell_mark (LwKnockCell *self,
                               gboolean     marked);

/* (nullable) */
const char *lw_knock_cell_said (LwKnockCell *self);

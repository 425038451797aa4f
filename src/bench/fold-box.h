/* Three parts in a row; where the first line of the first has no room beside the others, the last goes below them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#define LW_TYPE_FOLD_BOX (lw_fold_box_get_type ())
G_DECLARE_FINAL_TYPE (LwFoldBox, lw_fold_box, LW, FOLD_BOX, GtkWidget)

/* `first` is a box that takes the room that is left. */
GtkWidget *lw_fold_box_new (GtkWidget *first,
                            GtkWidget *middle,
                            GtkWidget *last);

/* A batch laid over as one slim row of blocks under those of the batch in hand, in the same columns. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/overlays.h"

#define LW_TYPE_OVER_ROW (lw_over_row_get_type ())
G_DECLARE_FINAL_TYPE (LwOverRow, lw_over_row, LW, OVER_ROW, GtkWidget)

GtkWidget *lw_over_row_new   (LwSession *session,
                              LwLaid    *laid);

/* To be called when the session's columns were laid out anew. */
void       lw_over_row_moved (LwOverRow *self);

/* (transfer full) its letter, its name and all its steps. */
char      *lw_over_row_words (LwOverRow *self);

/* (transfer full) (nullable) letter and name, if the name has no room in a row of that width and nothing else tells it;
 * the batches of the season in hand have their letters in the list. */
char      *lw_over_row_unnamed (LwOverRow *self,
                                int        width);

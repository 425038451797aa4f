/* The parts of the page "Steady through the weather", from the top: what comes out, what matters most, what would be
 * steadier, what varies. Each is a box that follows its `steady`, which must outlive it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/steady.h"

GtkWidget *lw_steady_result_new  (LwSession  *session);
GtkWidget *lw_steady_sources_new (LwSession  *session);
GtkWidget *lw_steady_better_new  (LwSession  *session);
GtkWidget *lw_steady_amounts_new (LwSession  *session);

/* A label that wraps, of a style class. */
GtkWidget *lw_steady_label       (const char *text,
                                  const char *class);
/* Removes what a box or a grid holds. */
void       lw_steady_empty       (GtkWidget  *box);
/* One line of a grid, from `y` on: a name over a bar, its number beside; then, not NULL, words under both. The next y. */
int        lw_steady_attach      (GtkGrid    *grid,
                                  int         y,
                                  const char *name,
                                  GtkWidget  *bar,
                                  const char *number,
                                  const char *words);

/* The window that finds batches, in the open season or in a folder of season files. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/finder.h"
#include "bench/session.h"

/* A batch was chosen; `path` NULL: of the open season. */
typedef void (*LwFindChosen) (const char *path,
                              const char *batch,
                              gpointer    data);

/* (transfer none) the window. `finder` keeps what was read, and where, for the next one. */
GtkWidget *lw_find_window_new (GtkWindow   *parent,
                               LwSession   *session,
                               LwFinder    *finder,
                               LwFindChosen chosen,
                               gpointer     data);
/* Takes the window away. */
void       lw_find_window_close (GtkWidget *window);

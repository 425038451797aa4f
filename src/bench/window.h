/* The window: the season's batches beside the board, and the document's actions. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "season/season.h"

#define LW_TYPE_WINDOW (lw_window_get_type ())
G_DECLARE_FINAL_TYPE (LwWindow, lw_window, LW, WINDOW, GtkApplicationWindow)

/* A window on `season`; `path` NULL: not in a file yet. */
GtkWidget *lw_window_new       (GtkApplication *application,
                                LwSeason       *season,
                                const char     *path);

/* Opens a file in this window: asks about unsaved changes, tells a broken file's problems and then
 * leaves all as it is. */
void       lw_window_open_file (LwWindow       *self,
                                GFile          *file);

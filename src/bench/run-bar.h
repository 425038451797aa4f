/* The bar of the running batch: step, time passed and left in large type, and what can be done. Seen while one runs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/running.h"

#define LW_TYPE_RUN_BAR (lw_run_bar_get_type ())
G_DECLARE_FINAL_TYPE (LwRunBar, lw_run_bar, LW, RUN_BAR, GtkWidget)

/* Its buttons act by the window's actions "weigh-in", "run-pause", "run-next", "run-show", "replan". */
GtkWidget *lw_run_bar_new (LwSession *session,
                           LwRunning *running);

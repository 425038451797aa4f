/* The window in which a table of temperatures is looked at before it becomes a log of the batch: its first
 * rows, what each column is, when it begins, its curves, and what of it is left out. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"
#include "season/log-table.h"

/* Called after the import, which is one edit. */
typedef void (*LwLogImported) (const LwLog *log,
                               gpointer     data);

/* Takes over `table`, read from `path`. `step` is that in whose settings it was asked for, -1: none. */
void lw_log_window_open (GtkWindow    *parent,
                         LwSession    *session,
                         const char   *path,
                         LwLogTable   *table,
                         int           step,
                         LwLogImported imported,
                         gpointer      data);

/* The first rows of a log's table under what each column is taken for, which can be chosen. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "season/log-table.h"

/* `changed` is called with `data` when a column is taken for something else; the table has it then. */
GtkWidget *lw_log_columns_grid_new (LwLogTable *table,
                                    void      (*changed) (gpointer data),
                                    gpointer    data);

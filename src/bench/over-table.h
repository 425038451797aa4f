/* The window with the differences between the batch in hand and one laid over it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/overlays.h"

#define LW_TYPE_OVER_TABLE (lw_over_table_get_type ())
G_DECLARE_FINAL_TYPE (LwOverTable, lw_over_table, LW, OVER_TABLE, GtkWindow)

GtkWidget *lw_over_table_new (GtkWindow *parent,
                              LwSession *session);

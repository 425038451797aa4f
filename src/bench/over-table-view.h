/* The difference table as a list with columns. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Shows a list of LwOverItem. */
GtkWidget *lw_over_view_new       (GListModel *items);

/* Whether its rows stand at times of day, not after steps. */
void       lw_over_view_set_clock (GtkWidget  *view,
                                   gboolean    by_clock);

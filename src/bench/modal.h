/* A window over another, which waits until it is closed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* (transfer none) not shown yet; Escape closes it. */
GtkWidget *lw_modal_new    (GtkWindow  *parent,
                            const char *title);

/* (transfer none) a button at the end of `box`; `clicked` is called with `data` first. */
GtkWidget *lw_modal_button (GtkWidget  *box,
                            const char *label,
                            GCallback   clicked,
                            gpointer    data);

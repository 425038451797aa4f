/* A popover that lives while it is open, on a widget that gets the keyboard back. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Opens it on `widget` with `child` in it. `name` tells a screen reader what it is. Returns (transfer none) it. */
GtkWidget *lw_popover_open (GtkWidget      *widget,
                            GtkWidget      *child,
                            GtkPositionType side,
                            const char     *name);

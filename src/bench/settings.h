/* The settings of a step in a popover beside its block: every setting with its unit,
 * its range and what it does; a bad entry is refused at the field with the reason. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

/* Opens it over `block`; it goes away when closed. */
void lw_settings_open (GtkWidget *block,
                       LwSession *session,
                       guint      step);

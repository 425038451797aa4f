/* What the desktop says: the colours it prefers, and where our settings are kept. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* (nullable) (transfer full) our settings; NULL where the schema is not installed. */
GSettings *lw_desktop_settings (void);

/* Loads the style for paper or dark and keeps it with the desktop's preference. */
void       lw_desktop_style    (GdkDisplay *display);

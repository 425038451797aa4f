/* The application: windows for files, keys for actions, the demo season at first. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

GtkApplication *lw_app_new (void);

/* The caution that stands over the status line while later settings move by themselves: with a lock on, and beside
 * what "Reach the aims" found. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

GtkWidget *lw_caution_line_new (LwSession *session);

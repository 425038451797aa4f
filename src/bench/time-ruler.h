/* The time ruler under the blocks: each column's ticks, and the reading line's time. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_TIME_RULER (lw_time_ruler_get_type ())
G_DECLARE_FINAL_TYPE (LwTimeRuler, lw_time_ruler, LW, TIME_RULER, GtkWidget)

GtkWidget *lw_time_ruler_new   (LwSession   *session);

/* To be called when the session's columns were laid out anew. */
void       lw_time_ruler_moved (LwTimeRuler *self);

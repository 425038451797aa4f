/* The tick that lays a batch over, in rows of lists. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/overlays.h"

#define LW_TYPE_OVER_TICK (lw_over_tick_get_type ())
G_DECLARE_FINAL_TYPE (LwOverTick, lw_over_tick, LW, OVER_TICK, GtkCheckButton)

GtkWidget *lw_over_tick_new    (LwOverlays *overlays);

/* Which batch it stands for; `path` NULL: of the season in hand. */
void       lw_over_tick_set    (LwOverTick *self,
                                LwSeason   *season,
                                const char *path,
                                guint       at);

/* The other way round than it is. */
void       lw_over_tick_toggle (LwOverTick *self);

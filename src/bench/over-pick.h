/* A window with the batches of another season, to tick those that are laid over. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/overlays.h"

void lw_over_pick (GtkWindow  *parent,
                   LwOverlays *overlays,
                   LwSeason   *season,
                   const char *path);

/* What is remembered of the panels from one start of the program to the next. Without
 * settings (NULL) nothing is. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "season/quantity.h"

/* Fills in the ratio of each quantity's height; 1 where none is kept. */
void     lw_panel_memory_heights      (GSettings        *settings,
                                       double            ratios[LW_N_QUANTITIES]);
void     lw_panel_memory_keep_heights (GSettings        *settings,
                                       const double      ratios[LW_N_QUANTITIES]);

/* The panels that were added to those that are always there. */
gboolean lw_panel_memory_shows        (GSettings        *settings,
                                       LwQuantity        quantity);
void     lw_panel_memory_keep_shown   (GSettings        *settings,
                                       const LwQuantity *quantities,
                                       guint             n);

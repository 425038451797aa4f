/* How panels share the height: each has a ratio, 1 for the lowest of them. Pure numbers,
 * no widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#define LW_HEIGHTS_MOST_RATIO 12.0

/* px that `n` panels need when the lowest may be `least`. */
double lw_heights_need  (const double *ratios,
                         guint         n,
                         double        least);

/* Shares `room` px out by `ratios`. */
void   lw_heights_share (const double *ratios,
                         guint         n,
                         double        room,
                         double       *heights);

/* Moves the gap under panel `gap` by so many px down: the panel above it grows and those below give, the
 * nearest first, each down to `least`; where they have no more to give the whole grows. Up, the one below
 * grows by what those above can give. */
void   lw_heights_move  (double       *heights,
                         guint         n,
                         guint         gap,
                         double        by,
                         double        least);

/* The ratios of heights, 1..LW_HEIGHTS_MOST_RATIO. */
void   lw_heights_ratios (const double *heights,
                          guint         n,
                          double       *ratios);

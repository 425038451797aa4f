/* How a value stands to its window: by number, word and shape, the same everywhere. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>

/* 1 above `high`, -1 below `low`, 0 within. */
int         lw_verdict      (double   low,
                             double   high,
                             double   value);

/* (translated) "above", "below", "within". */
const char *lw_verdict_word (int      verdict);

/* A dot for a value within, else an arrow that points away from the window; filled with the present ink. `y` is where
 * the window ends. */
void        lw_verdict_mark (cairo_t *cr,
                             double   x,
                             double   y,
                             int      verdict);

/* Round numbers along an axis, of values and of times. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* A range whose ends are round, and the distance between its ticks. */
typedef struct
{
  double low;
  double high;
  double gap;
} LwAxis;

/* Covers `low`..`high` with at most `most` >= 2 gaps of 1, 2 or 5 times a power of ten. */
LwAxis lw_axis_round        (double low,
                             double high,
                             guint  most);

double lw_axis_y            (const LwAxis *axis,
                             double        top,
                             double        bottom,
                             double        value);
double lw_axis_value        (const LwAxis *axis,
                             double        top,
                             double        bottom,
                             double        y);

/* Minutes between ticks of a column `width` px wide that lasts `minutes`, a round clock time
 * (1, 2, 5, 10, 15, 30 s; min; 1, 2, 3, 6, 12, 24 h ...), at least `apart` px from tick to tick. */
double lw_ticks_minutes     (double        minutes,
                             double        width,
                             double        apart);

/* (transfer full) a tick's words: "0", "10 min", "6 h", "30 s". */
char  *lw_ticks_text        (double        minute,
                             double        gap);

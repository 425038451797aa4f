/* Where the time ruler's ticks and words stand; apart from drawing, so that no
 * word meets another in any font. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/scale.h"

typedef struct
{
  guint step;
  double minute;
  double x;            /* of the tick */
  double left, right;  /* of its word; equal where it has none */
  char *text;          /* NULL where there is no room for it */
} LwTick;

/* Width of a text in px. */
typedef double (*LwTextWidth) (const char *text,
                               gpointer    data);

/* (transfer full) an array of LwTick which frees their texts. A tick at a column's very end is
 * left to the next column's 0. */
GArray *lw_ruler_ticks (const LwScale *scale,
                        LwTextWidth    width_of,
                        gpointer       data);

/* (transfer full) the same by the clock of the batch's place, which begins at `when_s`: hours, a day's name at
 * each midnight, day and hour at the begin. In a zoomed scale only the zoomed column has ticks. */
GArray *lw_ruler_clock_ticks (const LwScale *scale,
                              gint64         when_s,
                              LwTextWidth    width_of,
                              gpointer       data);

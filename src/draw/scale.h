/* The column scale: where each step's column lies and where in it a moment.
 * By step: a column is 64 px and some more for each doubling of its time, so that
 * minutes and days are both readable. Pure geometry; time runs with the text. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#define LW_COLUMN_LEAST 64.0
#define LW_SCALE_MAX_STEPS 64

typedef struct
{
  guint n;
  double minutes[LW_SCALE_MAX_STEPS];
  double start[LW_SCALE_MAX_STEPS];   /* of the column, in reading direction */
  double width[LW_SCALE_MAX_STEPS];
  double stretch;                     /* px for each doubling of (1 + minutes / 2) */
  double total;                       /* of all columns */
  double origin;                      /* x of the scale's begin edge's left-to-right left side */
  double room;                        /* width to lay out in, and to mirror in when rtl */
  gboolean rtl;
} LwScale;

/* Lays out `n` <= LW_SCALE_MAX_STEPS columns to fill `room` px from x = `origin`; where room is too
 * small, columns keep their least stretch and `total` exceeds `room`. */
void     lw_scale_fill         (LwScale       *scale,
                                const double  *minutes,
                                guint          n,
                                double         origin,
                                double         room,
                                gboolean       rtl);

/* Changes one column's time, keeping the stretch: the others shift but keep their width. */
void     lw_scale_set_minutes  (LwScale       *scale,
                                guint          step,
                                double         minutes);

/* Width the columns need at least. */
double   lw_scale_least_width  (const double  *minutes,
                                guint          n);

/* Left and right x of a column on the screen, left < right. */
void     lw_scale_column       (const LwScale *scale,
                                guint          step,
                                double        *left,
                                double        *right);

/* x of `minute` in `step`. A column's own time is linear. */
double   lw_scale_x            (const LwScale *scale,
                                guint          step,
                                double         minute);

/* Step and minute at x, clamped into the scale. FALSE if there are no steps. */
gboolean lw_scale_at           (const LwScale *scale,
                                double         x,
                                guint         *step,
                                double        *minute);

/* Time that a column must have for its end edge to be at x, >= 0. */
double   lw_scale_minutes_for  (const LwScale *scale,
                                guint          step,
                                double         x);

/* Where column `step`, dragged so that its middle is at x, would land among the others, 0..n-1. Told by the
 * others' widths alone, so that the answer is the same wherever the column stands by now. */
guint    lw_scale_slot         (const LwScale *scale,
                                guint          step,
                                double         x);

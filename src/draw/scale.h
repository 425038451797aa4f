/* The column scale: where each step's column lies and where in it a moment.
 * By step: a column is 64 px and some more for each doubling of its time, so that
 * minutes and days are both readable. By clock: one linear axis. Zoomed: one column has
 * almost all the width. Pure geometry; time runs with the text. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#define LW_COLUMN_LEAST 64.0
#define LW_BLOCK_LEAST 32.0 /* of a block's place, also where its column is narrower; and of columns beside a zoomed one */
#define LW_SCALE_MAX_STEPS 64

/* How the columns are laid out. */
typedef struct
{
  gboolean by_clock;
  int zoomed;       /* the step that has the width; -1: none */
  gboolean logs;    /* logs of wall and air are drawn, too */
} LwScaleView;

#define LW_SCALE_BY_STEP ((LwScaleView) { .zoomed = -1 })

typedef struct
{
  LwScaleView view;
  guint n;
  double minutes[LW_SCALE_MAX_STEPS];
  double start[LW_SCALE_MAX_STEPS];   /* of the column, in reading direction */
  double width[LW_SCALE_MAX_STEPS];
  double base[LW_SCALE_MAX_STEPS];    /* of the width, what does not depend on the time */
  double edge[LW_SCALE_MAX_STEPS + 1]; /* between the blocks' places */
  double stretch;                     /* px for each doubling of (1 + minutes / 2); by clock for each minute */
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

/* The same in any view; a zoomed step that is not there is none. */
void     lw_scale_fill_view    (LwScale       *scale,
                                LwScaleView    view,
                                const double  *minutes,
                                guint          n,
                                double         origin,
                                double         room,
                                gboolean       rtl);

/* Lays out other times of as many steps in the same view and room. */
void     lw_scale_refill       (LwScale       *scale,
                                const double  *minutes);

/* On the way from one layout of a batch to another, 0 <= `way` <= 1: for the eye to follow. */
void     lw_scale_blend        (LwScale       *scale,
                                const LwScale *from,
                                const LwScale *to,
                                double         way);

/* Changes one column's time, keeping the stretch: the others shift but keep their width. */
void     lw_scale_set_minutes  (LwScale       *scale,
                                guint          step,
                                double         minutes);

/* Changes one column's time and keeps its width: what is in it is drawn closer or wider. */
void     lw_scale_fit_minutes  (LwScale       *scale,
                                guint          step,
                                double         minutes);

/* Width the columns need at least, by step or in any view. */
double   lw_scale_least_width  (const double  *minutes,
                                guint          n);
double   lw_scale_least_width_view (LwScaleView view,
                                const double  *minutes,
                                guint          n);

/* Left and right x of a column on the screen, left < right. */
void     lw_scale_column       (const LwScale *scale,
                                guint          step,
                                double        *left,
                                double        *right);

/* The same of a step's block: its column, but never narrower than LW_BLOCK_LEAST. Blocks stand side by side
 * in order, so that one whose neighbour's column is too narrow gives way. */
void     lw_scale_block        (const LwScale *scale,
                                guint          step,
                                double        *left,
                                double        *right);

/* x of the begin of `step`'s block; of `n`, the end of the last. */
double   lw_scale_block_begin  (const LwScale *scale,
                                guint          step);

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

/* Where block `step`, dragged so that its middle is at x, would land among the others, 0..n-1. Told by the
 * others' widths alone, so that the answer is the same wherever the block stands by now. */
guint    lw_scale_slot         (const LwScale *scale,
                                guint          step,
                                double         x);

/* A line through many points with no more of them than can be seen: at most a
 * lowest and a highest one a pixel, and none that lies on the way between others. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

typedef struct
{
  double x;
  double y;
} LwSpot;

typedef struct
{
  cairo_t *cr;
  double off;          /* how far a point may lie off the line, px */
  guint n;             /* points put into the path */

  /* The pixel being gathered. */
  guint gathered;
  double column;
  LwSpot lowest, highest, latest;
  gboolean highest_first;

  /* The last point in the path, the latest after it, and the slopes that pass near all between. */
  LwSpot from;
  gboolean waiting;
  LwSpot to;
  double slope_low, slope_high;
} LwTrace;

/* Begins a line, which goes on from the path's current point if there is one. */
void lw_trace_begin (LwTrace *trace,
                     cairo_t *cr,
                     double   off);
/* x must go one way only. */
void lw_trace_point (LwTrace *trace,
                     double   x,
                     double   y);
void lw_trace_end   (LwTrace *trace);

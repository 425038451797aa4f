/* Thinning a line as it is drawn, in one pass and without memory: stroking is
 * what costs, and it costs by the point. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/trace.h"

#include <math.h>

void
lw_trace_begin (LwTrace *trace,
                cairo_t *cr,
                double   off)
{
  *trace = (LwTrace) { .cr = cr, .off = off };
}

static void
put (LwTrace *trace,
     LwSpot   spot)
{
  cairo_line_to (trace->cr, spot.x, spot.y);
  trace->n++;
  trace->from = spot;
  trace->waiting = FALSE;
  trace->slope_low = -INFINITY;
  trace->slope_high = INFINITY;
}

static double
slope_to (const LwTrace *trace,
          LwSpot         spot)
{
  return (spot.y - trace->from.y) / fabs (spot.x - trace->from.x);
}

/* Takes a point into the stretch for which one straight line may stand, or ends that stretch. */
static void
pass (LwTrace *trace,
      LwSpot   spot)
{
  double slope, run;

  if (trace->waiting && (slope_to (trace, spot) < trace->slope_low
                         || slope_to (trace, spot) > trace->slope_high))
    put (trace, trace->to);

  run = fabs (spot.x - trace->from.x);
  if (trace->n == 0 || run <= 0)
    {
      put (trace, spot);
      return;
    }

  slope = slope_to (trace, spot);
  trace->slope_low = MAX (trace->slope_low, slope - trace->off / run);
  trace->slope_high = MIN (trace->slope_high, slope + trace->off / run);
  trace->to = spot;
  trace->waiting = TRUE;
}

/* The pixel's extremes, in the order in which they came. */
static void
pass_pixel (LwTrace *trace)
{
  if (trace->gathered > 1)
    pass (trace, trace->highest_first ? trace->highest : trace->lowest);
  if (trace->gathered > 0)
    pass (trace, trace->highest_first ? trace->lowest : trace->highest);
  trace->gathered = 0;
}

void
lw_trace_point (LwTrace *trace,
                double   x,
                double   y)
{
  LwSpot spot = { x, y };

  if (trace->gathered > 0 && floor (x) != trace->column)
    pass_pixel (trace);

  if (trace->gathered == 0)
    trace->lowest = trace->highest = spot;
  if (y < trace->lowest.y)
    trace->lowest = spot;
  if (y > trace->highest.y)
    trace->highest = spot;
  if (y <= trace->lowest.y || y >= trace->highest.y)
    trace->highest_first = y <= trace->lowest.y;

  trace->column = floor (x);
  trace->latest = spot;
  trace->gathered++;
}

void
lw_trace_end (LwTrace *trace)
{
  gboolean any = trace->gathered > 0;

  pass_pixel (trace);
  if (any)
    pass (trace, trace->latest);
  if (trace->waiting)
    put (trace, trace->to);
}

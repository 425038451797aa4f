/* The column scale's geometry. Positions inside it run in reading direction from
 * its begin, px; only x is mirrored. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/scale.h"

#include <math.h>

#define LEAST_STRETCH 10.0
#define LEAST_BY_CLOCK 1e-3

/* How often the time doubles, counted so that no time at all is none. */
static double
doublings (double minutes)
{
  return log2 (1 + MAX (minutes, 0) / 2);
}

static gboolean
is_linear (LwScaleView view)
{
  return view.by_clock && view.zoomed < 0;
}

static double
measure (const LwScale *scale,
         double         minutes)
{
  return is_linear (scale->view) ? MAX (minutes, 0) : doublings (minutes);
}

static double
stretch_of (const LwScale *scale,
            guint          step)
{
  return scale->view.zoomed < 0 || (int) step == scale->view.zoomed ? scale->stretch : LEAST_STRETCH;
}

/* Each block begins where the one before ends and goes to its column's end, if that leaves it wide enough;
 * then back from the end, which no block may pass. */
static void
place_blocks (LwScale *scale)
{
  double *edge = scale->edge;
  guint n = scale->n;

  edge[0] = 0;
  for (guint i = 0; i < n; i++)
    edge[i + 1] = MAX (scale->start[i] + scale->width[i], edge[i] + LW_BLOCK_LEAST);

  edge[n] = MAX (scale->total, n * LW_BLOCK_LEAST);
  for (guint i = n; i-- > 1;)
    edge[i] = MIN (edge[i], edge[i + 1] - LW_BLOCK_LEAST);
}

static void
settle (LwScale *scale)
{
  double at = 0;

  for (guint i = 0; i < scale->n; i++)
    {
      scale->start[i] = at;
      scale->width[i] = MAX (scale->base[i] + stretch_of (scale, i) * measure (scale, scale->minutes[i]), 0);
      at += scale->width[i];
    }
  scale->total = at;
  place_blocks (scale);
}

/* What of `room` is not spoken for, shared out by time, but not less than the least. */
static void
stretch_into (LwScale *scale,
              double   room,
              double   all,
              double   least)
{
  scale->stretch = all > 0 ? MAX (room / all, least) : least;
}

static void
spread (LwScale *scale)
{
  double all = 0;
  int zoomed = scale->view.zoomed;

  if (zoomed >= 0)
    {
      for (guint i = 0; i < scale->n; i++)
        scale->base[i] = LW_BLOCK_LEAST - LEAST_STRETCH * doublings (scale->minutes[i]);
      scale->base[zoomed] = LW_COLUMN_LEAST;
      stretch_into (scale, scale->room - (scale->n - 1) * LW_BLOCK_LEAST - LW_COLUMN_LEAST,
                    doublings (scale->minutes[zoomed]), LEAST_STRETCH);
      return;
    }

  for (guint i = 0; i < scale->n; i++)
    {
      scale->base[i] = is_linear (scale->view) ? 0 : LW_COLUMN_LEAST;
      all += measure (scale, scale->minutes[i]);
    }
  if (is_linear (scale->view))
    stretch_into (scale, scale->room, all, LEAST_BY_CLOCK);
  else
    stretch_into (scale, scale->room - scale->n * LW_COLUMN_LEAST, all, LEAST_STRETCH);
}

void
lw_scale_fill_view (LwScale      *scale,
                    LwScaleView   view,
                    const double *minutes,
                    guint         n,
                    double        origin,
                    double        room,
                    gboolean      rtl)
{
  g_return_if_fail (n <= LW_SCALE_MAX_STEPS);

  *scale = (LwScale) { .view = view, .n = n, .origin = origin, .room = room, .rtl = rtl };
  if (view.zoomed >= (int) n)
    scale->view.zoomed = -1;
  lw_scale_refill (scale, minutes);
}

void
lw_scale_fill (LwScale      *scale,
               const double *minutes,
               guint         n,
               double        origin,
               double        room,
               gboolean      rtl)
{
  lw_scale_fill_view (scale, LW_SCALE_BY_STEP, minutes, n, origin, room, rtl);
}

void
lw_scale_refill (LwScale      *scale,
                 const double *minutes)
{
  for (guint i = 0; i < scale->n; i++)
    scale->minutes[i] = minutes[i];
  spread (scale);
  settle (scale);
}

void
lw_scale_blend (LwScale       *scale,
                const LwScale *from,
                const LwScale *to,
                double         way)
{
  g_return_if_fail (from->n == to->n);

  *scale = *to;
  for (guint i = 0; i < to->n; i++)
    {
      scale->start[i] = from->start[i] + way * (to->start[i] - from->start[i]);
      scale->width[i] = from->width[i] + way * (to->width[i] - from->width[i]);
    }
  scale->total = from->total + way * (to->total - from->total);
  place_blocks (scale);
}

void
lw_scale_set_minutes (LwScale *scale,
                      guint    step,
                      double   minutes)
{
  g_return_if_fail (step < scale->n);

  scale->minutes[step] = minutes;
  settle (scale);
}

void
lw_scale_fit_minutes (LwScale *scale,
                      guint    step,
                      double   minutes)
{
  g_return_if_fail (step < scale->n);

  scale->base[step] += stretch_of (scale, step) * (measure (scale, scale->minutes[step]) - measure (scale, minutes));
  scale->minutes[step] = minutes;
}

double
lw_scale_least_width_view (LwScaleView   view,
                           const double *minutes,
                           guint         n)
{
  double width = 0;

  if (view.zoomed >= 0 && view.zoomed < (int) n)
    return (n - 1) * LW_BLOCK_LEAST + LW_COLUMN_LEAST + LEAST_STRETCH * doublings (minutes[view.zoomed]);
  if (view.by_clock)
    return n * LW_BLOCK_LEAST;

  for (guint i = 0; i < n; i++)
    width += LW_COLUMN_LEAST + LEAST_STRETCH * doublings (minutes[i]);

  return width;
}

double
lw_scale_least_width (const double *minutes,
                      guint         n)
{
  return lw_scale_least_width_view (LW_SCALE_BY_STEP, minutes, n);
}

/* Between x and the position in the scale; the mirror is its own inverse. */
static double
mirror (const LwScale *scale,
        double         x)
{
  return scale->rtl ? scale->origin + scale->room - x : x - scale->origin;
}

static double
screen (const LwScale *scale,
        double         at)
{
  return scale->rtl ? scale->origin + scale->room - at : scale->origin + at;
}

void
lw_scale_column (const LwScale *scale,
                 guint          step,
                 double        *left,
                 double        *right)
{
  double begin = screen (scale, scale->start[step]);
  double end = screen (scale, scale->start[step] + scale->width[step]);

  *left = MIN (begin, end);
  *right = MAX (begin, end);
}

double
lw_scale_block_begin (const LwScale *scale,
                      guint          step)
{
  return screen (scale, scale->edge[step]);
}

void
lw_scale_block (const LwScale *scale,
                guint          step,
                double        *left,
                double        *right)
{
  double begin = lw_scale_block_begin (scale, step), end = lw_scale_block_begin (scale, step + 1);

  *left = MIN (begin, end);
  *right = MAX (begin, end);
}

double
lw_scale_x (const LwScale *scale,
            guint          step,
            double         minute)
{
  double share = scale->minutes[step] > 0 ? minute / scale->minutes[step] : 0;

  return screen (scale, scale->start[step] + share * scale->width[step]);
}

static guint
column_at (const LwScale *scale,
           double         at)
{
  guint step = 0;

  while (step + 1 < scale->n && at >= scale->start[step + 1])
    step++;

  return step;
}

gboolean
lw_scale_at (const LwScale *scale,
             double         x,
             guint         *step,
             double        *minute)
{
  double at = mirror (scale, x);

  if (scale->n == 0)
    return FALSE;

  *step = column_at (scale, at);
  *minute = scale->minutes[*step]
            * CLAMP ((at - scale->start[*step]) / MAX (scale->width[*step], 1e-9), 0, 1);

  return TRUE;
}

double
lw_scale_minutes_for (const LwScale *scale,
                      guint          step,
                      double         x)
{
  double width = mirror (scale, x) - scale->start[step];
  double measured = (width - scale->base[step]) / stretch_of (scale, step);

  return MAX (is_linear (scale->view) ? measured : 2 * (exp2 (measured) - 1), 0);
}

static double
block_width (const LwScale *scale,
             guint          step)
{
  return scale->edge[step + 1] - scale->edge[step];
}

guint
lw_scale_slot (const LwScale *scale,
               guint          step,
               double         x)
{
  double along = mirror (scale, x), before = 0, nearest = INFINITY;
  guint slot = 0;

  for (guint place = 0, other = 0; place < scale->n; place++)
    {
      double off = fabs (before + block_width (scale, step) / 2 - along);

      if (off < nearest)
        {
          nearest = off;
          slot = place;
        }
      other += other == step;
      if (other < scale->n)
        {
          before += block_width (scale, other);
          other++;
        }
    }

  return slot;
}

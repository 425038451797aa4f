/* The column scale's geometry. Positions inside it run in reading direction from
 * its begin, px; only x is mirrored. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/scale.h"

#include <math.h>

#define LEAST_STRETCH 10.0

/* How often the time doubles, counted so that no time at all is none. */
static double
doublings (double minutes)
{
  return log2 (1 + MAX (minutes, 0) / 2);
}

static void
settle (LwScale *scale)
{
  double at = 0;

  for (guint i = 0; i < scale->n; i++)
    {
      scale->start[i] = at;
      scale->width[i] = LW_COLUMN_LEAST + scale->stretch * doublings (scale->minutes[i]);
      at += scale->width[i];
    }
  scale->total = at;
}

void
lw_scale_fill (LwScale      *scale,
               const double *minutes,
               guint         n,
               double        origin,
               double        room,
               gboolean      rtl)
{
  double all = 0;

  g_return_if_fail (n <= LW_SCALE_MAX_STEPS);

  *scale = (LwScale) {
    .n = n, .origin = origin, .room = room, .rtl = rtl, .stretch = LEAST_STRETCH,
  };
  for (guint i = 0; i < n; i++)
    {
      scale->minutes[i] = minutes[i];
      all += doublings (minutes[i]);
    }
  if (all > 0)
    scale->stretch = MAX ((room - n * LW_COLUMN_LEAST) / all, LEAST_STRETCH);

  settle (scale);
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

double
lw_scale_least_width (const double *minutes,
                      guint         n)
{
  double width = 0;

  for (guint i = 0; i < n; i++)
    width += LW_COLUMN_LEAST + LEAST_STRETCH * doublings (minutes[i]);

  return width;
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
            * CLAMP ((at - scale->start[*step]) / scale->width[*step], 0, 1);

  return TRUE;
}

double
lw_scale_minutes_for (const LwScale *scale,
                      guint          step,
                      double         x)
{
  double width = mirror (scale, x) - scale->start[step];

  return MAX (2 * (exp2 ((width - LW_COLUMN_LEAST) / scale->stretch) - 1), 0);
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
      double off = fabs (before + scale->width[step] / 2 - along);

      if (off < nearest)
        {
          nearest = off;
          slot = place;
        }
      other += other == step;
      if (other < scale->n)
        before += scale->width[other++];
    }

  return slot;
}

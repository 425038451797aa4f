/* Sharing out and moving. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/heights.h"

static double
sum (const double *values,
     guint         n)
{
  double all = 0;

  for (guint i = 0; i < n; i++)
    all += values[i];

  return all;
}

double
lw_heights_need (const double *ratios,
                 guint         n,
                 double        least)
{
  return least * sum (ratios, n);
}

void
lw_heights_share (const double *ratios,
                  guint         n,
                  double        room,
                  double       *heights)
{
  double all = sum (ratios, n);

  for (guint i = 0; i < n; i++)
    heights[i] = room * ratios[i] / all;
}

/* Takes up to `most` from one height; returns what it gave. */
static double
take (double *height,
      double  most,
      double  least)
{
  double given = CLAMP (*height - least, 0, most);

  *height -= given;

  return given;
}

void
lw_heights_move (double *heights,
                 guint   n,
                 guint   gap,
                 double  by,
                 double  least)
{
  double left = by < 0 ? -by : MIN (by, MAX (LW_HEIGHTS_MOST_RATIO * least - heights[gap], 0));

  g_return_if_fail (gap + 1 < n);

  if (by >= 0)
    {
      heights[gap] += left;
      for (guint i = gap + 1; i < n; i++)
        left -= take (&heights[i], left, least);
      return;
    }

  for (guint i = gap + 1; i-- > 0;)
    {
      double given = take (&heights[i], left, least);

      heights[gap + 1] += given;
      left -= given;
    }
}

void
lw_heights_ratios (const double *heights,
                   guint         n,
                   double       *ratios)
{
  double lowest = n > 0 ? heights[0] : 1;

  for (guint i = 1; i < n; i++)
    lowest = MIN (lowest, heights[i]);
  for (guint i = 0; i < n; i++)
    ratios[i] = CLAMP (heights[i] / MAX (lowest, 1), 1, LW_HEIGHTS_MOST_RATIO);
}

/* Where ticks stand on an axis and in a column, and what they say. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/ticks.h"

#include <math.h>

#include "season/text.h"
#include "season/wording.h"

#define SECONDS / 60.0
#define HOURS * 60.0

static const double round_times[] = {
  1 SECONDS, 2 SECONDS, 5 SECONDS, 10 SECONDS, 15 SECONDS, 30 SECONDS,
  1, 2, 5, 10, 15, 30,
  1 HOURS, 2 HOURS, 3 HOURS, 6 HOURS, 12 HOURS, 24 HOURS,
};

/* Tells 3.0000000001 gaps from three. */
#define SLACK 1e-9

static double
round_gap (double least)
{
  static const double steps[] = { 1, 2, 5 };
  double power = pow (10, floor (log10 (least)));

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * power >= least * (1 - SLACK))
      return steps[i] * power;

  return 10 * power;
}

static LwAxis
covering (double low,
          double high,
          double gap)
{
  return (LwAxis) { floor (low / gap + SLACK) * gap, ceil (high / gap - SLACK) * gap, gap };
}

LwAxis
lw_axis_round (double low,
               double high,
               guint  most)
{
  LwAxis axis;

  if (!isfinite (low) || !isfinite (high))
    low = high = 0;
  if (high - low <= 1e-9 * MAX (fabs (low), fabs (high)))
    high = low + MAX (fabs (low) * 0.1, 1);

  axis = covering (low, high, round_gap ((high - low) / MAX (most, 2)));
  while ((axis.high - axis.low) / axis.gap > MAX (most, 2) + SLACK)
    axis = covering (low, high, round_gap (axis.gap * 1.5));

  return axis;
}

double
lw_axis_y (const LwAxis *axis,
           double        top,
           double        bottom,
           double        value)
{
  return bottom - (value - axis->low) / (axis->high - axis->low) * (bottom - top);
}

double
lw_axis_value (const LwAxis *axis,
               double        top,
               double        bottom,
               double        y)
{
  return axis->low + (bottom - y) / (bottom - top) * (axis->high - axis->low);
}

double
lw_ticks_minutes (double minutes,
                  double width,
                  double apart)
{
  double least = width > 0 ? minutes / width * apart : 0;
  double gap = 24 HOURS;

  for (guint i = 0; i < G_N_ELEMENTS (round_times); i++)
    if (round_times[i] >= least * (1 - SLACK))
      return round_times[i];

  while (gap < least)
    gap *= 2;

  return gap;
}

char *
lw_ticks_text (double minute,
               double gap)
{
  if (minute < gap / 2)
    return g_strdup (_ ("0"));

  return lw_say_minutes (gap < 1 ? round (minute * 60) / 60 : round (minute));
}

/* Bounds without corners: the solver needs laws that are smooth in every setting. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

/* max (a, 0), rounded over about `width`; never below 0. */
static inline double
lw_soft_positive (double a,
                  double width)
{
  double root = sqrt (a * a + width * width);

  /* The second form keeps all digits where the two would cancel. */
  return a > 0 ? 0.5 * (a + root) : 0.5 * width * width / (root - a);
}

/* max (a, b), rounded over about `width`. */
static inline double
lw_soft_max (double a,
             double b,
             double width)
{
  return b + lw_soft_positive (a - b, width);
}

/* min (a, b), rounded over about `width`. */
static inline double
lw_soft_min (double a,
             double b,
             double width)
{
  return b - lw_soft_positive (b - a, width);
}

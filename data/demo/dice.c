/* Chance for the invented seasons, and rounding as people write numbers down. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo/dice.h"

#include <math.h>

double
demo_scatter (GRand *dice)
{
  double sum = 0;

  for (int i = 0; i < 12; i++)
    sum += g_rand_double (dice);

  return sum - 6;
}

double
demo_round (double value,
            double per_unit)
{
  return round (value * per_unit) / per_unit;
}

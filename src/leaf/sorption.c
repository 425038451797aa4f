/* The sorption isotherm and its inverse. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/sorption.h"

#include <math.h>

double
lw_sorption_activity (const LwLaw *law,
                      double       water,
                      double       temp_c)
{
  return exp (-exp (law->halsey_a + law->halsey_b_k * temp_c - law->halsey_c * log (100 * water)));
}

double
lw_sorption_water (const LwLaw *law,
                   double       activity,
                   double       temp_c)
{
  return 0.01 * exp ((law->halsey_a + law->halsey_b_k * temp_c - log (-log (activity))) / law->halsey_c);
}

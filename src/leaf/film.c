/* Heat transfer. Sources stand in film.h. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/film.h"

#include <math.h>

#include "leaf/air.h"
#include "leaf/soft.h"

#define AIR_NU_M2_S 1.562e-5 /* air at 25 C, textbook */
#define AIR_K_W_MK 0.026
#define AIR_PRANDTL 0.71

double
lw_film_w_m2k (double speed_m_s,
               double length_m,
               double floor_w_m2k)
{
  double reynolds = fmax (speed_m_s, 0) * length_m / AIR_NU_M2_S;
  double forced = 0.664 * sqrt (reynolds) * cbrt (AIR_PRANDTL) * AIR_K_W_MK / length_m;

  return lw_soft_max (forced, floor_w_m2k, 0.2);
}

double
lw_film_air_j_m3k (double temp_c,
                   double pressure_pa)
{
  return 1006 * pressure_pa / (287.05 * (temp_c + LW_ZERO_C));
}

double
lw_film_exposure (double layers)
{
  double third = layers / 3;

  return third > 1e-6 ? -expm1 (-third) / third : 1 - third / 2;
}

double
lw_film_erfcx (double b)
{
  /* Beyond 8 the continued fraction (Abramowitz and Stegun 7.1.14) has converged. */
  if (b > 8)
    {
      double tail = b;

      for (int k = 12; k >= 1; k--)
        tail = b + 0.5 * k / tail;

      return 0.5641895835477563 / tail;
    }

  return exp (b * b) * erfc (b);
}

double
lw_film_skin (double film_w_m2k,
              double touch_s,
              double conduct_w_mk,
              double heat_j_m3k)
{
  return 1 - lw_film_erfcx (film_w_m2k * sqrt (touch_s / (conduct_w_mk * heat_j_m3k)));
}

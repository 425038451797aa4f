/* Moist air. Each law stands with its source in air.h. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/air.h"

#include <math.h>

#define CRITICAL_K 647.096
#define CRITICAL_PA 22.064e6

double
lw_air_saturation_pa (double temp_c)
{
  double kelvin = fmin (fmax (temp_c + LW_ZERO_C, 150), CRITICAL_K);
  double tau = 1 - kelvin / CRITICAL_K;
  double root = sqrt (tau);
  double tau2 = tau * tau;
  double tau3 = tau2 * tau;
  double tau4 = tau2 * tau2;
  double sum = -7.85951783 * tau + 1.84408259 * tau * root - 11.7866497 * tau3
               + 22.6807411 * tau3 * root - 15.9618719 * tau4 + 1.80122502 * tau4 * tau3 * root;

  return CRITICAL_PA * exp (CRITICAL_K / kelvin * sum);
}

double
lw_air_boiling_c (double pressure_pa)
{
  double low = -60, high = 370;

  for (int i = 0; i < 60 && high - low > 1e-11; i++)
    {
      double middle = 0.5 * (low + high);

      if (lw_air_saturation_pa (middle) < pressure_pa)
        low = middle;
      else
        high = middle;
    }

  return 0.5 * (low + high);
}

double
lw_air_below_boiling_pa (double vapour_pa,
                         double pressure_pa)
{
  double share = vapour_pa / pressure_pa;

  return share < 0.99 ? vapour_pa : pressure_pa * (0.9995 - 0.0095 * exp (-(share - 0.99) / 0.0095));
}

double
lw_air_latent_j_kg (double temp_c)
{
  return 1e3 * (2500.9 + temp_c * (-2.37667 + temp_c * (0.00061244 + temp_c * -1.2919e-05)));
}

double
lw_air_pressure_pa (double altitude_m)
{
  const double earth_m = 6356766;
  double geopotential_m = earth_m * altitude_m / (earth_m + altitude_m);

  return 101325 * pow (1 - 0.0065 * geopotential_m / 288.15, 5.255880);
}

double
lw_air_humidity (double vapour_pa,
                 double pressure_pa)
{
  return 0.621945 * vapour_pa / (pressure_pa - vapour_pa);
}

double
lw_air_dew_point_c (double vapour_pa)
{
  return lw_air_boiling_c (vapour_pa);
}

double
lw_air_wet_bulb_c (double temp_c,
                   double vapour_pa,
                   double pressure_pa)
{
  double humidity = lw_air_humidity (vapour_pa, pressure_pa);
  double low = fmin (lw_air_dew_point_c (vapour_pa), temp_c) - 1, high = temp_c;

  for (int i = 0; i < 60; i++)
    {
      double wet = 0.5 * (low + high);
      double saturated = lw_air_humidity (lw_air_saturation_pa (wet), pressure_pa);
      double found = ((2501 - 2.326 * wet) * saturated - 1.006 * (temp_c - wet))
                     / (2501 + 1.86 * temp_c - 4.186 * wet);

      if (found < humidity)
        low = wet;
      else
        high = wet;
    }

  return 0.5 * (low + high);
}

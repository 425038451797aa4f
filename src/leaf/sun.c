/* The sun. Declination: the low-precision formulas of the Astronomical Almanac (page C24;
 * J. J. Michalsky, Solar Energy 40:227, 1988), good to 0.01 degrees from 1950 to 2050. Clear
 * sky: B. Haurwitz, J. Meteorology 2:154 (1945), as written by M. J. Reno, C. W. Hansen and
 * J. S. Stein, Sandia report SAND2012-2389 and its programs; it is smooth to any order at
 * the horizon. It knows no altitude: that comes in as in equation 37 of R. G. Allen et al.,
 * FAO Irrigation and Drainage Paper 56 (1998), (0.75 + 2e-5 z) Ra. Clouds: F. Kasten and
 * G. Czeplak, Solar Energy 24:177 (1980). */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/sun.h"

#include <math.h>

#define DAY_S 86400.0
#define J2000_S 946728000.0 /* 2000-01-01T12:00 */
#define RAD (G_PI / 180)

/* The disc's radius and refraction at the horizon. */
#define RISING_DEG (-0.833)

double
lw_sun_declination (double clock_s)
{
  double days = (clock_s - J2000_S) / DAY_S;
  double anomaly = RAD * (357.528 + 0.9856003 * days);
  double longitude = RAD * (280.460 + 0.9856474 * days + 1.915 * sin (anomaly)
                            + 0.020 * sin (2 * anomaly));
  double obliquity = RAD * (23.439 - 4e-7 * days);

  return asin (sin (obliquity) * sin (longitude));
}

double
lw_sun_height (double clock_s,
               double latitude_deg)
{
  double declination = lw_sun_declination (clock_s);
  double hour = 2 * G_PI * (clock_s / DAY_S - floor (clock_s / DAY_S) - 0.5);

  return sin (RAD * latitude_deg) * sin (declination)
         + cos (RAD * latitude_deg) * cos (declination) * cos (hour);
}

gboolean
lw_sun_day (double  clock_s,
            double  latitude_deg,
            double *rise_s,
            double *set_s)
{
  double noon_s = (floor (clock_s / DAY_S) + 0.5) * DAY_S;
  double declination = lw_sun_declination (noon_s);
  double least = sin (RAD * RISING_DEG) - sin (RAD * latitude_deg) * sin (declination);
  double most = MAX (cos (RAD * latitude_deg), 1e-9) * cos (declination);
  double half_s = acos (CLAMP (least / most, -1, 1)) / (2 * G_PI) * DAY_S;

  *rise_s = noon_s - half_s;
  *set_s = noon_s + half_s;

  return fabs (least) < most;
}

double
lw_sun_clear_w_m2 (double height,
                   double altitude_m)
{
  if (!(height > 0))
    return 0;

  return 1098 * height * exp (-0.059 / height) * (0.75 + 2e-5 * altitude_m) / 0.75;
}

double
lw_sun_through (double cloud)
{
  return 1 - 0.75 * pow (cloud, 3.4);
}

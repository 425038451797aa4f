/* The sky record. Slopes follow F. N. Fritsch and J. Butland, SIAM J. Sci. Stat.
 * Comput. 5:300 (1984): harmonic means, so no value leaves its neighbours' range. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/sky.h"

#include <math.h>
#include <string.h>

#include "leaf/soft.h"

#define N_SERIES (sizeof (LwAirNow) / sizeof (double))

struct _LwSky
{
  double start_s;
  double every_s;
  guint n;
  LwAirNow *value;
  LwAirNow *slope; /* per point interval */
};

static double
monotone_slope (double before,
                double after)
{
  return before * after > 0 ? 2 * before * after / (before + after) : 0;
}

LwSky *
lw_sky_new (double          start_s,
            double          every_s,
            const LwAirNow *points,
            guint           n)
{
  LwSky *sky;

  g_return_val_if_fail (n >= 1 && every_s > 0, NULL);

  sky = g_atomic_rc_box_new0 (LwSky);
  sky->start_s = start_s;
  sky->every_s = every_s;
  sky->n = n;
  sky->value = g_memdup2 (points, n * sizeof *points);
  sky->slope = g_new0 (LwAirNow, n);

  for (guint i = 1; i + 1 < n; i++)
    for (gsize k = 0; k < N_SERIES; k++)
      {
        const double *left = (const double *) &points[i - 1];
        const double *here = (const double *) &points[i];
        const double *right = (const double *) &points[i + 1];

        ((double *) &sky->slope[i])[k] = monotone_slope (here[k] - left[k], right[k] - here[k]);
      }

  return sky;
}

static void
sky_clear (LwSky *sky)
{
  g_free (sky->value);
  g_free (sky->slope);
}

LwSky *
lw_sky_ref (LwSky *sky)
{
  return g_atomic_rc_box_acquire (sky);
}

void
lw_sky_unref (LwSky *sky)
{
  g_atomic_rc_box_release_full (sky, (GDestroyNotify) sky_clear);
}

LwAirNow
lw_sky_at (const LwSky *sky,
           double       clock_s)
{
  double place = (clock_s - sky->start_s) / sky->every_s;
  LwAirNow now;
  guint i;

  if (!(place > 0))
    return sky->value[0];
  if (place >= sky->n - 1)
    return sky->value[sky->n - 1];

  i = (guint) place;
  place -= i;

  for (gsize k = 0; k < N_SERIES; k++)
    {
      double a = ((const double *) &sky->value[i])[k];
      double b = ((const double *) &sky->value[i + 1])[k];
      double da = ((const double *) &sky->slope[i])[k];
      double db = ((const double *) &sky->slope[i + 1])[k];

      ((double *) &now)[k] = a + place * (da + place * (3 * (b - a) - 2 * da - db
                                                        + place * (da + db - 2 * (b - a))));
    }

  return now;
}

double
lw_sky_clear_w_m2 (double clock_s)
{
  double hour = fmod (clock_s / 3600, 24);

  return lw_soft_positive (850 * sin (G_PI * (hour - 6) / 12), 1.0);
}

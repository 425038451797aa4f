/* The sky. Slopes follow F. N. Fritsch and J. Butland, SIAM J. Sci. Stat.
 * Comput. 5:300 (1984): harmonic means, so no value leaves its neighbours' range. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/sky.h"

#include <math.h>

#define DAY_S 86400.0
#define N_SERIES (sizeof (LwAirNow) / sizeof (double))

struct _LwSky
{
  double start_s;
  double every_s;
  guint n;
  gboolean repeats;
  LwAirNow *value;
  LwAirNow *slope; /* per point interval */
};

static double
monotone_slope (double before,
                double after)
{
  return before * after > 0 ? 2 * before * after / (before + after) : 0;
}

static void
set_slope (LwSky *sky,
           guint  i)
{
  const double *left = (const double *) &sky->value[(i + sky->n - 1) % sky->n];
  const double *here = (const double *) &sky->value[i];
  const double *right = (const double *) &sky->value[(i + 1) % sky->n];

  for (gsize k = 0; k < N_SERIES; k++)
    ((double *) &sky->slope[i])[k] = monotone_slope (here[k] - left[k], right[k] - here[k]);
}

static LwSky *
sky_new (double          start_s,
         double          every_s,
         const LwAirNow *points,
         guint           n,
         gboolean        repeats)
{
  LwSky *sky = g_atomic_rc_box_new0 (LwSky);

  sky->start_s = start_s;
  sky->every_s = every_s;
  sky->n = n;
  sky->repeats = repeats;
  sky->value = g_memdup2 (points, n * sizeof *points);
  sky->slope = g_new0 (LwAirNow, n);

  for (guint i = 0; i < n; i++)
    if (repeats || (i > 0 && i + 1 < n))
      set_slope (sky, i);

  return sky;
}

LwSky *
lw_sky_new (double          start_s,
            double          every_s,
            const LwAirNow *points,
            guint           n)
{
  g_return_val_if_fail (n >= 1 && every_s > 0, NULL);

  return sky_new (start_s, every_s, points, n, FALSE);
}

LwSky *
lw_sky_new_day (const LwAirNow *points,
                guint           n)
{
  g_return_val_if_fail (n >= 2, NULL);

  return sky_new (0, DAY_S / n, points, n, TRUE);
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
  guint i, next;

  if (sky->repeats)
    place -= sky->n * floor (place / sky->n);
  else if (!(place > 0))
    return sky->value[0];
  else if (place >= sky->n - 1)
    return sky->value[sky->n - 1];

  i = MIN ((guint) place, sky->n - 1);
  next = (i + 1) % sky->n;
  place -= i;

  for (gsize k = 0; k < N_SERIES; k++)
    {
      double a = ((const double *) &sky->value[i])[k];
      double b = ((const double *) &sky->value[next])[k];
      double da = ((const double *) &sky->slope[i])[k];
      double db = ((const double *) &sky->slope[next])[k];

      ((double *) &now)[k] = a + place * (da + place * (3 * (b - a) - 2 * da - db
                                                        + place * (da + db - 2 * (b - a))));
    }

  return now;
}

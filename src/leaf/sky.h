/* The outside air and sun as a record of equal time steps, read between its
 * points by a monotone cubic, so that nothing jumps. Immutable, reference-counted.
 * Time is seconds of the place's own clock; day and night repeat nowhere. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef struct _LwSky LwSky;

typedef struct
{
  double temp_c;
  double vapour_pa;
  double sun_w_m2;  /* global irradiance on the level */
  double wind_m_s;
} LwAirNow;

/* A record of `n` >= 1 points, the first at `start_s`, `every_s` > 0 apart. Before the
 * first and after the last point the record keeps their values. */
LwSky   *lw_sky_new         (double          start_s,
                             double          every_s,
                             const LwAirNow *points,
                             guint           n);
LwSky   *lw_sky_ref         (LwSky          *sky);
void     lw_sky_unref       (LwSky          *sky);

LwAirNow lw_sky_at          (const LwSky    *sky,
                             double          clock_s);

/* A clear day's irradiance without a record: 850 sin (pi (hour - 6) / 12) W/m2 by day (assumed). */
double   lw_sky_clear_w_m2  (double          clock_s);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSky, lw_sky_unref)

/* The outside air and sun: a record of equal time steps, or one day that repeats,
 * read between its points by a monotone cubic, so that nothing jumps. Immutable,
 * reference-counted. Time is seconds of the place's own clock. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef struct _LwSky LwSky;

typedef struct
{
  double temp_c;
  double vapour_pa;
  double sun_w_m2;  /* global irradiance on the level, as measured */
  double wind_m_s;
  double clear;     /* and this share of a clear day's sun, 0..1, where none was measured */
} LwAirNow;

/* A record of `n` >= 1 points, the first at `start_s`, `every_s` > 0 apart. Before the
 * first and after the last point the record keeps their values. */
LwSky   *lw_sky_new         (double          start_s,
                             double          every_s,
                             const LwAirNow *points,
                             guint           n);

/* A day of `n` >= 2 points, the first at midnight, which repeats. */
LwSky   *lw_sky_new_day     (const LwAirNow *points,
                             guint           n);
LwSky   *lw_sky_ref         (LwSky          *sky);
void     lw_sky_unref       (LwSky          *sky);

LwAirNow lw_sky_at          (const LwSky    *sky,
                             double          clock_s);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSky, lw_sky_unref)

/* Where the sun stands, and what a clear or clouded sky lets through of it. The place's
 * clock is taken to show local solar time: 12 o'clock is when the sun is highest. A clock
 * set to a zone may be an hour or so off. Seconds as LwBatch.when_s; W/m2 on the level. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Radians, north of the equator positive. */
double   lw_sun_declination (double  clock_s);

/* Sine of the angle above the horizon of the sun's middle, without refraction. */
double   lw_sun_height      (double  clock_s,
                             double  latitude_deg);

/* When the sun rises and sets on the day of `clock_s`: the upper edge of its disc, refraction
 * included. FALSE where it does neither; then both are noon if it stays down, else midnights. */
gboolean lw_sun_day         (double  clock_s,
                             double  latitude_deg,
                             double *rise_s,
                             double *set_s);

/* Of a cloudless sky, from the sine of the sun's height and the place's altitude. */
double   lw_sun_clear_w_m2  (double  height,
                             double  altitude_m);

/* The share of that which passes when clouds cover so much of the sky, 0..1. */
double   lw_sun_through     (double  cloud);

/* A weather record: the hours as written down, and the sky made from them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/season.h"

#include "leaf/air.h"

static LwSky *
make_sky (gint64        start_s,
          const LwHour *hours,
          guint         n)
{
  g_autofree LwAirNow *points = g_new (LwAirNow, n);

  for (guint i = 0; i < n; i++)
    points[i] = (LwAirNow) {
      .temp_c = hours[i].temp_c,
      .vapour_pa = hours[i].humidity_pct / 100 * lw_air_saturation_pa (hours[i].temp_c),
      .sun_w_m2 = hours[i].sun_w_m2,
      .wind_m_s = hours[i].wind_m_s,
    };

  return lw_sky_new ((double) start_s, 3600, points, n);
}

LwWeather *
lw_weather_new (const char   *id,
                const char   *name,
                gint64        start_s,
                const LwHour *hours,
                guint         n)
{
  LwWeather *weather;

  g_return_val_if_fail (n >= 1, NULL);

  weather = g_atomic_rc_box_new0 (LwWeather);
  weather->id = g_strdup (id);
  weather->name = g_strdup (name);
  weather->start_s = start_s;
  weather->n_hours = n;
  weather->hours = g_memdup2 (hours, n * sizeof *hours);
  weather->sky = make_sky (start_s, hours, n);

  return weather;
}

LwWeather *
lw_weather_ref (LwWeather *weather)
{
  return g_atomic_rc_box_acquire (weather);
}

static void
weather_clear (LwWeather *weather)
{
  lw_sky_unref (weather->sky);
  g_free (weather->hours);
  g_free (weather->id);
  g_free (weather->name);
  g_free (weather->note);
}

void
lw_weather_unref (LwWeather *weather)
{
  g_atomic_rc_box_release_full (weather, (GDestroyNotify) weather_clear);
}

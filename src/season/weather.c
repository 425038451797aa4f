/* Weathers as written down, and the skies made from them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/season.h"

#include <math.h>

#include "leaf/air.h"
#include "leaf/sun.h"

/* A day curve's sky has a point every ten minutes. */
#define DAY_POINTS 144

static LwAirNow
air_of (const LwHour *hour)
{
  gboolean measured = !isnan (hour->sun_w_m2);

  return (LwAirNow) {
    .temp_c = hour->temp_c,
    .vapour_pa = hour->humidity_pct / 100 * lw_air_saturation_pa (hour->temp_c),
    .sun_w_m2 = measured ? hour->sun_w_m2 : 0,
    .wind_m_s = hour->wind_m_s,
    .clear = measured ? 0 : lw_sun_through (hour->cloud_pct / 100),
  };
}

static LwSky *
sky_of_hours (gint64        start_s,
              const LwHour *hours,
              guint         n)
{
  g_autofree LwAirNow *points = g_new (LwAirNow, n);

  for (guint i = 0; i < n; i++)
    points[i] = air_of (&hours[i]);

  return lw_sky_new ((double) start_s, 3600, points, n);
}

/* Half a cosine from the low to the high, and another back. */
static double
day_temp_c (const LwDay *day,
            double       hour)
{
  double climb = fmod (day->high_hour - day->low_hour + 48, 24);
  double since = fmod (hour - day->low_hour + 48, 24);
  double x = since < climb ? since / climb : 1 + (since - climb) / (24 - climb);

  return day->low_c + (day->high_c - day->low_c) * (0.5 - 0.5 * cos (G_PI * x));
}

/* Below its dew point the air is saturated. */
static double
day_vapour_pa (const LwDay *day,
               double       temp_c)
{
  double saturation = lw_air_saturation_pa (temp_c);

  if (!isnan (day->humidity_pct))
    return day->humidity_pct / 100 * saturation;

  return MIN (lw_air_saturation_pa (day->dew_point_c), saturation);
}

static LwSky *
sky_of_day (const LwDay *day)
{
  LwAirNow points[DAY_POINTS];

  for (guint i = 0; i < DAY_POINTS; i++)
    {
      double temp_c = day_temp_c (day, 24.0 * i / DAY_POINTS);

      points[i] = (LwAirNow) {
        .temp_c = temp_c,
        .vapour_pa = day_vapour_pa (day, temp_c),
        .wind_m_s = day->wind_m_s,
        .clear = lw_sun_through (day->cloud_pct / 100),
      };
    }

  return lw_sky_new_day (points, DAY_POINTS);
}

static LwWeather *
weather_new (const char   *id,
             const char   *name,
             LwWeatherForm form,
             const LwHour *hours,
             guint         n)
{
  LwWeather *weather = g_atomic_rc_box_new0 (LwWeather);

  weather->id = g_strdup (id);
  weather->name = g_strdup (name);
  weather->form = form;
  weather->n_hours = n;
  weather->hours = n > 0 ? g_memdup2 (hours, n * sizeof *hours) : NULL;

  /* What was not told is the same for all. */
  for (guint i = 0; i < n; i++)
    {
      if (!isnan (hours[i].sun_w_m2))
        weather->hours[i].cloud_pct = NAN;
      if (!(hours[i].rain_mm > 0))
        weather->hours[i].rain_mm = NAN;
    }

  return weather;
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

  weather = weather_new (id, name, LW_WEATHER_HOURS, hours, n);
  weather->start_s = start_s;
  weather->sky = sky_of_hours (start_s, hours, n);

  return weather;
}

LwWeather *
lw_weather_new_constant (const char   *id,
                         const char   *name,
                         const LwHour *hour)
{
  LwHour own = *hour;
  LwWeather *weather;

  own.sun_w_m2 = own.rain_mm = NAN;
  weather = weather_new (id, name, LW_WEATHER_CONSTANT, &own, 1);
  weather->sky = sky_of_hours (0, &own, 1);

  return weather;
}

LwWeather *
lw_weather_new_day (const char  *id,
                    const char  *name,
                    const LwDay *day)
{
  LwWeather *weather = weather_new (id, name, LW_WEATHER_DAY, NULL, 0);

  weather->day = *day;
  weather->sky = sky_of_day (day);

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

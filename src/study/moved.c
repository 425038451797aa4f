/* Hours and days, moved. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/moved.h"

#include <math.h>

#include "leaf/air.h"

/* The document's ranges. */
#define LEAST_C (-40.0)
#define MOST_C 60.0
#define LEAST_PCT 1.0
#define MOST_PCT 100.0

#define BESIDE 2  /* hours kept before and after, so that the curve between them is the same */

static double
moved_temp (double               temp_c,
            const LwWeatherMove *by)
{
  return CLAMP (temp_c + by->temp_k, LEAST_C, MOST_C);
}

static LwHour
moved_hour (LwHour               hour,
            const LwWeatherMove *by)
{
  hour.temp_c = moved_temp (hour.temp_c, by);
  hour.humidity_pct = CLAMP (hour.humidity_pct + by->humidity_points, LEAST_PCT, MOST_PCT);

  return hour;
}

static LwDay
moved_day (LwDay                day,
           const LwWeatherMove *by)
{
  double middle_pa = lw_air_saturation_pa ((day.low_c + day.high_c) / 2);

  day.low_c = moved_temp (day.low_c, by);
  day.high_c = moved_temp (day.high_c, by);
  if (!isnan (day.humidity_pct))
    day.humidity_pct = CLAMP (day.humidity_pct + by->humidity_points, LEAST_PCT, MOST_PCT);
  else if (by->humidity_points != 0)
    {
      double vapour_pa = lw_air_saturation_pa (day.dew_point_c) + by->humidity_points / 100 * middle_pa;

      vapour_pa = CLAMP (vapour_pa, LEAST_PCT / 100 * middle_pa, MOST_PCT / 100 * middle_pa);
      day.dew_point_c = CLAMP (lw_air_dew_point_c (vapour_pa), LEAST_C, MOST_C);
    }

  return day;
}

static LwWeather *
moved_hours (const LwWeather     *weather,
             const LwWeatherMove *by)
{
  double last = weather->n_hours - 1;
  double from = CLAMP (floor ((by->from_s - (double) weather->start_s) / 3600) - BESIDE, 0, last);
  double to = CLAMP (ceil ((by->to_s - (double) weather->start_s) / 3600) + BESIDE, from, last);
  guint first = (guint) from, n = (guint) (to - from) + 1;
  g_autofree LwHour *hours = g_memdup2 (weather->hours + first, n * sizeof *hours);

  for (guint i = 0; i < n; i++)
    hours[i] = moved_hour (hours[i], by);

  return lw_weather_new (weather->id, weather->name, weather->start_s + 3600 * (gint64) first, hours, n);
}

LwWeather *
lw_weather_moved (const LwWeather     *weather,
                  const LwWeatherMove *by)
{
  LwHour hour;
  LwDay day;

  switch (weather->form)
    {
    case LW_WEATHER_CONSTANT:
      hour = moved_hour (weather->hours[0], by);
      return lw_weather_new_constant (weather->id, weather->name, &hour);
    case LW_WEATHER_DAY:
      day = moved_day (weather->day, by);
      return lw_weather_new_day (weather->id, weather->name, &day);
    case LW_WEATHER_HOURS:
    default:
      return moved_hours (weather, by);
    }
}

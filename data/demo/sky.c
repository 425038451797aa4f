/* From days to hours: warmth falls to dawn and climbs to the afternoon, the dew point
 * drifts from one evening to the next, the sun stands where day and latitude put it
 * and the clouds dim it. Every law here is invented to look like a record. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo/sky.h"

#include <math.h>
#include <stdlib.h>

#include "demo/dice.h"
#include "leaf/air.h"
#include "season/notation.h"

#define DAWN_H 6
#define WARMEST_H 15
#define DEW_H 18

/* Goes from 0 to 1, slowly at both ends. */
static double
ease (double x)
{
  return 0.5 - 0.5 * cos (G_PI * CLAMP (x, 0, 1));
}

static double
between (double a,
         double b,
         double x)
{
  return a + (b - a) * ease (x);
}

static double
temp_c (const DemoRecord *record,
        guint             day,
        int               hour)
{
  const DemoDay *today = &record->days[day];
  const DemoDay *before = &record->days[day > 0 ? day - 1 : 0];
  const DemoDay *after = &record->days[MIN (day + 1, record->n_days - 1)];
  double climb = WARMEST_H - DAWN_H, fall = 24 - climb;

  if (hour < DAWN_H)
    return between (before->high_c, today->low_c, (hour + 24 - WARMEST_H) / fall);
  if (hour < WARMEST_H)
    return between (today->low_c, today->high_c, (hour - DAWN_H) / climb);

  return between (today->high_c, after->low_c, (hour - WARMEST_H) / fall);
}

static double
dew_c (const DemoRecord *record,
       guint             day,
       int               hour)
{
  double at = day + (hour - DEW_H) / 24.0;
  double from = CLAMP (floor (at), 0, record->n_days - 1);
  double to = MIN (from + 1, record->n_days - 1);

  return between (record->days[(guint) from].dew_c, record->days[(guint) to].dew_c, at - from);
}

/* Sine of the sun's height; the year's day 80 is the equinox. */
static double
sun_height (double year_day,
            int    hour)
{
  double tilt = 23.44 * sin (2 * G_PI * (year_day - 80) / 365) * G_PI / 180;
  double latitude = DEMO_LATITUDE_DEG * G_PI / 180;

  return sin (latitude) * sin (tilt) + cos (latitude) * cos (tilt) * cos (G_PI * (hour - 12) / 12);
}

static double
sun_w_m2 (const DemoDay *day,
          double         year_day,
          int            hour,
          GRand         *dice)
{
  double height = MAX (sun_height (year_day, hour), 0);
  double cloud = between (day->cloud_am, day->cloud_pm, (hour - 10) / 4.0)
                 + 0.08 * demo_scatter (dice);

  return 1020 * pow (height, 1.15) * (1 - 0.8 * CLAMP (cloud, 0, 1));
}

static double
wind_m_s (const DemoDay *day,
          int            hour,
          GRand         *dice)
{
  double wind = day->wind_m_s * (0.7 + 0.7 * ease (1 - abs (hour - WARMEST_H) / 9.0)
                                 + 0.15 * demo_scatter (dice));

  return MAX (wind, 0.1);
}

static LwHour
hour_of (const DemoRecord *record,
         gint64            start_s,
         guint             i,
         GRand            *dice)
{
  guint day = i / 24;
  int hour = (int) (i % 24);
  const DemoDay *today = &record->days[day];
  g_autoptr (GDateTime) date = g_date_time_new_from_unix_utc (start_s + (gint64) i * 3600);
  int year_day = g_date_time_get_day_of_year (date);
  double temp = temp_c (record, day, hour) + 0.15 * demo_scatter (dice);
  double dew = dew_c (record, day, hour) + 0.15 * demo_scatter (dice);
  double sun = sun_w_m2 (today, year_day, hour, dice);
  double wind = wind_m_s (today, hour, dice);
  double humidity = 100 * lw_air_saturation_pa (dew) / lw_air_saturation_pa (temp);

  return (LwHour) {
    .temp_c = demo_round (temp, 10),
    .humidity_pct = demo_round (MIN (humidity, 98), 1),
    .sun_w_m2 = demo_round (sun, 1),
    .wind_m_s = demo_round (wind, 10),
  };
}

LwWeather *
demo_weather (const DemoRecord *record,
              guint32           seed)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (seed);
  guint n = 24 * record->n_days;
  g_autofree LwHour *hours = g_new (LwHour, n);
  gint64 start_s = 0;
  LwWeather *weather;

  if (!lw_time_parse (record->start, &start_s))
    g_error ("%s does not start at a time", record->id);
  for (guint i = 0; i < n; i++)
    hours[i] = hour_of (record, start_s, i, dice);

  weather = lw_weather_new (record->id, record->name, start_s, hours, n);
  weather->note = g_strdup (record->note);

  return weather;
}

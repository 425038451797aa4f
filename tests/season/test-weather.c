/* Weathers into skies, and what steps feel of them: sun, heated air, night and rain. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "../leaf/near.h"
#include "leaf/air.h"
#include "leaf/sun.h"
#include "season/spell.h"
#include "season/surround.h"

#define MIDNIGHT 1775952000 /* 2026-04-12T00:00 */
#define HOUR 3600

static const LwDay dewy = { 14, 6, 24, 15, NAN, 12, 0, 0.8 };

/* A step of that kind in a batch that begins at `hour`, at 24 degrees north and 1250 m. */
static LwSeason *
season_with (LwWeather *weather,
             LwKind     kind,
             double     hour,
             double     minutes)
{
  LwSeason *season = lw_season_new ("s");
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new ("b");

  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  batch->when_s = MIDNIGHT + (gint64) (HOUR * hour);
  batch->fresh_kg = 4;
  batch->weather = weather != NULL ? g_strdup (weather->id) : NULL;
  lw_batch_insert_step (batch, 0, lw_step_new (kind));
  lw_step_set (&batch->steps[0], LW_SET_MINUTES, minutes);
  season->altitude_m = 1250;
  season->latitude_deg = 24;
  lw_season_add_profile (season, leaf);
  if (weather != NULL)
    lw_season_add_weather (season, weather);
  lw_season_insert_batch (season, 0, batch);

  return season;
}

/* Around a usual part of the leaf, `t_s` into the first step. */
static LwAround
around (LwSeason *season,
        double    t_s)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  LwBoundary boundary = lw_boundary_new (&plan->steps[0], &plan->leaf, &plan->parts[0]);

  return lw_boundary_at (&boundary, t_s);
}

static void
test_constant (void)
{
  LwHour hour = { .temp_c = 25, .humidity_pct = 60, .sun_w_m2 = 300, .wind_m_s = 2, .cloud_pct = 100, .rain_mm = 3 };
  g_autoptr (LwWeather) weather = lw_weather_new_constant ("w", "W", &hour);

  for (double t = -1e6; t < 1e6; t += 12345)
    {
      LwAirNow now = lw_sky_at (weather->sky, t);

      g_assert_cmpfloat (now.temp_c, ==, 25);
      g_assert_cmpfloat (now.vapour_pa, ==, 0.6 * lw_air_saturation_pa (25));
      g_assert_cmpfloat (now.sun_w_m2, ==, 0);
      assert_within (now.clear, 0.25, 1e-12, "through the clouds");
    }
  g_assert_false (weather->hours[0].rain_mm > 0);
}

static void
test_day (void)
{
  g_autoptr (LwWeather) weather = lw_weather_new_day ("w", "W", &dewy);
  double least = INFINITY, most = -INFINITY, last = NAN;

  assert_within (lw_sky_at (weather->sky, MIDNIGHT + 6 * HOUR).temp_c, 14, 1e-9, "low");
  assert_within (lw_sky_at (weather->sky, MIDNIGHT + 15 * HOUR).temp_c, 24, 1e-9, "high");
  assert_within (lw_sky_at (weather->sky, MIDNIGHT + 10.5 * HOUR).temp_c, 19, 1e-6, "half way up");
  assert_within (lw_sky_at (weather->sky, MIDNIGHT + 22.5 * HOUR).temp_c, 19, 1e-6, "half way down");

  for (double t = MIDNIGHT; t < MIDNIGHT + 3 * 24 * HOUR; t += 60)
    {
      LwAirNow now = lw_sky_at (weather->sky, t);

      assert_within (lw_air_dew_point_c (now.vapour_pa), 12, 1e-6, "dew point");
      assert_within (lw_sky_at (weather->sky, t + 10 * 24 * HOUR).temp_c, now.temp_c, 1e-6, "another day");
      /* 10 K in 9 h by half a cosine: at most 1.75 K an hour. */
      if (!isnan (last))
        assert_within (now.temp_c, last, 0.03, "no jump");
      last = now.temp_c;
      least = MIN (least, last);
      most = MAX (most, last);
    }
  assert_within (least, 14, 1e-6, "lowest");
  assert_within (most, 24, 1e-6, "highest");
}

/* Air cannot hold more than it can; and a relative humidity stays the same all day. */
static void
test_day_humidity (void)
{
  LwDay foggy = dewy, humid = dewy;
  g_autoptr (LwWeather) fog = NULL, even = NULL;

  foggy.dew_point_c = 18;
  humid.humidity_pct = 80;
  fog = lw_weather_new_day ("f", "F", &foggy);
  even = lw_weather_new_day ("e", "E", &humid);

  for (double t = 0; t < 24 * HOUR; t += 600)
    {
      LwAirNow now = lw_sky_at (fog->sky, t);

      g_assert_cmpfloat (now.vapour_pa, <=, lw_air_saturation_pa (now.temp_c) * (1 + 1e-12));
      now = lw_sky_at (even->sky, t);
      assert_relative (now.vapour_pa, 0.8 * lw_air_saturation_pa (now.temp_c), 1e-9, "humidity");
    }
}

/* The sun on the leaf is that of the clear sky at the season's place, through the clouds. */
static void
test_sun (void)
{
  for (guint cloud = 0; cloud <= 100; cloud += 50)
    {
      LwHour hour = { 25, 60, NAN, 1, cloud, 0 };
      g_autoptr (LwSeason) season = season_with (lw_weather_new_constant ("w", "W", &hour), LW_KIND_DRY_SUN, 0, 1440);

      for (double t = 0; t <= 24 * HOUR; t += 1800)
        assert_within (around (season, t).sun_w_m2,
                       lw_sun_through (cloud / 100.0)
                         * lw_sun_clear_w_m2 (lw_sun_height (MIDNIGHT + t, 24), 1250), 1e-9, "sun");
    }
}

/* A batch without weather has a clear sky. 12 April at 24 N: 75 degrees high at noon, by the sky's law 1030 W/m2. */
static void
test_no_weather (void)
{
  g_autoptr (LwSeason) season = season_with (NULL, LW_KIND_DRY_SUN, 12, 60);
  g_autoptr (LwSeason) night = season_with (NULL, LW_KIND_DRY_SUN, 22, 60);

  assert_within (around (season, 0).sun_w_m2, 1030, 10, "noon");
  g_assert_cmpfloat (around (night, 0).sun_w_m2, ==, 0);
  season->latitude_deg = -60;
  assert_within (around (season, 0).sun_w_m2, 320, 40, "far south in autumn");
}

/* An hour that tells of cloud beside one that was measured: from one to the other without a jump. */
static void
test_mixed_record (void)
{
  LwHour hours[] = { { 20, 60, 500, 1 }, { 20, 60, NAN, 1, 100, 0 }, { 20, 60, 100, 1 } };
  g_autoptr (LwSeason) season = season_with (lw_weather_new ("w", "W", MIDNIGHT + 11 * HOUR, hours, 3),
                                             LW_KIND_DRY_SUN, 11, 120);
  double clear = lw_sun_clear_w_m2 (lw_sun_height (MIDNIGHT + 12 * HOUR, 24), 1250), last = 500;

  assert_within (around (season, 0).sun_w_m2, 500, 1e-9, "measured");
  assert_within (around (season, HOUR).sun_w_m2, 0.25 * clear, 1e-9, "through the clouds");
  assert_within (around (season, 2 * HOUR).sun_w_m2, 100, 1e-9, "measured again");
  for (double t = 0; t <= 2 * HOUR; t += 60)
    {
      assert_within (around (season, t).sun_w_m2, last, 12, "no jump");
      last = around (season, t).sun_w_m2;
    }
}

/* 25 C, 60 % air heated at constant humidity ratio, by the equations of ASHRAE Handbook Fundamentals 2017, chapter 1:
 * the table of tests/leaf/test-air.c, and whatever the place's altitude. */
static const struct { double temp_c, humidity_pct; } heated[] = { { 60, 9.5 }, { 80, 4.0 }, { 100, 1.9 }, { 120, 0.96 } };

static void
test_heated (void)
{
  static const LwKind kinds[] = { LW_KIND_DRY_AIR, LW_KIND_ROAST };
  LwHour hour = { 25, 60, NAN, 1, 50, 0 };

  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    for (guint i = 0; i < G_N_ELEMENTS (heated); i++)
      {
        g_autoptr (LwSeason) season = season_with (lw_weather_new_constant ("w", "W", &hour), kinds[k], 10, 60);
        LwAround now;

        lw_step_set (&season->batches[0]->steps[0], LW_SET_AIR_C, heated[i].temp_c);
        now = around (season, 600);
        g_assert_cmpfloat (now.temp_c, ==, heated[i].temp_c);
        assert_within (100 * now.vapour_pa / lw_air_saturation_pa (now.temp_c), heated[i].humidity_pct, 0.06, "humidity");
      }
}

static void
assert_spells (LwSeason   *season,
               LwSpellKind kind,
               const double (*expected)[2],
               guint       n)
{
  g_autoptr (GArray) spells = lw_spells_new (season, season->batches[0]);
  double minutes = 0;
  guint found = 0;

  for (guint i = 0; i < spells->len; i++)
    {
      const LwSpell *spell = &g_array_index (spells, LwSpell, i);

      if (spell->kind != kind)
        continue;
      g_assert_cmpuint (found, <, n);
      assert_within (spell->from_minute, expected[found][0], 0.01, "from");
      assert_within (spell->to_minute, expected[found][1], 0.01, "to");
      minutes += expected[found][1] - expected[found][0];
      found++;
    }
  g_assert_cmpuint (found, ==, n);
  assert_within (lw_spells_minutes (spells, 0, kind), minutes, 0.05, "minutes");
}

/* 40 h from noon: all of the first night, and the second until the step's end. */
static void
test_night (void)
{
  g_autoptr (LwSeason) season = season_with (lw_weather_new_day ("w", "W", &dewy), LW_KIND_WITHER, 12, 2400);
  double rise, set, next_rise, next_set;

  lw_sun_day (MIDNIGHT, 24, &rise, &set);
  lw_sun_day (MIDNIGHT + 24 * HOUR, 24, &next_rise, &next_set);
  assert_spells (season, LW_SPELL_NIGHT, (const double[][2]) {
    { (set - MIDNIGHT) / 60 - 720, (next_rise - MIDNIGHT) / 60 - 720 }, { (next_set - MIDNIGHT) / 60 - 720, 2400 },
  }, 2);
  /* 12 April at 24 N: the sun sets some 22 minutes after six. */
  assert_within ((set - MIDNIGHT) / 60 - 1080, 21, 3, "sunset");

  season->latitude_deg = 85;
  assert_spells (season, LW_SPELL_NIGHT, NULL, 0);
  season->latitude_deg = -85;
  assert_spells (season, LW_SPELL_NIGHT, (const double[][2]) { { 0, 2400 } }, 1);
}

/* Indoors at constant air it is never night. */
static void
test_indoors (void)
{
  g_autoptr (LwSeason) season = season_with (NULL, LW_KIND_WITHER, 12, 2400);

  assert_spells (season, LW_SPELL_NIGHT, NULL, 0);
  lw_step_set (&season->batches[0]->steps[0], LW_SET_SUN_PCT, 50);
  g_assert_true (lw_step_follows (season, &season->batches[0]->steps[0], NULL));
  season->latitude_deg = -85;
  assert_spells (season, LW_SPELL_NIGHT, (const double[][2]) { { 0, 2400 } }, 1);
}

/* On a clock there is night over every step, and rain still only where it is felt. */
static void
test_clock (void)
{
  g_autoptr (LwSeason) season = season_with (NULL, LW_KIND_WITHER, 12, 2400);
  g_autoptr (GArray) spells = NULL;

  lw_batch_insert_step (season->batches[0], 1, lw_step_new (LW_KIND_ROLL));
  spells = lw_spells_clock (season, season->batches[0]);
  g_assert_cmpuint (spells->len, ==, 3);
  for (guint i = 0; i < spells->len; i++)
    g_assert_cmpint (g_array_index (spells, LwSpell, i).kind, ==, LW_SPELL_NIGHT);
  /* 40 h after noon it is four in the morning. */
  g_assert_cmpuint (g_array_index (spells, LwSpell, 2).step, ==, 1);
  g_assert_cmpfloat (g_array_index (spells, LwSpell, 2).from_minute, ==, 0);
  assert_spells (season, LW_SPELL_NIGHT, NULL, 0);
}

/* Hours of rain one after the other are one; what is outside the step does not count. */
static void
test_rain (void)
{
  LwHour hours[24];
  g_autoptr (LwSeason) season = NULL;

  for (guint i = 0; i < 24; i++)
    hours[i] = (LwHour) { 20, 60, 0, 1, 0, i <= 10 || i == 12 || i == 13 || i == 15 || i >= 17 ? 0.5 : 0 };
  season = season_with (lw_weather_new ("w", "W", MIDNIGHT, hours, 24), LW_KIND_DRY_SUN, 10.5, 420);
  assert_spells (season, LW_SPELL_RAIN, (const double[][2]) {
    { 0, 30 }, { 90, 210 }, { 270, 330 }, { 390, 420 },
  }, 4);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/weather/constant", test_constant);
  g_test_add_func ("/weather/day", test_day);
  g_test_add_func ("/weather/day-humidity", test_day_humidity);
  g_test_add_func ("/weather/sun", test_sun);
  g_test_add_func ("/weather/no-weather", test_no_weather);
  g_test_add_func ("/weather/mixed-record", test_mixed_record);
  g_test_add_func ("/weather/heated", test_heated);
  g_test_add_func ("/weather/night", test_night);
  g_test_add_func ("/weather/indoors", test_indoors);
  g_test_add_func ("/weather/clock", test_clock);
  g_test_add_func ("/weather/rain", test_rain);

  return g_test_run ();
}

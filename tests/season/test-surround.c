/* Steps become conditions: units, which air the leaf meets, the place's pressure, the clock. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/surround.h"

#include "../leaf/near.h"
#include "leaf/air.h"

#define WHEN 1775989800 /* 2026-04-12T10:30 */
#define N_HOURS 72

static LwWeather *
weather_of_three_days (void)
{
  LwHour hours[N_HOURS];

  for (guint i = 0; i < N_HOURS; i++)
    hours[i] = (LwHour) { 15 + 0.2 * i, 60, i % 24 > 6 && i % 24 < 18 ? 700 : 0, 1 + 0.01 * i };

  return lw_weather_new ("april", "April", WHEN - 10 * 3600 - 1800, hours, N_HOURS);
}

/* At 1250 m; a batch without steps, with the weather or not. */
static LwSeason *
season_with (gboolean weather)
{
  LwSeason *season = lw_season_new ("s");
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new ("b");

  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  batch->when_s = WHEN;
  batch->fresh_kg = 4;
  season->altitude_m = 1250;
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);
  if (weather)
    {
      lw_season_add_weather (season, weather_of_three_days ());
      batch->weather = g_strdup ("april");
    }

  return season;
}

static LwStep *
add_step (LwSeason *season,
          LwKind    kind)
{
  LwBatch *batch = season->batches[0];

  lw_batch_insert_step (batch, batch->n_steps, lw_step_new (kind));

  return &batch->steps[batch->n_steps - 1];
}

/* What the last step becomes. The season must outlive it. */
static LwConditions
last_conditions (LwSeason *season)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);

  g_assert_nonnull (plan);
  g_assert_cmpuint (plan->n_steps, ==, season->batches[0]->n_steps);

  return plan->steps[plan->n_steps - 1];
}

/* Each setting of the document, the condition that it sets, and by which factor. */
static const struct
{
  const char *id;
  gsize offset;
  double factor;
} units[] = {
  { "minutes", offsetof (LwConditions, duration_s), 60 },
  { "air-c", offsetof (LwConditions, air_temp_c), 1 },
  { "humidity-pct", offsetof (LwConditions, humidity), 0.01 },
  { "air-m-s", offsetof (LwConditions, air_m_s), 1 },
  { "spread-kg-m2", offsetof (LwConditions, spread_kg_m2), 1 },
  { "cover-pct", offsetof (LwConditions, cover), 0.01 },
  { "turning-per-h", offsetof (LwConditions, turning_h), 1 },
  { "sun-pct", offsetof (LwConditions, sun_share), 0.01 },
  { "wall-c", offsetof (LwConditions, wall_c), 1 },
  { "load-kg", offsetof (LwConditions, load_kg), 1 },
  { "wall-m2", offsetof (LwConditions, wall_m2), 1 },
  { "wall-w-m2k", offsetof (LwConditions, wall_w_m2k), 1 },
  { "touch-s", offsetof (LwConditions, touch_s), 1 },
  { "touch-pct", offsetof (LwConditions, touch_share), 0.01 },
  { "hot-air-pct", offsetof (LwConditions, hot_air), 0.01 },
  { "toss-pct", offsetof (LwConditions, toss), 0.01 },
  { "press-kpa", offsetof (LwConditions, press_kpa), 1 },
  { "steam-w-m2k", offsetof (LwConditions, steam_w_m2k), 1 },
};

G_STATIC_ASSERT (G_N_ELEMENTS (units) == LW_N_SETTINGS);

/* Every setting of a kind reaches the leaf as given, whatever the weather; what the kind lacks is 0. */
static void
test_units (gconstpointer data)
{
  LwKind kind = (LwKind) GPOINTER_TO_INT (data);

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    {
      g_autoptr (LwSeason) season = season_with (TRUE);
      LwStep *step = add_step (season, kind);
      int setting = lw_setting_find (units[i].id);
      const LwKindSetting *row = lw_kind_setting (kind, (LwSetting) setting);
      double value = row != NULL ? row->low + 0.3 * (row->high - row->low) : 0;
      LwConditions at;

      if (row != NULL)
        lw_step_set (step, (LwSetting) setting, value);
      else if (kind == LW_KIND_FIX_STEAM && (setting == LW_SET_AIR_C || setting == LW_SET_HUMIDITY_PCT))
        continue; /* steam brings its own */

      at = last_conditions (season);
      assert_within (*(double *) ((char *) &at + units[i].offset), units[i].factor * value, 1e-12 * fabs (value),
                     units[i].id);
    }
}

static void
test_not_given (void)
{
  g_autoptr (LwSeason) season = season_with (FALSE);
  LwConditions at;

  add_step (season, LW_KIND_WITHER);
  at = last_conditions (season);
  g_assert_cmpfloat (at.duration_s, ==, 1080 * 60);
  g_assert_cmpfloat (at.air_temp_c, ==, 22);
  assert_relative (at.humidity, 0.68, 1e-12, "humidity");
  g_assert_cmpint (at.follow, ==, 0);
  g_assert_null (at.sky);
}

typedef struct
{
  LwKind kind;
  int given[3]; /* settings given, then -1 */
  guint with;   /* what is followed with weather */
  guint without;
} Following;

#define AIR (LW_FOLLOW_TEMP | LW_FOLLOW_VAPOUR)

static const Following followings[] = {
  { LW_KIND_WITHER, { -1 }, AIR, 0 },
  { LW_KIND_WITHER, { LW_SET_AIR_C, -1 }, LW_FOLLOW_VAPOUR, 0 },
  { LW_KIND_WITHER, { LW_SET_HUMIDITY_PCT, -1 }, LW_FOLLOW_TEMP, 0 },
  { LW_KIND_WITHER, { LW_SET_AIR_C, LW_SET_HUMIDITY_PCT, -1 }, 0, 0 },
  { LW_KIND_WITHER, { LW_SET_SUN_PCT, -1 }, AIR | LW_FOLLOW_SUN, LW_FOLLOW_SUN },
  { LW_KIND_FIX_PAN, { -1 }, AIR, 0 },
  { LW_KIND_FIX_STEAM, { -1 }, 0, 0 },
  { LW_KIND_REST, { -1 }, LW_FOLLOW_TEMP, 0 },
  { LW_KIND_DRY_SUN, { -1 }, AIR | LW_FOLLOW_WIND | LW_FOLLOW_SUN, LW_FOLLOW_SUN },
  { LW_KIND_DRY_SUN, { LW_SET_AIR_M_S, -1 }, AIR | LW_FOLLOW_SUN, LW_FOLLOW_SUN },
  { LW_KIND_DRY_AIR, { -1 }, LW_FOLLOW_VAPOUR, 0 },
  { LW_KIND_ROAST, { -1 }, LW_FOLLOW_VAPOUR, 0 },
};

/* A given value holds, another follows the weather if there is one. */
static void
test_following (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (followings); i++)
    for (int weather = 0; weather < 2; weather++)
      {
        const Following *row = &followings[i];
        g_autoptr (LwSeason) season = season_with (weather);
        LwStep *step = add_step (season, row->kind);
        LwConditions at;

        for (const int *given = row->given; *given >= 0; given++)
          lw_step_set (step, (LwSetting) *given, lw_kind_setting (row->kind, (LwSetting) *given)->high);

        at = last_conditions (season);
        if ((guint) at.follow != (weather ? row->with : row->without))
          g_error ("row %u, weather %d: follows %#x", i, weather, (guint) at.follow);
        g_assert_true (at.sky == (weather && at.follow != 0 ? season->weathers[0]->sky : NULL));
        /* A relative humidity would be taken before the sky's vapour. */
        if (at.follow & LW_FOLLOW_VAPOUR)
          g_assert_cmpfloat (at.humidity, ==, 0);
      }
}

/* Outside air that is only heated has the vapour it had outside. */
static void
test_hot_air (void)
{
  static const LwKind kinds[] = { LW_KIND_DRY_AIR, LW_KIND_ROAST };

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (LwSeason) season = season_with (FALSE);
      LwConditions at;

      lw_step_set (add_step (season, kinds[i]), LW_SET_AIR_C, 100);
      at = last_conditions (season);
      g_assert_cmpfloat (at.air_temp_c, ==, 100);
      g_assert_cmpfloat (at.humidity, ==, 0);
      /* 22 °C at 68 %: 2645 Pa saturated. */
      assert_relative (at.vapour_pa, 0.68 * 2645, 2e-3, "vapour");
    }
}

/* Water boils at 100 °C by the sea and near 95.9 °C at 1250 m. */
static void
test_steam (void)
{
  g_autoptr (LwSeason) season = season_with (TRUE);
  LwConditions at;

  add_step (season, LW_KIND_FIX_STEAM);
  at = last_conditions (season);
  assert_within (at.air_temp_c, 95.8, 0.2, "steam at 1250 m");
  g_assert_cmpfloat (at.humidity, ==, 1);
  g_assert_cmpfloat (at.mixed, ==, 0);
  season->altitude_m = 0;
  assert_within (last_conditions (season).air_temp_c, 99.97, 0.02, "steam by the sea");
}

static void
test_mixed (void)
{
  for (int kind = 0; kind < LW_N_KINDS; kind++)
    {
      g_autoptr (LwSeason) season = season_with (FALSE);
      gboolean moved = kind == LW_KIND_TUMBLE || kind == LW_KIND_ROLL;

      add_step (season, (LwKind) kind);
      g_assert_cmpfloat (last_conditions (season).mixed, ==, moved ? 0.95 : 0);
    }
}

static void
test_sun_share (void)
{
  g_autoptr (LwSeason) season = season_with (TRUE);
  LwStep *step = add_step (season, LW_KIND_DRY_SUN);

  lw_step_set (step, LW_SET_SUN_PCT, 30);
  assert_relative (last_conditions (season).sun_share, 0.3, 1e-12, "sun");
  lw_step_set (step, LW_SET_SUN_PCT, 0);
  g_assert_cmpint (last_conditions (season).follow & LW_FOLLOW_SUN, ==, 0);
}

/* ISO 2533:1975. */
static void
test_pressure (void)
{
  static const struct { double altitude_m, pressure_pa; } rows[] = {
    { 0, 101325 }, { 1000, 89876 }, { 2000, 79501 }, { -500, 107478 },
  };
  g_autoptr (LwSeason) season = season_with (FALSE);

  add_step (season, LW_KIND_ROLL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      season->altitude_m = rows[i].altitude_m;
      assert_relative (last_conditions (season).pressure_pa, rows[i].pressure_pa, 1e-4, "pressure");
    }
}

static void
test_leaf (void)
{
  g_autoptr (LwSeason) season = season_with (FALSE);
  LwBatch *batch = season->batches[0];
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0), own = NULL, sky = NULL;
  g_autoptr (LwSeason) other = season_with (TRUE);

  g_assert_true (isnan (batch->fresh_moisture_pct));
  assert_relative (plan->leaf.fresh_water, 77.0 / 23, 1e-12, "the profile's water");
  g_assert_cmpfloat (plan->leaf.fresh_temp_c, ==, 22);
  g_assert_cmpuint (plan->leaf.n_parts, ==, season->profiles[0]->n_parts);

  batch->fresh_moisture_pct = 80;
  own = lw_plan_new (season, 0);
  assert_relative (own->leaf.fresh_water, 4.0, 1e-12, "the batch's water");

  /* Half past ten: between the tenth hour's 17.0 °C and the eleventh's 17.2 °C. */
  sky = lw_plan_new (other, 0);
  assert_within (sky->leaf.fresh_temp_c, 17.1, 1e-9, "leaf as warm as the air");
}

/* A step that follows nothing has no clock, so that no earlier change reaches it. */
static void
test_clock (void)
{
  g_autoptr (LwSeason) season = season_with (TRUE);
  g_autoptr (LwPlan) plan = NULL;
  LwStep *roll;

  lw_step_set (add_step (season, LW_KIND_WITHER), LW_SET_MINUTES, 300);
  roll = add_step (season, LW_KIND_ROLL);
  lw_step_set (roll, LW_SET_MINUTES, 10);
  lw_step_set (roll, LW_SET_AIR_C, 25);
  lw_step_set (roll, LW_SET_HUMIDITY_PCT, 70);
  add_step (season, LW_KIND_DRY_SUN);

  plan = lw_plan_new (season, 0);
  g_assert_cmpfloat (plan->steps[0].clock_s, ==, WHEN);
  g_assert_cmpfloat (plan->steps[1].clock_s, ==, 0);
  g_assert_cmpfloat (plan->steps[2].clock_s, ==, WHEN + 310 * 60);
}

static void
test_unknown (void)
{
  g_autoptr (LwSeason) season = season_with (TRUE);

  g_free (season->batches[0]->leaf);
  season->batches[0]->leaf = g_strdup ("none");
  g_assert_null (lw_plan_new (season, 0));
  g_free (season->batches[0]->leaf);
  season->batches[0]->leaf = g_strdup (season->profiles[0]->id);
  g_free (season->batches[0]->weather);
  season->batches[0]->weather = g_strdup ("none");
  g_assert_null (lw_plan_new (season, 0));
}

static void
test_failure_text (void)
{
  g_autoptr (LwSeason) season = season_with (FALSE);
  const LwTrack track = { .failure = { .failed = TRUE, .step = 1, .time_s = 90 } };
  g_autoptr (LwPlan) plan = NULL;
  g_autofree char *text = NULL;

  add_step (season, LW_KIND_WITHER);
  add_step (season, LW_KIND_FIX_PAN);
  plan = lw_plan_new (season, 0);
  text = lw_plan_failure_text (plan, season->batches[0], &track);
  g_assert_cmpstr (text, ==, "Step 2 (fix in pan) could not be computed beyond 1 min 30 s. "
                             "Set it closer to usual values.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (int kind = 0; kind < LW_N_KINDS; kind++)
    {
      g_autofree char *name = g_strconcat ("/surround/units/", lw_kind_row ((LwKind) kind)->id, NULL);

      g_test_add_data_func (name, GINT_TO_POINTER (kind), test_units);
    }
  g_test_add_func ("/surround/not-given", test_not_given);
  g_test_add_func ("/surround/following", test_following);
  g_test_add_func ("/surround/hot-air", test_hot_air);
  g_test_add_func ("/surround/steam", test_steam);
  g_test_add_func ("/surround/mixed", test_mixed);
  g_test_add_func ("/surround/sun-share", test_sun_share);
  g_test_add_func ("/surround/pressure", test_pressure);
  g_test_add_func ("/surround/leaf", test_leaf);
  g_test_add_func ("/surround/clock", test_clock);
  g_test_add_func ("/surround/unknown", test_unknown);
  g_test_add_func ("/surround/failure-text", test_failure_text);

  return g_test_run ();
}

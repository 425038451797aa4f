/* Throwing the dice for a batch. The ranges are those of the reader. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "chance.h"

#include <math.h>
#include <string.h>

#include "season/shape.h"

#define MOST_PARTS 8
#define MOST_STEPS 8
#define END_CHANCE 0.05
#define GIVEN_CHANCE 0.8

double
chance_number (GRand  *dice,
               double  low,
               double  high)
{
  double at = g_rand_double (dice);

  if (at < END_CHANCE)
    return at < END_CHANCE / 2 ? low : high;

  at = g_rand_double (dice);

  return low > 0 && high >= 10 * low ? CLAMP (low * pow (high / low, at), low, high) : low + at * (high - low);
}

/* A number within the range of an attribute. */
static double
of_attr (GRand      *dice,
         LwElement   element,
         const char *name)
{
  LwAttrRow rows[LW_MAX_ATTRS];
  guint n = lw_shape_attrs (element, -1, rows);

  for (guint i = 0; i < n; i++)
    if (strcmp (rows[i].name, name) == 0)
      return chance_number (dice, rows[i].low, rows[i].high);

  g_assert_not_reached ();
}

static LwProfile *
leaf_of (GRand *dice)
{
  LwProfile *leaf = lw_profile_new ("leaf", "Leaf");
  guint n = (guint) g_rand_int_range (dice, 1, MOST_PARTS + 1);
  double share[MOST_PARTS], sum = 0;

  leaf->fresh_moisture_pct = of_attr (dice, LW_E_LEAF, "fresh-moisture-pct");
  leaf->fresh_green = of_attr (dice, LW_E_LEAF, "green");
  for (guint i = 0; i < n; i++)
    sum += share[i] = chance_number (dice, 1e-3, 1);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = g_strdup_printf ("part %u", i + 1);
      LwPart part = {
        .share = share[i] / sum,
        .exposure = of_attr (dice, LW_E_PART, "exposure"),
        .area = of_attr (dice, LW_E_PART, "area"),
        .cuticle = of_attr (dice, LW_E_PART, "cuticle"),
        .ruptured = g_rand_boolean (dice) ? of_attr (dice, LW_E_PART, "ruptured") : 0.005,
      };

      lw_profile_add_part (leaf, name, part);
    }

  return leaf;
}

/* One to three days, by the hour, without any sense in how one hour follows another. */
static LwWeather *
weather_of (GRand *dice)
{
  guint n = 24 * (guint) g_rand_int_range (dice, 1, 4);
  g_autofree LwHour *hours = g_new0 (LwHour, n);

  for (guint i = 0; i < n; i++)
    hours[i] = (LwHour) {
      .temp_c = chance_number (dice, -10, 45),
      .humidity_pct = chance_number (dice, 1, 100),
      .sun_w_m2 = i % 24 > 5 && i % 24 < 19 ? chance_number (dice, 0, 1200) : 0,
      .wind_m_s = chance_number (dice, 0, 30),
    };

  return lw_weather_new ("sky", "Sky", 0, hours, n);
}

static LwStep
step_of (GRand *dice)
{
  LwStep step = lw_step_new ((LwKind) g_rand_int_range (dice, 0, LW_N_KINDS));
  const LwKindRow *kind = lw_kind_row (step.kind);

  for (guint i = 0; i < kind->n_settings; i++)
    {
      const LwKindSetting *at = &kind->settings[i];

      if (at->setting == LW_SET_MINUTES || g_rand_double (dice) < GIVEN_CHANCE)
        lw_step_set (&step, at->setting, chance_number (dice, at->low, at->high));
    }

  return step;
}

LwSeason *
chance_season (guint32 seed)
{
  GRand *dice = g_rand_new_with_seed (seed);
  LwSeason *season = lw_season_new ("Chance");
  LwBatch *batch = lw_batch_new ("1");
  guint n = (guint) g_rand_int_range (dice, 1, MOST_STEPS + 1);

  season->altitude_m = g_rand_double_range (dice, 0, 3000);
  season->latitude_deg = g_rand_double_range (dice, -45, 45);
  lw_season_add_profile (season, leaf_of (dice));
  g_free (batch->leaf);
  batch->leaf = g_strdup ("leaf");
  batch->fresh_kg = chance_number (dice, 0.1, 100);
  batch->when_s = g_rand_int_range (dice, 0, 48 * 60) * 60;
  if (g_rand_int_range (dice, 0, 3) == 0)
    {
      lw_season_add_weather (season, weather_of (dice));
      batch->weather = g_strdup ("sky");
    }
  for (guint i = 0; i < n; i++)
    lw_batch_insert_step (batch, i, step_of (dice));
  lw_season_insert_batch (season, 0, batch);
  g_rand_free (dice);

  return season;
}

/* Steps into conditions. Most settings are only a change of unit (a table); what
 * differs by kind is which air the leaf meets. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/surround.h"

#include <math.h>

#include "leaf/air.h"
#include "season/correction.h"
#include "season/text.h"
#include "season/wording.h"

#define INDOOR_C 22.0
#define INDOOR_HUMIDITY 0.68
#define WELL_MIXED 0.95

/* A setting that becomes a condition by a factor alone. */
static const struct
{
  LwSetting setting;
  gsize offset;
  double factor;
} plain[] = {
  { LW_SET_MINUTES, offsetof (LwConditions, duration_s), 60 },
  { LW_SET_AIR_C, offsetof (LwConditions, air_temp_c), 1 },
  { LW_SET_HUMIDITY_PCT, offsetof (LwConditions, humidity), 0.01 },
  { LW_SET_AIR_M_S, offsetof (LwConditions, air_m_s), 1 },
  { LW_SET_SPREAD_KG_M2, offsetof (LwConditions, spread_kg_m2), 1 },
  { LW_SET_COVER_PCT, offsetof (LwConditions, cover), 0.01 },
  { LW_SET_TURNING_PER_H, offsetof (LwConditions, turning_h), 1 },
  { LW_SET_SUN_PCT, offsetof (LwConditions, sun_share), 0.01 },
  { LW_SET_WALL_C, offsetof (LwConditions, wall_c), 1 },
  { LW_SET_LOAD_KG, offsetof (LwConditions, load_kg), 1 },
  { LW_SET_WALL_M2, offsetof (LwConditions, wall_m2), 1 },
  { LW_SET_WALL_W_M2K, offsetof (LwConditions, wall_w_m2k), 1 },
  { LW_SET_TOUCH_S, offsetof (LwConditions, touch_s), 1 },
  { LW_SET_TOUCH_PCT, offsetof (LwConditions, touch_share), 0.01 },
  { LW_SET_HOT_AIR_PCT, offsetof (LwConditions, hot_air), 0.01 },
  { LW_SET_TOSS_PCT, offsetof (LwConditions, toss), 0.01 },
  { LW_SET_PRESS_KPA, offsetof (LwConditions, press_kpa), 1 },
  { LW_SET_STEAM_W_M2K, offsetof (LwConditions, steam_w_m2k), 1 },
};

static void
follow_weather (LwConditions *at,
                const LwStep *step,
                const LwSky  *sky)
{
  static const struct { LwSetting setting; LwFollow follow; } by[] = {
    { LW_SET_AIR_C, LW_FOLLOW_TEMP },
    { LW_SET_HUMIDITY_PCT, LW_FOLLOW_VAPOUR },
    { LW_SET_AIR_M_S, LW_FOLLOW_WIND },
  };

  for (guint i = 0; i < G_N_ELEMENTS (by); i++)
    {
      const LwKindSetting *row = lw_kind_setting (step->kind, by[i].setting);

      if (sky != NULL && row != NULL && row->weather && !lw_step_is_given (step, by[i].setting)
          && lw_step_log (step, by[i].setting) == NULL)
        at->follow |= by[i].follow;
    }

  if (at->sun_share > 0)
    at->follow |= LW_FOLLOW_SUN;
}

/* Kinds whose air is not simply the step's own settings. */
static void
air_of_kind (LwConditions *at,
             const LwStep *step,
             const LwSky  *sky)
{
  switch (step->kind)
    {
    case LW_KIND_TUMBLE:
    case LW_KIND_ROLL:
      at->mixed = WELL_MIXED;
      break;

    case LW_KIND_FIX_STEAM:
      at->air_temp_c = lw_air_boiling_c (at->pressure_pa);
      at->humidity = 1;
      break;

    case LW_KIND_DRY_AIR:
    case LW_KIND_ROAST:
      /* Heated outside air keeps its own vapour. */
      if (sky != NULL)
        at->follow |= LW_FOLLOW_VAPOUR;
      else
        at->vapour_pa = INDOOR_HUMIDITY * lw_air_saturation_pa (INDOOR_C);
      break;

    case LW_KIND_WITHER:
    case LW_KIND_FIX_PAN:
    case LW_KIND_FIX_DRUM:
    case LW_KIND_REST:
    case LW_KIND_DRY_SUN:
    default:
      break;
    }
}

static LwConditions
conditions_of (const LwStep   *step,
               const LwSeason *season,
               double          clock_s,
               const LwSky    *sky)
{
  LwConditions at = { 0 };

  at.pressure_pa = lw_air_pressure_pa (season->altitude_m);
  at.clock_s = clock_s;

  for (guint i = 0; i < G_N_ELEMENTS (plain); i++)
    if (lw_kind_setting (step->kind, plain[i].setting) != NULL)
      *(double *) ((char *) &at + plain[i].offset) = plain[i].factor * lw_step_get (step, plain[i].setting);

  follow_weather (&at, step, sky);
  air_of_kind (&at, step, sky);

  if (at.follow & LW_FOLLOW_VAPOUR)
    at.humidity = 0;
  if (at.follow & LW_FOLLOW_SUN)
    {
      at.latitude_deg = season->latitude_deg;
      at.altitude_m = season->altitude_m;
    }
  if (at.follow != 0)
    at.sky = sky;

  return at;
}

/* A log goes before the weather and before what is set. */
static void
follow_logs (LwConditions  *at,
             const LwBatch *batch,
             guint          step)
{
  const LwFollowed *wall = lw_batch_followed (batch, step, LW_SET_WALL_C, &at->wall_from_s);
  const LwFollowed *air = lw_batch_followed (batch, step, LW_SET_AIR_C, &at->air_from_s);

  if (wall != NULL)
    {
      at->follow |= LW_FOLLOW_WALL;
      at->wall = wall->course;
    }
  if (air != NULL)
    {
      at->follow |= LW_FOLLOW_AIR;
      at->air = air->course;
    }
}

gboolean
lw_step_follows (const LwSeason  *season,
                 const LwStep    *step,
                 const LwWeather *weather)
{
  return conditions_of (step, season, 0, weather != NULL ? weather->sky : NULL).follow != 0;
}

static LwLeaf
leaf_of (const LwProfile *profile,
         const LwBatch   *batch,
         const LwSky     *sky,
         LwPart         **parts)
{
  *parts = g_memdup2 (profile->parts, profile->n_parts * sizeof *profile->parts);

  return (LwLeaf) {
    .law = profile->law,
    .fresh_water = lw_dry_basis (lw_batch_fresh_moisture (batch, profile)),
    .fresh_green = profile->fresh_green,
    .fresh_temp_c = sky != NULL ? lw_sky_at (sky, (double) batch->when_s).temp_c : INDOOR_C,
    .n_parts = profile->n_parts,
    .parts = *parts,
  };
}

/* The last aim at the finished tea's moisture; an open side is no turn. */
static LwAimed
aimed_of (const LwBatch *batch)
{
  LwAimed aimed = { NAN, NAN };

  for (guint i = 0; i < batch->n_aims; i++)
    if (batch->aims[i].of == LW_MOISTURE)
      {
        aimed.high = isfinite (batch->aims[i].high) ? lw_dry_basis (batch->aims[i].high) : NAN;
        aimed.low = isfinite (batch->aims[i].low) ? lw_dry_basis (batch->aims[i].low) : NAN;
      }

  return aimed;
}

LwPlan *
lw_plan_new (LwSeason *season,
             guint     at)
{
  const LwBatch *batch = season->batches[at];
  const LwProfile *profile = lw_season_profile (season, batch->leaf);
  const LwWeather *weather = batch->weather ? lw_season_weather (season, batch->weather) : NULL;
  const LwSky *sky = weather ? weather->sky : NULL;
  double clock_s = (double) batch->when_s;
  LwPlan *plan;

  if (profile == NULL || (batch->weather != NULL && weather == NULL))
    return NULL;

  plan = g_new0 (LwPlan, 1);
  plan->season = lw_season_ref (season);
  plan->leaf = leaf_of (profile, batch, sky, &plan->parts);
  plan->n_steps = batch->n_steps;
  plan->aimed = aimed_of (batch);
  plan->steps = g_new0 (LwConditions, batch->n_steps);

  for (guint i = 0; i < batch->n_steps; i++)
    {
      const LwCorrection *correction = lw_correction_of (batch, i);

      plan->steps[i] = conditions_of (&batch->steps[i], season, clock_s, sky);
      plan->steps[i].jump = correction != NULL ? correction->jump : NULL;
      /* A step under a roof at constant air must not be computed anew when an earlier one moves. */
      if (plan->steps[i].follow == 0)
        plan->steps[i].clock_s = 0;
      follow_logs (&plan->steps[i], batch, i);
      clock_s += plan->steps[i].duration_s;
    }

  return plan;
}

void
lw_plan_free (LwPlan *plan)
{
  lw_season_unref (plan->season);
  g_free (plan->parts);
  g_free (plan->steps);
  g_free (plan);
}

LwTrack *
lw_plan_march (LwPlan    *plan,
               LwMarch   *march,
               LwSampling sampling)
{
  lw_march_set_aimed (march, plan->aimed);

  return lw_march_run (march, &plan->leaf, plan->steps, plan->n_steps, sampling);
}

char *
lw_plan_failure_text (const LwPlan  *plan,
                      const LwBatch *batch,
                      const LwTrack *track)
{
  const LwFailure *failure = &track->failure;
  g_autofree char *time = lw_say_minutes (failure->time_s / 60);

  g_return_val_if_fail (failure->failed, NULL);

  return g_strdup_printf (_ ("Step %u (%s) could not be computed beyond %s. Set it closer to usual values."),
                          failure->step + 1, _ (lw_kind_row (batch->steps[failure->step].kind)->label), time);
}

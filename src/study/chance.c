/* From numbers of chance to a plan, by way of a season in which settings, leaf and weather are changed, so that
 * everything else follows as it does for the maker's own. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/chance.h"

#include <math.h>

#include "season/leaf-field.h"
#include "study/design.h"
#include "study/moved.h"

/* The setting of a step that a source acts on, where it acts on one. `room`: only air that could follow the weather;
 * `heated`: only air that could not. */
static const struct
{
  LwVarySource source;
  LwSetting setting;
  gboolean room;
  gboolean heated;
} acts[] = {
  { LW_VARY_AIR, LW_SET_AIR_C, TRUE, FALSE },
  { LW_VARY_HUMIDITY, LW_SET_HUMIDITY_PCT, TRUE, FALSE },
  { LW_VARY_WALL, LW_SET_WALL_C, FALSE, FALSE },
  { LW_VARY_HOT_AIR, LW_SET_AIR_C, FALSE, TRUE },
  { LW_VARY_TIME, LW_SET_MINUTES, FALSE, FALSE },
  { LW_VARY_LOAD, LW_SET_LOAD_KG, FALSE, FALSE },
  { LW_VARY_LAYER, LW_SET_SPREAD_KG_M2, FALSE, FALSE },
  { LW_VARY_PRESSURE, LW_SET_PRESS_KPA, FALSE, FALSE },
};

static const struct
{
  LwVarySource source;
  const char *symbol;
} laws[] = {
  { LW_VARY_SKIN, "g-cut" },
  { LW_VARY_OXIDATION, "k-ox" },
  { LW_VARY_ENZYME, "k-inact" },
};

/* What the act's source does to that step; NULL if nothing, as to what follows a log: that is as it was measured. */
static const LwKindSetting *
acted_on (guint         act,
          const LwStep *step)
{
  const LwKindSetting *row = lw_kind_setting (step->kind, acts[act].setting);

  if (row == NULL || (acts[act].room && !row->weather) || (acts[act].heated && row->weather)
      || lw_step_log (step, acts[act].setting) != NULL)
    return NULL;

  return row;
}

static gboolean
has_sun (const LwStep *step)
{
  return lw_kind_setting (step->kind, LW_SET_SUN_PCT) != NULL && lw_step_get (step, LW_SET_SUN_PCT) > 0;
}

/* Whether a source that is held to one step, counted from 1, leaves the step at `i` alone. */
static gboolean
passes_by (guint only,
           guint i)
{
  return only > 0 && i + 1 != only;
}

static guint
count_steps (const LwBatch *batch,
             LwVarySource   source,
             guint          only)
{
  guint n = 0;

  for (guint i = 0; i < batch->n_steps; i++)
    {
      gboolean here = source == LW_VARY_SUN && has_sun (&batch->steps[i]);

      for (guint act = 0; act < G_N_ELEMENTS (acts); act++)
        here |= acts[act].source == source && acted_on (act, &batch->steps[i]) != NULL;
      n += here && !passes_by (only, i);
    }

  return n;
}

/* How many numbers the source would take. */
static guint
dims_of (const LwBatch *batch,
         LwVarySource   source,
         gboolean       each_step,
         guint          only)
{
  guint steps = count_steps (batch, source, only);

  switch (source)
    {
    case LW_VARY_MOISTURE:
    case LW_VARY_SKIN:
    case LW_VARY_OXIDATION:
    case LW_VARY_ENZYME:
      return 1;
    case LW_VARY_AIR:
    case LW_VARY_HUMIDITY:
      return batch->weather != NULL || steps > 0;
    case LW_VARY_SUN:
    case LW_VARY_WALL:
    case LW_VARY_HOT_AIR:
    case LW_VARY_TIME:
    case LW_VARY_LOAD:
    case LW_VARY_LAYER:
    case LW_VARY_PRESSURE:
    default:
      return each_step ? steps : steps > 0;
    }
}

gboolean
lw_chance_has (const LwSeason *season,
               guint           batch,
               LwVarySource    source,
               guint           only)
{
  return dims_of (season->batches[batch], source, FALSE, only) > 0;
}

void
lw_chance_init (LwChance    *chance,
                LwSeason    *season,
                guint        batch,
                const LwVary varies[LW_N_VARY])
{
  *chance = (LwChance) { .season = lw_season_ref (season), .batch = batch };
  for (guint s = 0; s < LW_N_VARY; s++)
    {
      chance->varies[s] = varies[s];
      chance->first[s] = chance->n_dims;
      chance->dims[s] = varies[s].sd > 0 ? dims_of (season->batches[batch], s, varies[s].each_step, varies[s].only) : 0;
      chance->n_dims += chance->dims[s];
    }
}

void
lw_chance_clear (LwChance *chance)
{
  g_clear_pointer (&chance->season, lw_season_unref);
}

/* The value as the source's number `k` has it. */
static double
stray (const LwChance *chance,
       const double   *luck,
       LwVarySource    source,
       guint           k,
       double          value,
       double          low,
       double          high)
{
  const LwVary *vary = &chance->varies[source];

  if (chance->dims[source] == 0)
    return value;

  return lw_design_cut_normal (luck[chance->first[source] + k], value,
                               vary->percent ? fabs (value) * vary->sd / 100 : vary->sd, low, high);
}

static void
vary_steps (const LwChance *chance,
            const double   *luck,
            LwBatch        *batch)
{
  for (guint act = 0; act < G_N_ELEMENTS (acts); act++)
    {
      LwVarySource source = acts[act].source;
      guint k = 0;

      for (guint i = 0; i < batch->n_steps && chance->dims[source] > 0; i++)
        {
          LwStep *step = &batch->steps[i];
          const LwKindSetting *row = acted_on (act, step);

          if (row == NULL || passes_by (chance->varies[source].only, i))
            continue;
          /* What follows the weather strays with it. */
          if (!(row->weather && batch->weather != NULL && !lw_step_is_given (step, row->setting)))
            lw_step_set (step, row->setting,
                         stray (chance, luck, source, k, lw_step_get (step, row->setting), row->low, row->high));
          if (chance->varies[source].each_step)
            k++;
        }
    }
}

static void
vary_leaf (const LwChance *chance,
           const double   *luck,
           LwSeason       *season,
           LwBatch        *batch)
{
  const LwProfile *leaf = lw_season_profile (season, batch->leaf);
  double low, high;
  LwProfile *own;

  lw_leaf_field_range (LW_LEAF_MOISTURE, &low, &high);
  batch->fresh_moisture_pct = stray (chance, luck, LW_VARY_MOISTURE, 0,
                                     isnan (batch->fresh_moisture_pct) ? leaf->fresh_moisture_pct
                                                                       : batch->fresh_moisture_pct, low, high);

  own = lw_profile_copy_bare (leaf);
  for (guint i = 0; i < leaf->n_parts; i++)
    lw_profile_add_part (own, leaf->part_names[i], leaf->parts[i]);
  for (guint i = 0; i < G_N_ELEMENTS (laws); i++)
    {
      guint field = (guint) lw_law_find (laws[i].symbol);
      const LwLawField *row = &lw_law_fields ()[field];

      lw_profile_set_law (own, field, stray (chance, luck, laws[i].source, 0, lw_law_get (&leaf->law, field),
                                             row->low, row->high));
    }
  lw_season_put_profile (season, own);
}

static void
vary_weather (const LwChance *chance,
              const double   *luck,
              LwSeason       *season,
              const LwBatch  *batch)
{
  const LwWeather *weather = batch->weather != NULL ? lw_season_weather (season, batch->weather) : NULL;
  double minutes = 0;
  LwWeatherMove by;

  if (weather == NULL || chance->dims[LW_VARY_AIR] + chance->dims[LW_VARY_HUMIDITY] == 0)
    return;

  for (guint i = 0; i < batch->n_steps; i++)
    minutes += lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  by = (LwWeatherMove) {
    .temp_k = stray (chance, luck, LW_VARY_AIR, 0, 0, -INFINITY, INFINITY),
    .humidity_points = stray (chance, luck, LW_VARY_HUMIDITY, 0, 0, -INFINITY, INFINITY),
    .from_s = (double) batch->when_s,
    .to_s = (double) batch->when_s + 60 * minutes,
  };
  lw_season_put_weather (season, lw_weather_moved (weather, &by));
}

LwPlan *
lw_chance_plan (const LwChance *chance,
                const double   *luck)
{
  g_autoptr (LwSeason) season = lw_season_copy (chance->season);
  LwBatch *batch = lw_batch_copy (season->batches[chance->batch]);
  double sun = stray (chance, luck, LW_VARY_SUN, 0, 1, 0, 2);
  LwPlan *plan;

  if (lw_season_profile (season, batch->leaf) != NULL)
    vary_leaf (chance, luck, season, batch);
  vary_steps (chance, luck, batch);
  vary_weather (chance, luck, season, batch);
  lw_season_put_batch (season, chance->batch, batch);

  /* More sun than there is cannot be written down as a setting. */
  plan = lw_plan_new (season, chance->batch);
  for (guint i = 0; plan != NULL && i < plan->n_steps; i++)
    plan->steps[i].sun_share *= sun;

  return plan;
}

/* The tables of settings and kinds. Starting values are common practice, no source;
 * docs/model.md lists them from here. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/kind.h"

#include <math.h>
#include <string.h>

#include "season/text.h"

static const LwSettingRow settings[LW_N_SETTINGS] = {
  [LW_SET_MINUTES] = { "minutes", N_ ("time"), N_ ("min"),
                       N_ ("How long the step lasts."), 1, 1 },
  [LW_SET_AIR_C] = { "air-c", N_ ("air"), N_ ("°C"),
                     N_ ("Warmer air dries the leaf and speeds what goes on in it."), 0, 1 },
  [LW_SET_HUMIDITY_PCT] = { "humidity-pct", N_ ("air humidity"), N_ ("%"),
                            N_ ("Humid air slows the loss of water."), 0, 1 },
  [LW_SET_AIR_M_S] = { "air-m-s", N_ ("air speed"), N_ ("m/s"),
                       N_ ("Moving air carries heat and water to and from the leaf faster."), 2, 0.05 },
  [LW_SET_SPREAD_KG_M2] = { "spread-kg-m2", N_ ("spread"), N_ ("kg/m²"),
                            N_ ("Fresh leaf per square metre: a thick layer dries slowly and unevenly."), 1, 0.1 },
  [LW_SET_COVER_PCT] = { "cover-pct", N_ ("cover"), N_ ("%"),
                         N_ ("A cover holds the leaf's own damp air and evens the batch out."), 0, 5 },
  [LW_SET_TURNING_PER_H] = { "turning-per-h", N_ ("turning"), N_ ("per hour"),
                             N_ ("Turning brings sheltered leaf to the surface and evens the batch out."), 1, 0.1 },
  [LW_SET_SUN_PCT] = { "sun-pct", N_ ("sun"), N_ ("%"),
                       N_ ("How much of the sunlight reaches the leaf."), 0, 5 },
  [LW_SET_WALL_C] = { "wall-c", N_ ("wall"), N_ ("°C"),
                      N_ ("A hotter wall kills enzymes sooner, dries faster and roasts dry leaf."), 0, 5 },
  [LW_SET_LOAD_KG] = { "load-kg", N_ ("load"), N_ ("kg"),
                       N_ ("Fresh leaf in the vessel at once: more of it heats more slowly."), 1, 0.5 },
  [LW_SET_WALL_M2] = { "wall-m2", N_ ("hot wall"), N_ ("m²"),
                       N_ ("Wall that heats the leaf: more of it heats faster."), 2, 0.05 },
  [LW_SET_WALL_W_M2K] = { "wall-w-m2k", N_ ("wall contact"), N_ ("W/m²K"),
                          N_ ("How well heat passes from wall to tossed leaf."), 0, 1 },
  [LW_SET_TOUCH_S] = { "touch-s", N_ ("touch"), N_ ("s"),
                       N_ ("How long a leaf rests on the wall at a time: long touches scorch."), 2, 0.05 },
  [LW_SET_TOUCH_PCT] = { "touch-pct", N_ ("time on wall"), N_ ("%"),
                         N_ ("Share of its time that a leaf lies on the wall."), 0, 1 },
  [LW_SET_HOT_AIR_PCT] = { "hot-air-pct", N_ ("air heated by wall"), N_ ("%"),
                           N_ ("How far the air in the vessel is on the way from room to wall temperature."), 0, 1 },
  [LW_SET_TOSS_PCT] = { "toss-pct", N_ ("tossing"), N_ ("%"),
                        N_ ("Leaf area in the air at once: more of it lets steam off faster."), 0, 1 },
  [LW_SET_PRESS_KPA] = { "press-kpa", N_ ("pressure"), N_ ("kPa"),
                         N_ ("Firmer pressure breaks more cells and twists the leaf; dry leaf crumbles."), 1, 0.5 },
  [LW_SET_STEAM_W_M2K] = { "steam-w-m2k", N_ ("steam flow"), N_ ("W/m²K"),
                           N_ ("How fast condensing steam heats the leaf."), 0, 100 },
};

#define MINUTES(start, low, high) { LW_SET_MINUTES, start, low, high, FALSE }
#define SET(setting, start, low, high) { LW_SET_##setting, start, low, high, FALSE }
#define WEATHER(setting, start, low, high) { LW_SET_##setting, start, low, high, TRUE }

static const LwKindSetting wither[] = {
  MINUTES (1080, 5, 4320),
  WEATHER (AIR_C, 22, 5, 45),
  WEATHER (HUMIDITY_PCT, 68, 10, 99),
  SET (AIR_M_S, 0.15, 0.02, 3),
  SET (SPREAD_KG_M2, 1.2, 0.2, 30),
  SET (COVER_PCT, 0, 0, 95),
  SET (TURNING_PER_H, 0.1, 0, 6),
  SET (SUN_PCT, 0, 0, 100),
};

static const LwKindSetting tumble[] = {
  MINUTES (10, 0.5, 120),
  SET (PRESS_KPA, 0.6, 0.1, 2),
  WEATHER (AIR_C, 22, 5, 45),
  WEATHER (HUMIDITY_PCT, 75, 10, 99),
  SET (AIR_M_S, 0.2, 0.02, 3),
  SET (SPREAD_KG_M2, 2, 0.2, 10),
};

static const LwKindSetting fix_pan[] = {
  MINUTES (25, 0.5, 90),
  SET (WALL_C, 260, 80, 400),
  SET (LOAD_KG, 4, 0.2, 20),
  SET (WALL_M2, 0.25, 0.05, 2),
  SET (WALL_W_M2K, 82, 20, 200),
  SET (TOUCH_S, 1.2, 0.05, 10),
  SET (TOUCH_PCT, 15, 1, 60),
  SET (HOT_AIR_PCT, 10, 0, 60),
  SET (TOSS_PCT, 12, 2, 60),
  SET (AIR_M_S, 0.4, 0.02, 3),
  SET (COVER_PCT, 0, 0, 95),
  WEATHER (AIR_C, 22, 5, 45),
  WEATHER (HUMIDITY_PCT, 68, 10, 99),
};

static const LwKindSetting fix_drum[] = {
  MINUTES (5.5, 0.5, 30),
  SET (WALL_C, 350, 80, 400),
  SET (LOAD_KG, 12, 0.5, 100),
  SET (WALL_M2, 1.6, 0.1, 12),
  SET (WALL_W_M2K, 46, 20, 200),
  SET (TOUCH_S, 0.25, 0.05, 10),
  SET (TOUCH_PCT, 12, 1, 60),
  SET (HOT_AIR_PCT, 20, 0, 60),
  SET (TOSS_PCT, 18, 2, 60),
  SET (AIR_M_S, 0.8, 0.02, 5),
  SET (COVER_PCT, 20, 0, 95),
  WEATHER (AIR_C, 22, 5, 45),
  WEATHER (HUMIDITY_PCT, 68, 10, 99),
};

static const LwKindSetting fix_steam[] = {
  MINUTES (0.75, 0.1, 10),
  SET (STEAM_W_M2K, 3000, 500, 8000),
  SET (SPREAD_KG_M2, 1, 0.2, 10),
  SET (AIR_M_S, 0.3, 0.02, 3),
};

static const LwKindSetting roll[] = {
  MINUTES (3, 0.5, 180),
  SET (PRESS_KPA, 3, 0.1, 15),
  WEATHER (AIR_C, 25, 5, 60),
  WEATHER (HUMIDITY_PCT, 70, 10, 99),
  SET (AIR_M_S, 0.2, 0.02, 3),
  SET (SPREAD_KG_M2, 1.5, 0.2, 30),
};

static const LwKindSetting rest[] = {
  MINUTES (120, 1, 4320),
  WEATHER (AIR_C, 26, 5, 60),
  SET (HUMIDITY_PCT, 95, 10, 99),
  SET (AIR_M_S, 0.08, 0.01, 1),
  SET (SPREAD_KG_M2, 7, 1, 60),
  SET (COVER_PCT, 85, 0, 95),
  SET (TURNING_PER_H, 0, 0, 6),
};

static const LwKindSetting dry_sun[] = {
  MINUTES (480, 5, 4320),
  WEATHER (AIR_C, 29, 5, 45),
  WEATHER (HUMIDITY_PCT, 45, 10, 99),
  WEATHER (AIR_M_S, 0.8, 0.02, 8),
  SET (SPREAD_KG_M2, 0.6, 0.1, 10),
  SET (COVER_PCT, 0, 0, 95),
  SET (TURNING_PER_H, 0.5, 0, 6),
  SET (SUN_PCT, 100, 0, 100),
};

static const LwKindSetting dry_air[] = {
  MINUTES (60, 1, 1440),
  SET (AIR_C, 90, 15, 130),
  SET (AIR_M_S, 0.5, 0.02, 5),
  SET (SPREAD_KG_M2, 3, 0.2, 20),
  SET (COVER_PCT, 0, 0, 95),
  SET (TURNING_PER_H, 0, 0, 6),
};

static const LwKindSetting roast[] = {
  MINUTES (60, 1, 1440),
  SET (AIR_C, 110, 60, 220),
  SET (AIR_M_S, 0.1, 0.02, 3),
  SET (SPREAD_KG_M2, 3, 0.2, 20),
  SET (COVER_PCT, 30, 0, 95),
  SET (TURNING_PER_H, 2, 0, 6),
};

#define KIND(id, label, leading, low, high, table) \
  { id, label, LW_SET_##leading, low, high, G_N_ELEMENTS (table), table }

static const LwKindRow kinds[LW_N_KINDS] = {
  [LW_KIND_WITHER] = KIND ("wither", N_ ("wither"), AIR_C, 5, 45, wither),
  [LW_KIND_TUMBLE] = KIND ("tumble", N_ ("tumble"), PRESS_KPA, 0, 2, tumble),
  [LW_KIND_FIX_PAN] = KIND ("fix-pan", N_ ("fix in pan"), WALL_C, 80, 400, fix_pan),
  [LW_KIND_FIX_DRUM] = KIND ("fix-drum", N_ ("fix in drum"), WALL_C, 80, 400, fix_drum),
  [LW_KIND_FIX_STEAM] = KIND ("fix-steam", N_ ("fix by steam"), STEAM_W_M2K, 0, 8000, fix_steam),
  [LW_KIND_ROLL] = KIND ("roll", N_ ("roll"), PRESS_KPA, 0, 15, roll),
  [LW_KIND_REST] = KIND ("rest", N_ ("rest in heap"), AIR_C, 5, 60, rest),
  [LW_KIND_DRY_SUN] = KIND ("dry-sun", N_ ("dry in sun"), AIR_C, 5, 45, dry_sun),
  [LW_KIND_DRY_AIR] = KIND ("dry-air", N_ ("dry in hot air"), AIR_C, 15, 130, dry_air),
  [LW_KIND_ROAST] = KIND ("roast", N_ ("roast"), AIR_C, 60, 220, roast),
};

const LwSettingRow *
lw_setting_row (LwSetting setting)
{
  return &settings[setting];
}

const LwKindRow *
lw_kind_row (LwKind kind)
{
  return &kinds[kind];
}

int
lw_setting_find (const char *id)
{
  for (int i = 0; i < LW_N_SETTINGS; i++)
    if (strcmp (settings[i].id, id) == 0)
      return i;

  return -1;
}

int
lw_kind_find (const char *id)
{
  for (int i = 0; i < LW_N_KINDS; i++)
    if (strcmp (kinds[i].id, id) == 0)
      return i;

  return -1;
}

const LwKindSetting *
lw_kind_setting (LwKind    kind,
                 LwSetting setting)
{
  for (guint i = 0; i < kinds[kind].n_settings; i++)
    if (kinds[kind].settings[i].setting == setting)
      return &kinds[kind].settings[i];

  return NULL;
}

double
lw_minutes_notch (double   minutes,
                  gboolean fine)
{
  if (minutes < 10)
    return fine ? 1.0 / 12 : 0.5;
  if (minutes < 60)
    return fine ? 0.25 : 1;
  if (minutes < 360)
    return fine ? 1 : 5;

  return fine ? 1 : 15;
}

double
lw_kind_snap (LwKind    kind,
              LwSetting setting,
              double    value,
              gboolean  fine)
{
  const LwKindSetting *range = lw_kind_setting (kind, setting);
  double notch = setting == LW_SET_MINUTES ? lw_minutes_notch (value, fine)
                                           : settings[setting].notch / (fine ? 10 : 1);

  g_return_val_if_fail (range != NULL, value);

  /* Notches such as a twelfth of a minute have no short decimal: round to what a file should say. */
  value = round (round (value / notch) * notch * 1e6) / 1e6;

  return CLAMP (value, range->low, range->high);
}

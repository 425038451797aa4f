/* Spring 2026 of the demo garden: INVENTED, every day and every batch. The long withers lie
 * covered and go through a gentler, longer pan; a wet morning upsets batch 9; the buyer wants
 * batch 12 again, and 15 plans it for the weather that is forecast. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo/script.h"

#define WEATHER "ridge-2026"
#define FORECAST "forecast-2026"

/* From 23 March. Drier than the year before, but for 2 and 6 April; rain early on the 6th. */
static const DemoDay days[] = {
  { 14.0, 25.0, 9.0, 0.1, 0.2, 1.2 },  { 14.5, 25.5, 8.5, 0.1, 0.1, 1.3 },
  { 15.0, 26.0, 8.5, 0.0, 0.1, 1.4 },  { 15.0, 26.5, 8.0, 0.1, 0.1, 1.3 },
  { 15.5, 26.0, 8.5, 0.1, 0.2, 1.2 },  { 15.0, 26.0, 9.5, 0.2, 0.2, 1.1 },
  { 15.5, 27.0, 9.0, 0.0, 0.1, 1.3 },  { 16.0, 27.5, 9.0, 0.1, 0.1, 1.4 },
  { 16.0, 27.0, 9.5, 0.1, 0.2, 1.2 },  { 16.0, 25.5, 12.0, 0.2, 0.5, 1.0 },
  { 16.5, 22.0, 17.0, 0.8, 0.7, 0.8 }, { 15.5, 25.5, 11.0, 0.2, 0.1, 1.3 },
  { 15.0, 26.5, 9.0, 0.0, 0.1, 1.4 },  { 15.5, 26.5, 14.5, 0.1, 0.4, 1.1 },
  { 16.0, 20.5, 16.5, 1.0, 0.7, 0.9 }, { 15.0, 25.0, 10.0, 0.2, 0.2, 1.3 },
  { 15.0, 26.5, 9.0, 0.1, 0.1, 1.3 },  { 15.5, 27.0, 9.0, 0.0, 0.1, 1.4 },
  { 16.0, 27.5, 9.5, 0.1, 0.1, 1.2 },  { 16.5, 28.0, 9.5, 0.0, 0.1, 1.3 },
  { 16.5, 27.5, 10.0, 0.1, 0.2, 1.2 }, { 17.0, 28.0, 9.5, 0.0, 0.1, 1.4 },
  { 17.0, 28.5, 9.0, 0.1, 0.1, 1.3 },  { 17.0, 28.0, 9.5, 0.1, 0.2, 1.2 },
  { 17.0, 27.5, 11.0, 0.2, 0.4, 1.1 },
};

/* From 17 April: cooler and damp, clearing late. */
static const DemoDay forecast[] = {
  { 16.0, 23.5, 14.0, 0.5, 0.6, 1.0 }, { 15.5, 22.5, 14.5, 0.6, 0.5, 0.9 },
  { 15.0, 22.5, 14.0, 0.5, 0.4, 1.0 }, { 15.0, 23.5, 13.5, 0.3, 0.3, 1.1 },
  { 15.0, 24.5, 12.5, 0.2, 0.2, 1.2 }, { 15.0, 25.5, 11.5, 0.1, 0.1, 1.2 },
};

/* This year's long wither: under cloth from the first hour. */
#define COVERED(hours, pct, ...) \
  { LW_KIND_WITHER, (hours) * 60, \
    GIVEN (SET (AIR_M_S, 0.3), SET (SPREAD_KG_M2, 1), SET (COVER_PCT, pct)), __VA_ARGS__ }
#define UNDER_EAVES(min) \
  { LW_KIND_REST, min, "under the eaves until the sun is over the ridge", \
    GIVEN (SET (SPREAD_KG_M2, 2), SET (COVER_PCT, 20), SET (HUMIDITY_PCT, 75)) }
#define OVERNIGHT(min) \
  { LW_KIND_REST, min, "on mats overnight, loosely covered", \
    GIVEN (SET (SPREAD_KG_M2, 2.5), SET (COVER_PCT, 60), SET (HUMIDITY_PCT, 80)) }
#define HALF_TURNED SET (TURNING_PER_H, 0.5)
/* A day on the mat, from the sun's first reach until dusk. */
#define ALL_DAY(min, ...) { LW_KIND_DRY_SUN, min, GIVEN (SET (SPREAD_KG_M2, 1)), __VA_ARGS__ }
#define HOT(min, c, ...) { LW_KIND_DRY_AIR, min, GIVEN (SET (AIR_C, c)), __VA_ARGS__ }
#define MILD(min, ...) { LW_KIND_DRY_AIR, min, GIVEN (SET (AIR_C, 60)), __VA_ARGS__ }

/* Batch 9 before the rain: drum and dryer as on the day before. */
static const DemoStep nine_as_planned[] = {
  { LW_KIND_WITHER, 300, GIVEN (SET (SPREAD_KG_M2, 1.5), HALF_TURNED),
    AIMS (AIM (WEIGHT, 0.83, 0.9), AIM (MOISTURE, 73, 77)) },
  { LW_KIND_FIX_DRUM, 5.5, GIVEN (SET (LOAD_KG, 12)), AIMS (AIM (ENZYME, -INFINITY, 2), AIM (MOISTURE, 66, 73)) },
  { LW_KIND_ROLL, 9, GIVEN (SET (PRESS_KPA, 8)), AIMS (AIM (RUPTURE, 55, 75)) },
  HOT (40, 95),
  MILD (95),
  { 0 },
};

static const DemoBatch batches[] = {
  {
    "1 strong pan, first leaf", "sun-dried green",
    "upper-terrace", WEATHER, "2026-03-25T09:30", .true_kg = 8,
    .note = "First leaf, drier air than last year.",
    .steps = {
      { LW_KIND_WITHER, 240, GIVEN (HALF_TURNED), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_PAN, 23, LOOKS (AT (2, WALL_C), AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 4 },
      { LW_KIND_DRY_SUN, 255, LOOKS (AT_END (WEIGHED_KG), AT_END (METER_PCT)) },
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (OXIDATION, -INFINITY, 8)),
  },
  {
    "2 long wither, covered", "reddened sun-dried",
    "upper-terrace", WEATHER, "2026-03-26T11:00", .true_kg = 8,
    .note = "Covered this year. Nothing rustled, nothing crackled.",
    .steps = {
      COVERED (19, 76, AIMS (AIM (OXIDATION, 8, 18)),
               LOOKS (AT (420, WEIGHED_KG), { DEMO_END, LW_WEIGHED_KG, 0.62, "soft all through" },
                      AT_END (JUDGED_OXIDATION_PCT))),
      { LW_KIND_FIX_PAN, 30, GIVEN (SET (WALL_C, 210)),
        LOOKS (AT (2, WALL_C), AT (15, LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 5 },
      UNDER_EAVES (80),
      ALL_DAY (600, LOOKS (AT_END (WEIGHED_KG))),
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (ROAST, -INFINITY, 5)),
  },
  {
    "3 drum, firm roll", "drum green",
    "brook-side", WEATHER, "2026-03-28T10:00", .true_kg = 24,
    .steps = {
      { LW_KIND_WITHER, 300, GIVEN (SET (SPREAD_KG_M2, 1.5), HALF_TURNED),
        AIMS (AIM (WEIGHT, 0.83, 0.9)),
        LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_DRUM, 5.5, AIMS (AIM (ENZYME, -INFINITY, 2)),
        LOOKS (AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 14, GIVEN (SET (PRESS_KPA, 8)), AIMS (AIM (RUPTURE, 55, 75)) },
      HOT (40, 95, LOOKS (AT (20, WEIGHED_KG))),
      MILD (95, LOOKS (AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 7)),
  },
  {
    "4 white, two days", "white",
    "brook-side", WEATHER, "2026-03-29T11:00", .true_kg = 6,
    .note = "Thin on the trays, never turned.",
    .steps = {
      { LW_KIND_WITHER, 2580, GIVEN (SET (SPREAD_KG_M2, 0.4), SET (AIR_M_S, 0.4)),
        LOOKS (AT (1440, WEIGHED_KG), AT_END (WEIGHED_KG), AT_END (JUDGED_OXIDATION_PCT)) },
      { LW_KIND_DRY_SUN, 330, GIVEN (SET (TURNING_PER_H, 0)), LOOKS (AT_END (WEIGHED_KG)) },
    },
    AIMS (AIM (MOISTURE, 4, 8)),
  },
  {
    "5 steamed, two rolls", "steamed green",
    "brook-side", WEATHER, "2026-03-31T10:30", .true_kg = 6,
    .steps = {
      { LW_KIND_WITHER, 90, GIVEN (SET (SPREAD_KG_M2, 2)) },
      { LW_KIND_FIX_STEAM, 0.75, LOOKS (AT_END (LEAF_C)) },
      { LW_KIND_DRY_AIR, 14, "to shake off the wet", GIVEN (SET (AIR_C, 100), SET (AIR_M_S, 1)),
        LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 12, GIVEN (SET (PRESS_KPA, 5)) },
      { LW_KIND_DRY_AIR, 15, GIVEN (SET (AIR_C, 80), SET (TURNING_PER_H, 4)) },
      { LW_KIND_ROLL, 10, LOOKS (AT_END (JUDGED_BROKEN_PCT)) },
      { LW_KIND_DRY_AIR, 160, GIVEN (SET (AIR_C, 60)),
        LOOKS (AT (60, WEIGHED_KG), AT_END (METER_PCT)) },
    },
    AIMS (AIM (MOISTURE, 3, 7), AIM (OXIDATION, -INFINITY, 4)),
  },
  {
    "6 long wither, covered", "reddened sun-dried",
    "east-wall", WEATHER, "2026-04-01T11:00", .true_kg = 8,
    .note = "Grey and damp the day after; the sun did little, so it went over the stove at last.",
    .steps = {
      COVERED (20, 72, AIMS (AIM (OXIDATION, 8, 18)),
               LOOKS (AT_END (WEIGHED_KG), AT_END (JUDGED_OXIDATION_PCT))),
      { LW_KIND_FIX_PAN, 30, GIVEN (SET (WALL_C, 205)),
        LOOKS (AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 5 },
      { LW_KIND_DRY_SUN, 360, LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_DRY_AIR, 30, GIVEN (SET (AIR_C, 50)), LOOKS (AT_END (METER_PCT)) },
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (ROAST, -INFINITY, 5)),
  },
  {
    "7 small black", "black",
    "east-wall", WEATHER, "2026-04-03T12:00", .true_kg = 5,
    .note = "Windows shut overnight.",
    .steps = {
      { LW_KIND_WITHER, 1080,
        GIVEN (SET (AIR_C, 21), SET (HUMIDITY_PCT, 66), SET (COVER_PCT, 40),
               SET (TURNING_PER_H, 0.3)),
        AIMS (AIM (MOISTURE, 64, 71)), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 55, GIVEN (SET (PRESS_KPA, 9)), AIMS (AIM (RUPTURE, 80, 98)) },
      { LW_KIND_REST, 75, GIVEN (SET (AIR_C, 26)), AIMS (AIM (OXIDATION, 65, 85)),
        LOOKS (AT (30, JUDGED_OXIDATION_PCT), AT_END (JUDGED_OXIDATION_PCT)) },
      HOT (35, 105, LOOKS (AT_END (WEIGHED_KG))),
      { LW_KIND_DRY_AIR, 75, GIVEN (SET (AIR_C, 65)), LOOKS (AT_END (METER_PCT)) },
    },
    AIMS (AIM (MOISTURE, 3, 6), AIM (OXIDATION, 75, 96)),
  },
  {
    "8 drum, long roll", "drum green",
    "brook-side", WEATHER, "2026-04-05T10:00", .true_kg = 24,
    .steps = {
      { LW_KIND_WITHER, 300, GIVEN (SET (SPREAD_KG_M2, 1.5), HALF_TURNED),
        AIMS (AIM (WEIGHT, 0.83, 0.9)),
        LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_DRUM, 5.5, LOOKS (AT (1, WALL_C), AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 24, GIVEN (SET (PRESS_KPA, 8)), AIMS (AIM (RUPTURE, 75, 92)) },
      { LW_KIND_DRY_AIR, 40, GIVEN (SET (AIR_C, 95)) },
      MILD (95, LOOKS (AT_END (WEIGHED_KG), AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 7)),
  },
  {
    "9 drum, after rain", "drum green",
    "brook-side", WEATHER, "2026-04-06T10:30", .true_kg = 24, .moisture_pct = 81.5,
    .note = "Picked between showers. Two kilos too heavy at the drum, so the rest was "
            "planned anew: smaller loads, a longer drum, a longer hot start in the dryer.",
    .steps = {
      { LW_KIND_WITHER, 330, "half an hour more than planned, and still heavy",
        GIVEN (SET (SPREAD_KG_M2, 1.5), HALF_TURNED),
        AIMS (AIM (WEIGHT, 0.83, 0.9), AIM (MOISTURE, 73, 77)),
        LOOKS (AT (180, WEIGHED_KG), { DEMO_END, LW_WEIGHED_KG, 1.85, "planned 21 kg at most" }) },
      { LW_KIND_FIX_DRUM, 8.5, GIVEN (SET (LOAD_KG, 10)),
        AIMS (AIM (ENZYME, -INFINITY, 2), AIM (MOISTURE, 66, 73)),
        LOOKS (AT (1, WALL_C), AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 9, GIVEN (SET (PRESS_KPA, 8)), AIMS (AIM (RUPTURE, 55, 75)) },
      HOT (55, 95, LOOKS (AT (30, WEIGHED_KG))),
      MILD (55, LOOKS (AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 7)),
    .was_start = "2026-04-06T10:00", .was = nine_as_planned,
  },
  {
    "10 yellow heap", "yellow",
    "brook-side", WEATHER, "2026-04-07T09:30", .true_kg = 8,
    .steps = {
      { LW_KIND_WITHER, 210, GIVEN (HALF_TURNED), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_PAN, 24, LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 5 },
      { LW_KIND_REST, 360, "heap wrapped in cloth by the warm flue",
        GIVEN (SET (AIR_C, 45), SET (COVER_PCT, 90), SET (SPREAD_KG_M2, 8)),
        AIMS (AIM (OXIDATION, 6, 16)), LOOKS (AT (180, LEAF_C), AT_END (JUDGED_OXIDATION_PCT)) },
      { LW_KIND_DRY_AIR, 105, GIVEN (SET (AIR_C, 65)),
        LOOKS (AT_END (WEIGHED_KG), AT_END (METER_PCT)) },
    },
    AIMS (AIM (MOISTURE, 3, 7)),
  },
  {
    "11 tumbled, light roast", "half-oxidised, roasted",
    "upper-terrace", WEATHER, "2026-04-08T10:00", .true_kg = 10,
    .steps = {
      { LW_KIND_WITHER, 45, "on the terrace, in the sun",
        GIVEN (SET (SUN_PCT, 70), SET (SPREAD_KG_M2, 0.8), SET (AIR_M_S, 0.8)),
        LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_WITHER, 90, GIVEN (HALF_TURNED) },
      { LW_KIND_TUMBLE, 6 },
      { LW_KIND_REST, 60,
        GIVEN (SET (SPREAD_KG_M2, 2), SET (COVER_PCT, 40), SET (HUMIDITY_PCT, 85)) },
      { LW_KIND_TUMBLE, 10, GIVEN (SET (PRESS_KPA, 0.8)) },
      { LW_KIND_REST, 90,
        GIVEN (SET (SPREAD_KG_M2, 3), SET (COVER_PCT, 60), SET (HUMIDITY_PCT, 85)) },
      { LW_KIND_TUMBLE, 15, GIVEN (SET (PRESS_KPA, 1)) },
      { LW_KIND_REST, 90, GIVEN (SET (SPREAD_KG_M2, 4)), AIMS (AIM (OXIDATION, 15, 35)),
        LOOKS (AT_END (WEIGHED_KG), AT_END (JUDGED_OXIDATION_PCT)) },
      { LW_KIND_FIX_PAN, 15, GIVEN (SET (WALL_C, 280), SET (LOAD_KG, 5)),
        LOOKS (AT_END (LEAF_C)) },
      { LW_KIND_ROLL, 15, GIVEN (SET (PRESS_KPA, 5)) },
      { LW_KIND_DRY_AIR, 90, GIVEN (SET (AIR_C, 80)), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_REST, 780, "in the bin overnight",
        GIVEN (SET (HUMIDITY_PCT, 60), SET (SPREAD_KG_M2, 6)) },
      { LW_KIND_ROAST, 120, GIVEN (SET (AIR_C, 105)), AIMS (AIM (ROAST, 15, 60)),
        LOOKS (AT (60, LEAF_C)) },
      { LW_KIND_REST, 300, "cooling in the open bin",
        GIVEN (SET (HUMIDITY_PCT, 50), SET (SPREAD_KG_M2, 4), SET (COVER_PCT, 0)),
        LOOKS (AT_END (METER_PCT)) },
    },
    AIMS (AIM (MOISTURE, -INFINITY, 6), AIM (OXIDATION, 18, 38)),
  },

/* Batch 12, and 15 that repeats it: the same steps and aims. */
#define AS_TWELVE(look_wither, look_pan, look_sun) \
    .steps = { \
      COVERED (20, 78, .sign = "soft and cool, smells of apples; nothing rustles", \
               AIMS (AIM (OXIDATION, 9, 15), AIM (MOISTURE, 68, 72)), look_wither), \
      { LW_KIND_FIX_PAN, 32, .sign = "stems bend without breaking; no smell of grass is left", \
        GIVEN (SET (WALL_C, 200)), AIMS (AIM (MOISTURE, 57, 63), AIM (ROAST, -INFINITY, 2)), \
        look_pan }, \
      { LW_KIND_ROLL, 8, .sign = "wet to the hand, and the roll holds its twist", AIMS (AIM (RUPTURE, 40, 50)) }, \
      UNDER_EAVES (80), \
      ALL_DAY (600, .sign = "a stem snaps", look_sun), \
    }, \
    AIMS (AIM (MOISTURE, 4, 8), AIM (OXIDATION, 11, 18), AIM (ROAST, -INFINITY, 3))
  {
    "12 long wither, gentle pan", "reddened sun-dried",
    "upper-terrace", WEATHER, "2026-04-10T11:00", .true_kg = 8,
    .note = "The best of the year: red, even, sweet, no smoke. The buyer wants this one again.",
    AS_TWELVE (LOOKS (AT (360, WEIGHED_KG),
                      { DEMO_END, LW_WEIGHED_KG, 0.62, "soft, smells of apples" },
                      AT_END (JUDGED_OXIDATION_PCT)),
               LOOKS (AT (2, WALL_C), AT (15, LEAF_C), AT_END (WEIGHED_KG)),
               LOOKS (AT_END (WEIGHED_KG), AT_END (METER_PCT))),
  },
  {
    "13 long wither, thinner cloth", "reddened sun-dried",
    "brook-side", WEATHER, "2026-04-12T11:30", .true_kg = 8,
    .note = "The apprentice spared cloth. Torn leaf at the edge went redder than the rest.",
    .steps = {
      COVERED (18.5, 72, AIMS (AIM (OXIDATION, 8, 18)),
               LOOKS (AT_END (WEIGHED_KG), AT_END (JUDGED_OXIDATION_PCT))),
      { LW_KIND_FIX_PAN, 30, GIVEN (SET (WALL_C, 200)),
        LOOKS (AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 4 },
      UNDER_EAVES (80),
      ALL_DAY (600, LOOKS (AT_END (WEIGHED_KG))),
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (ROAST, -INFINITY, 5)),
  },
  {
    "14 strong pan, dried next day", "sun-dried green",
    "east-wall", WEATHER, "2026-04-14T11:00", .true_kg = 8,
    .steps = {
      { LW_KIND_WITHER, 270, GIVEN (HALF_TURNED), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_PAN, 24, LOOKS (AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 5 },
      OVERNIGHT (960),
      ALL_DAY (600, LOOKS (AT_END (WEIGHED_KG), AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 4, 9)),
  },
  {
    "15 as 12, for the buyer", "reddened sun-dried",
    "upper-terrace", FORECAST, "2026-04-18T11:00", TRUE, .true_kg = 8,
    .note = "Batch 12 step for step, in the damp that is forecast. To be adapted until it "
            "meets the same aims.",
    AS_TWELVE (LOOKS ({ 0 }), LOOKS ({ 0 }), LOOKS ({ 0 })),
  },
  {
    "16 drum, second flush", "drum green",
    "brook-side", FORECAST, "2026-04-20T10:30", TRUE, .true_kg = 24,
    .note = "If the weather clears.",
    .steps = {
      { LW_KIND_WITHER, 300, GIVEN (SET (SPREAD_KG_M2, 1.5), HALF_TURNED),
        AIMS (AIM (WEIGHT, 0.83, 0.9)) },
      { LW_KIND_FIX_DRUM, 6, AIMS (AIM (ENZYME, -INFINITY, 2)) },
      { LW_KIND_ROLL, 13, GIVEN (SET (PRESS_KPA, 8)), AIMS (AIM (RUPTURE, 55, 75)) },
      { LW_KIND_DRY_AIR, 40, GIVEN (SET (AIR_C, 95)) },
      { LW_KIND_DRY_AIR, 95, GIVEN (SET (AIR_C, 60)) },
    },
    AIMS (AIM (MOISTURE, 3, 7)),
  },
};

const DemoSeason demo_spring_2026 = {
  .file = "ondry-ridge-2026.leafwend",
  .name = "Ondry Ridge, spring 2026",
  .note = "All invented: garden, people, weather, batches and weigh-ins. The weigh-ins are drawn "
          "from a leaf that differs from the profiles in this file, with the scatter of a scale, "
          "a thermometer and an eye.",
  .seed = 2026,
  .records = {
    { WEATHER, "Spring 2026", "Invented hourly record.", "2026-03-23T00:00",
      G_N_ELEMENTS (days), days },
    { FORECAST, "Forecast, 17 to 22 April 2026", "Invented forecast.", "2026-04-17T00:00",
      G_N_ELEMENTS (forecast), forecast },
  },
  .n_batches = G_N_ELEMENTS (batches),
  .batches = batches,
};

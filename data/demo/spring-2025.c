/* Spring 2025 of the demo garden, as it was made: INVENTED, every day and every batch.
 * The long withers lay bare on dry nights, and what went dry on the mats roasted in the pan. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo/script.h"

#define WEATHER "ridge-2025"
#define HALF_TURNED SET (TURNING_PER_H, 0.5)

/* From 24 March. Mild and often damp, with dry winds off the ridge on some nights. */
static const DemoDay days[] = {
  { 15.0, 24.0, 13.0, 0.3, 0.4, 1.2 }, { 14.5, 25.0, 12.5, 0.1, 0.2, 1.3 },
  { 14.0, 25.5, 13.0, 0.1, 0.3, 1.1 }, { 15.0, 25.0, 13.5, 0.2, 0.2, 1.2 },
  { 15.5, 24.0, 13.0, 0.6, 0.5, 1.0 }, { 15.0, 26.5, 6.5, 0.1, 0.1, 1.8 },
  { 17.5, 27.0, 8.0, 0.0, 0.1, 1.7 },  { 16.0, 25.0, 12.5, 0.2, 0.2, 1.2 },
  { 15.0, 24.5, 12.5, 0.2, 0.3, 1.1 }, { 15.5, 27.0, 6.5, 0.0, 0.1, 2.0 },
  { 18.0, 26.5, 9.0, 0.1, 0.2, 1.6 },  { 15.5, 24.5, 13.5, 0.3, 0.3, 1.0 },
  { 16.0, 25.5, 14.0, 0.2, 0.2, 1.0 }, { 16.0, 28.0, 7.0, 0.1, 0.0, 1.9 },
  { 18.0, 27.5, 8.5, 0.0, 0.1, 1.8 },  { 16.5, 25.0, 14.5, 0.3, 0.4, 0.9 },
  { 16.0, 25.5, 14.5, 0.2, 0.2, 1.0 }, { 16.5, 28.0, 7.5, 0.1, 0.0, 1.9 },
  { 18.5, 27.5, 9.0, 0.0, 0.1, 1.7 },  { 17.0, 26.0, 14.5, 0.2, 0.2, 1.1 },
  { 16.5, 26.5, 14.0, 0.1, 0.2, 1.2 }, { 17.0, 28.5, 8.0, 0.0, 0.0, 2.0 },
  { 19.0, 28.0, 9.0, 0.1, 0.1, 1.8 },  { 17.5, 26.5, 14.5, 0.2, 0.2, 1.1 },
  { 17.0, 27.0, 15.0, 0.1, 0.2, 1.2 }, { 17.5, 27.0, 15.0, 0.3, 0.3, 1.1 },
};

/* The bare long wither of this year: thin on the mats by the open gable, not turned at night. */
#define BARE(hours, ...) \
  { LW_KIND_WITHER, (hours) * 60, \
    GIVEN (SET (AIR_M_S, 0.3), SET (SPREAD_KG_M2, 1), SET (TURNING_PER_H, 0)), __VA_ARGS__ }
#define UNDER_EAVES(min) \
  { LW_KIND_REST, min, "under the eaves until the sun is over the ridge", \
    GIVEN (SET (SPREAD_KG_M2, 2), SET (COVER_PCT, 20), SET (HUMIDITY_PCT, 75)) }
#define OVERNIGHT(min) \
  { LW_KIND_REST, min, "on mats overnight, loosely covered", \
    GIVEN (SET (SPREAD_KG_M2, 2.5), SET (COVER_PCT, 60), SET (HUMIDITY_PCT, 80)) }
/* A day on the mat, from the sun's first reach until dusk. */
#define ALL_DAY(min, ...) { LW_KIND_DRY_SUN, min, GIVEN (SET (SPREAD_KG_M2, 1)), __VA_ARGS__ }
#define HOT(min, c, ...) { LW_KIND_DRY_AIR, min, GIVEN (SET (AIR_C, c)), __VA_ARGS__ }
#define MILD(min, ...) { LW_KIND_DRY_AIR, min, GIVEN (SET (AIR_C, 60)), __VA_ARGS__ }

static const DemoBatch batches[] = {
  {
    "1 strong pan, first leaf", "sun-dried green",
    "upper-terrace", WEATHER, "2025-03-25T09:30", .true_kg = 8,
    .note = "First leaf of the year. Both pans going.",
    .steps = {
      { LW_KIND_WITHER, 240, GIVEN (HALF_TURNED),
        AIMS (AIM (MOISTURE, 72, 75.5)), LOOKS (AT (120, WEIGHED_KG), AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_PAN, 24, AIMS (AIM (ENZYME, -INFINITY, 2), AIM (MOISTURE, 58, 66)),
        LOOKS (AT (2, WALL_C), AT (10, LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 4, AIMS (AIM (RUPTURE, 42, 58)) },
      { LW_KIND_DRY_SUN, 240,
        LOOKS (AT (120, WEIGHED_KG), { DEMO_END, LW_WEIGHED_KG, 0.62, "in the basket" }) },
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (OXIDATION, -INFINITY, 8)),
  },
  {
    "2 drum, firm roll", "drum green",
    "brook-side", WEATHER, "2025-03-26T10:00", .true_kg = 24,
    .note = "Two loads through the drum.",
    .steps = {
      { LW_KIND_WITHER, 300, GIVEN (SET (SPREAD_KG_M2, 1.5), HALF_TURNED),
        AIMS (AIM (MOISTURE, 73, 77)), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_DRUM, 5.5, AIMS (AIM (ENZYME, -INFINITY, 2)),
        LOOKS (AT (1, WALL_C), AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 13, GIVEN (SET (PRESS_KPA, 8)), AIMS (AIM (RUPTURE, 55, 75)) },
      HOT (40, 95, LOOKS (AT (20, WEIGHED_KG))),
      MILD (95, LOOKS (AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 7)),
  },
  {
    "3 strong pan, east leaf", "sun-dried green",
    "east-wall", WEATHER, "2025-03-27T11:00", .true_kg = 8,
    .steps = {
      { LW_KIND_WITHER, 270, GIVEN (HALF_TURNED), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_PAN, 26, GIVEN (SET (WALL_C, 270)),
        LOOKS (AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 4, GIVEN (SET (PRESS_KPA, 4)) },
      OVERNIGHT (960),
      ALL_DAY (570, LOOKS (AT_END (WEIGHED_KG), AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 4, 9)),
  },
  {
    "4 long wither, bare mats", "reddened sun-dried",
    "upper-terrace", WEATHER, "2025-03-29T11:00", .true_kg = 8,
    .note = "Left uncovered, dry night; a third crackled in the pan.",
    .steps = {
      BARE (19, AIMS (AIM (OXIDATION, 10, 18)),
            LOOKS (AT (360, WEIGHED_KG),
                   { DEMO_END, LW_WEIGHED_KG, 0.62, "top of the mat rustles" },
                   AT_END (JUDGED_OXIDATION_PCT))),
      { LW_KIND_FIX_PAN, 15, "smells of toast after five minutes", GIVEN (SET (WALL_C, 245)),
        LOOKS (AT (2, WALL_C), AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 6, LOOKS (AT_END (JUDGED_BROKEN_PCT)) },
      UNDER_EAVES (90),
      ALL_DAY (600, LOOKS (AT_END (WEIGHED_KG))),
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (ROAST, -INFINITY, 5)),
  },
  {
    "5 white, two days", "white",
    "brook-side", WEATHER, "2025-03-30T11:00", .true_kg = 6,
    .note = "Not touched until dry.",
    .steps = {
      { LW_KIND_WITHER, 2640,
        GIVEN (SET (SPREAD_KG_M2, 0.4), SET (AIR_M_S, 0.4)),
        LOOKS (AT (1380, WEIGHED_KG), AT_END (WEIGHED_KG), AT_END (JUDGED_OXIDATION_PCT)) },
      { LW_KIND_DRY_SUN, 570, GIVEN (SET (TURNING_PER_H, 0)), LOOKS (AT_END (WEIGHED_KG)) },
    },
    AIMS (AIM (MOISTURE, 5, 9)),
  },
  {
    "6 drum, long roll", "drum green",
    "brook-side", WEATHER, "2025-04-01T10:30", .true_kg = 36,
    .note = "Three loads. The drum hand wanted more broken cells than batch 2.",
    .steps = {
      { LW_KIND_WITHER, 300, GIVEN (SET (SPREAD_KG_M2, 1.5), HALF_TURNED),
        LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_DRUM, 6, LOOKS (AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 22, GIVEN (SET (PRESS_KPA, 8)), AIMS (AIM (RUPTURE, 75, 92)) },
      HOT (40, 95, LOOKS (AT (30, WEIGHED_KG))),
      MILD (95, LOOKS (AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 7)),
  },
  {
    "7 long wither, bare mats", "reddened sun-dried",
    "brook-side", WEATHER, "2025-04-02T11:30", .true_kg = 8,
    .note = "Dry wind off the ridge all night, windows open.",
    .steps = {
      BARE (18.5, LOOKS (AT_END (WEIGHED_KG), AT_END (JUDGED_OXIDATION_PCT))),
      { LW_KIND_FIX_PAN, 14, GIVEN (SET (WALL_C, 245)),
        LOOKS (AT (10, LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 5 },
      UNDER_EAVES (80),
      ALL_DAY (600, LOOKS (AT_END (WEIGHED_KG), AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (ROAST, -INFINITY, 5)),
  },
  {
    "8 steamed, two rolls", "steamed green",
    "brook-side", WEATHER, "2025-04-04T11:00", .true_kg = 6,
    .note = "Borrowed the neighbour's boiler.",
    .steps = {
      { LW_KIND_WITHER, 60, GIVEN (SET (SPREAD_KG_M2, 2)) },
      { LW_KIND_FIX_STEAM, 0.75, AIMS (AIM (ENZYME, -INFINITY, 2)), LOOKS (AT_END (LEAF_C)) },
      { LW_KIND_DRY_AIR, 12, "to shake off the wet", GIVEN (SET (AIR_C, 100), SET (AIR_M_S, 1)),
        LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 12, GIVEN (SET (PRESS_KPA, 5)) },
      { LW_KIND_DRY_AIR, 15, GIVEN (SET (AIR_C, 80), SET (TURNING_PER_H, 4)) },
      { LW_KIND_ROLL, 10 },
      MILD (170, LOOKS (AT (90, WEIGHED_KG), AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 7), AIM (OXIDATION, -INFINITY, 4)),
  },
  {
    "9 small black", "black",
    "east-wall", WEATHER, "2025-04-04T12:00", .true_kg = 5,
    .steps = {
      { LW_KIND_WITHER, 1080, GIVEN (SET (COVER_PCT, 30), SET (TURNING_PER_H, 0.3)),
        AIMS (AIM (MOISTURE, 64, 71)), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 60, GIVEN (SET (PRESS_KPA, 9)), AIMS (AIM (RUPTURE, 80, 98)) },
      { LW_KIND_REST, 75, GIVEN (SET (AIR_C, 26)), AIMS (AIM (OXIDATION, 65, 85)),
        LOOKS (AT (30, JUDGED_OXIDATION_PCT), AT_END (JUDGED_OXIDATION_PCT)) },
      HOT (40, 105, LOOKS (AT_END (WEIGHED_KG))),
      MILD (55, LOOKS (AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 6), AIM (OXIDATION, 75, 96)),
  },
  {
    "10 long wither, bare mats, hot pan", "reddened sun-dried",
    "east-wall", WEATHER, "2025-04-06T11:00", .true_kg = 8,
    .note = "Pan hotter to make up for the slow morning. Wrong way round: "
            "a third was crisp before it went in.",
    .steps = {
      BARE (19.5, LOOKS (AT (600, WEIGHED_KG), AT_END (WEIGHED_KG))),
      { LW_KIND_FIX_PAN, 13, GIVEN (SET (WALL_C, 260)),
        LOOKS (AT (2, WALL_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 6, LOOKS (AT_END (JUDGED_BROKEN_PCT)) },
      UNDER_EAVES (60),
      ALL_DAY (600, LOOKS (AT_END (WEIGHED_KG))),
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (ROAST, -INFINITY, 5)),
  },
  {
    "11 slow pan", "sun-dried green",
    "upper-terrace", WEATHER, "2025-04-08T08:30", .true_kg = 8,
    .note = "Tried a slow pan for sweetness. Redder on the way than wanted.",
    .steps = {
      { LW_KIND_WITHER, 210, GIVEN (HALF_TURNED), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_PAN, 45, GIVEN (SET (WALL_C, 140)),
        LOOKS (AT (15, LEAF_C), AT_END (LEAF_C), AT_END (JUDGED_OXIDATION_PCT)) },
      { LW_KIND_ROLL, 8 },
      { LW_KIND_DRY_SUN, 315, LOOKS (AT_END (WEIGHED_KG)) },
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (OXIDATION, -INFINITY, 6)),
  },
  {
    "12 yellow heap", "yellow",
    "brook-side", WEATHER, "2025-04-09T09:30", .true_kg = 8,
    .steps = {
      { LW_KIND_WITHER, 195, GIVEN (HALF_TURNED), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_PAN, 25, LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 6 },
      { LW_KIND_REST, 360, "heap wrapped in cloth by the warm flue",
        GIVEN (SET (AIR_C, 44), SET (COVER_PCT, 90), SET (SPREAD_KG_M2, 8)),
        AIMS (AIM (OXIDATION, 6, 16)), LOOKS (AT (240, LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_DRY_AIR, 105, GIVEN (SET (AIR_C, 65)), LOOKS (AT_END (METER_PCT)) },
    },
    AIMS (AIM (MOISTURE, 3, 7)),
  },
  {
    "13 long wither, bare mats", "reddened sun-dried",
    "upper-terrace", WEATHER, "2025-04-10T11:00", .true_kg = 12,
    .note = "Third pan borrowed for the morning. Same rustling top layer as batch 4.",
    .steps = {
      BARE (19, LOOKS (AT_END (WEIGHED_KG), AT_END (JUDGED_OXIDATION_PCT))),
      { LW_KIND_FIX_PAN, 14, GIVEN (SET (WALL_C, 240)),
        LOOKS (AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 5 },
      UNDER_EAVES (90),
      ALL_DAY (600, LOOKS (AT_END (WEIGHED_KG), AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (ROAST, -INFINITY, 5)),
  },
  {
    "14 tumbled", "half-oxidised",
    "upper-terrace", WEATHER, "2025-04-12T10:30", .true_kg = 10,
    .steps = {
      { LW_KIND_WITHER, 40, "on the terrace, in the sun",
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
      { LW_KIND_REST, 100, GIVEN (SET (SPREAD_KG_M2, 4), SET (AIR_C, 25)),
        AIMS (AIM (OXIDATION, 15, 35)),
        LOOKS (AT_END (WEIGHED_KG), AT_END (JUDGED_OXIDATION_PCT)) },
      { LW_KIND_FIX_PAN, 15, GIVEN (SET (WALL_C, 280), SET (LOAD_KG, 5)),
        LOOKS (AT_END (LEAF_C)) },
      { LW_KIND_ROLL, 20, GIVEN (SET (PRESS_KPA, 6)) },
      HOT (45, 95, LOOKS (AT_END (WEIGHED_KG))),
      MILD (110, LOOKS (AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 7), AIM (OXIDATION, 18, 38)),
  },
  {
    "15 drum, short and hot", "drum green",
    "east-wall", WEATHER, "2025-04-13T11:00", .true_kg = 12,
    .steps = {
      { LW_KIND_WITHER, 270, GIVEN (HALF_TURNED), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_FIX_DRUM, 4, GIVEN (SET (WALL_C, 390)),
        AIMS (AIM (ENZYME, -INFINITY, 2), AIM (RUPTURE, -INFINITY, 20)),
        LOOKS (AT (1, WALL_C), AT_END (LEAF_C), AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 15, GIVEN (SET (PRESS_KPA, 8)), AIMS (AIM (RUPTURE, 55, 75)) },
      HOT (40, 95, LOOKS (AT_END (WEIGHED_KG))),
      MILD (55, LOOKS (AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 7)),
  },
  {
    "16 long wither, bare mats", "reddened sun-dried",
    "brook-side", WEATHER, "2025-04-14T11:30", .true_kg = 8,
    .note = "Driest night of the year. The buyer found it smoky.",
    .steps = {
      BARE (18.5, LOOKS (AT_END (WEIGHED_KG))),
      { LW_KIND_FIX_PAN, 12, GIVEN (SET (WALL_C, 250)),
        LOOKS (AT_END (LEAF_C), { DEMO_END, LW_WEIGHED_KG, 0.62, "lighter than wanted" }) },
      { LW_KIND_ROLL, 5, LOOKS (AT_END (JUDGED_BROKEN_PCT)) },
      UNDER_EAVES (90),
      ALL_DAY (600, LOOKS (AT_END (WEIGHED_KG))),
    },
    AIMS (AIM (MOISTURE, 4, 9), AIM (ROAST, -INFINITY, 5)),
  },
  {
    "17 small black, warm rest", "black",
    "east-wall", WEATHER, "2025-04-15T12:30", .true_kg = 5,
    .steps = {
      { LW_KIND_WITHER, 1050, GIVEN (SET (COVER_PCT, 50), SET (TURNING_PER_H, 0.3)),
        LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_ROLL, 60, GIVEN (SET (PRESS_KPA, 8)), LOOKS (AT_END (JUDGED_OXIDATION_PCT)) },
      { LW_KIND_REST, 60, GIVEN (SET (AIR_C, 29)), AIMS (AIM (OXIDATION, 65, 85)),
        LOOKS (AT_END (JUDGED_OXIDATION_PCT)) },
      HOT (40, 105, LOOKS (AT_END (WEIGHED_KG))),
      MILD (55, LOOKS (AT_END (METER_PCT))),
    },
    AIMS (AIM (MOISTURE, 3, 6), AIM (OXIDATION, 75, 96)),
  },
  {
    "18 tumbled and roasted", "half-oxidised, roasted",
    "upper-terrace", WEATHER, "2025-04-16T10:00", .true_kg = 10,
    .note = "Last leaf. Roasted over charcoal the day after.",
    .steps = {
      { LW_KIND_WITHER, 45, "on the terrace, in the sun",
        GIVEN (SET (SUN_PCT, 70), SET (SPREAD_KG_M2, 0.8), SET (AIR_M_S, 0.8)) },
      { LW_KIND_WITHER, 90, GIVEN (HALF_TURNED), LOOKS (AT_END (WEIGHED_KG)) },
      { LW_KIND_TUMBLE, 8 },
      { LW_KIND_REST, 90,
        GIVEN (SET (SPREAD_KG_M2, 2), SET (COVER_PCT, 40), SET (HUMIDITY_PCT, 85)) },
      { LW_KIND_TUMBLE, 20, GIVEN (SET (PRESS_KPA, 1)) },
      { LW_KIND_REST, 165, GIVEN (SET (SPREAD_KG_M2, 4), SET (AIR_C, 26)),
        AIMS (AIM (OXIDATION, 15, 35)),
        LOOKS (AT_END (JUDGED_OXIDATION_PCT)) },
      { LW_KIND_FIX_PAN, 15, GIVEN (SET (WALL_C, 280), SET (LOAD_KG, 5)) },
      { LW_KIND_ROLL, 20, GIVEN (SET (PRESS_KPA, 6)), LOOKS (AT_END (JUDGED_BROKEN_PCT)) },
      HOT (45, 95, LOOKS (AT_END (WEIGHED_KG))),
      { LW_KIND_REST, 780, "in the bin overnight",
        GIVEN (SET (HUMIDITY_PCT, 60), SET (SPREAD_KG_M2, 6)) },
      { LW_KIND_ROAST, 150, GIVEN (SET (AIR_C, 112)), AIMS (AIM (ROAST, 40, 120)),
        LOOKS (AT (60, LEAF_C)) },
      { LW_KIND_REST, 300, "cooling in the open bin",
        GIVEN (SET (HUMIDITY_PCT, 50), SET (SPREAD_KG_M2, 4), SET (COVER_PCT, 0)),
        LOOKS (AT_END (METER_PCT)) },
    },
    AIMS (AIM (MOISTURE, -INFINITY, 6)),
  },
};

const DemoSeason demo_spring_2025 = {
  .file = "ondry-ridge-2025.leafwend",
  .name = "Ondry Ridge, spring 2025",
  .note = "All invented: garden, people, weather, batches and weigh-ins. The weigh-ins are drawn "
          "from a leaf that differs from the profiles in this file, with the scatter of a scale, "
          "a thermometer and an eye.",
  .seed = 2025,
  .records = {
    { WEATHER, "Spring 2025", "Invented hourly record.", "2025-03-24T00:00",
      G_N_ELEMENTS (days), days },
  },
  .n_batches = G_N_ELEMENTS (batches),
  .batches = batches,
};

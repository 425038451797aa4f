/* Lessons of the demo garden: INVENTED. Two planned batches for each, which differ in one step alone, so that what is
 * said of it is seen. tests/demo/test-lessons.c holds every caption to what the model computes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo/script.h"

#define WEATHER "lesson-days"
#define MORNING "2026-05-04T09:00"
#define NOON "2026-05-04T11:00"
#define HALF_TURNED SET (TURNING_PER_H, 0.5)
#define BATCH(name, start) name, NULL, "upper-terrace", WEATHER, start, TRUE, .true_kg = 8

/* From 4 May: four days alike. */
static const DemoDay days[] = {
  { 15.5, 26.5, 9.0, 0.1, 0.1, 1.3 }, { 15.5, 26.5, 9.0, 0.1, 0.1, 1.3 },
  { 15.5, 26.5, 9.0, 0.1, 0.1, 1.3 }, { 15.5, 26.5, 9.0, 0.1, 0.1, 1.3 },
};

#define WITHER(min) { LW_KIND_WITHER, min, GIVEN (HALF_TURNED) }
#define MAT(hours, cover) \
  { LW_KIND_WITHER, (hours) * 60, GIVEN (SET (AIR_M_S, 0.3), SET (SPREAD_KG_M2, 1), SET (TURNING_PER_H, 0), \
                                         SET (COVER_PCT, cover)) }
#define PAN(min, c) { LW_KIND_FIX_PAN, min, GIVEN (SET (WALL_C, c)) }
#define ROLL(min, kpa) { LW_KIND_ROLL, min, GIVEN (SET (PRESS_KPA, kpa)) }
#define SUN(min) { LW_KIND_DRY_SUN, min, GIVEN (SET (SPREAD_KG_M2, 1)) }
#define DRUM { LW_KIND_FIX_DRUM, 5.5 }
#define DRYER \
  { LW_KIND_DRY_AIR, 40, GIVEN (SET (AIR_C, 95)) }, { LW_KIND_DRY_AIR, 95, GIVEN (SET (AIR_C, 60)) }

static const DemoBatch batches[] = {
  { BATCH ("Short wither", MORNING), .steps = { WITHER (120), PAN (20, 250), ROLL (4, 3), SUN (300) } },
  { BATCH ("Long wither", MORNING), .steps = { WITHER (480), PAN (20, 250), ROLL (4, 3), SUN (300) } },
  { BATCH ("Short pan", MORNING), .steps = { WITHER (240), PAN (12, 250), ROLL (6, 3), SUN (300) } },
  { BATCH ("Long pan", MORNING), .steps = { WITHER (240), PAN (26, 250), ROLL (6, 3), SUN (300) } },
  { BATCH ("Drum, long roll", MORNING), .steps = { WITHER (300), DRUM, ROLL (24, 8), DRYER } },
  { BATCH ("Drum, short roll", MORNING), .steps = { WITHER (300), DRUM, ROLL (8, 8), DRYER } },
  { BATCH ("Rolled firmly", MORNING), .steps = { WITHER (60), PAN (15, 250), ROLL (12, 10), SUN (210) } },
  { BATCH ("Rolled lightly", MORNING), .steps = { WITHER (60), PAN (15, 250), ROLL (12, 1), SUN (210) } },
  { BATCH ("Slow pan", MORNING), .steps = { WITHER (240), PAN (45, 140), ROLL (6, 3), SUN (300) } },
  { BATCH ("Strong pan", MORNING), .steps = { WITHER (240), PAN (24, 250), ROLL (6, 3), SUN (300) } },
  { BATCH ("Bare mat", NOON), .steps = { MAT (19, 0), PAN (15, 245), ROLL (5, 3), SUN (540) } },
  { BATCH ("Covered mat", NOON), .steps = { MAT (19, 76), PAN (15, 245), ROLL (5, 3), SUN (540) } },
};

#define SAY(step, minute, text) { step, minute, 0, text }
#define ASK(step, minute, curve, text) { step, minute, curve, text }

static const DemoLesson lessons[] = {
  {
    "Wither and pan", "The same pan for both. Which leaf gets hotter in it?",
    FALSE, { LW_MOISTURE, LW_LEAF_TEMP, LW_ENZYME }, { "Long wither", "Short wither" },
    {
      SAY (1, DEMO_END, "The long wither has left less water to boil away."),
      SAY (2, DEMO_END, "So the same fire made this leaf hotter."),
    },
  },
  {
    "Pan and rolling", "The same rolling for both. Does it make up for a short pan?",
    FALSE, { LW_RUPTURE, LW_LEAF_TEMP, LW_MOISTURE }, { "Long pan", "Short pan" },
    {
      SAY (2, DEMO_END, "The long pan has ruptured more cells by heat alone."),
      ASK (3, 0, 1, "The rolling begins. Where does the rupture end?"),
      SAY (3, DEMO_END, "Rolling added about as much to both: the one that was ahead after the pan is still ahead."),
    },
  },
  {
    "Drum and rolling", "A short hot drum kills the enzyme and leaves most cells whole.",
    FALSE, { LW_RUPTURE, LW_ENZYME, LW_BROKEN }, { "Drum, long roll", "Drum, short roll" },
    {
      SAY (2, DEMO_END, "The enzyme is gone, and most cells are still whole: rolling has to do it."),
      ASK (3, 1, 1, "One batch is rolled three times as long. Where does its rupture end?"),
      SAY (3, DEMO_END, "Not three times as much: the more cells are broken, the fewer are left to break."),
    },
  },
  {
    "Rupture and drying", "A race: two batches on the same mat in the same sun. Only the pressure of the rolling differs.",
    TRUE, { LW_MOISTURE, LW_RUPTURE, LW_WEIGHT }, { "Rolled firmly", "Rolled lightly" },
    {
      SAY (3, DEMO_END, "Both go on the mat. One has more ruptured cells."),
      ASK (4, 10, 1, "Where does the moisture of the firmly rolled one end?"),
      SAY (4, 60, "Through ruptured cells water leaves more easily: the firmly rolled batch is ahead."),
    },
  },
  {
    "Slow pan and reddening", "A gentle fire takes its time. So does the enzyme.",
    FALSE, { LW_OXIDATION, LW_ENZYME, LW_LEAF_TEMP }, { "Slow pan", "Strong pan" },
    {
      ASK (2, 0, 1, "The pan begins. Where does the oxidation of the slow one end?"),
      SAY (2, DEMO_END, "In the slow pan the leaf was warm while the enzyme lived: it reddened more than in the strong one."),
    },
  },
  {
    "Dry leaf and roast", "One mat lay bare in the dry night, one was covered. Then the same pan.",
    FALSE, { LW_NEARLY_DRY, LW_LEAF_TEMP, LW_ROAST }, { "Bare mat", "Covered mat" },
    {
      SAY (1, DEMO_END, "On the bare mat part of the leaf is nearly dry; under the cloth none is."),
      ASK (2, 1, 3, "The pan begins. Where does the roast of the bare one end?"),
      SAY (2, DEMO_END, "Moist leaf stays below the boiling point; dry leaf does not, and it has roasted."),
    },
  },
};

const DemoSeason demo_lessons = {
  .file = "ondry-ridge-lessons.leafwend",
  .name = "Ondry Ridge, lessons",
  .note = "All invented. Planned batches in pairs that differ in one step alone, and a lesson on each pair.",
  .seed = 2027,
  .records = {
    { WEATHER, "Four days alike", "Invented hourly record.", "2026-05-04T00:00", G_N_ELEMENTS (days), days },
  },
  .n_batches = G_N_ELEMENTS (batches),
  .batches = batches,
  .n_lessons = G_N_ELEMENTS (lessons),
  .lessons = lessons,
};

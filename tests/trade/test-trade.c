/* What every tea maker knows, as orders and ratios the model must reproduce on
 * ordinary settings. Each statement is common practice, no source, or from memory where it says
 * so; margins stand in the code. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "season/surround.h"

#define SETTINGS_MAX 6
#define STEPS_MAX 5

typedef struct
{
  LwSetting setting;
  double value;
} Given;

typedef struct
{
  LwKind kind;
  double minutes;
  Given given[SETTINGS_MAX]; /* ends with a value of 0 for minutes */
} Step;

#define WITHER(hours, ...) { LW_KIND_WITHER, (hours) * 60, { __VA_ARGS__ } }
#define PAN(minutes, wall) { LW_KIND_FIX_PAN, minutes, { { LW_SET_WALL_C, wall } } }
#define DRUM(minutes, wall) { LW_KIND_FIX_DRUM, minutes, { { LW_SET_WALL_C, wall } } }
#define ROLL(minutes, kpa) { LW_KIND_ROLL, minutes, { { LW_SET_PRESS_KPA, kpa } } }
#define COVERED { LW_SET_COVER_PCT, 80 }, { LW_SET_HUMIDITY_PCT, 55 }
#define DRY_NIGHT { LW_SET_HUMIDITY_PCT, 40 }, { LW_SET_AIR_M_S, 0.4 }, { LW_SET_SPREAD_KG_M2, 0.8 }, { LW_SET_TURNING_PER_H, 0.02 }
#define MAT { LW_KIND_DRY_SUN, 480, { { LW_SET_SUN_PCT, 100 } } }
#define OVEN { LW_KIND_DRY_AIR, 240, { { LW_SET_AIR_C, 70 } } }
#define ROAST { LW_KIND_ROAST, 60, { { LW_SET_AIR_C, 120 } } }
#define DAMP { LW_KIND_DRY_SUN, 300, { { LW_SET_AIR_C, 24 }, { LW_SET_HUMIDITY_PCT, 85 }, { LW_SET_SUN_PCT, 10 } } }
#define ORDINARY { LW_SET_COVER_PCT, 0 }, { LW_SET_TURNING_PER_H, 0.5 }
#define UNCOVERED { LW_SET_COVER_PCT, 0 }, DRY_NIGHT
#define COVERED_DRY_NIGHT { LW_SET_COVER_PCT, 80 }, DRY_NIGHT

/* A batch of the starting leaf, begun at noon, through `n` steps. */
static LwTrack *
make (const Step *steps,
      guint       n)
{
  g_autoptr (LwSeason) season = lw_season_new ("trade");
  g_autoptr (LwMarch) march = lw_march_new ();
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new ("1");
  g_autoptr (LwPlan) plan = NULL;
  LwTrack *track;

  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  batch->fresh_kg = 4;
  batch->when_s = 12 * 3600;
  for (guint i = 0; i < n; i++)
    {
      LwStep step = lw_step_new (steps[i].kind);

      lw_step_set (&step, LW_SET_MINUTES, steps[i].minutes);
      for (guint k = 0; k < SETTINGS_MAX && steps[i].given[k].setting != LW_SET_MINUTES; k++)
        lw_step_set (&step, steps[i].given[k].setting, steps[i].given[k].value);
      lw_batch_insert_step (batch, i, step);
    }
  season->altitude_m = 1250;
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);

  plan = lw_plan_new (season, 0);
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 200 });
  g_assert_false (track->failure.failed);

  return track;
}

#define MAKE(...) make ((const Step[]) { __VA_ARGS__ }, G_N_ELEMENTS (((const Step[]) { __VA_ARGS__ })))

/* Reads what stands beside the design: printed, so that a failing margin can be judged. */
static LwOutcome
told (const char    *name,
      const LwTrack *track,
      guint          step,
      int            part)
{
  LwOutcome o = lw_track_end (track, step, part);

  g_test_message ("%s: moisture %.1f temp %.1f enzyme %.2f oxidation %.1f rupture %.1f (wilt %.1f heat %.1f roll %.1f) "
                  "roast %.2f green %.2f broken %.2f twist %.1f weight %.3f uneven %.1f",
                  name, o.moisture_wb_pct, o.leaf_temp_c, o.enzyme_left_pct, o.oxidation_pct, o.rupture_pct,
                  o.rupture_wilt_pct, o.rupture_heat_pct, o.rupture_roll_pct, o.roast_min, o.green_note,
                  o.broken_pct, o.twist_pct, o.kg_per_kg_fresh, o.uneven_pct);

  return o;
}

static LwOutcome
end (const char    *name,
     const LwTrack *track)
{
  return told (name, track, track->n_steps - 1, -1);
}

/* Share of the dry leaf that is nearly dry, under 20 % wet basis. */
static double
share_dry (const LwTrack *track,
           guint          step)
{
  double share = 0;

  for (guint part = 0; part < track->n_parts; part++)
    if (lw_track_end (track, step, (int) part).moisture_wb_pct < 20)
      share += track->parts[part].share;

  return share;
}

/* Minutes into `step` at which `part` falls under `moisture` percent; INFINITY if it does not. */
static double
minutes_until (const LwTrack *track,
               guint          step,
               int            part,
               double         moisture)
{
  const LwSegment *segment = track->steps[step];

  for (guint i = 0; i < segment->n; i++)
    if (lw_track_outcome (track, step, part, i).moisture_wb_pct < moisture)
      return segment->time_s[i] / 60;

  return INFINITY;
}

/* Minutes for which sheltered leaf is still wet when surface leaf is already under 20 %. */
static double
minutes_apart (const LwTrack *track,
               guint          step)
{
  return minutes_until (track, step, 0, 20) - minutes_until (track, step, 1, 20);
}

/* 1. A wither of 18 h or more reddens leaf visibly, one of 5 h hardly; the long one leaves less water. */
static void
test_long_wither (void)
{
  g_autoptr (LwTrack) little = MAKE (WITHER (5, ORDINARY));
  g_autoptr (LwTrack) much = MAKE (WITHER (19, ORDINARY));
  LwOutcome a = end ("5 h", little), b = end ("19 h", much);

  g_assert_cmpfloat (b.oxidation_pct, >, 8);
  g_assert_cmpfloat (a.oxidation_pct, <, 4);
  g_assert_cmpfloat (b.moisture_wb_pct, <, a.moisture_wb_pct - 3);
}

/* 2. Uncovered in dry air, surface and torn leaf go nearly dry while sheltered leaf stays wet: a third to a half
 * of the batch. Covering evens it out. */
static void
test_uncovered (void)
{
  g_autoptr (LwTrack) open = MAKE (WITHER (19, UNCOVERED));
  g_autoptr (LwTrack) covered = MAKE (WITHER (19, COVERED_DRY_NIGHT));
  LwOutcome a = end ("uncovered", open), b = end ("covered", covered);

  for (int part = 0; part < 4; part++)
    told ("  part", open, 0, part);
  g_assert_cmpfloat (share_dry (open, 0), >=, 0.25);
  g_assert_cmpfloat (share_dry (open, 0), <=, 0.5);
  g_assert_cmpfloat (lw_track_end (open, 0, 0).moisture_wb_pct, >, 50);
  g_assert_cmpfloat (share_dry (covered, 0), ==, 0);
  g_assert_cmpfloat (b.uneven_pct, <, 0.5 * a.uneven_pct);
}

/* 3. Nearly dry leaf roasts at once in a hot pan; moist leaf in the same pan does not. */
static void
test_dry_leaf_roasts (void)
{
  g_autoptr (LwTrack) track = MAKE (WITHER (19, UNCOVERED), PAN (10, 260));
  LwOutcome dry = told ("surface", track, 1, 1), moist = told ("sheltered", track, 1, 0);

  g_assert_cmpfloat (dry.roast_min, >, 20 * moist.roast_min);
  g_assert_cmpfloat (moist.roast_min, <, 2);
}

/* 4. Leaf that comes drier to the pan needs a weaker or shorter firing for the same water. */
static void
test_drier_leaf (void)
{
  g_autoptr (LwTrack) fresh = MAKE (WITHER (5, COVERED), PAN (40, 240));
  g_autoptr (LwTrack) drier = MAKE (WITHER (19, COVERED), PAN (40, 240));
  double a = minutes_until (fresh, 1, -1, 60), b = minutes_until (drier, 1, -1, 60);

  g_test_message ("minutes to 60 %%: %.1f after 5 h, %.1f after 19 h", a, b);
  g_assert_cmpfloat (b, <, 0.9 * a);
}

/* 5. A strong start keeps leaf green; a slow, not-so-hot pan lets it redden before the enzymes are dead. */
static void
test_slow_pan (void)
{
  g_autoptr (LwTrack) strong = MAKE (WITHER (5, COVERED), PAN (30, 260));
  g_autoptr (LwTrack) slow = MAKE (WITHER (5, COVERED), PAN (45, 130));
  double before = lw_track_end (strong, 0, -1).oxidation_pct;
  LwOutcome a = end ("strong", strong), b = end ("slow", slow);

  g_assert_cmpfloat (b.oxidation_pct - before, >, 3 * (a.oxidation_pct - before));
}

/* 6. The hand pan takes 20 to 40 minutes, a drum at 350 C five to six without burning: enzymes dead, cells
 * largely intact. */
static void
test_pan_and_drum (void)
{
  g_autoptr (LwTrack) pan = MAKE (WITHER (5, COVERED), PAN (25, 260));
  g_autoptr (LwTrack) drum = MAKE (WITHER (5, COVERED), DRUM (5.5, 350));
  LwOutcome a = end ("pan", pan), b = end ("drum", drum);

  g_assert_cmpfloat (a.enzyme_left_pct, <, 2);
  g_assert_cmpfloat (b.enzyme_left_pct, <, 2);
  g_assert_cmpfloat (a.moisture_wb_pct, >, 55);
  g_assert_cmpfloat (a.moisture_wb_pct, <, 70);
  g_assert_cmpfloat (b.moisture_wb_pct, >, a.moisture_wb_pct + 3);
  g_assert_cmpfloat (a.rupture_pct, >, 30);
  g_assert_cmpfloat (b.rupture_pct, <, 25);
  g_assert_cmpfloat (b.roast_min, <, 2);
}

/* 7. After a full hand pan 3 minutes of light rolling are enough; after the drum the same rupture needs a long,
 * firm roll. */
static void
test_rolling (void)
{
  g_autoptr (LwTrack) pan = MAKE (WITHER (5, COVERED), PAN (30, 260), ROLL (3, 3));
  g_autoptr (LwTrack) drum = MAKE (WITHER (5, COVERED), DRUM (5.5, 350), ROLL (3, 3));
  g_autoptr (LwTrack) firm = MAKE (WITHER (5, COVERED), DRUM (5.5, 350), ROLL (15, 8));
  LwOutcome a = end ("pan, 3 min light", pan), b = end ("drum, 3 min light", drum), c = end ("drum, 15 min firm", firm);

  g_assert_cmpfloat (a.rupture_pct, >, b.rupture_pct + 15);
  g_assert_cmpfloat (c.rupture_pct, >, a.rupture_pct - 5);
}

/* 8. Very hot and very short kills enzymes with little rupture; cooler and longer, as complete, ruptures more. */
static void
test_hot_and_short (void)
{
  g_autoptr (LwTrack) hot = MAKE (WITHER (5, COVERED), DRUM (3, 400));
  g_autoptr (LwTrack) cool = MAKE (WITHER (5, COVERED), DRUM (14, 200));
  LwOutcome a = end ("hot", hot), b = end ("cool", cool);

  g_assert_cmpfloat (a.enzyme_left_pct, <, 2);
  g_assert_cmpfloat (b.enzyme_left_pct, <, 2);
  g_assert_cmpfloat (b.rupture_pct, >, a.rupture_pct + 5);
}

/* 9. On the same mat in the same sun black tea dries first, pan-fixed second, white last and most unevenly. */
static void
test_drying_race (void)
{
  g_autoptr (LwTrack) black = MAKE (WITHER (18, COVERED), ROLL (60, 9), MAT);
  g_autoptr (LwTrack) fixed = MAKE (WITHER (18, COVERED), PAN (20, 240), ROLL (6, 4), MAT);
  g_autoptr (LwTrack) white = MAKE (WITHER (18, COVERED), MAT);
  double a = minutes_until (black, 2, 0, 20), b = minutes_until (fixed, 3, 0, 20), c = minutes_until (white, 1, 0, 20);
  double apart_black = minutes_apart (black, 2), apart_fixed = minutes_apart (fixed, 3);
  double apart_white = minutes_apart (white, 1);

  g_test_message ("minutes until sheltered leaf is under 20 %%: black %.0f, fixed %.0f, white %.0f; "
                  "surface leaf ahead by %.0f, %.0f, %.0f", a, b, c, apart_black, apart_fixed, apart_white);
  g_assert_cmpfloat (a, <, b);
  g_assert_cmpfloat (1.5 * b, <, c);
  g_assert_cmpfloat (apart_white, >, 2 * MAX (apart_black, apart_fixed));
}

/* 10. Broken cells give up water faster: more rolling shortens drying. */
static void
test_rolling_dries (void)
{
  g_autoptr (LwTrack) little = MAKE (WITHER (5, COVERED), DRUM (5.5, 350), ROLL (2, 3), MAT);
  g_autoptr (LwTrack) much = MAKE (WITHER (5, COVERED), DRUM (5.5, 350), ROLL (30, 8), MAT);
  double a = minutes_until (little, 3, -1, 15), b = minutes_until (much, 3, -1, 15);

  g_test_message ("minutes to 15 %%: %.0f after little, %.0f after much rolling", a, b);
  g_assert_cmpfloat (b, <, 0.8 * a);
}

/* 11. A roast under control comes after drying: there it is even; in the pan it lies in the dry leaf alone. */
static void
test_roast_after_drying (void)
{
  g_autoptr (LwTrack) late = MAKE (WITHER (19, COVERED), PAN (20, 220), ROLL (3, 3), OVEN, ROAST);
  g_autoptr (LwTrack) pan = MAKE (WITHER (19, UNCOVERED), PAN (20, 220));
  double late_low = INFINITY, late_high = 0, pan_low = INFINITY, pan_high = 0;

  for (int part = 0; part < 4; part++)
    {
      double a = told ("late", late, 4, part).roast_min, b = told ("pan", pan, 1, part).roast_min;

      late_low = MIN (late_low, a), late_high = MAX (late_high, a);
      pan_low = MIN (pan_low, b), pan_high = MAX (pan_high, b);
    }

  g_assert_cmpfloat (late_low, >, 5);
  g_assert_cmpfloat (late_high, <, 1.5 * late_low);
  g_assert_cmpfloat (pan_high, >, 20 * pan_low);
}

/* 12. Rolling leaf that is too dry breaks it; rolling warm and moist leaf shapes it. */
static void
test_rolling_dry (void)
{
  g_autoptr (LwTrack) moist = MAKE (WITHER (5, COVERED), PAN (25, 260), ROLL (20, 6));
  g_autoptr (LwTrack) dry = MAKE (WITHER (5, COVERED), PAN (25, 260), { LW_KIND_DRY_AIR, 60, { { LW_SET_AIR_C, 90 } } },
                                  ROLL (20, 6));
  LwOutcome a = end ("moist", moist), b = end ("dry", dry);

  g_assert_cmpfloat (b.broken_pct, >, 5);
  g_assert_cmpfloat (a.broken_pct, <, 0.2 * b.broken_pct);
  g_assert_cmpfloat (a.twist_pct, >, 2 * b.twist_pct);
}

/* 13. A late, damp drying goes on oxidising while enzymes live, not once they are dead. */
static void
test_damp_drying (void)
{
  g_autoptr (LwTrack) alive = MAKE (WITHER (18, COVERED), ROLL (30, 8), DAMP);
  g_autoptr (LwTrack) dead = MAKE (WITHER (18, COVERED), PAN (25, 240), ROLL (30, 8), DAMP);
  double a = lw_track_end (alive, 2, -1).oxidation_pct - lw_track_end (alive, 1, -1).oxidation_pct;
  double b = lw_track_end (dead, 3, -1).oxidation_pct - lw_track_end (dead, 2, -1).oxidation_pct;

  g_test_message ("oxidation while drying: %.1f alive, %.1f dead", a, b);
  g_assert_cmpfloat (a, >, 20);
  g_assert_cmpfloat (b, <, 0.2 * a);
}

/* 14, from memory. In a cool night the heap reddens slowly, in a warm room fast. */
static void
test_cool_heap (void)
{
  g_autoptr (LwTrack) cool = MAKE (WITHER (15, COVERED), ROLL (45, 8), { LW_KIND_REST, 120, { { LW_SET_AIR_C, 14 } } });
  g_autoptr (LwTrack) warm = MAKE (WITHER (15, COVERED), ROLL (45, 8), { LW_KIND_REST, 120, { { LW_SET_AIR_C, 30 } } });
  double a = lw_track_end (cool, 2, -1).oxidation_pct - lw_track_end (cool, 1, -1).oxidation_pct;
  double b = lw_track_end (warm, 2, -1).oxidation_pct - lw_track_end (warm, 1, -1).oxidation_pct;

  g_test_message ("oxidation in the heap: %.1f cool, %.1f warm", a, b);
  g_assert_cmpfloat (a, >, 2);
  g_assert_cmpfloat (b, >, 1.3 * a);
}

/* 15, from memory. Leaf spread thick withers slower than leaf spread thin. */
static void
test_thick_spread (void)
{
  g_autoptr (LwTrack) thin = MAKE (WITHER (8, { LW_SET_SPREAD_KG_M2, 0.6 }, ORDINARY));
  g_autoptr (LwTrack) thick = MAKE (WITHER (8, { LW_SET_SPREAD_KG_M2, 6 }, ORDINARY));
  LwOutcome a = end ("thin", thin), b = end ("thick", thick);

  g_assert_cmpfloat (b.moisture_wb_pct, >, a.moisture_wb_pct + 3);
}

/* 16, from memory. A minute of steam kills the enzymes and leaves the leaf as wet as it came, or wetter; a pan that
 * kills them as well leaves it drier. */
static void
test_steam_is_wet (void)
{
  g_autoptr (LwTrack) steamed = MAKE (WITHER (3, COVERED), { LW_KIND_FIX_STEAM, 1 });
  g_autoptr (LwTrack) panned = MAKE (WITHER (3, COVERED), PAN (12, 280));
  double before = lw_track_end (steamed, 0, -1).moisture_wb_pct;
  LwOutcome a = end ("steamed", steamed), b = end ("panned", panned);

  g_assert_cmpfloat (a.enzyme_left_pct, <, 5);
  g_assert_cmpfloat (b.enzyme_left_pct, <, 5);
  g_assert_cmpfloat (a.moisture_wb_pct, >, before - 1);
  g_assert_cmpfloat (b.moisture_wb_pct, <, before - 4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/trade/1-long-wither", test_long_wither);
  g_test_add_func ("/trade/2-uncovered", test_uncovered);
  g_test_add_func ("/trade/3-dry-leaf-roasts", test_dry_leaf_roasts);
  g_test_add_func ("/trade/4-drier-leaf", test_drier_leaf);
  g_test_add_func ("/trade/5-slow-pan", test_slow_pan);
  g_test_add_func ("/trade/6-pan-and-drum", test_pan_and_drum);
  g_test_add_func ("/trade/7-rolling", test_rolling);
  g_test_add_func ("/trade/8-hot-and-short", test_hot_and_short);
  g_test_add_func ("/trade/9-drying-race", test_drying_race);
  g_test_add_func ("/trade/10-rolling-dries", test_rolling_dries);
  g_test_add_func ("/trade/11-roast-after-drying", test_roast_after_drying);
  g_test_add_func ("/trade/12-rolling-dry", test_rolling_dry);
  g_test_add_func ("/trade/13-damp-drying", test_damp_drying);
  g_test_add_func ("/trade/14-cool-heap", test_cool_heap);
  g_test_add_func ("/trade/15-thick-spread", test_thick_spread);
  g_test_add_func ("/trade/16-steam-is-wet", test_steam_is_wet);

  return g_test_run ();
}

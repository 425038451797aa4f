/* Reaching: known settings are found again by what they did, the trade's own trade-offs come out, what cannot be had
 * is told, and nothing gets worse. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>

#include "made.h"
#include "study/reach.h"

#define CASES 100
#define CASES_LEAST 97
#define SEED 20260412

static void
want (GArray    *wants,
      guint      step,
      LwQuantity of,
      double     low,
      double     high)
{
  LwWant one = { step, of, low, high, 1 };

  g_array_append_val (wants, one);
}

/* Holds the outcome as it is in `season`. */
static void
want_as_in (GArray    *wants,
            LwSeason  *season,
            guint      step,
            LwQuantity of)
{
  LwOutcome end = made_end (season, step, 0);
  double value = lw_quantity_of (of, &end);

  want (wants, step, of, value, value);
}

static GArray *
no_wants (void)
{
  return g_array_new (FALSE, FALSE, sizeof (LwWant));
}

/* (transfer full) handles from pairs of step and setting. */
static GArray *
these (guint           n,
       const LwHandle *handles)
{
  GArray *free = g_array_new (FALSE, FALSE, sizeof (LwHandle));

  return g_array_append_vals (free, handles, n);
}

/* Settings as a maker has them: times from half to twice the usual, the leading setting within a quarter of its
 * range, at notches. */
static LwSeason *
random_design (GRand          *dice,
               const LwSeason *plain,
               const GArray   *free)
{
  LwSeason *season = lw_season_ref ((LwSeason *) plain);

  for (guint i = 0; i < free->len; i++)
    {
      LwHandle handle = g_array_index (free, LwHandle, i);
      LwKind kind = plain->batches[0]->steps[handle.step].kind;
      const LwKindSetting *range = lw_kind_setting (kind, handle.setting);
      double share = g_rand_double_range (dice, -1, 1), value = made_get (plain, handle.step, handle.setting);

      value = handle.setting == LW_SET_MINUTES ? value * exp (share * log (2))
                                               : value + share * (range->high - range->low) / 4;
      made_set (&season, handle.step, handle.setting, lw_kind_snap (kind, handle.setting, value, FALSE));
    }

  return season;
}

static LwSeason *
random_kinds (GRand *dice)
{
  static const LwKind fixes[] = { LW_KIND_FIX_PAN, LW_KIND_FIX_DRUM, LW_KIND_FIX_STEAM };
  static const LwKind ends[] = { LW_KIND_DRY_AIR, LW_KIND_DRY_SUN, LW_KIND_DRY_AIR };
  LwKind kinds[] = { LW_KIND_WITHER, fixes[g_rand_int_range (dice, 0, 3)], LW_KIND_ROLL,
                     ends[g_rand_int_range (dice, 0, 3)] };

  return made_season (kinds, G_N_ELEMENTS (kinds));
}

static gboolean
on_notch (LwKind    kind,
          LwSetting setting,
          double    value)
{
  double fine = lw_kind_snap (kind, setting, value, TRUE);

  return fabs (fine - value) < 1e-9;
}

/* How many of the free settings stand where a maker can set them. */
static guint
usable (const LwSeason *season,
        const GArray   *free)
{
  guint n = 0;

  for (guint i = 0; i < free->len; i++)
    {
      LwHandle handle = g_array_index (free, LwHandle, i);

      n += on_notch (season->batches[0]->steps[handle.step].kind, handle.setting,
                     made_get (season, handle.step, handle.setting)) ? 1 : 0;
    }

  return n;
}

static void
test_recover (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (SEED);
  guint met = 0, notched = 0;

  for (guint i = 0; i < CASES; i++)
    {
      g_autoptr (LwSeason) plain = random_kinds (dice);
      g_autoptr (GArray) free = lw_reach_free (plain, 0, 0), wants = no_wants ();
      g_autoptr (LwSeason) design = random_design (dice, plain, free);
      g_autoptr (LwReached) reached = NULL;

      want_as_in (wants, design, 0, LW_MOISTURE);
      want_as_in (wants, design, 1, LW_MOISTURE);
      want_as_in (wants, design, 2, LW_RUPTURE);
      want_as_in (wants, design, 3, LW_MOISTURE);
      want_as_in (wants, design, 3, LW_OXIDATION);
      reached = lw_reach (plain, 0, wants, free, NULL, NULL);
      g_assert_nonnull (reached);
      met += reached->all_met ? 1 : 0;
      notched += usable (reached->season, free) == free->len ? 1 : 0;
      if (!reached->all_met)
        for (guint k = 0; k < reached->n; k++)
          g_test_message ("case %u, want %u: wanted %.3f, is %.3f", i, k, g_array_index (wants, LwWant, k).low,
                          reached->wants[k].value);
    }

  g_test_message ("%u of %u designs found again, %u on notches", met, CASES, notched);
  g_assert_cmpuint (met, >=, CASES_LEAST);
  g_assert_cmpuint (notched, >=, CASES_LEAST);
}

/* Leaf that comes drier to the pan needs less of it. */
static void
test_drier (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL };
  const LwHandle pan[] = { { 1, LW_SET_MINUTES }, { 1, LW_SET_WALL_C } };
  g_autoptr (LwSeason) usual = made_season (kinds, 3), dry = made_season (kinds, 3);
  g_autoptr (GArray) wants = no_wants (), free = these (2, pan);
  g_autoptr (LwReached) reached = NULL;
  double minutes, wall_c;

  made_set (&dry, 0, LW_SET_HUMIDITY_PCT, 45);
  want_as_in (wants, usual, 1, LW_MOISTURE);
  reached = lw_reach (dry, 0, wants, free, NULL, NULL);
  minutes = made_get (reached->season, 1, LW_SET_MINUTES);
  wall_c = made_get (reached->season, 1, LW_SET_WALL_C);

  g_test_message ("%g min at %g C instead of 25 at 260", minutes, wall_c);
  g_assert_true (reached->all_met);
  g_assert_cmpfloat (minutes, <=, 25);
  g_assert_cmpfloat (wall_c, <=, 260);
  g_assert_true (minutes < 25 || wall_c < 260);
}

/* A drum breaks fewer cells than a pan: the roll must make up for it. */
static void
test_drum (void)
{
  const LwKind pan[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL };
  const LwKind drum[] = { LW_KIND_WITHER, LW_KIND_FIX_DRUM, LW_KIND_ROLL };
  const LwHandle roll[] = { { 2, LW_SET_MINUTES }, { 2, LW_SET_PRESS_KPA } };
  g_autoptr (LwSeason) by_pan = made_season (pan, 3), by_drum = made_season (drum, 3);
  g_autoptr (GArray) wants = no_wants (), free = these (2, roll);
  g_autoptr (LwReached) reached = NULL;

  want_as_in (wants, by_pan, 2, LW_RUPTURE);
  reached = lw_reach (by_drum, 0, wants, free, NULL, NULL);
  g_test_message ("%g min at %g kPa instead of 3 at 3", made_get (reached->season, 2, LW_SET_MINUTES),
                  made_get (reached->season, 2, LW_SET_PRESS_KPA));
  g_assert_true (reached->all_met);
  g_assert_cmpfloat (made_get (reached->season, 2, LW_SET_MINUTES), >, 3);
  g_assert_cmpfloat (made_get (reached->season, 2, LW_SET_PRESS_KPA), >, 3);
}

static double
sum_missed (const LwReached *reached,
            const GArray    *wants)
{
  double sum = 0;

  for (guint i = 0; i < reached->n; i++)
    {
      double off = reached->wants[i].missed / lw_want_tolerance (g_array_index (wants, LwWant, i).of);

      sum += off * off;
    }

  return sum;
}

static void
assert_impossible (LwSeason     *season,
                   const GArray *wants,
                   const GArray *free,
                   guint         missing)
{
  g_autoptr (LwReached) before = lw_reach_judge (season, 0, wants);
  g_autoptr (LwReached) reached = lw_reach (season, 0, wants, free, NULL, NULL);
  g_autoptr (LwReached) again = lw_reach_judge (reached->season, 0, wants);
  const LwWant *want_missed = &g_array_index (wants, LwWant, missing);

  g_assert_false (reached->all_met);
  g_assert_false (reached->wants[missing].met);
  g_assert_cmpfloat (fabs (reached->wants[missing].missed), >, lw_want_tolerance (want_missed->of));
  g_assert_cmpfloat_with_epsilon (reached->wants[missing].value, want_missed->high + reached->wants[missing].missed,
                                  1e-9);
  g_assert_cmpfloat (sum_missed (reached, wants), <=, sum_missed (before, wants));
  for (guint i = 0; i < reached->n; i++)
    g_assert_cmpfloat (again->wants[i].value, ==, reached->wants[i].value);
}

/* Bone-dry leaf after five minutes in a drum. */
static void
test_impossible_dry (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_DRUM };
  const LwHandle wall[] = { { 1, LW_SET_WALL_C } };
  g_autoptr (LwSeason) season = made_season (kinds, 2);
  g_autoptr (GArray) wants = no_wants (), free = these (1, wall);

  made_set (&season, 1, LW_SET_MINUTES, 5);
  want (wants, 1, LW_MOISTURE, -INFINITY, 1);
  assert_impossible (season, wants, free, 0);
}

/* No later step takes back what the wither has oxidised; what else is wanted is not given up for it. */
static void
test_impossible_green (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  g_autoptr (LwSeason) season = made_season (kinds, 4);
  g_autoptr (GArray) wants = no_wants (), free = NULL;
  g_autoptr (LwReached) reached = NULL;
  LwOutcome withered;

  made_set (&season, 0, LW_SET_MINUTES, 1440);
  withered = made_end (season, 0, 0);
  free = lw_reach_free (season, 0, 1);
  want (wants, 3, LW_OXIDATION, -INFINITY, withered.oxidation_pct / 3);
  want (wants, 3, LW_MOISTURE, 3, 6);
  assert_impossible (season, wants, free, 0);

  reached = lw_reach (season, 0, wants, free, NULL, NULL);
  g_assert_true (reached->wants[1].met);
}

/* A batch that meets its wants is left as it is; so is one of which nothing may move. */
static void
test_untouched (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN };
  g_autoptr (LwSeason) season = made_season (kinds, 2);
  g_autoptr (GArray) met = no_wants (), missed = no_wants (), free = lw_reach_free (season, 0, 0);
  g_autoptr (GArray) nothing = these (0, NULL);
  g_autoptr (LwReached) a = NULL, b = NULL;

  want (met, 1, LW_MOISTURE, 5, 90);
  want (missed, 1, LW_MOISTURE, 5, 10);
  a = lw_reach (season, 0, met, free, NULL, NULL);
  b = lw_reach (season, 0, missed, nothing, NULL, NULL);
  g_assert_true (a->all_met && a->season == season);
  g_assert_true (!b->all_met && b->season == season);
  g_assert_cmpfloat (b->wants[0].missed, >, 0);
}

/* As in a drag: the wither grows by the quarter hour, the last answer is where the search starts, and the locked
 * outcomes stay. What was moved by the hand is not moved by the search. */
static void
test_hold (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  g_autoptr (LwSeason) season = made_season (kinds, 4), dragged = NULL, near = NULL;
  g_autoptr (GArray) wants = no_wants (), free = lw_reach_free (season, 0, 1);
  guint n_met = 0;

  want_as_in (wants, season, 1, LW_MOISTURE);
  want_as_in (wants, season, 2, LW_RUPTURE);
  want_as_in (wants, season, 3, LW_MOISTURE);
  dragged = lw_season_ref (season);
  for (guint i = 1; i <= 12; i++)
    {
      g_autoptr (LwReached) reached = NULL;

      made_set (&dragged, 0, LW_SET_MINUTES, 1080 + 15 * i);
      reached = lw_reach (dragged, 0, wants, free, near, NULL);
      g_assert_cmpfloat (made_get (reached->season, 0, LW_SET_MINUTES), ==, 1080 + 15 * i);
      n_met += reached->all_met ? 1 : 0;
      g_clear_pointer (&near, lw_season_unref);
      near = lw_season_ref (reached->season);
    }
  g_assert_cmpuint (n_met, ==, 12);
}

static void
test_cancel (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN };
  g_autoptr (LwSeason) season = made_season (kinds, 2);
  g_autoptr (GArray) wants = no_wants (), free = lw_reach_free (season, 0, 0);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  want (wants, 1, LW_MOISTURE, 5, 10);
  g_cancellable_cancel (cancellable);
  g_assert_null (lw_reach (season, 0, wants, free, NULL, cancellable));
}

/* Aims become wants in the order of the steps, those of the finished tea last. */
static void
test_aims (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN };
  g_autoptr (LwSeason) season = made_season (kinds, 2);
  g_autoptr (GArray) wants = NULL;

  lw_batch_add_aim (season->batches[0], -1, (LwAim) { LW_MOISTURE, 3, 6, 1 });
  lw_batch_add_aim (season->batches[0], 0, (LwAim) { LW_OXIDATION, -INFINITY, 9, 2 });
  wants = lw_wants_of_aims (season->batches[0]);
  g_assert_cmpuint (wants->len, ==, 2);
  g_assert_cmpuint (g_array_index (wants, LwWant, 0).step, ==, 0);
  g_assert_cmpfloat (g_array_index (wants, LwWant, 0).weight, ==, 2);
  g_assert_cmpuint (g_array_index (wants, LwWant, 1).step, ==, 1);
  g_assert_cmpfloat (g_array_index (wants, LwWant, 1).high, ==, 6);
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reach/aims", test_aims);
  g_test_add_func ("/reach/recover", test_recover);
  g_test_add_func ("/reach/drier-leaf", test_drier);
  g_test_add_func ("/reach/drum-for-pan", test_drum);
  g_test_add_func ("/reach/impossible/dry", test_impossible_dry);
  g_test_add_func ("/reach/impossible/green", test_impossible_green);
  g_test_add_func ("/reach/untouched", test_untouched);
  g_test_add_func ("/reach/hold", test_hold);
  g_test_add_func ("/reach/cancel", test_cancel);

  return g_test_run ();
}

/* Correcting by weigh-ins: the update against the textbook's numbers, and the model's batches against ones that are known
 * in truth because they were drawn. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "made.h"
#include "season/document.h"
#include "season/edit.h"
#include "season/measured.h"
#include "study/chance.h"
#include "study/correct.h"
#include "study/design.h"
#include "study/kalman.h"

static const LwKind chain[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };

#define N_CHAIN G_N_ELEMENTS (chain)
#define CASES 40

#define assert_near(a, b) g_assert_cmpfloat_with_epsilon ((a), (b), 1e-12)

/* One number: the mean weighed by the inverse variances, and their sum. Maybeck (1979), Stochastic models, estimation,
 * and control, vol. 1, 1.5: two fixes of one position. */
static void
test_one_number (void)
{
  const struct { double sd, measured, measured_sd; } rows[] = {
    { 1, 3, 1 }, { 2, 3, 1 }, { 0.5, -7, 4 }, { 3, 3, 1e-9 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      double a = 1 / (rows[i].sd * rows[i].sd), b = 1 / (rows[i].measured_sd * rows[i].measured_sd);
      double mean = 1, variance = 1 / a;

      lw_kalman_take (&mean, &variance, 1, 0, rows[i].measured, 1 / b);
      g_assert_cmpfloat_with_epsilon (mean, (a * 1 + b * rows[i].measured) / (a + b), 1e-9);
      g_assert_cmpfloat_with_epsilon (variance, 1 / (a + b), 1e-9);
    }
}

/* As sure as the model: halfway. Beyond doubt: what was measured. Nothing known: no change. */
static void
test_extremes (void)
{
  double mean[2] = { 1, 10 }, covariance[4] = { 4, 2, 2, 9 };

  lw_kalman_take (mean, covariance, 2, 0, 100, INFINITY);
  assert_near (mean[0], 1);
  assert_near (mean[1], 10);
  assert_near (covariance[3], 9);

  lw_kalman_take (mean, covariance, 2, 0, 3, 4);
  assert_near (mean[0], 2);
  assert_near (covariance[0], 2);

  lw_kalman_take (mean, covariance, 2, 0, 5, 0);
  assert_near (mean[0], 5);
  assert_near (covariance[0], 0);
  assert_near (covariance[1], 0);

  /* Known for sure: nothing can move it, whatever is said. */
  lw_kalman_take (mean, covariance, 2, 0, 6, 0);
  assert_near (mean[0], 5);
}

/* Two numbers, of which one is measured: gain (2/4, 1/4), by hand from K = P H' / (H P H' + R), P - K H P. */
static void
test_two_numbers (void)
{
  double mean[2] = { 1, 0 }, covariance[4] = { 2, 1, 1, 3 };

  lw_kalman_take (mean, covariance, 2, 0, 4, 2);
  assert_near (mean[0], 2.5);
  assert_near (mean[1], 0.75);
  assert_near (covariance[0], 1);
  assert_near (covariance[1], 0.5);
  assert_near (covariance[2], 0.5);
  assert_near (covariance[3], 2.75);
}

/* One after another is the same as all at once: numbers from the formula with the matrix inverted, in exact fractions. */
static void
test_one_by_one (void)
{
  const double all[4] = { 0.36097560975609755, 1.6207317073170733, 3.7784552845528454, 3.3422764227642277 }, variances[4] = { 3.5365853658536586, 1.2518292682926828, 0.37296747967479676, 0.1991869918699187 };
  double covariance[16] = { 4, 1.2, -0.8, 0.5, 1.2, 2, 0.3, 0.9, -0.8, 0.3, 1.5, -0.2, 0.5, 0.9, -0.2, 1 };
  double mean[4] = { 1, 2, 3, 4 };

  lw_kalman_take (mean, covariance, 4, 2, 4, 0.5);
  lw_kalman_take (mean, covariance, 4, 3, 3.2, 0.25);
  for (guint i = 0; i < 4; i++)
    {
      g_assert_cmpfloat_with_epsilon (mean[i], all[i], 1e-12);
      g_assert_cmpfloat_with_epsilon (covariance[5 * i], variances[i], 1e-12);
    }
}

static void
weigh (LwSeason *season,
       guint     step,
       LwWeighIn weigh_in)
{
  LwBatch *batch = lw_batch_copy (season->batches[0]);

  lw_batch_add_weigh_in (batch, step, weigh_in);
  lw_season_put_batch (season, 0, batch);
}

static double
end_kg (LwSeason *season,
        guint     step)
{
  return made_end (season, step, 0).kg_per_kg_fresh * season->batches[0]->fresh_kg;
}

static LwCorrect *
correct_all (LwSeason *season,
             guint     threads)
{
  LwCorrectAsk ask = { .step = N_CHAIN - 1, .minute = INFINITY, .threads = threads };
  g_autoptr (GError) error = NULL;
  LwCorrect *correct = lw_correct_new (season, 0, &ask, NULL, &error);

  g_assert_no_error (error);

  return correct;
}

/* What is measured beyond doubt is what the batch then weighs; what says nothing changes nothing. */
static void
test_sure_and_unsure (void)
{
  g_autoptr (LwSeason) season = made_season (chain, N_CHAIN);
  double minutes = made_get (season, 0, LW_SET_MINUTES), kg = end_kg (season, 0);
  g_autoptr (LwSeason) unsure = lw_season_copy (season);
  g_autoptr (LwCorrect) sure = NULL, none = NULL;
  const LwCorrection *left;

  weigh (season, 0, (LwWeighIn) { minutes, LW_WEIGHED_KG, 0.5 + kg * 1.02, 1e-6, 0.5, NULL });
  sure = correct_all (season, 0);
  g_assert_cmpuint (sure->n, ==, 1);
  g_assert_cmpfloat_with_epsilon (sure->points[0].expected, kg + 0.5, 1e-4 * kg);
  g_assert_cmpfloat_with_epsilon (sure->points[0].combined, 0.5 + kg * 1.02, 1e-4);
  g_assert_cmpfloat_with_epsilon (end_kg (sure->season, 0), kg * 1.02, 3e-3 * kg);
  g_assert_cmpfloat (sure->of[LW_MOISTURE].combined, >, sure->of[LW_MOISTURE].expected + 0.2);
  g_assert_cmpfloat (sure->of[LW_MOISTURE].combined_sd, <, sure->of[LW_MOISTURE].expected_sd);

  weigh (unsure, 0, (LwWeighIn) { minutes, LW_WEIGHED_KG, kg * 1.02, 1e6, 0, NULL });
  none = correct_all (unsure, 0);
  left = lw_correction_of (none->season->batches[0], 0);
  g_assert_cmpfloat (left->fresh_points, ==, 0);
  for (guint i = 0; i < left->jump->n_parts; i++)
    for (gsize k = 0; k < LW_N_STATE; k++)
      g_assert_cmpfloat (fabs (((const double *) &left->jump->shifts[i])[k]), <=, 1e-3);
}

/* The same document by any number of threads. */
static void
test_threads (void)
{
  g_autoptr (LwSeason) season = made_season (chain, N_CHAIN);
  g_autoptr (LwCorrect) one = NULL, five = NULL;
  g_autofree char *by_one = NULL, *by_five = NULL;
  gsize a, b;

  weigh (season, 0, (LwWeighIn) { 600, LW_WEIGHED_KG, 0.9 * season->batches[0]->fresh_kg, 0.02, 0, NULL });
  weigh (season, 1, (LwWeighIn) { 12, LW_LEAF_C, 88, 2, 0, NULL });
  one = correct_all (season, 1);
  five = correct_all (season, 5);
  by_one = lw_document_write (one->season, &a);
  by_five = lw_document_write (five->season, &b);
  g_assert_cmpuint (one->step, ==, 1);
  g_assert_cmpfloat (one->minute, ==, 12);
  g_assert_cmpmem (by_one, a, by_five, b);
}

/* A slip of scale or pen is told, and drives no state out of its bounds. */
static void
test_far (void)
{
  g_autoptr (LwSeason) season = made_season (chain, N_CHAIN);
  double minutes = made_get (season, 0, LW_SET_MINUTES);
  g_autoptr (LwCorrect) correct = NULL;
  g_autoptr (LwPlan) plan = NULL;
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;

  weigh (season, 0, (LwWeighIn) { minutes, LW_WEIGHED_KG, 0.3 * end_kg (season, 0), 0.02, 0, NULL });
  correct = correct_all (season, 0);
  g_assert_true (lw_correct_is_far (&correct->points[0]));
  plan = lw_plan_new (correct->season, 0);
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 10 });
  g_assert_false (track->failure.failed);
  for (guint step = 0; step < track->n_steps; step++)
    for (guint i = 0; i < track->steps[step]->n; i++)
      for (guint part = 0; part < track->n_parts; part++)
        {
          LwState bounded = *lw_track_state (track, step, part, i);

          lw_state_bound (&bounded);
          g_assert_cmpmem (&bounded, sizeof bounded, lw_track_state (track, step, part, i), sizeof bounded);
        }
}

/* Two weights of which each alone could be, but not both: the second is told. */
static void
test_at_odds (void)
{
  g_autoptr (LwSeason) season = made_season (chain, N_CHAIN);
  double minutes = made_get (season, 0, LW_SET_MINUTES), kg = season->batches[0]->fresh_kg;
  g_autoptr (LwSeason) odd = NULL;
  g_autoptr (LwCorrect) asked = NULL, correct = NULL;
  const double moments[] = { minutes - 60, minutes };

  odd = lw_season_copy (season);
  for (guint i = 0; i < 2; i++)
    weigh (season, 0, (LwWeighIn) { moments[i], LW_WEIGHED_KG, 0.7 * kg, 0.02, 0, NULL });
  asked = correct_all (season, 0);
  for (guint i = 0; i < 2; i++)
    weigh (odd, 0, (LwWeighIn) { moments[i], LW_WEIGHED_KG,
                                 asked->points[i].expected + (i == 0 ? 2 : -2) * asked->points[i].expected_sd, 0.02, 0,
                                 NULL });

  correct = correct_all (odd, 0);
  g_assert_false (lw_correct_is_far (&correct->points[0]));
  g_assert_true (lw_correct_is_far (&correct->points[1]));
  g_assert_cmpfloat (correct->points[1].off, <, 0);
  g_assert_cmpfloat (correct->points[1].off_from, >, correct->points[1].expected);
}

static void
test_nothing_weighed (void)
{
  g_autoptr (LwSeason) season = made_season (chain, N_CHAIN);
  g_autoptr (GCancellable) cancelled = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  LwCorrectAsk ask = { .step = 0, .minute = 100 };

  weigh (season, 0, (LwWeighIn) { 50, LW_WALL_C, 20, 5, 0, NULL });
  weigh (season, 0, (LwWeighIn) { 101, LW_WEIGHED_KG, 3, 0.02, 0, NULL });
  weigh (season, 1, (LwWeighIn) { 10, LW_WEIGHED_KG, 3, 0.02, 0, NULL });
  g_assert_null (lw_correct_new (season, 0, &ask, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
  g_clear_error (&error);

  ask.minute = 102;
  g_cancellable_cancel (cancelled);
  g_assert_null (lw_correct_new (season, 0, &ask, cancelled, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* The season's batch as it truly went, with luck of its own. */
static LwTrack *
truth_of (LwSeason *season,
          GRand    *dice)
{
  g_auto (LwChance) chance = { 0 };
  g_autofree double *luck = NULL;
  g_autoptr (LwPlan) plan = NULL;
  g_autoptr (LwMarch) march = lw_march_new ();
  LwVary varies[LW_N_VARY];

  lw_vary_usual (varies);
  varies[LW_VARY_TIME].sd = 0;
  lw_chance_init (&chance, season, 0, varies);
  luck = g_new (double, chance.n_dims);
  for (guint i = 0; i < chance.n_dims; i++)
    luck[i] = g_rand_double_range (dice, 0.001, 0.999);
  plan = lw_chance_plan (&chance, luck);

  return lw_plan_march (plan, march, (LwSampling) { .samples = 64 });
}

static double
normal (GRand *dice)
{
  return sqrt (-2 * log (g_rand_double_range (dice, 1e-12, 1))) * cos (2 * G_PI * g_rand_double (dice));
}

static void
weigh_truth (LwSeason      *season,
             const LwTrack *truth,
             guint          step,
             double         minute,
             LwMeasure      of,
             GRand         *dice)
{
  LwOutcome there = lw_track_outcome_at (truth, step, -1, 60 * minute);
  LwWeighIn seen = { minute, of, 0, lw_measure_row (of)->sd, 0, NULL };

  seen.value = lw_foretold (&seen, &there, season->batches[0]->fresh_kg) + seen.sd * normal (dice);
  weigh (season, step, seen);
}

/* Batches drawn from the usual variations and weighed with errors: what is foretold of later is nearer with the
 * correction than without, and the state at the weigh-in is as sure as it says. */
static void
test_hidden (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (20260406);
  guint nearer[LW_N_QUANTITIES] = { 0 }, within = 0;
  double before[LW_N_QUANTITIES] = { 0 }, after[LW_N_QUANTITIES] = { 0 }, squares = 0;

  for (guint i = 0; i < CASES; i++)
    {
      g_autoptr (LwSeason) season = made_season (chain, N_CHAIN);
      g_autoptr (LwTrack) truth = truth_of (season, dice);
      g_autoptr (LwCorrect) correct = NULL;
      LwOutcome plain = made_end (season, 1, 0), corrected, real = lw_track_end (truth, 1, -1), here;
      double off;

      weigh_truth (season, truth, 0, 600, LW_WEIGHED_KG, dice);
      weigh_truth (season, truth, 0, made_get (season, 0, LW_SET_MINUTES), LW_WEIGHED_KG, dice);
      correct = correct_all (season, 0);
      corrected = made_end (correct->season, 1, 0);
      for (guint q = 0; q < LW_N_QUANTITIES; q++)
        {
          double a = fabs (lw_quantity_of (q, &plain) - lw_quantity_of (q, &real));
          double b = fabs (lw_quantity_of (q, &corrected) - lw_quantity_of (q, &real));

          nearer[q] += b < a;
          before[q] += a * a / CASES;
          after[q] += b * b / CASES;
        }

      here = lw_track_end (truth, 0, -1);
      off = (here.moisture_wb_pct - correct->of[LW_MOISTURE].combined) / correct->of[LW_MOISTURE].combined_sd;
      squares += off * off / CASES;
      within += fabs (off) < 2;
    }

  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    g_test_message ("%s after the pan: nearer in %u of %u, root mean square miss %.3f, without %.3f",
                    lw_quantity_row (q)->id, nearer[q], CASES, sqrt (after[q]), sqrt (before[q]));
  g_test_message ("at the weigh-in %u of %u within two standard deviations, mean square %.2f", within, CASES, squares);

  /* By chance alone so many would be nearer twice in a hundred times. */
  g_assert_cmpuint (nearer[LW_MOISTURE], >=, CASES * 2 / 3);
  g_assert_cmpuint (nearer[LW_WEIGHT], >=, CASES * 2 / 3);
  g_assert_cmpuint (nearer[LW_UNEVEN], >=, CASES * 2 / 3);
  g_assert_cmpfloat (after[LW_MOISTURE], <, before[LW_MOISTURE] / 2);
  g_assert_cmpuint (within, >=, CASES * 85 / 100);
  g_assert_cmpfloat (squares, <, 2);
  g_assert_cmpfloat (squares, >, 0.4);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kalman/one-number", test_one_number);
  g_test_add_func ("/kalman/extremes", test_extremes);
  g_test_add_func ("/kalman/two-numbers", test_two_numbers);
  g_test_add_func ("/kalman/one-by-one", test_one_by_one);
  g_test_add_func ("/correct/sure-and-unsure", test_sure_and_unsure);
  g_test_add_func ("/correct/threads", test_threads);
  g_test_add_func ("/correct/far", test_far);
  g_test_add_func ("/correct/at-odds", test_at_odds);
  g_test_add_func ("/correct/nothing-weighed", test_nothing_weighed);
  g_test_add_func ("/correct/hidden", test_hidden);

  return g_test_run ();
}

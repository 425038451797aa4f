/* Fitting: known leaves are found within their errors as often as the errors say, errors are those of the
 * textbook where the problem is straight, and no digit hangs on threads. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

#include "fit-made.h"
#include "season/surround.h"
#include "study/squares.h"

#define SEEDS 20
#define BIT(what) LW_FIT_BIT (LW_FIT_##what)
#define FIVE (BIT (SKIN) | BIT (OXIDATION) | BIT (SOFTENING) | BIT (ROLLING) | BIT (MOISTURE))

/* A leaf by chance, as far from its profile as is expected of leaves. */
static FitTruth
any_truth (GRand *dice,
           guint  free)
{
  FitTruth truth = { { 0 } };

  for (guint i = 0; i < LW_N_FIT_WHAT; i++)
    if (free & LW_FIT_BIT (i))
      truth.change[i] = CLAMP (fit_made_scatter (dice), -2.5, 2.5) * lw_fit_row (i)->spread;

  return truth;
}

/* In 20 seeds there are 100 intervals. If the errors are right 68 of them hold the truth: binomial, 4.7 at a standard
 * deviation, and as much for 95 with 2.2; the bounds are three of these away. The sum of squares of misses over
 * errors is chi-square with 100 degrees of freedom, whose standard deviation is 14. */
static void
test_coverage (void)
{
  g_autoptr (LwSeason) season = fit_made_season ();
  guint within_one = 0, within_two = 0, n = 0, nearer = 0;
  double squares = 0, unexplained = 0, expected = 0;

  for (guint32 seed = 1; seed <= SEEDS; seed++)
    {
      g_autoptr (GRand) dice = g_rand_new_with_seed (seed);
      FitTruth truth = any_truth (dice, FIVE);
      g_autoptr (LwSeason) weighed = fit_made_weigh (season, &truth, dice);
      g_autoptr (LwFit) fit = fit_made_fit (weighed, FIVE);

      g_assert_true (fit->enough);
      g_assert_cmpuint (fit->n_params, ==, 5);
      for (guint i = 0; i < fit->n_params; i++)
        {
          const LwFitParam *param = &fit->params[i];
          double miss = fabs (param->change - truth.change[param->what]) / param->error;

          n++;
          within_one += miss <= 1 ? 1 : 0;
          within_two += miss <= 1.96 ? 1 : 0;
          nearer += miss * param->error < fabs (truth.change[param->what]) ? 1 : 0;
          squares += miss * miss;
          g_assert_cmpfloat (miss, <, 4.5);
        }
      unexplained += fit->after;
      expected += fit->n_points;
      for (guint i = 0; i < fit->n_all; i++)
        expected -= fit->params[i].decided;
      g_assert_null (fit_made_warning (fit, LW_FIT_MISFIT));
    }

  g_test_message ("of %u intervals %u hold at one error and %u at 1.96; %u nearer than the start; squares %.1f; "
                  "chi-square %.1f, expected %.1f", n, within_one, within_two, nearer, squares, unexplained, expected);
  g_assert_cmpuint (within_one, >=, 54);
  g_assert_cmpuint (within_one, <=, 82);
  g_assert_cmpuint (within_two, >=, 88);
  g_assert_cmpfloat (squares, >, 58);
  g_assert_cmpfloat (squares, <, 142);
  g_assert_cmpuint (nearer, >=, 80);
  /* Each change takes away what was decided of it: the mean of chi-square is that, its variance near twice as much. */
  g_assert_cmpfloat (fabs (unexplained - expected), <, 3 * sqrt (2 * expected));
}

/* Without errors of the instruments the answer is the truth but for the pull of what was expected, which is the
 * weaker the more the weigh-ins decide. */
static void
test_no_scatter (void)
{
  g_autoptr (LwSeason) season = fit_made_season ();
  FitTruth truth = { { [LW_FIT_SKIN] = 0.25, [LW_FIT_OXIDATION] = -0.2, [LW_FIT_ROLLING] = 0.15, [LW_FIT_MOISTURE] = 1 } };
  g_autoptr (LwSeason) weighed = fit_made_weigh (season, &truth, NULL);
  g_autoptr (LwFit) fit = fit_made_fit (weighed, FIVE | BIT (TORN));

  for (guint i = 0; i < fit->n_params; i++)
    {
      const LwFitParam *param = &fit->params[i];

      g_test_message ("%s: %.4f of %.4f ± %.4f", lw_fit_row (param->what)->id, param->change,
                      truth.change[param->what], param->error);
      g_assert_cmpfloat (fabs (param->change - truth.change[param->what]), <, 0.6 * param->error);
    }
  g_assert_cmpfloat (fit->after, <, 0.02 * fit->before);
}

/* Where only the fresh weight matters the model is straight in it. A normal value of variance s0² that is seen n times
 * as k x with errors s has the precision 1/s0² + sum k²/s² and the mean that weighs by precision; a new look at k x
 * has the variance s² + k² s0² (normal data with a normal prior, any textbook of statistics; from memory). */
static void
test_straight (void)
{
  g_autoptr (LwSeason) season = fit_made_season ();
  g_autoptr (LwSeason) weighed = fit_made_weigh (season, &(FitTruth) { { 0 } }, NULL);
  g_autoptr (LwSeason) part = fit_made_part (weighed, 3, 1);
  LwBatch *batch = lw_batch_copy (part->batches[0]);
  LwWeighIn *seen = batch->steps[0].weigh_ins;
  LwFitAsk ask = { .free = BIT (BREAKING), .leave_one_out = TRUE };
  double k = seen->value / batch->fresh_kg, s0 = lw_measure_row (LW_WEIGHED_KG)->sd;
  double off = 0.05, precision, mean, foretold;
  g_autoptr (GError) error = NULL;
  g_autoptr (LwFit) fit = NULL;

  seen->value += off;
  precision = 1 / (s0 * s0) + k * k / (seen->sd * seen->sd);
  mean = k * off / (seen->sd * seen->sd) / precision;
  foretold = off / sqrt (seen->sd * seen->sd + k * k * s0 * s0);
  lw_season_put_batch (part, 0, batch);
  fit = lw_fit_new (part, &ask, NULL, &error);
  g_assert_no_error (error);

  g_assert_cmpuint (fit->n_all, ==, 2);
  g_assert_cmpint (fit->params[1].what, ==, LW_FIT_BATCH_WEIGHT);
  g_assert_cmpfloat_with_epsilon (fit->params[1].error, 1 / sqrt (precision), 1e-6);
  g_assert_cmpfloat_with_epsilon (fit->params[1].change, mean, 1e-4 * s0);
  g_assert_cmpfloat_with_epsilon (fit->params[0].change, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (fit->params[0].error, lw_fit_row (LW_FIT_BREAKING)->spread, 1e-9);
  g_assert_cmpfloat_with_epsilon (fit->params[0].decided, 0, 1e-9);
  g_assert_cmpfloat_with_epsilon (fit->unseen_sd, foretold, 2e-3 * foretold);
  g_assert_cmpfloat_with_epsilon (fit->unseen_rms, off / seen->sd, 2e-3 * off / seen->sd);
}

static const double line_t[] = { 1, 2, 4, 7, 11, 12 };
#define LINE_N G_N_ELEMENTS (line_t)
#define LINE_SD 0.3

static gboolean
line_cb (const double *b,
         double       *r,
         gpointer      data)
{
  for (guint i = 0; i < LINE_N; i++)
    r[i] = (b[0] + b[1] * line_t[i] - (3 - 0.5 * line_t[i] + 0.1 * (i % 3))) / LINE_SD;

  return TRUE;
}

static gboolean
line_slopes_cb (const double *b,
                const double *r,
                double       *slopes,
                gpointer      data)
{
  for (guint i = 0; i < LINE_N; i++)
    {
      slopes[2 * i] = 1 / LINE_SD;
      slopes[2 * i + 1] = line_t[i] / LINE_SD;
    }

  return TRUE;
}

/* y = a + b t: var b = s²/S, var a = s² (1/n + m²/S), cov = -m s²/S, m the mean of t and S the sum of (t - m)²
 * (any textbook of regression; from memory). */
static void
test_line (void)
{
  LwSquares line = { .n_x = 2, .n_r = LINE_N, .residuals = line_cb, .slopes = line_slopes_cb,
                     .most_rounds = 50, .small = 1e-10 };
  double b[2] = { 0, 0 }, covariance[4], m = 0, s = 0, variance = LINE_SD * LINE_SD;

  for (guint i = 0; i < LINE_N; i++)
    m += line_t[i] / LINE_N;
  for (guint i = 0; i < LINE_N; i++)
    s += (line_t[i] - m) * (line_t[i] - m);

  g_assert_cmpint (lw_squares_solve (&line, b, covariance, NULL), ==, LW_SQUARES_FOUND);
  g_assert_cmpfloat_with_epsilon (covariance[0], variance * (1.0 / LINE_N + m * m / s), 1e-6);
  g_assert_cmpfloat_with_epsilon (covariance[3], variance / s, 1e-6);
  g_assert_cmpfloat_with_epsilon (covariance[1], -m * variance / s, 1e-6);
}

/* The same to the last bit, foretelling too. */
static void
test_threads (void)
{
  g_autoptr (LwSeason) season = fit_made_season ();
  g_autoptr (GRand) dice = g_rand_new_with_seed (5);
  FitTruth truth = any_truth (dice, FIVE);
  g_autoptr (LwSeason) weighed = fit_made_weigh (season, &truth, dice);
  g_autoptr (LwFit) first = NULL;

  for (guint threads = 1; threads <= 5; threads += 2)
    {
      LwFitAsk ask = { .free = FIVE, .threads = threads, .leave_one_out = TRUE };
      g_autoptr (LwFit) fit = lw_fit_new (weighed, &ask, NULL, NULL);

      if (first == NULL)
        first = g_steal_pointer (&fit);
      else
        {
          for (guint i = 0; i < fit->n_all; i++)
            {
              g_assert_true (fit->params[i].change == first->params[i].change);
              g_assert_true (fit->params[i].error == first->params[i].error);
            }
          g_assert_cmpmem (fit->correlations, fit->n_params * fit->n_params * sizeof (double), first->correlations,
                           first->n_params * first->n_params * sizeof (double));
          for (guint i = 0; i < fit->n_points; i++)
            g_assert_true (fit->points[i].after == first->points[i].after);
          g_assert_cmpmem (fit->batches, fit->n_batches * sizeof (LwFitBatch), first->batches,
                           first->n_batches * sizeof (LwFitBatch));
        }
    }
}

/* What the fit says of its points is what a march of the fitted season says. */
static void
test_season (void)
{
  g_autoptr (LwSeason) season = fit_made_season ();
  g_autoptr (GRand) dice = g_rand_new_with_seed (7);
  FitTruth truth = any_truth (dice, FIVE);
  g_autoptr (LwSeason) weighed = fit_made_weigh (season, &truth, dice);
  g_autoptr (LwFit) fit = fit_made_fit (weighed, FIVE);
  g_autoptr (LwMarch) march = lw_march_new ();

  for (guint i = 0; i < fit->n_points; i++)
    {
      const LwFitPoint *point = &fit->points[i];

      for (guint after = 0; after < 2; after++)
        {
          g_autoptr (LwSeason) one = after ? lw_fit_season (fit, point->batch) : lw_season_ref (weighed);
          const LwBatch *batch = one->batches[point->batch];
          const LwWeighIn *seen = &batch->steps[point->step].weigh_ins[point->weigh_in];
          g_autoptr (LwPlan) plan = lw_plan_new (one, point->batch);
          g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = 400 });
          LwOutcome outcome = lw_track_outcome_at (track, point->step, -1, 60 * seen->minute);
          double says = lw_quantity_of ((LwQuantity) lw_measure_row (seen->of)->quantity, &outcome);

          if (seen->of == LW_WEIGHED_KG)
            says = says * batch->fresh_kg + seen->tare_kg;
          g_assert_cmpfloat_with_epsilon (after ? point->after : point->before, says, 0.05 * seen->sd);
        }
    }
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit/line", test_line);
  g_test_add_func ("/fit/straight", test_straight);
  g_test_add_func ("/fit/no-scatter", test_no_scatter);
  g_test_add_func ("/fit/season", test_season);
  g_test_add_func ("/fit/threads", test_threads);
  g_test_add_func ("/fit/coverage", test_coverage);

  return g_test_run ();
}

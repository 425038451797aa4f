/* Least squares: certified answers from certified starts, bounds that hold and bounds that do not matter,
 * residuals that cannot always be had, and stopping when asked. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

#include "strd.h"
#include "study/squares.h"

#define ROUNDS 1000

static gboolean
strd_cb (const double *b,
         double       *r,
         gpointer      data)
{
  const StrdProblem *problem = data;

  for (guint i = 0; i < problem->n; i++)
    r[i] = problem->model (problem->t[i], b) - problem->y[i];

  return TRUE;
}

static double
sum_at (const StrdProblem *problem,
        const double      *b)
{
  double r[STRD_N_POINTS], sum = 0;

  strd_cb (b, r, (gpointer) problem);
  for (guint i = 0; i < problem->n; i++)
    sum += r[i] * r[i];

  return sum;
}

/* Digits in common, as NIST counts them. */
static double
digits (double got,
        double certified)
{
  return got == certified ? 16 : -log10 (fabs (got - certified) / fabs (certified));
}

/* The certified answer has the certified sum: so the data stand here as NIST has them. */
static void
test_data (void)
{
  for (guint i = 0; i < strd_n_problems; i++)
    {
      const StrdProblem *problem = &strd_problems[i];

      g_test_message ("%s: %.10e, certified %.10e", problem->name, sum_at (problem, problem->certified), problem->sum);
      g_assert_cmpfloat (digits (sum_at (problem, problem->certified), problem->sum), >, 6.5);
    }
}

static void
assert_deviations (const StrdProblem *problem,
                   const double      *b,
                   const double      *covariance)
{
  double variance = sum_at (problem, b) / (problem->n - problem->n_x);

  for (guint k = 0; k < problem->n_x; k++)
    if (problem->deviation[k] > 0)
      g_assert_cmpfloat (digits (sqrt (variance * covariance[k * problem->n_x + k]), problem->deviation[k]), >, 3);
}

static void
solve_from (const StrdProblem *problem,
            guint              start,
            gboolean           bounded)
{
  double b[STRD_N_X], low[STRD_N_X], high[STRD_N_X], covariance[STRD_N_X * STRD_N_X], worst = 16;
  LwSquares squares = {
    .n_x = problem->n_x, .n_r = problem->n, .residuals = strd_cb, .data = (gpointer) problem,
    .most_rounds = ROUNDS, .small = 1e-10,
    .low = bounded ? low : NULL, .high = bounded ? high : NULL,
  };
  LwSquaresEnd end;

  memcpy (b, problem->start[start], sizeof b);
  for (guint k = 0; k < problem->n_x; k++)
    {
      low[k] = fmin (b[k], problem->certified[k]) - 10 * fabs (b[k]);
      high[k] = fmax (b[k], problem->certified[k]) + 10 * fabs (b[k]);
    }

  end = lw_squares_solve (&squares, b, covariance, NULL);
  for (guint k = 0; k < problem->n_x; k++)
    worst = fmin (worst, digits (b[k], problem->certified[k]));
  g_test_message ("%s from start %u%s: %.1f digits", problem->name, start + 1, bounded ? ", bounded" : "", worst);

  g_assert_cmpint (end, ==, LW_SQUARES_FOUND);
  g_assert_cmpfloat (worst, >=, problem->digits);
  assert_deviations (problem, b, covariance);
}

static void
test_certified (gconstpointer data)
{
  const StrdProblem *problem = data;

  for (guint start = problem->near_only ? 1 : 0; start < 2; start++)
    solve_from (problem, start, FALSE);
}

/* Bounds too wide to matter change nothing of the answer. */
static void
test_wide (gconstpointer data)
{
  solve_from (data, 1, TRUE);
}

/* MGH17's plateau may not exceed 0.37: the answer is on that bound, and is the one that NIST's problem has
 * when the plateau is not an unknown at all. */
static double
mgh17_flat (double        t,
            const double *b)
{
  return 0.37 + b[0] * exp (-t * b[2]) + b[1] * exp (-t * b[3]);
}

static const StrdProblem *
problem_named (const char *name)
{
  for (guint i = 0; i < strd_n_problems; i++)
    if (strcmp (strd_problems[i].name, name) == 0)
      return &strd_problems[i];

  g_assert_not_reached ();
}

static void
test_active (void)
{
  const StrdProblem *whole = problem_named ("MGH17");
  StrdProblem flat = *whole;
  double b[5], covariance[25], c[4];
  const double low[] = { 0, 0, -10, 0, 0 }, high[] = { 0.37, 10, 0, 1, 1 };
  LwSquares bounded = { .n_x = 5, .n_r = whole->n, .residuals = strd_cb, .data = (gpointer) whole, .low = low,
                        .high = high, .most_rounds = ROUNDS, .small = 1e-10 };
  LwSquares less = { .n_x = 4, .n_r = whole->n, .residuals = strd_cb, .data = &flat, .most_rounds = ROUNDS,
                     .small = 1e-10 };

  flat.model = mgh17_flat;
  memcpy (b, whole->start[1], sizeof b);
  memcpy (c, whole->start[1] + 1, sizeof c);
  g_assert_cmpint (lw_squares_solve (&bounded, b, covariance, NULL), ==, LW_SQUARES_FOUND);
  g_assert_cmpint (lw_squares_solve (&less, c, NULL, NULL), ==, LW_SQUARES_FOUND);

  g_assert_cmpfloat (b[0], ==, 0.37);
  g_assert_cmpfloat (covariance[0], ==, 0);
  g_assert_cmpfloat (covariance[6], >, 0);
  for (guint k = 0; k < 4; k++)
    g_assert_cmpfloat (digits (b[k + 1], c[k]), >, 6);
  g_assert_cmpfloat (sum_at (whole, b), >, whole->sum);
}

/* From its far start BoxBOD runs off to rates at which nothing changes any more; a bound keeps it. */
static void
test_kept (void)
{
  const StrdProblem *problem = problem_named ("BoxBOD");
  const double low[] = { 0, 0 }, high[] = { 1000, 3 };
  double b[] = { 1, 1 };
  LwSquares squares = { .n_x = 2, .n_r = problem->n, .residuals = strd_cb, .data = (gpointer) problem, .low = low,
                        .high = high, .most_rounds = ROUNDS, .small = 1e-10 };

  g_assert_cmpint (lw_squares_solve (&squares, b, NULL, NULL), ==, LW_SQUARES_FOUND);
  for (guint k = 0; k < 2; k++)
    g_assert_cmpfloat (digits (b[k], problem->certified[k]), >=, problem->digits);
}

/* A start outside its bounds, and a valley along which only the bounded unknown's end is low. */
static gboolean
valley_cb (const double *x,
           double       *r,
           gpointer      data)
{
  guint *calls = data;

  (*calls)++;
  r[0] = 10 * (x[1] - x[0] * x[0]);
  r[1] = 1 - x[0];

  return x[0] > -3;
}

static void
test_valley (void)
{
  const double low[] = { -2, -2 }, high[] = { 0.5, 2 };
  double x[] = { -1.2, 17 };
  guint calls = 0;
  LwSquares squares = { .n_x = 2, .n_r = 2, .residuals = valley_cb, .data = &calls, .low = low, .high = high,
                        .most_rounds = ROUNDS, .small = 1e-10 };

  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_FOUND);
  g_assert_cmpfloat (x[0], ==, 0.5);
  g_assert_cmpfloat_with_epsilon (x[1], 0.25, 1e-8);
}

static gboolean
never_cb (const double *x,
          double       *r,
          gpointer      data)
{
  return FALSE;
}

static gboolean
walled_cb (const double *x,
           double       *r,
           gpointer      data)
{
  return valley_cb (x, r, data) && x[1] > -1;
}

static void
test_ends (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  double x[] = { -1.2, 1 };
  guint calls = 0;
  LwSquares squares = { .n_x = 2, .n_r = 2, .residuals = valley_cb, .data = &calls, .most_rounds = 2,
                        .small = 1e-10 };

  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_TIRED);
  g_cancellable_cancel (cancellable);
  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, cancellable), ==, LW_SQUARES_CANCELLED);
  x[0] = -4;
  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_FAILED);
  squares.residuals = never_cb;
  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_FAILED);

  /* The first step undamped, to (1, -3.84), is not to be had. */
  squares.residuals = walled_cb;
  squares.most_rounds = ROUNDS;
  x[0] = -1.2;
  x[1] = 1;
  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_FOUND);
  g_assert_cmpfloat_with_epsilon (x[0], 1, 1e-6);
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/squares/data", test_data);
  for (guint i = 0; i < strd_n_problems; i++)
    {
      g_autofree char *certified = g_strdup_printf ("/squares/certified/%s", strd_problems[i].name);
      g_autofree char *wide = g_strdup_printf ("/squares/wide/%s", strd_problems[i].name);

      g_test_add_data_func (certified, &strd_problems[i], test_certified);
      g_test_add_data_func (wide, &strd_problems[i], test_wide);
    }
  g_test_add_func ("/squares/active-bound", test_active);
  g_test_add_func ("/squares/kept", test_kept);
  g_test_add_func ("/squares/valley", test_valley);
  g_test_add_func ("/squares/ends", test_ends);

  return g_test_run ();
}

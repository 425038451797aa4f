/* Least squares: certified answers from certified starts, bounds that hold and bounds that do not matter,
 * residuals that cannot always be had, and stopping when asked. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <math.h>
#include <string.h>

#include "strd.h"
#include "study/squares.h"

#define ROUNDS 1000
#define NUDGE 6e-6  /* cube root of the machine's precision: best for central differences */

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

static int
strd_gsl_cb (const gsl_vector *b,
             void             *data,
             gsl_vector       *r)
{
  double residuals[STRD_N_POINTS];

  strd_cb (b->data, residuals, data);
  for (guint i = 0; i < r->size; i++)
    gsl_vector_set (r, i, residuals[i]);

  return GSL_SUCCESS;
}

/* GSL's central differences. */
static gboolean
strd_slopes_cb (const double *b,
                const double *r,
                double       *slopes,
                gpointer      data)
{
  const StrdProblem *problem = data;
  double work[STRD_N_POINTS], at[STRD_N_X];
  gsl_multifit_nlinear_fdf fdf = { .f = strd_gsl_cb, .n = problem->n, .p = problem->n_x, .params = data };
  gsl_vector_view x = gsl_vector_view_array (at, problem->n_x), w = gsl_vector_view_array (work, problem->n);
  gsl_vector_const_view f = gsl_vector_const_view_array (r, problem->n);
  gsl_matrix_view out = gsl_matrix_view_array (slopes, problem->n, problem->n_x);

  memcpy (at, b, problem->n_x * sizeof *at);

  return gsl_multifit_nlinear_df (NUDGE, GSL_MULTIFIT_NLINEAR_CTRDIFF, &x.vector, NULL, &fdf, &f.vector, &out.matrix,
                                  &w.vector) == GSL_SUCCESS;
}

static LwSquares
squares_of (const StrdProblem *problem,
            const double      *low,
            const double      *high)
{
  return (LwSquares) { .n_x = problem->n_x, .n_r = problem->n, .low = low, .high = high, .residuals = strd_cb,
                       .slopes = strd_slopes_cb, .data = (gpointer) problem, .most_rounds = ROUNDS, .small = 1e-10 };
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
  LwSquares squares = squares_of (problem, bounded ? low : NULL, bounded ? high : NULL);
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
  LwSquares bounded = squares_of (whole, low, high), less;

  flat.model = mgh17_flat;
  flat.n_x = 4;
  less = squares_of (&flat, NULL, NULL);
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

/* From its far start MGH17 stays at rates at which nothing changes any more; bounds keep it from those. */
static void
test_kept (void)
{
  const StrdProblem *problem = problem_named ("MGH17");
  const double low[] = { 0, 0, -100, 0, 0 }, high[] = { 100, 200, 0, 0.1, 0.1 };
  double b[STRD_N_X];
  LwSquares squares = squares_of (problem, low, high);

  memcpy (b, problem->start[0], sizeof b);
  g_assert_cmpint (lw_squares_solve (&squares, b, NULL, NULL), ==, LW_SQUARES_FOUND);
  for (guint k = 0; k < 5; k++)
    g_assert_cmpfloat (digits (b[k], problem->certified[k]), >=, problem->digits);
}

/* A valley that bends along x1 = x0 * x0 down to (1, 1), with a wall and with what it has seen. */
typedef struct
{
  double low;             /* of both unknowns: where it must not be asked, and beyond which it ends */
  double high;
  double wall;            /* it has no residuals where x1 is less */
  guint calls;
  guint refused;
  guint cancel_at;        /* the call at which it cancels; 0: none */
  GCancellable *cancellable;
} Valley;

static gboolean
valley_cb (const double *x,
           double       *r,
           gpointer      data)
{
  Valley *valley = data;

  g_assert_cmpfloat (fmin (x[0], x[1]), >=, valley->low);
  g_assert_cmpfloat (fmax (x[0], x[1]), <=, valley->high);
  if (++valley->calls == valley->cancel_at)
    g_cancellable_cancel (valley->cancellable);
  r[0] = 10 * (x[1] - x[0] * x[0]);
  r[1] = 1 - x[0];
  valley->refused += x[1] < valley->wall ? 1 : 0;

  return x[1] >= valley->wall;
}

static gboolean
valley_slopes_cb (const double *x,
                  const double *r,
                  double       *slopes,
                  gpointer      data)
{
  slopes[0] = -20 * x[0];
  slopes[1] = 10;
  slopes[2] = -1;
  slopes[3] = 0;

  return TRUE;
}

static LwSquares
squares_in (Valley       *valley,
            const double *low,
            const double *high)
{
  return (LwSquares) { .n_x = 2, .n_r = 2, .low = low, .high = high, .residuals = valley_cb,
                       .slopes = valley_slopes_cb, .data = valley, .most_rounds = ROUNDS, .small = 1e-10 };
}

/* A start outside its bounds; the lowest point is where a bound cuts the valley. No other point is asked for. */
static void
test_valley (void)
{
  const double low[] = { -2, -2 }, high[] = { 0.5, 2 };
  double x[] = { -1.2, 17 };
  Valley valley = { -2, 2, -INFINITY };
  LwSquares squares = squares_in (&valley, low, high);

  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_FOUND);
  g_assert_cmpfloat (x[0], ==, 0.5);
  g_assert_cmpfloat_with_epsilon (x[1], 0.25, 1e-8);
}

/* At the start x1 is held by its bound; once x0 has moved, it is let go. */
static void
test_let_go (void)
{
  const double low[] = { -2, 0.25 }, high[] = { 2, 2 };
  double x[] = { 0, 0.25 };
  Valley valley = { -2, 2, -INFINITY };
  LwSquares squares = squares_in (&valley, low, high);

  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_FOUND);
  g_assert_cmpfloat_with_epsilon (x[0], 1, 1e-8);
  g_assert_cmpfloat_with_epsilon (x[1], 1, 1e-8);
}

/* Every unknown held from the beginning, in a corner: the answer is there. */
static void
test_corner (void)
{
  const double low[] = { -2, 1 }, high[] = { 0.5, 2 };
  double x[] = { 0.5, 1 }, covariance[4];
  Valley valley = { -2, 2, -INFINITY };
  LwSquares squares = squares_in (&valley, low, high);

  g_assert_cmpint (lw_squares_solve (&squares, x, covariance, NULL), ==, LW_SQUARES_FOUND);
  g_assert_cmpuint (valley.calls, ==, 1);
  g_assert_cmpfloat (x[0], ==, 0.5);
  g_assert_cmpfloat (x[1], ==, 1);
  for (guint i = 0; i < G_N_ELEMENTS (covariance); i++)
    g_assert_cmpfloat (covariance[i], ==, 0);
}

/* What is not to be had is gone round. */
static void
test_wall (void)
{
  double x[] = { -1.2, 1 };
  Valley valley = { -INFINITY, INFINITY, -0.05 };
  LwSquares squares = squares_in (&valley, NULL, NULL);

  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_FOUND);
  g_assert_cmpfloat_with_epsilon (x[0], 1, 1e-8);
  g_assert_cmpuint (valley.refused, >, 0);
}

static double
sum_in (const double *x)
{
  return 100 * (x[1] - x[0] * x[0]) * (x[1] - x[0] * x[0]) + (1 - x[0]) * (1 - x[0]);
}

static void
test_ends (void)
{
  const double from[] = { -1.2, 1 };
  double x[] = { -1.2, 1 };
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Valley valley = { -INFINITY, INFINITY, -INFINITY, .cancel_at = 8, .cancellable = cancellable };
  LwSquares squares = squares_in (&valley, NULL, NULL);

  /* Cancelled on the way: not another call, and what was gained is kept. */
  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, cancellable), ==, LW_SQUARES_CANCELLED);
  g_assert_cmpuint (valley.calls, ==, 8);
  g_assert_cmpfloat (sum_in (x), <, sum_in (from));

  squares.most_rounds = 2;
  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_TIRED);
  valley.wall = 20;
  g_assert_cmpint (lw_squares_solve (&squares, x, NULL, NULL), ==, LW_SQUARES_FAILED);
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
  g_test_add_func ("/squares/let-go", test_let_go);
  g_test_add_func ("/squares/corner", test_corner);
  g_test_add_func ("/squares/wall", test_wall);
  g_test_add_func ("/squares/ends", test_ends);

  return g_test_run ();
}

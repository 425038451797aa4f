/* The estimators against functions whose indices are known exactly. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study/design.h"
#include "study/indices.h"

#define MOST 6

typedef double (*Function) (const double *u);

/* Ishigami and Homma (1990), Proc. First Int. Symp. on Uncertainty Modeling and Analysis, with a = 7, b = 0.1. */
static double
ishigami (const double *u)
{
  double x = G_PI * (2 * u[0] - 1), y = G_PI * (2 * u[1] - 1), z = G_PI * (2 * u[2] - 1);

  return sin (x) + 7 * sin (y) * sin (y) + 0.1 * pow (z, 4) * sin (x);
}

/* Normal values with deviations 1, 2, 3: the indices are the squares' shares, 1/14, 4/14, 9/14. The last number does
 * nothing. */
static double
linear (const double *u)
{
  return lw_design_cut_normal (u[0], 5, 1, -INFINITY, INFINITY) - lw_design_cut_normal (u[1], 0, 2, -INFINITY, INFINITY)
         + lw_design_cut_normal (u[2], 100, 3, -INFINITY, INFINITY);
}

static double
product (const double *u)
{
  return (u[0] - 0.5) * (u[1] - 0.5);
}

static double
constant (const double *u)
{
  return 4;
}

/* As a solver leaves it. */
static double
nearly_constant (const double *u)
{
  return 4 + 1e-13 * u[0];
}

/* Sobol' (1993), Mathematical Modelling and Computational Experiments 1:407, from memory: a product of (|4 u - 2| + a) / (1 + a). */
static const double g_a[] = { 0, 1, 4.5, 9, 99, 99 };

static double
sobol_g (const double *u)
{
  double product = 1;

  for (guint k = 0; k < G_N_ELEMENTS (g_a); k++)
    product *= (fabs (4 * u[k] - 2) + g_a[k]) / (1 + g_a[k]);

  return product;
}

/* One source does nearly all, in a way that is not straight: the exponential of a normal value with deviation s has the
 * variance (e^(s²) - 1) e^(s²), so of a product each share is known. */
static double
dominant (const double *u)
{
  return exp (0.7 * lw_design_cut_normal (u[0], 0, 1, -INFINITY, INFINITY)
              + 0.1 * lw_design_cut_normal (u[1], 0, 1, -INFINITY, INFINITY));
}

/* Groups of one number each. */
static void
indices_of (Function function,
            guint    dims,
            guint    n,
            guint32  seed,
            LwIndex *indices)
{
  g_autofree double *rows = lw_design_new (n, 2 * dims, seed), *values = g_new (double, (gsize) (dims + 2) * n);
  const double *ab[MOST];

  for (guint i = 0; i < n; i++)
    {
      const double *a = rows + i * 2 * dims, *b = a + dims;

      values[i] = function (a);
      values[n + i] = function (b);
      for (guint s = 0; s < dims; s++)
        {
          double mixed[MOST];

          for (guint k = 0; k < dims; k++)
            mixed[k] = k == s ? b[k] : a[k];
          values[(s + 2) * n + i] = function (mixed);
        }
    }
  for (guint s = 0; s < dims; s++)
    ab[s] = values + (s + 2) * n;

  lw_indices_of (values, values + n, ab, dims, n, seed, indices);
}

static void
assert_near (const LwIndex *index,
             double         first,
             double         total,
             double         within)
{
  g_test_message ("first %.4f ± %.4f, exactly %.4f; total %.4f ± %.4f, exactly %.4f", index->first, index->first_se,
                  first, index->total, index->total_se, total);
  g_assert_cmpfloat_with_epsilon (index->first, first, within);
  g_assert_cmpfloat_with_epsilon (index->total, total, within);
  /* The stated errors are neither idle nor too small. */
  g_assert_cmpfloat (fabs (index->first - first), <=, 4 * index->first_se + 1e-9);
  g_assert_cmpfloat (fabs (index->total - total), <=, 4 * index->total_se + 1e-9);
}

static void
test_ishigami (void)
{
  double a = 7, b = 0.1, pi4 = pow (G_PI, 4);
  double v1 = 0.5 * pow (1 + b * pi4 / 5, 2), v2 = a * a / 8, v13 = b * b * pi4 * pi4 * 8 / 225, v = v1 + v2 + v13;
  LwIndex few[3], many[3];

  /* The closed form gives the values known from the literature. */
  g_assert_cmpfloat_with_epsilon (v1 / v, 0.3139, 5e-5);
  g_assert_cmpfloat_with_epsilon (v2 / v, 0.4424, 5e-5);
  g_assert_cmpfloat_with_epsilon (v13 / v, 0.2437, 5e-5);

  indices_of (ishigami, 3, 8192, 1, many);
  assert_near (&many[0], v1 / v, (v1 + v13) / v, 0.01);
  assert_near (&many[1], v2 / v, v2 / v, 0.01);
  assert_near (&many[2], 0, v13 / v, 0.01);

  /* With the rows that are usual in a spread, to the error that is stated there. */
  indices_of (ishigami, 3, 128, 1, few);
  assert_near (&few[0], v1 / v, (v1 + v13) / v, 0.25);
  assert_near (&few[1], v2 / v, v2 / v, 0.25);
  assert_near (&few[2], 0, v13 / v, 0.25);
  g_assert_cmpfloat (few[0].total_se, >, 3 * many[0].total_se);
}

/* Each factor has the mean 1 and the variance v = 1 / (3 (1 + a)²); of the product it is the product of all (1 + v), less
 * 1. Alone a source has v of that; with others v times the (1 + v) of all the others. */
static void
test_sobol_g (void)
{
  enum { N = G_N_ELEMENTS (g_a) };
  double v[N], all = 1;
  LwIndex indices[N];

  for (guint k = 0; k < N; k++)
    {
      v[k] = 1 / (3 * (1 + g_a[k]) * (1 + g_a[k]));
      all *= 1 + v[k];
    }

  indices_of (sobol_g, N, 8192, 3, indices);
  for (guint k = 0; k < N; k++)
    assert_near (&indices[k], v[k] / (all - 1), v[k] * all / (1 + v[k]) / (all - 1), 0.01);
}

/* A source that does nearly all is told as surely as one that does little: to a few points in 100, by the usual rows. */
static void
test_dominant (void)
{
  enum { SEEDS = 40 };
  double v[] = { expm1 (0.49), expm1 (0.01) }, all = (1 + v[0]) * (1 + v[1]) - 1, squares[2] = { 0 };

  for (guint32 seed = 1; seed <= SEEDS; seed++)
    {
      LwIndex indices[2];

      indices_of (dominant, 2, 128, seed, indices);
      for (guint k = 0; k < 2; k++)
        squares[k] += pow (indices[k].first - v[k] / all, 2) / SEEDS;
    }
  g_test_message ("first order off by %.4f of %.4f and %.4f of %.4f", sqrt (squares[0]), v[0] / all, sqrt (squares[1]),
                  v[1] / all);
  g_assert_cmpfloat (sqrt (squares[0]), <, 0.03);
  g_assert_cmpfloat (sqrt (squares[1]), <, 0.03);
}

static void
test_linear (void)
{
  LwIndex indices[4];
  double sum = 0;

  indices_of (linear, 4, 4096, 5, indices);
  for (guint k = 0; k < 3; k++)
    {
      assert_near (&indices[k], (k + 1) * (k + 1) / 14.0, (k + 1) * (k + 1) / 14.0, 0.01);
      sum += indices[k].first;
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 0.01);
  g_assert_cmpfloat (indices[3].first, ==, 0);
  g_assert_cmpfloat (indices[3].total, ==, 0);
}

/* What two sources do only together is in neither's first order and in both totals. */
static void
test_together (void)
{
  LwIndex indices[2];

  indices_of (product, 2, 4096, 2, indices);
  assert_near (&indices[0], 0, 1, 0.02);
  assert_near (&indices[1], 0, 1, 0.02);
}

/* The errors that are stated are those that other seeds show, or larger. */
static void
test_errors (void)
{
  enum { SEEDS = 40 };
  double sum = 0, squares = 0, stated = 0, first = 0, first_squares = 0, first_stated = 0;

  for (guint32 seed = 1; seed <= SEEDS; seed++)
    {
      LwIndex indices[3];

      indices_of (ishigami, 3, 256, seed, indices);
      sum += indices[0].total / SEEDS;
      squares += indices[0].total * indices[0].total / SEEDS;
      stated += indices[0].total_se / SEEDS;
      first += indices[0].first / SEEDS;
      first_squares += indices[0].first * indices[0].first / SEEDS;
      first_stated += indices[0].first_se / SEEDS;
    }
  g_test_message ("stated %.4f, seen %.4f, mean %.4f", stated, sqrt (squares - sum * sum), sum);
  g_test_message ("first order: stated %.4f, seen %.4f, mean %.4f", first_stated, sqrt (first_squares - first * first), first);
  g_assert_cmpfloat (first_stated, >, 0.7 * sqrt (first_squares - first * first));
  g_assert_cmpfloat (first_stated, <, 5 * sqrt (first_squares - first * first));
  g_assert_cmpfloat (stated, >, 0.7 * sqrt (squares - sum * sum));
  g_assert_cmpfloat (stated, <, 5 * sqrt (squares - sum * sum));
}

static void
test_nothing_varies (void)
{
  LwIndex indices[2], bare[1];
  const double a[] = { 1, NAN, 3, 4 }, b[] = { 2, 2, INFINITY, 1 }, half[] = { 2, 3, 4, 1 };
  const double *ab[] = { half };

  indices_of (constant, 2, 64, 1, indices);
  g_assert_true (isnan (indices[0].first) && isnan (indices[1].total));
  indices_of (nearly_constant, 2, 64, 1, indices);
  g_assert_true (isnan (indices[0].first) && isnan (indices[0].first_se) && isnan (indices[0].total));

  /* Rows that could not be computed are left out; without a row there is no answer and no crash. */
  lw_indices_of (a, b, ab, 1, 4, 1, bare);
  g_assert_true (isfinite (bare[0].total));
  lw_indices_of (a, b, ab, 1, 0, 1, bare);
  g_assert_true (isnan (bare[0].total));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/indices/ishigami", test_ishigami);
  g_test_add_func ("/indices/sobol-g", test_sobol_g);
  g_test_add_func ("/indices/dominant", test_dominant);
  g_test_add_func ("/indices/linear", test_linear);
  g_test_add_func ("/indices/together", test_together);
  g_test_add_func ("/indices/errors", test_errors);
  g_test_add_func ("/indices/nothing-varies", test_nothing_varies);

  return g_test_run ();
}

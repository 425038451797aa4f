/* The demo seasons hide a leaf: fitting finds it, within the errors that it states. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_blas.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

#include "demo-test.h"
#include "demo/garden.h"
#include "study/fit.h"
#include "study/gsl.h"

/* The change that leads to the hidden leaf, in the measure of the fit. */
static double
true_change (const LwFit      *fit,
             const LwSeason   *hidden,
             const LwFitParam *param)
{
  const char *id = param->leaf != NULL ? param->leaf : fit->season->profiles[0]->id;
  double start = lw_fit_value (param->what, lw_season_profile (fit->season, id));
  double there = lw_fit_value (param->what, lw_season_profile (hidden, id));

  return lw_fit_row (param->what)->factor ? log (there / start) : there - start;
}

/* The squared distance of all changes together, in errors: chi-square with n_params degrees of freedom. */
static double
distance (const LwFit  *fit,
          const double *miss)
{
  guint n = fit->n_params;
  g_autoptr (gsl_matrix) between = gsl_matrix_alloc (n, n);
  g_autoptr (gsl_vector) solved = gsl_vector_alloc (n);
  gsl_vector_const_view misses = gsl_vector_const_view_array (miss, n);
  double sum;

  for (guint i = 0; i < n * n; i++)
    gsl_matrix_set (between, i / n, i % n, fit->correlations[i]);
  g_assert_cmpint (gsl_linalg_cholesky_decomp1 (between), ==, GSL_SUCCESS);
  gsl_linalg_cholesky_solve (between, &misses.vector, solved);
  gsl_blas_ddot (&misses.vector, solved, &sum);

  return sum;
}

static void
find_leaf (int         year,
           const char *leaf,
           guint       sure)
{
  g_autoptr (LwSeason) season = demo_load (year);
  g_autoptr (LwSeason) hidden = demo_hidden_season (season, season->batches[0]);
  LwFitAsk ask = { .free = lw_fit_usual (), .leaf = leaf, .leave_one_out = leaf != NULL || year == 2026 };
  g_autoptr (GError) error = NULL;
  g_autoptr (LwFit) fit = lw_fit_new (season, &ask, NULL, &error);
  g_autofree double *miss = NULL;
  guint within = 0, off = 0;
  double chance;

  g_assert_no_error (error);
  g_assert_true (fit->enough);
  miss = g_new (double, fit->n_params);
  for (guint i = 0; i < fit->n_params; i++)
    {
      const LwFitParam *param = &fit->params[i];
      double truth = true_change (fit, hidden, param);

      miss[i] = (param->change - truth) / param->error;
      within += fabs (miss[i]) <= 1 ? 1 : 0;
      off += fabs (truth) > 2 * param->error ? 1 : 0;
      g_test_message ("%d %s %s: %+.3f, truly %+.3f, error %.3f: %+.2f errors off", year, lw_fit_row (param->what)->id,
                      param->leaf != NULL ? param->leaf : "", param->change, truth, param->error, miss[i]);
      g_assert_cmpfloat (fabs (miss[i]), <, 2);
    }

  chance = gsl_cdf_chisq_Q (distance (fit, miss), fit->n_params);
  g_test_message ("%u of %u within one error; chance of so much together %.2f; chi-square %.0f -> %.1f of %u points; "
                  "foretold %.2f", within, fit->n_params, chance, fit->before, fit->after, fit->n_points, fit->unseen_sd);
  g_assert_cmpuint (2 * within, >=, fit->n_params);
  g_assert_cmpfloat (chance, >, 0.05);
  /* The errors are small enough that the shipped leaf is told from the hidden one. */
  g_assert_cmpuint (off, >=, sure);
  g_assert_cmpfloat (gsl_cdf_chisq_Q (fit->after, fit->n_points), >, 0.05);
  if (ask.leave_one_out)
    {
      g_assert_cmpfloat (fit->unseen_sd, >, 0.6);
      g_assert_cmpfloat (fit->unseen_sd, <, 1.4);
    }
}

static void
test_2025 (void)
{
  find_leaf (2025, NULL, 6);
}

static void
test_2026 (void)
{
  find_leaf (2026, NULL, 5);
}

/* Four batches are enough for the skin and the moisture. */
static void
test_one_plot (void)
{
  find_leaf (2026, "upper-terrace", 2);
}

static void
test_one_weight (void)
{
  g_autoptr (LwSeason) season = demo_load (2026);
  LwBatch *batch = lw_batch_copy (season->batches[0]);
  const guint first = 0;
  g_autoptr (GArray) batches = g_array_append_val (g_array_new (FALSE, FALSE, sizeof (guint)), first);
  LwFitAsk ask = { .free = lw_fit_usual (), .batches = batches };
  g_autoptr (LwFit) fit = NULL;

  for (guint i = 1; i < batch->n_steps; i++)
    batch->steps[i].n_weigh_ins = 0;
  g_assert_cmpuint (batch->steps[0].n_weigh_ins, ==, 1);
  lw_season_put_batch (season, 0, batch);
  fit = lw_fit_new (season, &ask, NULL, NULL);
  g_assert_nonnull (fit);
  g_assert_cmpuint (fit->n_points, ==, 1);
  g_assert_false (fit->enough);
  g_assert_cmpint (fit->warnings[0].kind, ==, LW_FIT_FEW_POINTS);
}

void
demo_add_fit (void)
{
  gsl_set_error_handler_off ();
  g_test_add_func ("/demo/fit/2025", test_2025);
  g_test_add_func ("/demo/fit/2026", test_2026);
  g_test_add_func ("/demo/fit/one-plot", test_one_plot);
  g_test_add_func ("/demo/fit/one-weight", test_one_weight);
}

/* What a fit tells of an unseen batch, beside a fit that never saw it: also where batches contradict each other, so
 * that the answer without one of them is far from the answer to all. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

#include "fit-made.h"
#include "season/surround.h"
#include "study/gsl.h"

#define BIT(what) LW_FIT_BIT (LW_FIT_##what)
#define FREE (BIT (SKIN) | BIT (OXIDATION) | BIT (SOFTENING) | BIT (ROLLING) | BIT (MOISTURE))
#define MOST 12
#define STEP 0.02 /* spreads, for slopes */

/* The model's misses of what was weighed of batch `k`, in the instruments' errors; weights by `kg` of fresh leaf. */
static guint
misses (LwSeason *season,
        guint     k,
        double    kg,
        double   *miss)
{
  const LwBatch *batch = season->batches[k];
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwPlan) plan = lw_plan_new (season, k);
  g_autoptr (LwTrack) track = NULL;
  guint n = 0;

  lw_march_set_tolerance (march, 1e-8);
  track = lw_plan_march (plan, march, (LwSampling) { .every_s = 20 });
  for (guint s = 0; s < batch->n_steps; s++)
    for (guint i = 0; i < batch->steps[s].n_weigh_ins; i++)
      {
        const LwWeighIn *seen = &batch->steps[s].weigh_ins[i];
        int of = lw_measure_row (seen->of)->quantity;
        LwOutcome outcome = lw_track_outcome_at (track, s, -1, 60 * seen->minute);
        double says = of >= 0 ? lw_quantity_of ((LwQuantity) of, &outcome) : NAN;

        if (of >= 0)
          miss[n++] = (says * (seen->of == LW_WEIGHED_KG ? kg : 1) + seen->tare_kg - seen->value) / seen->sd;
      }

  return n;
}

/* The season in which the batch has moved on by one of the fit's changes. */
static LwSeason *
moved (LwSeason  *season,
       guint      k,
       LwFitWhat  what,
       double     by)
{
  LwSeason *next = lw_season_copy (season);
  LwBatch *batch = lw_batch_copy (season->batches[k]);
  LwProfile *leaf = lw_profile_copy (lw_season_profile (season, batch->leaf));

  lw_fit_apply (what, by, leaf, batch);
  lw_season_put_profile (next, leaf);
  lw_season_put_batch (next, k, batch);

  return next;
}

/* Of two of the changes; 0 where a bound holds one. */
static double
covariance (const LwFit *fit,
            guint        p,
            guint        q)
{
  if (fit->params[p].at_bound || fit->params[q].at_bound)
    return 0;

  return fit->params[p].error * fit->params[q].error * fit->correlations[p * fit->n_params + q];
}

/* By the textbook: e' (1 + J C J')^-1 e, with slopes J by central differences, a column for each change and one for the
 * fresh weight. */
static void
foretell (const LwFit *fit,
          guint        k,
          double      *rms,
          double      *sd)
{
  g_autoptr (LwSeason) season = lw_fit_season (fit, k);
  double kg = season->batches[k]->fresh_kg, miss[MOST], low[MOST], high[MOST], sum = 0, foretold;
  guint n = misses (season, k, kg, miss), all = fit->n_params + 1;
  g_autoptr (gsl_matrix) j = gsl_matrix_alloc (n, all), c = gsl_matrix_calloc (all, all);
  g_autoptr (gsl_matrix) jc = gsl_matrix_alloc (n, all), v = gsl_matrix_alloc (n, n);
  g_autoptr (gsl_vector) solved = gsl_vector_alloc (n);
  gsl_vector_view e = gsl_vector_view_array (miss, n);

  for (guint p = 0; p < all; p++)
    {
      LwFitWhat what = p < fit->n_params ? fit->params[p].what : LW_FIT_BATCH_WEIGHT;
      double by = STEP * lw_fit_row (what)->spread;
      g_autoptr (LwSeason) down = moved (season, k, what, -by), up = moved (season, k, what, by);

      misses (down, k, down->batches[k]->fresh_kg, low);
      misses (up, k, up->batches[k]->fresh_kg, high);
      for (guint i = 0; i < n; i++)
        gsl_matrix_set (j, i, p, (high[i] - low[i]) / (2 * by));
      for (guint q = 0; q < fit->n_params && p < fit->n_params; q++)
        gsl_matrix_set (c, p, q, covariance (fit, p, q));
    }
  gsl_matrix_set (c, all - 1, all - 1, pow (lw_fit_row (LW_FIT_BATCH_WEIGHT)->spread, 2));

  gsl_matrix_set_identity (v);
  gsl_blas_dgemm (CblasNoTrans, CblasNoTrans, 1, j, c, 0, jc);
  gsl_blas_dgemm (CblasNoTrans, CblasTrans, 1, jc, j, 1, v);
  g_assert_cmpint (gsl_linalg_cholesky_decomp1 (v), ==, GSL_SUCCESS);
  gsl_linalg_cholesky_solve (v, &e.vector, solved);
  gsl_blas_ddot (&e.vector, solved, &foretold);
  for (guint i = 0; i < n; i++)
    sum += miss[i] * miss[i];
  *rms = sqrt (sum / n);
  *sd = sqrt (foretold / n);
}

static void
assert_foretold (LwSeason *season)
{
  LwFitAsk ask = { .free = FREE, .leave_one_out = TRUE };
  g_autoptr (LwFit) fit = lw_fit_new (season, &ask, NULL, NULL);

  for (guint k = 0; k < season->n_batches; k++)
    {
      g_autoptr (GArray) others = g_array_new (FALSE, FALSE, sizeof (guint));
      LwFitAsk rest = { .free = FREE, .batches = others };
      g_autoptr (LwFit) unseen = NULL;
      double rms, sd;

      for (guint i = 0; i < season->n_batches; i++)
        if (i != k)
          g_array_append_val (others, i);
      unseen = lw_fit_new (season, &rest, NULL, NULL);
      foretell (unseen, k, &rms, &sd);
      g_test_message ("batch %u: told %.4f and %.4f, by itself %.4f and %.4f", k, fit->batches[k].unseen_rms,
                      fit->batches[k].unseen_sd, rms, sd);
      g_assert_cmpfloat_with_epsilon (fit->batches[k].unseen_rms, rms, 0.003 * rms + 0.002);
      g_assert_cmpfloat_with_epsilon (fit->batches[k].unseen_sd, sd, 0.01 * sd + 0.002);
    }
}

static void
test_agreeing (void)
{
  g_autoptr (LwSeason) season = fit_made_season ();
  g_autoptr (GRand) dice = g_rand_new_with_seed (11);
  FitTruth truth = { { [LW_FIT_SKIN] = 0.25, [LW_FIT_OXIDATION] = -0.2, [LW_FIT_ROLLING] = 0.15, [LW_FIT_MOISTURE] = 1 } };
  g_autoptr (LwSeason) weighed = fit_made_weigh (season, &truth, dice);

  assert_foretold (weighed);
}

/* One batch is of leaf with another skin and another answer to heat. */
static void
test_contradicting (void)
{
  g_autoptr (LwSeason) season = fit_made_season ();
  g_autoptr (GRand) dice = g_rand_new_with_seed (12);
  g_autoptr (LwSeason) weighed = fit_made_weigh (season, &(FitTruth) { { [LW_FIT_SKIN] = 0.4 } }, dice);
  g_autoptr (LwSeason) other = fit_made_weigh (season, &(FitTruth) { { [LW_FIT_SKIN] = -0.5, [LW_FIT_MOISTURE] = 2 } }, dice);

  lw_season_put_batch (weighed, 2, lw_batch_copy (other->batches[2]));
  assert_foretold (weighed);
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit-leave/agreeing", test_agreeing);
  g_test_add_func ("/fit-leave/contradicting", test_contradicting);

  return g_test_run ();
}

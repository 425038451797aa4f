/* Least squares over the weigh-ins with what was expected as one more measurement of each change; then what the
 * answer is worth. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/fit.h"

#include <gsl/gsl_cdf.h>
#include <math.h>
#include <string.h>

#include "season/text.h"
#include "study/fit-leave.h"

#define ROUNDS_USUAL 5.0  /* of slopes in a fit; each batch that is left out takes about one more */

/* One fit on its way. */
typedef struct
{
  const LwFitAsk *ask;
  LwFitModel *model;
  guint rounds;
  double *x;
  double *r;           /* n_points + n_x */
  double *slopes;      /* of n_x each */
  double *covariance;  /* n_x * n_x, NAN where there is none */
  LwSquaresEnd end;
} Run;

static void
run_clear (Run *run)
{
  g_clear_pointer (&run->model, lw_fit_model_free);
  g_free (run->x);
  g_free (run->r);
  g_free (run->slopes);
  g_free (run->covariance);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Run, run_clear)

static void
tell (const Run *run,
      double     share)
{
  if (run->ask->progress != NULL)
    run->ask->progress (share, run->ask->progress_data);
}

/* The share of the work that is done before batches are left out. */
static double
first_share (const Run *run)
{
  return run->ask->leave_one_out ? ROUNDS_USUAL / (ROUNDS_USUAL + run->model->n_batches) : 1;
}

static gboolean
run_residuals (const double *x,
               double       *r,
               gpointer      data)
{
  return lw_fit_model_residuals (x, r, ((Run *) data)->model);
}

/* Nobody knows how many rounds there will be: each does half of what is left. */
static gboolean
run_slopes (const double *x,
            const double *r,
            double       *slopes,
            gpointer      data)
{
  Run *run = data;

  if (!lw_fit_model_slopes (x, r, slopes, run->model))
    return FALSE;

  run->rounds++;
  memcpy (run->slopes, slopes, (gsize) (run->model->n_points + run->model->n_x) * run->model->n_x * sizeof *slopes);
  tell (run, first_share (run) * (1 - pow (0.5, run->rounds)));

  return TRUE;
}

static gboolean
set_failed (const LwFitModel *model,
            const double     *x,
            GError          **error)
{
  g_autofree double *r = g_new (double, MAX (model->n_points, 1));

  if (g_cancellable_set_error_if_cancelled (model->cancellable, error))
    return FALSE;

  for (guint k = 0; k < model->n_batches; k++)
    if (!lw_fit_model_batch (model, k, model->marches[0], x, r, NULL))
      {
        g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("“%s” cannot be computed; leave it out."),
                     model->season->batches[model->batches[k].batch]->name);
        return FALSE;
      }

  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("The batches cannot be computed."));

  return FALSE;
}

/* Chi-squares and what the model says, from the misses `r`. */
static void
take_misses (LwFitModel   *model,
             const double *r,
             gboolean      after)
{
  for (guint k = 0; k < model->n_batches; k++)
    {
      double sum = 0;

      for (guint i = model->first[k]; i < model->first[k + 1]; i++)
        {
          LwFitPoint *point = &model->points[i];
          const LwWeighIn *seen = &model->season->batches[point->batch]->steps[point->step].weigh_ins[point->weigh_in];

          *(after ? &point->after : &point->before) = seen->value + r[i] * seen->sd;
          sum += r[i] * r[i];
        }
      *(after ? &model->batches[k].after : &model->batches[k].before) = sum;
    }
}

static gboolean
search (Run     *run,
        GError **error)
{
  LwFitModel *model = run->model;
  gsize n_x = model->n_x, n_r = model->n_points + n_x;
  LwSquares squares = lw_fit_squares (model, run_residuals, run_slopes, run);

  run->x = g_new0 (double, n_x);
  run->r = g_new0 (double, n_r);
  run->slopes = g_new0 (double, n_r * n_x);
  run->covariance = g_new (double, n_x * n_x);
  for (gsize i = 0; i < n_x * n_x; i++)
    run->covariance[i] = NAN;

  if (!lw_fit_model_residuals (run->x, run->r, model))
    return set_failed (model, run->x, error);
  take_misses (model, run->r, FALSE);

  run->end = lw_squares_solve (&squares, run->x, run->covariance, model->cancellable);
  if (run->end == LW_SQUARES_CANCELLED || run->end == LW_SQUARES_FAILED
      || !lw_fit_model_residuals (run->x, run->r, model))
    return set_failed (model, run->x, error);
  take_misses (model, run->r, TRUE);
  tell (run, first_share (run));

  return TRUE;
}

static void
take_params (const Run *run)
{
  const LwFitModel *model = run->model;

  for (guint i = 0; i < model->n_x; i++)
    {
      LwFitParam *param = &model->params[i];
      double spread = lw_fit_row (param->what)->spread, variance = run->covariance[i * (model->n_x + 1)];

      param->change = run->x[i] * spread;
      param->at_bound = variance == 0;
      param->error = param->at_bound ? NAN : spread * sqrt (variance);
      param->decided = param->at_bound ? NAN : CLAMP (1 - variance, 0, 1);
    }
}

static void
take_correlations (LwFit     *fit,
                   const Run *run)
{
  guint n = fit->n_params, all = fit->n_all;

  fit->correlations = g_new0 (double, (gsize) n * n);
  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < n; k++)
      {
        double both = sqrt (run->covariance[i * (all + 1)] * run->covariance[k * (all + 1)]);

        fit->correlations[i * n + k] = both > 0 ? run->covariance[i * all + k] / both : i == k ? 1 : 0;
      }
}

static gboolean
leave_out (LwFit     *fit,
           const Run *run,
           GError   **error)
{
  LwFitModel *model = run->model;
  double squares = 0, foretold = 0;

  for (guint k = 0; k < model->n_batches; k++)
    {
      LwFitBatch *batch = &model->batches[k];

      if (!lw_fit_leave_out (model, k, run->x, run->slopes, &batch->unseen_rms, &batch->unseen_sd))
        return set_failed (model, run->x, error);
      squares += batch->n_points * batch->unseen_rms * batch->unseen_rms;
      foretold += batch->n_points * batch->unseen_sd * batch->unseen_sd;
      tell (run, first_share (run) + (1 - first_share (run)) * (k + 1) / model->n_batches);
    }

  fit->unseen_rms = sqrt (squares / model->n_points);
  fit->unseen_sd = sqrt (foretold / model->n_points);

  return TRUE;
}

static void
warn (GArray          *warnings,
      LwFitWarningKind kind,
      guint            a,
      guint            b,
      double           number)
{
  LwFitWarning warning = { kind, a, b, number };

  g_array_append_val (warnings, warning);
}

/* Which of the batches, by weigh-in. */
static guint
most_missed (const LwFit *fit)
{
  guint most = 0;

  for (guint k = 1; k < fit->n_batches; k++)
    if (fit->batches[k].after / fit->batches[k].n_points > fit->batches[most].after / fit->batches[most].n_points)
      most = k;

  return most;
}

/* In the order in which they matter to the one who reads them. */
static void
judge (LwFit     *fit,
       const Run *run,
       GArray    *warnings)
{
  gboolean found = run->end == LW_SQUARES_FOUND;
  guint n = fit->n_params, told = 0;
  double sum = 0, chance;

  for (guint i = 0; i < fit->n_points + fit->n_all; i++)
    sum += run->r[i] * run->r[i];
  chance = gsl_cdf_chisq_Q (sum, fit->n_points);

  for (guint i = 0; i < n; i++)
    told += fit->params[i].decided >= LW_FIT_TOLD || fit->params[i].at_bound ? 1 : 0;
  fit->enough = found && fit->n_points > n && told > 0;

  if (fit->n_points <= n)
    warn (warnings, LW_FIT_FEW_POINTS, 0, 0, NAN);
  if (found && told == 0)
    warn (warnings, LW_FIT_NOTHING_TOLD, 0, 0, NAN);
  if (!found)
    warn (warnings, LW_FIT_UNFINISHED, 0, 0, NAN);
  if (chance < LW_FIT_CHANCE)
    warn (warnings, LW_FIT_MISFIT, most_missed (fit), 0, chance);

  for (guint i = 0; i < n; i++)
    if (fit->params[i].at_bound)
      warn (warnings, LW_FIT_AT_BOUND, i, 0, NAN);
    else if (told > 0 && !(fit->params[i].decided >= LW_FIT_TOLD))
      warn (warnings, LW_FIT_NOT_TOLD, i, 0, fit->params[i].decided);
  for (guint i = 0; i < n; i++)
    for (guint k = i + 1; k < n; k++)
      if (fabs (fit->correlations[i * n + k]) > LW_FIT_TWIN)
        warn (warnings, LW_FIT_TWINS, i, k, fit->correlations[i * n + k]);
}

/* All that the result keeps of the run. */
static LwFit *
fit_of (Run *run)
{
  LwFitModel *model = run->model;
  LwFit *fit = g_new0 (LwFit, 1);

  fit->season = lw_season_ref (model->season);
  fit->unseen_rms = fit->unseen_sd = NAN;
  fit->n_points = model->n_points;
  fit->n_batches = model->n_batches;
  fit->n_all = model->n_x;
  fit->n_params = model->n_x - model->n_batches;
  take_params (run);
  take_correlations (fit, run);

  return fit;
}

static void
fit_take (LwFit *fit,
          Run   *run)
{
  fit->points = g_steal_pointer (&run->model->points);
  fit->batches = g_steal_pointer (&run->model->batches);
  fit->params = g_steal_pointer (&run->model->params);
  run->model->n_x = 0;
  for (guint k = 0; k < fit->n_batches; k++)
    {
      fit->before += fit->batches[k].before;
      fit->after += fit->batches[k].after;
    }
}

LwFit *
lw_fit_new (LwSeason       *season,
            const LwFitAsk *ask,
            GCancellable   *cancellable,
            GError        **error)
{
  g_autoptr (GArray) warnings = g_array_new (FALSE, FALSE, sizeof (LwFitWarning));
  g_autoptr (GArray) skipped = g_array_new (FALSE, FALSE, sizeof (LwFitWarning));
  g_auto (Run) run = { .ask = ask };
  g_autoptr (LwFit) fit = NULL;

  g_return_val_if_fail (ask->free != 0, NULL);

  run.model = lw_fit_model_new (season, ask, skipped, cancellable);
  if (run.model == NULL)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("The batches cannot be computed."));
      return NULL;
    }
  if (run.model->n_batches == 0)
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND,
                           _ ("There is no batch that was made and has a weigh-in that tells of its leaf."));
      return NULL;
    }
  if (!search (&run, error))
    return NULL;

  fit = fit_of (&run);
  if (ask->leave_one_out && !leave_out (fit, &run, error))
    return NULL;

  fit_take (fit, &run);
  judge (fit, &run, warnings);
  g_array_append_vals (warnings, skipped->data, skipped->len);
  fit->n_warnings = warnings->len;
  fit->warnings = g_array_steal (warnings, NULL);

  return g_steal_pointer (&fit);
}

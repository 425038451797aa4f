/* A batch is left out, the rest fitted again, and the batch foretold: its misses are weighed by what is not known
 * of the leaf besides what the instruments cannot see. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/fit-leave.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

#include "study/gsl.h"

#define CHEAP 3      /* searches with slopes that stand; two are usual */
#define STILL 0.05   /* standard errors: what moves by less has arrived */

typedef struct
{
  LwFitModel *model;
  double *slopes;      /* that all of a search go by, */
  gboolean anew;       /* or they are computed wherever it goes */
} Rest;

static gboolean
rest_residuals (const double *x,
                double       *r,
                gpointer      data)
{
  return lw_fit_model_residuals (x, r, ((Rest *) data)->model);
}

static gboolean
rest_slopes (const double *x,
             const double *r,
             double       *slopes,
             gpointer      data)
{
  const Rest *rest = data;
  const LwFitModel *model = rest->model;

  if (rest->anew)
    return lw_fit_model_slopes (x, r, slopes, rest->model);

  memcpy (slopes, rest->slopes, (gsize) (model->n_points + model->n_x) * model->n_x * sizeof *slopes);

  return TRUE;
}

static gboolean
has_arrived (const double *from,
             const double *to,
             const double *covariance,
             guint         n_x)
{
  for (guint i = 0; i < n_x; i++)
    if (!(fabs (to[i] - from[i]) <= STILL * sqrt (covariance[i * (n_x + 1)])))
      return FALSE;

  return TRUE;
}

/* Slopes are what costs: those where the last search ended serve the next one, until its end is where it began. So the
 * answer, and its covariance, are those of slopes there. Where that does not settle the search is a whole one. `x` is
 * brought along. */
static LwSquaresEnd
refit (Rest   *rest,
       double *x,
       double *covariance)
{
  LwFitModel *model = rest->model;
  LwSquares squares = lw_fit_squares (model, rest_residuals, rest_slopes, rest);

  for (guint round = 0; round < CHEAP; round++)
    {
      g_autofree double *from = g_memdup2 (x, model->n_x * sizeof *x);
      LwSquaresEnd end = lw_squares_solve (&squares, x, covariance, model->cancellable);

      if (end == LW_SQUARES_CANCELLED || (end == LW_SQUARES_FOUND && has_arrived (from, x, covariance, model->n_x)))
        return end;
      if (end != LW_SQUARES_FOUND || !lw_fit_model_slopes (x, NULL, rest->slopes, model))
        break;
    }

  rest->anew = TRUE;

  return lw_squares_solve (&squares, x, covariance, model->cancellable);
}

/* Sum of squares of the misses, each counted in the error foretold for it: e' (1 + J C J')^-1 e. */
static double
foretold_squares (const double *miss,
                  const double *slopes,
                  const double *covariance,
                  guint         n,
                  guint         n_x)
{
  gsl_matrix_const_view j = gsl_matrix_const_view_array (slopes, n, n_x);
  gsl_matrix_const_view c = gsl_matrix_const_view_array (covariance, n_x, n_x);
  gsl_vector_const_view e = gsl_vector_const_view_array (miss, n);
  g_autoptr (gsl_matrix) jc = gsl_matrix_alloc (n, n_x), v = gsl_matrix_alloc (n, n);
  g_autoptr (gsl_vector) solved = gsl_vector_alloc (n);
  double sum;

  gsl_matrix_set_identity (v);
  gsl_blas_dgemm (CblasNoTrans, CblasNoTrans, 1, &j.matrix, &c.matrix, 0, jc);
  gsl_blas_dgemm (CblasNoTrans, CblasTrans, 1, jc, &j.matrix, 1, v);
  if (gsl_linalg_cholesky_decomp1 (v) != GSL_SUCCESS
      || gsl_linalg_cholesky_solve (v, &e.vector, solved) != GSL_SUCCESS)
    return NAN;

  gsl_blas_ddot (&e.vector, solved, &sum);

  return sum;
}

gboolean
lw_fit_leave_out (LwFitModel   *model,
                  guint         k,
                  const double *x,
                  const double *slopes,
                  double       *rms,
                  double       *sd)
{
  guint first = model->first[k], n = model->first[k + 1] - first, n_x = model->n_x;
  g_autofree double *known = g_memdup2 (slopes, (gsize) (model->n_points + n_x) * n_x * sizeof *slopes);
  g_autofree double *at = g_memdup2 (x, n_x * sizeof *x);
  g_autofree double *covariance = g_new0 (double, (gsize) n_x * n_x);
  g_autofree double *miss = g_new (double, n), *own = g_new (double, (gsize) n * n_x);
  Rest rest = { model, known, FALSE };
  LwSquaresEnd end;
  double sum = 0;

  memset (known + (gsize) first * n_x, 0, (gsize) n * n_x * sizeof *known);
  model->left_out = (int) k;
  end = refit (&rest, at, covariance);
  model->left_out = -1;
  *rms = *sd = NAN;
  if (end == LW_SQUARES_TIRED)
    return TRUE;
  if (end != LW_SQUARES_FOUND || !lw_fit_model_batch (model, k, model->marches[0], at, miss, own))
    return FALSE;

  for (guint i = 0; i < n; i++)
    sum += miss[i] * miss[i];
  *rms = sqrt (sum / n);
  *sd = sqrt (foretold_squares (miss, own, covariance, n, n_x) / n);

  return TRUE;
}

/* GSL's trust region takes the steps, a thin layer keeps them within bounds: GSL is shown the residuals of the nearest
 * point within, and an unknown that stands on a bound and would cross it to go downhill is shown to have no slopes,
 * so that the others are solved for without it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/squares.h"

#include <gsl/gsl_blas.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <math.h>

#define TOO_MUCH GSL_SQRT_DBL_MAX  /* a residual from which GSL turns back; the norm of infinities would be NaN */

/* One search; vectors and arrays are its own. */
typedef struct
{
  const LwSquares *problem;
  GCancellable *cancellable;
  gsl_multifit_nlinear_workspace *gsl;
  gsl_multifit_nlinear_fdf fdf;
  gsl_vector *x;        /* the best so far, within bounds */
  gsl_vector *r;        /* at x */
  gsl_matrix *slopes;   /* at x, of held unknowns too */
  gboolean *held;       /* n_x: by a bound */
  double sum;           /* of squares at x; infinite before the first residuals */
  gsl_vector *x_try;
  gsl_vector *r_try;
  double sum_try;
  gsl_vector *change;   /* of the residuals, if the slopes held all the way */
  gboolean last;        /* no step after this one would be worth its slopes */
} Search;

static void
search_clear (Search *search)
{
  gsl_vector *all[] = { search->x, search->r, search->x_try, search->r_try, search->change };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    gsl_vector_free (all[i]);
  gsl_matrix_free (search->slopes);
  gsl_multifit_nlinear_free (search->gsl);
  g_free (search->held);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Search, search_clear)

static void
put_within (const LwSquares  *p,
            const gsl_vector *x,
            gsl_vector       *to)
{
  gsl_vector_memcpy (to, x);
  for (guint k = 0; k < p->n_x && p->low != NULL; k++)
    gsl_vector_set (to, k, CLAMP (gsl_vector_get (x, k), p->low[k], p->high[k]));
}

/* FALSE where the residuals are not to be had, or not finite. */
static gboolean
residuals_at (const LwSquares  *p,
              const gsl_vector *x,
              gsl_vector       *r,
              double           *sum)
{
  return p->residuals (x->data, r->data, p->data) && gsl_blas_ddot (r, r, sum) == GSL_SUCCESS && isfinite (*sum);
}

/* Whether the unknown stands on a bound that it would cross to go downhill. */
static gboolean
pressed (const Search *search,
         guint         k)
{
  const LwSquares *p = search->problem;
  gsl_vector_const_view slope = gsl_matrix_const_column (search->slopes, k);
  double x = gsl_vector_get (search->x, k), gradient;

  if (p->low == NULL)
    return FALSE;

  gsl_blas_ddot (&slope.vector, search->r, &gradient);

  return (x <= p->low[k] && gradient > 0) || (x >= p->high[k] && gradient < 0);
}

/* Slopes at x, and whom the bounds hold there. */
static gboolean
look_around (Search *search)
{
  const LwSquares *p = search->problem;

  if (!p->slopes (search->x->data, search->r->data, search->slopes->data, p->data))
    return FALSE;

  for (guint k = 0; k < p->n_x; k++)
    search->held[k] = pressed (search, k);

  return TRUE;
}

/* Those of held unknowns are 0. */
static void
show_slopes (const Search *search,
             gsl_matrix   *to)
{
  gsl_matrix_memcpy (to, search->slopes);
  for (guint k = 0; k < search->problem->n_x; k++)
    if (search->held[k])
      {
        gsl_vector_view column = gsl_matrix_column (to, k);

        gsl_vector_set_zero (&column.vector);
      }
}

/* Of the step that GSL has in hand. */
static gboolean
too_short (const Search *search)
{
  const LwSquares *p = search->problem;
  int info;

  if (p->scale == NULL)
    return gsl_multifit_nlinear_test (p->small, 0, 0, &info, search->gsl) == GSL_SUCCESS;

  for (guint k = 0; k < p->n_x; k++)
    if (fabs (gsl_vector_get (search->gsl->dx, k)) > p->small * p->scale[k])
      return FALSE;

  return TRUE;
}

/* By how much the sum of squares would fall by that step, if the slopes held all the way. */
static double
promised (Search *search)
{
  const gsl_multifit_nlinear_workspace *gsl = search->gsl;
  double along, change;

  gsl_blas_ddot (gsl->g, gsl->dx, &along);
  gsl_blas_dgemv (CblasNoTrans, 1, gsl->J, gsl->dx, 0, search->change);
  gsl_blas_ddot (search->change, search->change, &change);

  return -2 * along - change;
}

/* Residuals where GSL would go. An error ends the search. */
static int
residuals_cb (const gsl_vector *x,
              void             *data,
              gsl_vector       *r)
{
  Search *search = data;
  const LwSquares *p = search->problem;

  if (g_cancellable_is_cancelled (search->cancellable))
    return GSL_EFAILED;

  put_within (p, x, search->x_try);
  if (!residuals_at (p, search->x_try, search->r_try, &search->sum_try))
    {
      search->sum_try = INFINITY;
      gsl_vector_set_all (search->r_try, TOO_MUCH);
    }
  gsl_vector_memcpy (r, search->r_try);
  search->last = isfinite (search->sum) && (too_short (search) || promised (search) < p->enough);

  if (search->sum_try < search->sum)
    return GSL_SUCCESS;

  /* GSL turns back and tries a shorter step, unless this one was short enough or there is nothing to turn back to. */
  return isfinite (search->sum) && !search->last ? GSL_SUCCESS : GSL_EFAILED;
}

/* Slopes where GSL has gone: it asks for them nowhere else. After the last step it gets none. */
static int
slopes_cb (const gsl_vector *x,
           void             *data,
           gsl_matrix       *slopes)
{
  Search *search = data;

  gsl_vector_memcpy (search->x, search->x_try);
  gsl_vector_memcpy (search->r, search->r_try);
  search->sum = search->sum_try;
  if (search->last)
    return GSL_SUCCESS;
  if (!look_around (search))
    return GSL_EFAILED;
  show_slopes (search, slopes);

  return GSL_SUCCESS;
}

static void
search_init (Search          *search,
             const LwSquares *problem,
             GCancellable    *cancellable)
{
  gsl_multifit_nlinear_parameters how = gsl_multifit_nlinear_default_parameters ();
  guint n = problem->n_x, m = problem->n_r;

  how.trs = gsl_multifit_nlinear_trs_dogleg;
  how.solver = gsl_multifit_nlinear_solver_mcholesky;
  *search = (Search) {
    .problem = problem, .cancellable = cancellable,
    .gsl = gsl_multifit_nlinear_alloc (gsl_multifit_nlinear_trust, &how, m, n),
    .x = gsl_vector_alloc (n), .r = gsl_vector_alloc (m), .slopes = gsl_matrix_alloc (m, n),
    .held = g_new0 (gboolean, n), .x_try = gsl_vector_alloc (n), .r_try = gsl_vector_alloc (m),
    .change = gsl_vector_alloc (m), .sum = INFINITY,
    .fdf = { .f = residuals_cb, .df = slopes_cb, .n = m, .p = n, .params = search },
  };
}

/* One step down, by as many trials as that takes. Returns whether there may be another. */
static gboolean
descend (Search       *search,
         LwSquaresEnd *end)
{
  gboolean level = gsl_vector_isnull (search->gsl->g);
  int status = level ? GSL_SUCCESS : gsl_multifit_nlinear_iterate (search->gsl);

  if (level || search->last)
    *end = LW_SQUARES_FOUND;
  /* No progress: the next round's trials are shorter still. */
  if (*end == LW_SQUARES_FOUND || (status != GSL_SUCCESS && status != GSL_ENOPROG))
    return FALSE;

  /* Back within bounds: residuals and slopes are already those of this point. */
  gsl_vector_memcpy (gsl_multifit_nlinear_position (search->gsl), search->x);

  return TRUE;
}

static void
take_covariance (Search *search,
                 double *covariance)
{
  guint n = search->problem->n_x;
  gsl_matrix_view out = gsl_matrix_view_array (covariance, n, n);

  look_around (search);
  show_slopes (search, search->gsl->J);
  gsl_multifit_nlinear_covar (search->gsl->J, 0, &out.matrix);
}

LwSquaresEnd
lw_squares_solve (const LwSquares *problem,
                  double          *x,
                  double          *covariance,
                  GCancellable    *cancellable)
{
  g_auto (Search) search = { 0 };
  gsl_vector_view given = gsl_vector_view_array (x, problem->n_x);
  LwSquaresEnd end = LW_SQUARES_TIRED;
  gboolean more = TRUE;

  search_init (&search, problem, cancellable);
  put_within (problem, &given.vector, search.x);
  if (gsl_multifit_nlinear_init (search.x, &search.fdf, search.gsl) != GSL_SUCCESS)
    return g_cancellable_is_cancelled (cancellable) ? LW_SQUARES_CANCELLED : LW_SQUARES_FAILED;

  for (guint round = 0; round < problem->most_rounds && more; round++)
    more = descend (&search, &end);

  gsl_vector_memcpy (&given.vector, search.x);
  if (g_cancellable_is_cancelled (cancellable))
    end = LW_SQUARES_CANCELLED;
  if (covariance != NULL && end == LW_SQUARES_FOUND)
    take_covariance (&search, covariance);

  return end;
}

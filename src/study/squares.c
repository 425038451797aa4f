/* A damped Gauss-Newton step at a time. The damping follows the gain of each step (Nielsen 1999: Damping
 * parameter in Marquardt's method, IMM-REP-1999-05); unknowns are scaled by their steepest slopes so far (Moré
 * 1978: The Levenberg-Marquardt algorithm, in Numerical Analysis, LNM 630). A bound holds an unknown for one
 * step, and the others are then solved for anew. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/squares.h"

#include <gsl/gsl_linalg.h>
#include <gsl/gsl_multifit_nlinear.h>
#include <math.h>
#include <string.h>

#include "study/gsl.h"

#define FIRST_DAMPING 1e-3  /* of the scaled normal equations, whose diagonal is at most 1 */
#define LEAST_DAMPING 1e-14
#define MOST_DAMPING 1e16   /* a step so short finds nothing */
#define FLAT 1e-13          /* cosine between residuals and slopes at which they count as square to each other */
#define NUDGE 6e-6          /* cube root of the machine's precision: best for central differences */
#define NOUGHT 1e-4         /* an unknown smaller than this is nudged as if it were this */

/* One search; all arrays are its own. */
typedef struct
{
  const LwSquares *problem;
  GCancellable *cancellable;
  double *x;
  double *r;
  double *slopes;     /* n_r * n_x */
  double *gradient;   /* n_x */
  double *steepest;   /* n_x: the scale of each unknown */
  double *step;       /* n_x */
  double *x_try;
  double *r_try;
  gboolean *held;     /* n_x: by a bound, for this step */
  double sum;         /* of squares at x */
  double damping;
  double growth;      /* of the damping if the step fails */
} Search;

static void
search_init (Search          *search,
             const LwSquares *problem,
             GCancellable    *cancellable)
{
  guint n = problem->n_x, m = problem->n_r;

  *search = (Search) {
    .problem = problem, .cancellable = cancellable, .damping = FIRST_DAMPING, .growth = 2,
    .x = g_new0 (double, n), .r = g_new0 (double, m), .slopes = g_new0 (double, (gsize) n * m),
    .gradient = g_new0 (double, n), .steepest = g_new0 (double, n), .step = g_new0 (double, n),
    .x_try = g_new0 (double, n), .r_try = g_new0 (double, m), .held = g_new0 (gboolean, n),
  };
}

static void
search_clear (Search *search)
{
  double *all[] = { search->x, search->r, search->slopes, search->gradient, search->steepest, search->step,
                    search->x_try, search->r_try };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    g_free (all[i]);
  g_free (search->held);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Search, search_clear)

static double
within (const LwSquares *p,
        guint            i,
        double           x)
{
  return p->low == NULL ? x : CLAMP (x, p->low[i], p->high[i]);
}

/* FALSE where the residuals are not to be had, or not finite. */
static gboolean
residuals_at (const LwSquares *p,
              const double    *x,
              double          *r,
              double          *sum)
{
  if (!p->residuals (x, r, p->data))
    return FALSE;

  *sum = 0;
  for (guint i = 0; i < p->n_r; i++)
    *sum += r[i] * r[i];

  return isfinite (*sum);
}

/* By central differences; by one-sided ones at a bound, or where one side cannot be had. */
static gboolean
differences (Search *search)
{
  const LwSquares *p = search->problem;
  g_autofree double *up = g_new (double, p->n_r), *down = g_new (double, p->n_r);
  double *at = search->x_try, sum;

  memcpy (at, search->x, p->n_x * sizeof *at);
  for (guint k = 0; k < p->n_x; k++)
    {
      double here = search->x[k];
      double by = p->scale != NULL ? p->scale[k] : NUDGE * fmax (fabs (here), NOUGHT);
      double high = within (p, k, here + by), low = within (p, k, here - by);

      at[k] = high;
      if (!residuals_at (p, at, up, &sum))
        {
          memcpy (up, search->r, p->n_r * sizeof *up);
          high = here;
        }
      at[k] = low;
      if (!residuals_at (p, at, down, &sum))
        {
          memcpy (down, search->r, p->n_r * sizeof *down);
          low = here;
        }
      at[k] = here;

      if (!(high > low))
        return FALSE;
      for (guint i = 0; i < p->n_r; i++)
        search->slopes[(gsize) i * p->n_x + k] = (up[i] - down[i]) / (high - low);
    }

  return TRUE;
}

/* Slopes, gradient and scales at x. */
static gboolean
look_around (Search *search)
{
  const LwSquares *p = search->problem;

  if (p->slopes != NULL ? !p->slopes (search->x, search->r, search->slopes, p->data) : !differences (search))
    return FALSE;

  for (guint k = 0; k < p->n_x; k++)
    {
      double square = 0;

      search->gradient[k] = 0;
      for (guint i = 0; i < p->n_r; i++)
        {
          double slope = search->slopes[(gsize) i * p->n_x + k];

          search->gradient[k] += slope * search->r[i];
          square += slope * slope;
        }
      search->steepest[k] = fmax (search->steepest[k], sqrt (square));
      if (!(search->steepest[k] > 0))
        search->steepest[k] = DBL_MIN;
    }

  return TRUE;
}

/* Whether the unknown stands on a bound that it would cross to go downhill. */
static gboolean
pressed (const Search *search,
         guint         k)
{
  const LwSquares *p = search->problem;

  return p->low != NULL
         && ((search->x[k] <= p->low[k] && search->gradient[k] > 0)
             || (search->x[k] >= p->high[k] && search->gradient[k] < 0));
}

/* Whether no unknown that is free to move has a slope that the residuals know of. */
static gboolean
level (const Search *search)
{
  for (guint k = 0; k < search->problem->n_x; k++)
    if (!pressed (search, k)
        && fabs (search->gradient[k]) > FLAT * search->steepest[k] * sqrt (search->sum))
      return FALSE;

  return TRUE;
}

/* The damped step of the unknowns that are not held, those held moving by what `step` says of them. */
static gboolean
solve_free (Search *search,
            guint   n_free)
{
  const LwSquares *p = search->problem;
  gsize rows = p->n_r + n_free;
  g_autoptr (gsl_matrix) left = gsl_matrix_calloc (rows, n_free);
  g_autoptr (gsl_vector) right = gsl_vector_calloc (rows), found = gsl_vector_alloc (n_free);
  g_autoptr (gsl_vector) tau = gsl_vector_alloc (n_free), rest = gsl_vector_alloc (rows);
  gsize column = 0;

  for (guint i = 0; i < p->n_r; i++)
    gsl_vector_set (right, i, -search->r[i]);

  /* In the scaled unknowns every column's norm is at most 1. */
  for (guint k = 0; k < p->n_x; k++)
    {
      for (guint i = 0; i < p->n_r; i++)
        {
          double slope = search->slopes[(gsize) i * p->n_x + k];

          if (search->held[k])
            *gsl_vector_ptr (right, i) -= slope * search->step[k];
          else
            gsl_matrix_set (left, i, column, slope / search->steepest[k]);
        }
      if (!search->held[k])
        {
          gsl_matrix_set (left, p->n_r + column, column, sqrt (search->damping));
          column++;
        }
    }

  if (gsl_linalg_QR_decomp (left, tau) != GSL_SUCCESS
      || gsl_linalg_QR_lssolve (left, tau, right, found, rest) != GSL_SUCCESS)
    return FALSE;

  column = 0;
  for (guint k = 0; k < p->n_x; k++)
    if (!search->held[k])
      search->step[k] = gsl_vector_get (found, column++) / search->steepest[k];

  return TRUE;
}

/* The step, cut to the bounds: whatever would cross one is held there and the rest solved for again. */
static gboolean
find_step (Search *search)
{
  const LwSquares *p = search->problem;
  guint n_free = p->n_x, n_before;

  for (guint k = 0; k < p->n_x; k++)
    {
      search->held[k] = pressed (search, k);
      search->step[k] = 0;
      n_free -= search->held[k] ? 1 : 0;
    }

  do
    {
      n_before = n_free;
      if (n_free > 0 && !solve_free (search, n_free))
        return FALSE;

      for (guint k = 0; k < p->n_x; k++)
        {
          double to = within (p, k, search->x[k] + search->step[k]);

          if (search->held[k] || to == search->x[k] + search->step[k])
            continue;
          search->step[k] = to - search->x[k];
          search->held[k] = TRUE;
          n_free--;
        }
    }
  while (n_free < n_before && n_free > 0);

  for (guint k = 0; k < p->n_x; k++)
    search->x_try[k] = within (p, k, search->x[k] + search->step[k]);

  return TRUE;
}

/* By how much the sum of squares would fall if the slopes held all the way. */
static double
promised (const Search *search)
{
  const LwSquares *p = search->problem;
  double fall = 0;

  for (guint i = 0; i < p->n_r; i++)
    {
      double change = 0;

      for (guint k = 0; k < p->n_x; k++)
        change += search->slopes[(gsize) i * p->n_x + k] * search->step[k];
      fall -= change * (2 * search->r[i] + change);
    }

  return fall;
}

static gboolean
too_short (const Search *search)
{
  const LwSquares *p = search->problem;

  for (guint k = 0; k < p->n_x; k++)
    if (fabs (search->step[k]) > p->small * (p->scale != NULL ? p->scale[k] : fabs (search->x[k]) + p->small))
      return FALSE;

  return TRUE;
}

static void
take_step (Search *search,
           double  sum,
           double  fall)
{
  double gain = fall > 0 ? (search->sum - sum) / fall : 1;

  memcpy (search->x, search->x_try, search->problem->n_x * sizeof *search->x);
  memcpy (search->r, search->r_try, search->problem->n_r * sizeof *search->r);
  search->sum = sum;
  search->damping = fmax (search->damping * fmax (1.0 / 3, 1 - pow (2 * gain - 1, 3)), LEAST_DAMPING);
  search->growth = 2;
}

/* One step down, with as much damping as that takes. LW_SQUARES_TIRED: there may be more. */
static LwSquaresEnd
descend (Search *search)
{
  const LwSquares *p = search->problem;

  while (search->damping < MOST_DAMPING)
    {
      gboolean last, better;
      double sum;

      if (g_cancellable_is_cancelled (search->cancellable))
        return LW_SQUARES_CANCELLED;
      if (!find_step (search))
        return LW_SQUARES_FOUND;

      last = too_short (search) || promised (search) < p->enough;
      better = residuals_at (p, search->x_try, search->r_try, &sum) && sum < search->sum;
      if (better)
        take_step (search, sum, promised (search));
      if (last)
        return LW_SQUARES_FOUND;
      if (better)
        return LW_SQUARES_TIRED;

      search->damping *= search->growth;
      search->growth *= 2;
    }

  return LW_SQUARES_FOUND;
}

static void
take_covariance (Search *search,
                 double *covariance)
{
  guint n = search->problem->n_x, m = search->problem->n_r;
  gsl_matrix_view slopes = gsl_matrix_view_array (search->slopes, m, n);
  gsl_matrix_view out = gsl_matrix_view_array (covariance, n, n);

  for (guint k = 0; k < n; k++)
    if (pressed (search, k))
      for (guint i = 0; i < m; i++)
        gsl_matrix_set (&slopes.matrix, i, k, 0);

  gsl_multifit_nlinear_covar (&slopes.matrix, 0, &out.matrix);
}

LwSquaresEnd
lw_squares_solve (const LwSquares *problem,
                  double          *x,
                  double          *covariance,
                  GCancellable    *cancellable)
{
  g_auto (Search) search = { 0 };
  LwSquaresEnd end = LW_SQUARES_TIRED;

  search_init (&search, problem, cancellable);
  for (guint k = 0; k < problem->n_x; k++)
    search.x[k] = within (problem, k, x[k]);
  if (!residuals_at (problem, search.x, search.r, &search.sum) || !look_around (&search))
    return g_cancellable_is_cancelled (cancellable) ? LW_SQUARES_CANCELLED : LW_SQUARES_FAILED;

  for (guint round = 0; round < problem->most_rounds && end == LW_SQUARES_TIRED; round++)
    {
      end = level (&search) ? LW_SQUARES_FOUND : descend (&search);
      if (end == LW_SQUARES_TIRED && !look_around (&search))
        break;
    }

  memcpy (x, search.x, problem->n_x * sizeof *x);
  if (g_cancellable_is_cancelled (cancellable))
    end = LW_SQUARES_CANCELLED;
  if (covariance != NULL && end == LW_SQUARES_FOUND)
    {
      look_around (&search);
      take_covariance (&search, covariance);
    }

  return end;
}

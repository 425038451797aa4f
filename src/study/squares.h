/* Nonlinear least squares within ranges, by GSL's dogleg.
 * Knows nothing of tea. Thread-safe; can be cancelled. The method: docs/study.md */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

/* Residuals `r` (n_r of them) at `x` (n_x). Returns FALSE where they cannot be had. */
typedef gboolean (*LwResiduals) (const double *x,
                                 double       *r,
                                 gpointer      data);

/* Slopes of the residuals at `x`, where they are `r`: n_r rows of n_x, into `slopes`. Returns FALSE where they
 * cannot be had. */
typedef gboolean (*LwSlopes) (const double *x,
                              const double *r,
                              double       *slopes,
                              gpointer      data);

typedef struct
{
  guint n_x;
  guint n_r;              /* >= n_x */
  const double *low;      /* (nullable) bounds, both or neither; low < high */
  const double *high;
  const double *scale;    /* (nullable) a step that matters in each unknown, for stopping */
  LwResiduals residuals;
  LwSlopes slopes;
  gpointer data;
  guint most_rounds;
  double enough;          /* a fall of the sum of squares too small for another round; 0: none is */
  double small;           /* stops when no unknown would move by more than this share of itself, or of `scale` */
} LwSquares;

typedef enum
{
  LW_SQUARES_FOUND,
  LW_SQUARES_TIRED,       /* rounds used up; x is the best so far */
  LW_SQUARES_FAILED,      /* residuals could not be had at the start */
  LW_SQUARES_CANCELLED,   /* x is the best so far */
} LwSquaresEnd;

/* Moves `x` from its start, put into its bounds first, to a least sum of squares. `covariance` (nullable) n_x * n_x:
 * that of unknowns whose residuals have a variance of 1; 0 for an unknown that ended on a bound. It is filled
 * where the end is LW_SQUARES_FOUND. */
LwSquaresEnd lw_squares_solve (const LwSquares *problem,
                               double          *x,
                               double          *covariance,
                               GCancellable    *cancellable);

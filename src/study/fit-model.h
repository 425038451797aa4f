/* The weigh-ins of batches beside what the model says of them, as residuals of least squares. Unknowns are
 * counted in spreads: 0 is the leaf as it was, 1 one standard deviation of what was expected. Private to fit*.c. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/surround.h"
#include "study/fit.h"
#include "study/squares.h"

#define LW_FIT_TOLERANCE 1e-6 /* of the marches: slopes are small differences of large numbers */

typedef struct
{
  LwSeason *season;
  GCancellable *cancellable;
  guint n_batches;
  LwFitBatch *batches;
  guint *first;            /* n_batches + 1: each one's first point */
  guint n_points;
  LwFitPoint *points;      /* in the batches' order */
  guint n_x;
  LwFitParam *params;
  double *low;             /* n_x, in spreads */
  double *high;
  int left_out;            /* of n_batches: its points count as met; -1: none */
  guint n_threads;
  LwMarch **marches;       /* n_threads */
} LwFitModel;

/* (transfer full) the season in which `batch` and its leaf have those of the changes that are theirs. */
LwSeason   *lw_fit_changed         (LwSeason         *season,
                                    guint             batch,
                                    const LwFitParam *params,
                                    const double     *changes,
                                    guint             n);

/* Gathers the batches that are asked for and their points, and what may differ in them; borrows the season.
 * What is left out is added to `warnings` (of LwFitWarning). NULL if a march cannot be had. */
LwFitModel *lw_fit_model_new       (LwSeason         *season,
                                    const LwFitAsk   *ask,
                                    GArray           *warnings,
                                    GCancellable     *cancellable);
void        lw_fit_model_free      (LwFitModel       *model);

/* As LwResiduals and LwSlopes have it; `data` is the model. n_points in standard deviations, the model less what was
 * measured, and then the n_x unknowns themselves. The threads share the batches; no digit hangs on that. */
gboolean    lw_fit_model_residuals (const double     *x,
                                    double           *r,
                                    gpointer          data);
gboolean    lw_fit_model_slopes    (const double     *x,
                                    const double     *r,
                                    double           *slopes,
                                    gpointer          data);

/* The search among the model's unknowns. */
LwSquares   lw_fit_squares         (const LwFitModel *model,
                                    LwResiduals       residuals,
                                    LwSlopes          slopes,
                                    gpointer          data);

/* The points of batch `k` alone, left out or not; `slopes` (nullable) n_x for each. */
gboolean    lw_fit_model_batch     (const LwFitModel *model,
                                    guint             k,
                                    LwMarch          *march,
                                    const double     *x,
                                    double           *r,
                                    double           *slopes);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwFitModel, lw_fit_model_free)

/* Batches weighed by chance from a leaf that is known, for the tests of fitting. All invented. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/fit.h"

/* What truly differs. Changes as lw_fit_apply has them. */
typedef struct
{
  double change[LW_N_FIT_WHAT]; /* that of LW_FIT_BATCH_WEIGHT is not used */
} FitTruth;

/* (transfer full) a season of four batches, "1" to "4", all made, no weather, one leaf "large-leaf": a green from
 * the pan, a small black, a long wither, a drum with firm rolling; each with weigh-ins of every measure, all read 0. */
LwSeason *fit_made_season (void);

/* (transfer full) the same with the weigh-ins, and the fresh weights, as they are seen on a leaf that differs so, with
 * normal errors of the instruments' own size; `dice` NULL: without errors. */
LwSeason *fit_made_weigh  (LwSeason       *season,
                           const FitTruth *truth,
                           GRand          *dice);

/* Normal, mean 0 and standard deviation 1. */
double    fit_made_scatter (GRand         *dice);

/* (transfer full) fitted, without an error. */
LwFit    *fit_made_fit    (LwSeason       *season,
                           guint           free);

/* (transfer full) a season of the first `n` weigh-ins of batch `batch`, which is then its only one. */
LwSeason *fit_made_part   (const LwSeason *season,
                           guint           batch,
                           guint           n);

/* Whether the fit warns so, and of what. */
const LwFitWarning *fit_made_warning (const LwFit     *fit,
                                      LwFitWarningKind kind);

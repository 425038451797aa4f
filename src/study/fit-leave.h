/* How well a fit foretells a batch that it has not seen. Private to fit*.c. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/fit-model.h"

/* Fits again without batch `k`, from the answer `x` to all of them and with the `slopes` there (n_points + n_x rows
 * of n_x), and sets what that fit says of the batch: `rms`, root mean square of its misses in the instruments' errors,
 * and `sd`, the same in the errors that were foretold; NAN where that search does not end. It is that fit's own answer,
 * with slopes computed there. FALSE if cancelled or if it cannot be computed. */
gboolean lw_fit_leave_out (LwFitModel   *model,
                           guint         k,
                           const double *x,
                           const double *slopes,
                           double       *rms,
                           double       *sd);

/* One measurement taken into what is known of several numbers, by both uncertainties. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Element `j` of `mean` (n numbers with covariance `covariance`, n * n) was measured to be `measured`, with an error of
 * that variance which hangs on none of them; both become what is known then. A variance that is infinite changes
 * nothing, one of 0 leaves the element at what was measured. Several measurements with errors of their own are taken
 * in one after another, in any order. Kalman (1960), J. Basic Eng. 82:35, for a measurement of one number. */
void lw_kalman_take (double *mean,
                     double *covariance,
                     guint   n,
                     guint   j,
                     double  measured,
                     double  variance);

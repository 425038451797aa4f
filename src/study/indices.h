/* Which source of variation matters most: Sobol' indices, from outcomes computed with two
 * independent samples and with one source at a time taken from the other. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Shares of the outcome's variance; NAN where it does not vary. */
typedef struct
{
  double first;     /* that goes if the source alone were held; can come out a little under 0 or over 1 */
  double first_se;  /* standard error, by bootstrap over the rows */
  double total;     /* that is left if everything else were held, with what the source does together with others */
  double total_se;
} LwIndex;

/* `a` and `b` hold `n` outcomes each; `ab[i]` as many computed from a's rows with source i from b's. Rows with a
 * number that is not finite are left out. Fills `n_sources` indices. Total: Jansen (1999), Computer Physics
 * Communications 117:35; first order: two estimators of it, Saltelli et al. (2010), ibid. 181:259, table 2 (b), of values
 * less their mean, and (c), which is Jansen's, weighed by the total. `seed` drives the bootstrap. */
void lw_indices_of (const double        *a,
                    const double        *b,
                    const double *const *ab,
                    guint                n_sources,
                    guint                n,
                    guint32              seed,
                    LwIndex             *indices);

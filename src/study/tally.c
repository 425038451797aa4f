/* Sums and sorted values. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/tally.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_sort.h>
#include <gsl/gsl_statistics.h>
#include <math.h>

LwSpan
lw_span_of (double *values,
            guint   n)
{
  guint m = 0;

  for (guint i = 0; i < n; i++)
    if (isfinite (values[i]))
      values[m++] = values[i];
  if (m == 0)
    return (LwSpan) { NAN, NAN, NAN, NAN, NAN, NAN, NAN };

  gsl_sort (values, 1, m);

  return (LwSpan) {
    .mean = gsl_stats_mean (values, 1, m),
    .sd = m > 1 ? gsl_stats_sd (values, 1, m) : 0,
    .q05 = gsl_stats_quantile_from_sorted_data (values, 1, m, 0.05),
    .q25 = gsl_stats_quantile_from_sorted_data (values, 1, m, 0.25),
    .q50 = gsl_stats_quantile_from_sorted_data (values, 1, m, 0.50),
    .q75 = gsl_stats_quantile_from_sorted_data (values, 1, m, 0.75),
    .q95 = gsl_stats_quantile_from_sorted_data (values, 1, m, 0.95),
  };
}

double
lw_share_se (guint inside,
             guint n)
{
  double yes = inside + 1, no = n - inside + 1, all = n + 2;

  return sqrt (yes * no / (all * all * (all + 1)));
}

double
lw_span_ppk (const LwSpan *span,
             double        low,
             double        high)
{
  double nearer = fmin (high - span->mean, span->mean - low);

  return isfinite (nearer) && span->sd > LW_STILL * (1 + fabs (span->mean)) ? nearer / (3 * span->sd) : NAN;
}

double
lw_span_normal_share (const LwSpan *span,
                      double        low,
                      double        high)
{
  if (isnan (lw_span_ppk (span, low, high)))
    return NAN;

  return gsl_cdf_ugaussian_P ((high - span->mean) / span->sd) - gsl_cdf_ugaussian_P ((low - span->mean) / span->sd);
}

/* The textbook's update, where the matrix to be inverted is one number. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/kalman.h"

#include <math.h>

void
lw_kalman_take (double *mean,
                double *covariance,
                guint   n,
                guint   j,
                double  measured,
                double  variance)
{
  double sum = covariance[(gsize) j * n + j] + variance;
  double off = measured - mean[j];
  g_autofree double *gain = NULL;

  /* Known for sure already, or not measured at all. */
  if (!(sum > 0) || isinf (sum))
    return;

  gain = g_new (double, n);
  for (guint i = 0; i < n; i++)
    gain[i] = covariance[(gsize) i * n + j] / sum;

  for (guint i = 0; i < n; i++)
    {
      mean[i] += gain[i] * off;
      for (guint k = 0; k < n; k++)
        covariance[(gsize) i * n + k] -= gain[i] * gain[k] * sum;
    }
}

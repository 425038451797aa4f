/* What samples of one outcome come to: mean, deviation, quantiles, share inside a window. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* A standard deviation that is only the solver's noise, per 1 + the mean's size. */
#define LW_STILL 1e-9

/* NAN where there was no sample. */
typedef struct
{
  double mean;
  double sd;    /* of the samples, n - 1; 0 for one */
  double q05;   /* 5, 25, 50, 75 and 95 % of the samples are below */
  double q25;
  double q50;
  double q75;
  double q95;
} LwSpan;

/* Of those of `n` values that are finite; reorders `values`. Quantiles between samples lie on straight lines. */
LwSpan lw_span_of (double *values,
                   guint   n);

/* Standard error of a share of `inside` among `n` > 0 samples drawn by chance, never 0: the standard deviation of
 * its Beta distribution after Laplace. Evenly scattered samples do better, so it errs on the large side. */
double lw_share_se (guint   inside,
                    guint   n);

/* The process performance index P_pk for a normal distribution, ISO 22514-4:2016: the distance from the mean to the
 * nearer limit in 3 standard deviations; of a window open at one side, to its limit. It takes the outcome to be
 * normally distributed and the samples to hold all variation there is. NAN where neither side is bounded or
 * nothing varies but the solver's noise. */
double lw_span_ppk (const LwSpan *span,
                    double        low,
                    double        high);

/* The share of a normal distribution with that mean and deviation that is within the window; NAN as lw_span_ppk. */
double lw_span_normal_share (const LwSpan *span,
                             double        low,
                             double        high);

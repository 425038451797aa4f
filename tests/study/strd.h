/* Problems of nonlinear regression with certified answers: NIST/ITL Statistical Reference Datasets (StRD),
 * https://www.itl.nist.gov/div898/strd/nls/nls_main.shtml, in the public domain. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#define STRD_N_X 7
#define STRD_N_POINTS 54

typedef struct
{
  const char *name;
  double (*model) (double t, const double *b);
  int digits;                 /* to be had: fewer where NIST calls the difficulty higher */
  guint n_x;
  gboolean near_only;         /* the far start leads this method elsewhere */
  double start[2][STRD_N_X];  /* far, near */
  double certified[STRD_N_X];
  double deviation[STRD_N_X]; /* certified standard deviations; 0: not compared */
  double sum;                 /* certified residual sum of squares */
  guint n;
  double t[STRD_N_POINTS];
  double y[STRD_N_POINTS];
} StrdProblem;

extern const StrdProblem strd_problems[];
extern const guint strd_n_problems;

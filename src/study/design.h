/* Evenly scattered points for sampling: Sobol' sequences with a seeded digital shift. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Dimensions of GSL's Sobol' sequence; what lies beyond is plain random numbers. */
#define LW_DESIGN_EVEN 40

/* (transfer full) `n` rows of `n_dims` numbers, each in (0, 1) and never its ends. The first rows of a longer
 * design are those of a shorter one. `seed` 1 to 2^32 - 1. Shift: Matousek (1998), J. Complexity 14:527. */
double *lw_design_new  (guint   n,
                        guint   n_dims,
                        guint32 seed);

/* The normal distribution around `value` cut off at `low` and `high`, at `u` of (0, 1); within [low, high]. */
double  lw_design_cut_normal (double u,
                              double value,
                              double sd,
                              double low,
                              double high);

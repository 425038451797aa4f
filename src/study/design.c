/* Points and what is read from them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/design.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_qrng.h>
#include <gsl/gsl_rng.h>

#include "study/gsl.h"

#define BITS 30           /* of GSL's sequence */
#define CELLS (1u << BITS)

/* The bits of all numbers of one dimension are turned over alike: they stay as evenly scattered as they were. */
static double
shifted (double  u,
         guint32 shift)
{
  guint32 cell = MIN ((guint32) (u * CELLS), CELLS - 1);

  return ((cell ^ shift) + 0.5) / CELLS;
}

double *
lw_design_new (guint   n,
               guint   n_dims,
               guint32 seed)
{
  guint even = MIN (n_dims, LW_DESIGN_EVEN);
  g_autoptr (gsl_rng) shifts = gsl_rng_alloc (gsl_rng_mt19937), rest = gsl_rng_alloc (gsl_rng_mt19937);
  g_autoptr (gsl_qrng) sobol = even > 0 ? gsl_qrng_alloc (gsl_qrng_sobol, even) : NULL;
  double *rows = g_new (double, (gsize) n * MAX (n_dims, 1)), point[LW_DESIGN_EVEN] = { 0 };
  guint32 shift[LW_DESIGN_EVEN];

  gsl_rng_set (shifts, seed);
  gsl_rng_set (rest, ~seed);
  for (guint k = 0; k < even; k++)
    shift[k] = (guint32) (gsl_rng_get (shifts) >> (32 - BITS));

  /* GSL leaves out the sequence's first point, the origin; with it the first 2^m points are balanced. */
  for (guint i = 0; i < n; i++)
    {
      double *row = rows + (gsize) i * n_dims;

      if (i > 0 && sobol != NULL)
        gsl_qrng_get (sobol, point);
      for (guint k = 0; k < n_dims; k++)
        row[k] = k < even ? shifted (point[k], shift[k]) : gsl_rng_uniform_pos (rest);
    }

  return rows;
}

double
lw_design_cut_normal (double u,
                      double value,
                      double sd,
                      double low,
                      double high)
{
  double under, over;

  if (!(sd > 0))
    return CLAMP (value, low, high);

  under = gsl_cdf_ugaussian_P ((low - value) / sd);
  over = gsl_cdf_ugaussian_P ((high - value) / sd);

  return CLAMP (value + sd * gsl_cdf_ugaussian_Pinv (under + u * (over - under)), low, high);
}

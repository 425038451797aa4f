/* One nudge for each state that acts on several, and one for all the others together. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/jacobian.h"

#include <math.h>

#include "leaf/inner.h"

/* Moves state `k` a little off `from`; returns by how much. */
static double
nudge (LwState       *moved,
       const LwState *from,
       gsize          k)
{
  double kept = ((const double *) from)[k];
  double to = kept + 1e-7 * (fabs (kept) + ((const double *) &lw_inner_size)[k]);

  ((double *) moved)[k] = to;

  return to - kept;
}

static double
slope (const LwState *there,
       const LwState *here,
       gsize          row,
       double         by)
{
  return (((const double *) there)[row] - ((const double *) here)[row]) / by;
}

guint
lw_jacobian (const LwBoundary *boundary,
             const LwAround   *around,
             const LwState    *s,
             const LwState    *r,
             double          **columns)
{
  LwState moved = *s, there;
  double by[LW_N_STATE];

  /* Each state of the core, and the enzyme, acts on several. */
  for (gsize k = 0; k <= LW_N_CORE; k++)
    {
      by[k] = nudge (&moved, s, k);
      lw_inner_rates (boundary, around, &moved, &there);
      for (gsize row = 0; row < LW_N_STATE; row++)
        columns[k][row] = slope (&there, r, row, by[k]);
      ((double *) &moved)[k] = ((const double *) s)[k];
    }

  /* The others act on nothing but themselves, so they are nudged together. */
  for (gsize k = LW_N_CORE + 1; k < LW_N_STATE; k++)
    by[k] = nudge (&moved, s, k);
  lw_inner_rates (boundary, around, &moved, &there);
  for (gsize k = LW_N_CORE + 1; k < LW_N_STATE; k++)
    columns[k][k] = slope (&there, r, k, by[k]);

  return LW_N_CORE + 2;
}

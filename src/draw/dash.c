/* The patterns of dashes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/dash.h"

void
lw_dash_use (cairo_t *cr,
             guint    dash)
{
  static const struct { int n; double lengths[4]; } dashes[] = {
    { 2, { 7, 3 } }, { 2, { 2, 2.5 } }, { 4, { 9, 3, 2, 3 } }, { 2, { 3.5, 6 } },
    { 4, { 5, 2, 1.5, 2 } },
  };
  guint row = (dash + G_N_ELEMENTS (dashes) - 1) % G_N_ELEMENTS (dashes);

  if (dash == 0)
    cairo_set_dash (cr, NULL, 0, 0);
  else
    cairo_set_dash (cr, dashes[row].lengths, dashes[row].n, 0);
}

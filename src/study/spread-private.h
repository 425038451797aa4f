/* The numbers of a spread while it is computed; shared by spread.c and spread-sum.c only. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/spread.h"

typedef struct
{
  LwSpread *spread;              /* what they come to */
  LwChance chance;
  guint32 seed;
  guint n_straying;              /* sources with an amount */
  LwVarySource straying[LW_N_VARY];
  double *luck;                  /* [sample][2 x dims]: the first sample's numbers, then the second's */
  gsize stride;
  gsize columns;                 /* ends x quantities */
  double *a;                     /* [sample][column] */
  double *b;                     /* [0: second sample, 1..: the first with one source of the second][row][column] */
  gsize band_columns;
  float *bands;                  /* [sample][step, point, quantity] */
} LwSpreadRun;

/* Fills the spread from the outcomes. */
void lw_spread_sum (const LwSpreadRun *run);

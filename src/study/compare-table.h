/* A comparison as a table, the same from the window and the command line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/compare.h"

/* What a line of the table is of, besides the time in its step. */
#define LW_COMPARE_MINUTES (-1)

/* The values of `of`, an LwQuantity or LW_COMPARE_MINUTES, in a row: this, that, and that less this; NAN where
 * there is none. */
void  lw_compare_values (const LwCompareRow *row,
                         int                 of,
                         double              values[3]);

/* Digits after the point with which people are told them. */
int   lw_compare_digits (int                 of);

/* (transfer full) `rows` of LwCompareRow of these two batches, a line for each outcome of each row: as CSV with all
 * digits, each line with the batches' names and starts, else as Markdown under a line that tells these. In the C
 * locale. */
char *lw_compare_table  (const GArray       *rows,
                         const LwSide        sides[2],
                         gboolean            csv);

/* The Newton matrix of many leaf parts. Parts do not touch each other, so it is a
 * row of small blocks, each factored by itself: the cost is linear in the parts.
 * A block is dense in the states' core and lower triangular after it (state.h).
 * SUNDIALS has no such matrix for one processor. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <sundials/sundials_linearsolver.h>
#include <sundials/sundials_matrix.h>

#include "leaf/state.h"

/* NULL if memory cannot be had. Freed by SUNMatDestroy and SUNLinSolFree. */
SUNMatrix       lw_blocks_new    (guint      n_blocks,
                                  SUNContext context);
SUNLinearSolver lw_blocks_solver (SUNContext context);

/* Columns of one block: column k holds the derivatives by state k. */
sunrealtype   **lw_blocks_columns (SUNMatrix matrix,
                                   guint     block);

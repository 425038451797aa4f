/* A custom SUNMatrix of dense blocks and the direct solver for it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/blocks.h"

#include <math.h>
#include <string.h>

#define N LW_N_STATE
#define CORE LW_N_CORE

typedef struct
{
  guint n;
  sunrealtype *data;     /* n blocks, each by columns */
  sunrealtype **columns; /* n * N pointers into data */
  guint *pivots;         /* n * N */
} Blocks;

static Blocks *
blocks_of (SUNMatrix matrix)
{
  return matrix->content;
}

static SUNMatrix_ID
matrix_id (SUNMatrix matrix)
{
  return SUNMATRIX_CUSTOM;
}

static SUNMatrix
matrix_clone (SUNMatrix matrix)
{
  return lw_blocks_new (blocks_of (matrix)->n, matrix->sunctx);
}

static void
matrix_destroy (SUNMatrix matrix)
{
  Blocks *blocks = blocks_of (matrix);

  g_free (blocks->data);
  g_free (blocks->columns);
  g_free (blocks->pivots);
  g_free (blocks);
  matrix->content = NULL;
  SUNMatFreeEmpty (matrix);
}

static int
matrix_zero (SUNMatrix matrix)
{
  Blocks *blocks = blocks_of (matrix);

  memset (blocks->data, 0, blocks->n * N * N * sizeof *blocks->data);

  return 0;
}

static int
matrix_copy (SUNMatrix from,
             SUNMatrix to)
{
  memcpy (blocks_of (to)->data, blocks_of (from)->data, blocks_of (from)->n * N * N * sizeof (sunrealtype));

  return 0;
}

/* c A + I */
static int
matrix_scale_add_identity (sunrealtype c,
                           SUNMatrix   matrix)
{
  Blocks *blocks = blocks_of (matrix);

  for (gsize i = 0; i < blocks->n * N * N; i++)
    blocks->data[i] *= c;
  for (gsize row = 0; row < blocks->n * N; row++)
    blocks->columns[row][row % N] += 1;

  return 0;
}

SUNMatrix
lw_blocks_new (guint      n_blocks,
               SUNContext context)
{
  SUNMatrix matrix = SUNMatNewEmpty (context);
  Blocks *blocks;

  if (matrix == NULL)
    return NULL;

  blocks = g_new0 (Blocks, 1);
  blocks->n = n_blocks;
  blocks->data = g_new0 (sunrealtype, n_blocks * N * N);
  blocks->columns = g_new (sunrealtype *, n_blocks * N);
  blocks->pivots = g_new0 (guint, n_blocks * N);
  for (gsize i = 0; i < n_blocks * N; i++)
    blocks->columns[i] = &blocks->data[i * N];

  matrix->content = blocks;
  matrix->ops->getid = matrix_id;
  matrix->ops->clone = matrix_clone;
  matrix->ops->destroy = matrix_destroy;
  matrix->ops->zero = matrix_zero;
  matrix->ops->copy = matrix_copy;
  matrix->ops->scaleaddi = matrix_scale_add_identity;

  return matrix;
}

sunrealtype **
lw_blocks_columns (SUNMatrix matrix,
                   guint     block)
{
  return &blocks_of (matrix)->columns[block * N];
}

static SUNLinearSolver_Type
solver_type (SUNLinearSolver solver)
{
  return SUNLINEARSOLVER_DIRECT;
}

static SUNLinearSolver_ID
solver_id (SUNLinearSolver solver)
{
  return SUNLINEARSOLVER_CUSTOM;
}

static int
solver_initialize (SUNLinearSolver solver)
{
  return 0;
}

/* LU of the core by columns with partial pivoting, in place (G. H. Golub and C. F. Van Loan, Matrix
 * Computations, algorithm 3.4.1). The rest is lower triangular already. FALSE if singular. */
static gboolean
factor (sunrealtype **columns,
        guint        *pivots)
{
  for (guint k = 0; k < CORE; k++)
    {
      sunrealtype *restrict pivot_column = columns[k];
      guint pivot = k;

      for (guint i = k + 1; i < CORE; i++)
        if (fabs (pivot_column[i]) > fabs (pivot_column[pivot]))
          pivot = i;
      if (pivot_column[pivot] == 0)
        return FALSE;

      pivots[k] = pivot;
      if (pivot != k)
        for (guint j = 0; j < CORE; j++)
          {
            sunrealtype swap = columns[j][k];

            columns[j][k] = columns[j][pivot];
            columns[j][pivot] = swap;
          }

      for (guint i = k + 1; i < CORE; i++)
        pivot_column[i] /= pivot_column[k];

      for (guint j = k + 1; j < CORE; j++)
        {
          sunrealtype *restrict column = columns[j];
          sunrealtype top = column[k];

          for (guint i = k + 1; i < CORE; i++)
            column[i] -= top * pivot_column[i];
        }
    }

  for (guint k = CORE; k < N; k++)
    if (columns[k][k] == 0)
      return FALSE;

  return TRUE;
}

/* The core by its factors, then what follows from it, downwards. */
static void
substitute (sunrealtype **columns,
            const guint  *pivots,
            sunrealtype  *b)
{
  for (guint k = 0; k < CORE; k++)
    {
      sunrealtype swap = b[k];

      b[k] = b[pivots[k]];
      b[pivots[k]] = swap;
    }

  for (guint k = 0; k < CORE; k++)
    for (guint i = k + 1; i < CORE; i++)
      b[i] -= b[k] * columns[k][i];

  for (guint k = CORE; k-- > 0;)
    {
      b[k] /= columns[k][k];
      for (guint i = 0; i < k; i++)
        b[i] -= b[k] * columns[k][i];
      for (guint i = CORE; i < N; i++)
        b[i] -= b[k] * columns[k][i];
    }

  for (guint k = CORE; k < N; k++)
    {
      b[k] /= columns[k][k];
      for (guint i = k + 1; i < N; i++)
        b[i] -= b[k] * columns[k][i];
    }
}

static int
solver_factor (SUNLinearSolver solver,
               SUNMatrix       matrix)
{
  Blocks *blocks = blocks_of (matrix);

  for (guint i = 0; i < blocks->n; i++)
    if (!factor (&blocks->columns[i * N], &blocks->pivots[i * N]))
      return 1; /* singular: CVODE tries a smaller step */

  return 0;
}

static int
solver_solve (SUNLinearSolver solver,
              SUNMatrix       matrix,
              N_Vector        x,
              N_Vector        b,
              sunrealtype     tolerance)
{
  Blocks *blocks = blocks_of (matrix);
  sunrealtype *solution = N_VGetArrayPointer (x);

  if (x != b)
    N_VScale (1, b, x);
  for (guint i = 0; i < blocks->n; i++)
    substitute (&blocks->columns[i * N], &blocks->pivots[i * N], &solution[i * N]);

  return 0;
}

static int
solver_free (SUNLinearSolver solver)
{
  SUNLinSolFreeEmpty (solver);

  return 0;
}

SUNLinearSolver
lw_blocks_solver (SUNContext context)
{
  SUNLinearSolver solver = SUNLinSolNewEmpty (context);

  if (solver == NULL)
    return NULL;

  solver->ops->gettype = solver_type;
  solver->ops->getid = solver_id;
  solver->ops->initialize = solver_initialize;
  solver->ops->setup = solver_factor;
  solver->ops->solve = solver_solve;
  solver->ops->free = solver_free;

  return solver;
}

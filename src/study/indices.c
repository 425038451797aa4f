/* The estimators and their bootstrap. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/indices.h"

#include <math.h>

#include "study/gsl.h"
#include "study/tally.h"

#define REPLICATES 100

/* Whole rows only, side by side: a, b, then a column for each source. */
typedef struct
{
  guint n;
  guint n_columns;
  double *rows;
} Rows;

static gboolean
whole (const double *row,
       guint         n)
{
  for (guint i = 0; i < n; i++)
    if (!isfinite (row[i]))
      return FALSE;

  return TRUE;
}

/* Of a and b together, the picked rows; their mean too. */
static double
variance (const Rows  *rows,
          const guint *picks,
          double      *mean)
{
  double sum = 0, squares = 0;

  for (guint i = 0; i < rows->n; i++)
    sum += rows->rows[picks[i] * rows->n_columns] + rows->rows[picks[i] * rows->n_columns + 1];
  *mean = sum / (2 * rows->n);
  for (guint i = 0; i < rows->n; i++)
    for (guint k = 0; k < 2; k++)
      squares += pow (rows->rows[picks[i] * rows->n_columns + k] - *mean, 2);

  return squares / (2 * rows->n);
}

/* Of the picked rows; NAN where nothing varies. Where a source does little, b goes with what a change of it does; where it
 * does nearly all, nearly all is left of b when the others change: each by itself is poor at the other end. */
static void
estimate (const Rows  *rows,
          const guint *picks,
          double      *first,
          double      *total)
{
  double mean, of_all = variance (rows, picks, &mean);
  gboolean still = !(sqrt (of_all) > LW_STILL * (1 + fabs (mean)));

  for (guint s = 0; s + 2 < rows->n_columns; s++)
    {
      double together = 0, apart = 0, other = 0, weight;

      for (guint i = 0; i < rows->n; i++)
        {
          const double *row = rows->rows + picks[i] * rows->n_columns;

          together += (row[1] - mean) * (row[s + 2] - row[0]);
          apart += (row[0] - row[s + 2]) * (row[0] - row[s + 2]);
          other += (row[1] - row[s + 2]) * (row[1] - row[s + 2]);
        }
      total[s] = still ? NAN : apart / (2 * rows->n) / of_all;
      weight = fmin (total[s], 1);
      first[s] = still ? NAN : (1 - weight) * together / rows->n / of_all + weight * (1 - other / (2 * rows->n) / of_all);
    }
}

static void
rows_init (Rows                *rows,
           const double        *a,
           const double        *b,
           const double *const *ab,
           guint                n_sources,
           guint                n)
{
  *rows = (Rows) { .n_columns = n_sources + 2 };
  rows->rows = g_new (double, (gsize) MAX (n, 1) * rows->n_columns);
  for (guint i = 0; i < n; i++)
    {
      double *row = rows->rows + rows->n * rows->n_columns;

      row[0] = a[i];
      row[1] = b[i];
      for (guint s = 0; s < n_sources; s++)
        row[s + 2] = ab[s][i];
      rows->n += whole (row, rows->n_columns);
    }
}

/* Standard deviation of the replicates that could be had. */
static double
scatter (const double *values,
         guint         stride)
{
  double sum = 0, squares = 0;
  guint n = 0;

  for (guint r = 0; r < REPLICATES; r++)
    if (isfinite (values[r * stride]))
      {
        n++;
        sum += values[r * stride];
        squares += values[r * stride] * values[r * stride];
      }

  return n > 1 ? sqrt (fmax (squares - sum * sum / n, 0) / (n - 1)) : NAN;
}

void
lw_indices_of (const double        *a,
               const double        *b,
               const double *const *ab,
               guint                n_sources,
               guint                n,
               guint32              seed,
               LwIndex             *indices)
{
  g_autofree guint *picks = g_new (guint, MAX (n, 1));
  g_autofree double *first = g_new (double, n_sources), *total = g_new (double, n_sources);
  g_autofree double *firsts = g_new (double, n_sources * REPLICATES), *totals = g_new (double, n_sources * REPLICATES);
  g_autoptr (gsl_rng) luck = gsl_rng_alloc (gsl_rng_mt19937);
  Rows rows;

  gsl_rng_set (luck, seed);
  rows_init (&rows, a, b, ab, n_sources, n);
  for (guint i = 0; i < rows.n; i++)
    picks[i] = i;
  estimate (&rows, picks, first, total);

  for (guint r = 0; r < REPLICATES; r++)
    {
      for (guint i = 0; i < rows.n; i++)
        picks[i] = (guint) gsl_rng_uniform_int (luck, rows.n);
      estimate (&rows, picks, firsts + r * n_sources, totals + r * n_sources);
    }

  for (guint s = 0; s < n_sources; s++)
    indices[s] = (LwIndex) { first[s], scatter (firsts + s, n_sources), total[s], scatter (totals + s, n_sources) };
  g_free (rows.rows);
}

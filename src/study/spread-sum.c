/* What the samples come to: spans, shares inside, sources' shares, bands. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study/spread-private.h"

gboolean
lw_want_holds (const LwWant *want,
               double        value)
{
  return value >= want->low && value <= want->high;
}

gboolean
lw_want_limits (const LwWant *want,
                double       *low,
                double       *high)
{
  const LwQuantityRow *row = lw_quantity_row (want->of);

  *low = want->low > row->low ? want->low : -INFINITY;
  *high = want->high < row->high ? want->high : INFINITY;

  return isfinite (*low) || isfinite (*high);
}

gboolean
lw_spread_misleads (const LwSpreadAim *aim)
{
  return fabs (aim->normal - aim->share) > fmax (LW_NORMAL_ERRORS * aim->share_se, LW_NORMAL_OFF);
}

/* One column of `n` rows. */
static void
column_of (const double *from,
           gsize         columns,
           gsize         column,
           guint         n,
           double       *to)
{
  for (guint i = 0; i < n; i++)
    to[i] = from[i * columns + column];
}

static void
sum_ends (const LwSpreadRun *run,
          double            *work)
{
  LwSpread *spread = run->spread;

  for (guint e = 0; e < spread->n_ends; e++)
    for (guint q = 0; q < LW_N_QUANTITIES; q++)
      {
        column_of (run->a, run->columns, e * LW_N_QUANTITIES + q, spread->samples, work);
        spread->ends[e].of[q] = lw_span_of (work, spread->samples);
      }
}

/* Which aims a sample meets; whether all. */
static void
count_sample (LwSpread     *spread,
              const double *outcomes)
{
  gboolean all = !isnan (outcomes[0]);

  spread->failed += !all;
  for (guint i = 0; i < spread->n_aims; i++)
    {
      LwSpreadAim *aim = &spread->aims[i];
      guint end = lw_spread_end (spread, aim->want.step);
      gboolean holds = lw_want_holds (&aim->want, outcomes[end * LW_N_QUANTITIES + aim->want.of]);

      aim->inside += holds;
      all &= holds;
    }
  spread->inside += all;
}

static void
sum_aims (const LwSpreadRun *run)
{
  LwSpread *spread = run->spread;

  for (guint i = 0; i < spread->samples; i++)
    count_sample (spread, run->a + i * run->columns);

  spread->share = (double) spread->inside / spread->samples;
  spread->share_se = lw_share_se (spread->inside, spread->samples);
  for (guint i = 0; i < spread->n_aims; i++)
    {
      LwSpreadAim *aim = &spread->aims[i];
      const LwSpan *span = &spread->ends[lw_spread_end (spread, aim->want.step)].of[aim->want.of];
      double low, high;

      aim->share = (double) aim->inside / spread->samples;
      aim->share_se = lw_share_se (aim->inside, spread->samples);
      lw_want_limits (&aim->want, &low, &high);
      aim->ppk = lw_span_ppk (span, low, high);
      aim->normal = lw_span_normal_share (span, low, high);
    }
}

/* Indices of one column, for all sources of the batch. */
static void
sum_column (const LwSpreadRun *run,
            gsize              column,
            double            *work,
            LwIndex           *indices)
{
  const LwSpread *spread = run->spread;
  const double *ab[LW_N_VARY];
  LwIndex found[LW_N_VARY];
  guint rows = spread->rows, k = 0;

  column_of (run->a, run->columns, column, rows, work);
  for (guint w = 0; w <= run->n_straying; w++)
    {
      column_of (run->b + w * rows * run->columns, run->columns, column, rows, work + (w + 1) * rows);
      if (w > 0)
        ab[w - 1] = work + (w + 1) * rows;
    }

  lw_indices_of (work, work + rows, ab, run->n_straying, rows, run->seed, found);
  for (guint s = 0; s < spread->n_sources; s++)
    indices[s] = run->chance.dims[spread->sources[s]] > 0 ? found[k++] : (LwIndex) { 0 };
}

static void
sum_sources (const LwSpreadRun *run)
{
  LwSpread *spread = run->spread;
  g_autofree double *work = g_new (double, (run->n_straying + 2) * (gsize) spread->rows);

  spread->indices = g_new0 (LwIndex, run->columns * spread->n_sources);
  for (gsize c = 0; c < run->columns; c++)
    sum_column (run, c, work, spread->indices + c * spread->n_sources);
}

static void
sum_bands (const LwSpreadRun *run,
           double            *work)
{
  LwSpread *spread = run->spread;

  spread->bands = g_new (LwSpan, run->band_columns);
  for (gsize c = 0; c < run->band_columns; c++)
    {
      for (guint i = 0; i < spread->samples; i++)
        work[i] = run->bands[i * run->band_columns + c];
      spread->bands[c] = lw_span_of (work, spread->samples);
    }
}

void
lw_spread_sum (const LwSpreadRun *run)
{
  g_autofree double *work = g_new (double, run->spread->samples);

  sum_ends (run, work);
  sum_aims (run);
  if (run->b != NULL)
    sum_sources (run);
  if (run->bands != NULL)
    sum_bands (run, work);
}

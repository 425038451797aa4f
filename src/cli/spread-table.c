/* Tables of a spread. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/spread-table.h"

#include <math.h>

#include "season/csv.h"
#include "season/listing.h"
#include "season/text.h"

#define LEAST_TOLD 0.005

/* (transfer full) "0.42 ± 0.03" */
static char *
with_error (double value,
            double error,
            int    digits)
{
  g_autofree char *a = lw_listing_fixed (value, digits), *b = lw_listing_fixed (error, digits);

  return isnan (value) || isnan (error) ? g_steal_pointer (&a) : g_strdup_printf ("%s ± %s", a, b);
}

void
lw_spread_tell_amounts (GString            *to,
                        const LwVary        varies[LW_N_VARY],
                        const LwVarySource *sources,
                        guint               n)
{
  const char *head[] = { "source", "what", "from", "amount", "unit", "where the usual amount comes from" };

  lw_listing_append_head (to, FALSE, G_N_ELEMENTS (head), head);
  for (guint i = 0; i < n; i++)
    {
      const LwVaryRow *row = lw_vary_row (sources[i]);
      g_autofree char *amount = lw_vary_text (varies[sources[i]]);
      const char *cells[] = {
        row->id, _ (row->label), _ (row->from), amount,
        varies[sources[i]].percent || row->unit[0] == '\0' ? "" : _ (row->unit), row->source,
      };

      lw_listing_append_row (to, FALSE, G_N_ELEMENTS (cells), cells);
    }
}

static void
tell_outcomes (GString        *to,
               const LwSpread *spread)
{
  const char *head[] = {
    _ ("step"), _ ("outcome"), _ ("unit"), _ ("mean"), _ ("deviation"), "5 %", "50 %", "95 %",
  };

  lw_listing_append_head (to, FALSE, G_N_ELEMENTS (head), head);
  for (guint e = 0; e < spread->n_ends; e++)
    for (guint q = 0; q < LW_N_QUANTITIES; q++)
      {
        const LwSpan *span = &spread->ends[e].of[q];
        const LwQuantityRow *row = lw_quantity_row (q);
        g_autofree char *step = g_strdup_printf ("%u", spread->ends[e].step + 1);
        int digits = row->digits + 1;
        g_autofree char *mean = lw_listing_fixed (span->mean, digits), *sd = lw_listing_fixed (span->sd, digits);
        g_autofree char *low = lw_listing_fixed (span->q05, digits), *middle = lw_listing_fixed (span->q50, digits);
        g_autofree char *high = lw_listing_fixed (span->q95, digits);
        const char *cells[] = {
          step, _ (row->label), row->unit[0] != '\0' ? _ (row->unit) : "", mean, sd, low, middle, high,
        };

        lw_listing_append_row (to, FALSE, G_N_ELEMENTS (cells), cells);
      }
}

static void
tell_aims (GString        *to,
           const LwSpread *spread)
{
  const char *head[] = { _ ("step"), _ ("outcome"), _ ("from"), _ ("to"), _ ("% inside"), "Ppk", _ ("% inside if normal") };

  lw_listing_append_head (to, FALSE, G_N_ELEMENTS (head), head);
  for (guint i = 0; i < spread->n_aims; i++)
    {
      const LwSpreadAim *aim = &spread->aims[i];
      const LwQuantityRow *row = lw_quantity_row (aim->want.of);
      g_autofree char *step = g_strdup_printf ("%u", aim->want.step + 1);
      g_autofree char *low = lw_listing_fixed (isinf (aim->want.low) ? NAN : aim->want.low, row->digits);
      g_autofree char *high = lw_listing_fixed (isinf (aim->want.high) ? NAN : aim->want.high, row->digits);
      g_autofree char *share = with_error (100 * aim->share, 100 * aim->share_se, 2);
      g_autofree char *ppk = lw_listing_fixed (aim->ppk, 2), *normal = lw_listing_fixed (100 * aim->normal, 2);
      const char *cells[] = { step, _ (row->label), low, high, share, ppk, normal };

      lw_listing_append_row (to, FALSE, G_N_ELEMENTS (cells), cells);
    }
}

static int
by_total (const void *a,
          const void *b,
          void       *indices)
{
  double x = ((const LwIndex *) indices)[*(const guint *) a].total;
  double y = ((const LwIndex *) indices)[*(const guint *) b].total;

  return x > y ? -1 : x < y;
}

/* The most telling source first, down to what rounds to something. */
static void
tell_sources_of (GString        *to,
                 const LwSpread *spread,
                 guint           end,
                 LwQuantity      of)
{
  g_autofree char *step = g_strdup_printf ("%u", spread->ends[end].step + 1);
  guint order[LW_N_VARY];

  for (guint s = 0; s < spread->n_sources; s++)
    order[s] = s;
  g_qsort_with_data (order, (int) spread->n_sources, sizeof *order, by_total,
                     (void *) lw_spread_index (spread, end, of, 0));

  for (guint s = 0; s < spread->n_sources; s++)
    {
      const LwIndex *index = lw_spread_index (spread, end, of, order[s]);
      /* What chance put below 0 is told as none; CSV has it. */
      g_autofree char *first = with_error (isnan (index->first) ? NAN : fmax (index->first, 0), index->first_se, 2);
      g_autofree char *total = with_error (index->total, index->total_se, 2);
      const char *cells[] = {
        step, _ (lw_quantity_row (of)->label), lw_vary_row (spread->sources[order[s]])->id, first, total,
      };

      if (index->total >= LEAST_TOLD)
        lw_listing_append_row (to, FALSE, G_N_ELEMENTS (cells), cells);
    }
}

/* Of what is aimed at; of moisture at the end where nothing is. */
static void
tell_sources (GString        *to,
              const LwSpread *spread)
{
  const char *head[] = { _ ("step"), _ ("outcome"), _ ("source"), _ ("alone"), _ ("with others") };

  lw_listing_append_head (to, FALSE, G_N_ELEMENTS (head), head);
  for (guint i = 0; i < spread->n_aims; i++)
    tell_sources_of (to, spread, lw_spread_end (spread, spread->aims[i].want.step), spread->aims[i].want.of);
  if (spread->n_aims == 0)
    tell_sources_of (to, spread, spread->n_ends - 1, LW_MOISTURE);
}

void
lw_spread_tell (GString           *to,
                const LwBatch     *batch,
                const LwSpread    *spread,
                const LwSpreadAsk *ask)
{
  g_string_append_printf (to, ngettext ("%s: %u sample, seed %u\n", "%s: %u samples, seed %u\n", spread->samples),
                          batch->name, spread->samples, ask->seed);
  if (spread->failed > 0)
    g_string_append_printf (to, ngettext ("%u sample could not be computed and counts as outside\n",
                                          "%u samples could not be computed and count as outside\n", spread->failed),
                            spread->failed);
  g_string_append_printf (to, "\n%s\n\n", _ ("What varies, as standard deviations:"));
  lw_spread_tell_amounts (to, ask->varies, spread->sources, spread->n_sources);
  g_string_append_printf (to, "\n%s\n\n", _ ("Outcomes at the ends of steps:"));
  tell_outcomes (to, spread);
  if (spread->n_aims > 0)
    {
      g_autofree char *share = with_error (100 * spread->share, 100 * spread->share_se, 2);

      g_string_append_printf (to, "\n%s\n\n", _ ("Aims:"));
      tell_aims (to, spread);
      g_string_append_printf (to, _ ("\nInside every aim: %s %%\n"), share);
    }
  if (spread->indices != NULL)
    {
      g_string_append_printf (to, "\n%s\n\n", _ ("Shares of the variation (Sobol’ indices):"));
      tell_sources (to, spread);
    }
}

/* `step` 0, `of` -1, `source` -1: none. */
static void
append_figure (GString    *csv,
               guint       step,
               int         of,
               int         source,
               const char *figure,
               double      value)
{
  if (!isfinite (value))
    return;

  if (step > 0)
    g_string_append_printf (csv, "%u", step);
  g_string_append_printf (csv, ",%s,%s,%s", of >= 0 ? lw_quantity_row ((LwQuantity) of)->id : "",
                          source >= 0 ? lw_vary_row ((LwVarySource) source)->id : "", figure);
  lw_csv_append_number (csv, value);
  g_string_append_c (csv, '\n');
}

static void
append_end (GString        *csv,
            const LwSpread *spread,
            guint           end,
            LwQuantity      of)
{
  guint step = spread->ends[end].step + 1;
  const LwSpan *span = &spread->ends[end].of[of];

  append_figure (csv, step, (int) of, -1, "mean", span->mean);
  append_figure (csv, step, (int) of, -1, "sd", span->sd);
  append_figure (csv, step, (int) of, -1, "q05", span->q05);
  append_figure (csv, step, (int) of, -1, "q50", span->q50);
  append_figure (csv, step, (int) of, -1, "q95", span->q95);
  for (guint s = 0; spread->indices != NULL && s < spread->n_sources; s++)
    {
      const LwIndex *index = lw_spread_index (spread, end, of, s);
      int source = (int) spread->sources[s];

      append_figure (csv, step, (int) of, source, "first", index->first);
      append_figure (csv, step, (int) of, source, "first-se", index->first_se);
      append_figure (csv, step, (int) of, source, "total", index->total);
      append_figure (csv, step, (int) of, source, "total-se", index->total_se);
    }
}

void
lw_spread_csv (GString        *to,
               const LwSpread *spread)
{
  g_string_append (to, "step,outcome,source,figure,value\n");
  append_figure (to, 0, -1, -1, "samples", spread->samples);
  append_figure (to, 0, -1, -1, "failed", spread->failed);
  if (spread->n_aims > 0)
    {
      append_figure (to, 0, -1, -1, "inside", spread->share);
      append_figure (to, 0, -1, -1, "inside-se", spread->share_se);
    }
  for (guint i = 0; i < spread->n_aims; i++)
    {
      const LwSpreadAim *aim = &spread->aims[i];
      guint step = aim->want.step + 1;
      int of = (int) aim->want.of;

      append_figure (to, step, of, -1, "low", aim->want.low);
      append_figure (to, step, of, -1, "high", aim->want.high);
      append_figure (to, step, of, -1, "inside", aim->share);
      append_figure (to, step, of, -1, "inside-se", aim->share_se);
      append_figure (to, step, of, -1, "ppk", aim->ppk);
      append_figure (to, step, of, -1, "inside-if-normal", aim->normal);
    }
  for (guint e = 0; e < spread->n_ends; e++)
    for (guint q = 0; q < LW_N_QUANTITIES; q++)
      append_end (to, spread, e, q);
}

void
lw_spread_bands (GString        *to,
                 const LwSpread *spread)
{
  g_string_append (to, "step,share,outcome,low,middle,high\n");
  for (guint s = 0; s < spread->n_steps; s++)
    for (guint i = 0; i <= spread->points; i++)
      for (guint q = 0; q < LW_N_QUANTITIES; q++)
        {
          const LwSpan *span = lw_spread_band (spread, s, i, q);

          g_string_append_printf (to, "%u", s + 1);
          lw_csv_append_number (to, (double) i / spread->points);
          g_string_append_printf (to, ",%s", lw_quantity_row (q)->id);
          lw_csv_append_number (to, span->q05);
          lw_csv_append_number (to, span->q50);
          lw_csv_append_number (to, span->q95);
          g_string_append_c (to, '\n');
        }
}

/* The columns: step, kind, other step, other kind, clock, outcome, unit, this, that, difference. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/compare-table.h"

#include <math.h>

#include "season/listing.h"

void
lw_compare_values (const LwCompareRow *row,
                   int                 of,
                   double              values[3])
{
  for (guint i = 0; i < 2; i++)
    values[i] = !row->of[i].there ? NAN
                : of == LW_COMPARE_MINUTES ? row->of[i].minute : lw_quantity_of ((LwQuantity) of, &row->of[i].is);
  values[2] = values[1] - values[0];
}

/* One more than its row has. */
int
lw_compare_digits (int of)
{
  return of == LW_COMPARE_MINUTES ? 1 : lw_quantity_row ((LwQuantity) of)->digits + 1;
}

static char *
cell_of (double   value,
         int      of,
         gboolean csv)
{
  return csv && !isnan (value) ? lw_listing_number (value) : lw_listing_fixed (value, lw_compare_digits (of));
}

static char *
clock_of (double clock_s)
{
  guint minutes = isnan (clock_s) ? 0 : (guint) lround (clock_s / 60);

  return isnan (clock_s) ? g_strdup ("") : g_strdup_printf ("%02u:%02u", minutes / 60, minutes % 60);
}

static void
append_line (GString            *table,
             const char *const   lead[5],
             const LwCompareRow *row,
             int                 of,
             gboolean            csv)
{
  const char *outcome = of == LW_COMPARE_MINUTES ? "minutes" : lw_quantity_row ((LwQuantity) of)->id;
  const char *unit = of == LW_COMPARE_MINUTES ? "min" : lw_quantity_row ((LwQuantity) of)->unit;
  g_autofree char *a = NULL, *b = NULL, *difference = NULL;
  double values[3];

  lw_compare_values (row, of, values);
  a = cell_of (values[0], of, csv);
  b = cell_of (values[1], of, csv);
  difference = cell_of (values[2], of, csv);
  lw_listing_append_row (table, csv, 10, (const char *[]) { lead[0], lead[1], lead[2], lead[3], lead[4], outcome, unit,
                                                            a, b, difference });
}

static void
append_row (GString            *table,
            const LwCompareRow *row,
            const LwSide        sides[2],
            gboolean            csv)
{
  g_autofree char *clock = clock_of (row->clock_s);
  g_autofree char *step_a = row->of[0].there ? g_strdup_printf ("%u", row->of[0].step + 1) : g_strdup ("");
  g_autofree char *step_b = row->of[1].there ? g_strdup_printf ("%u", row->of[1].step + 1) : g_strdup ("");
  const char *lead[5] = { step_a, "", step_b, "", clock };

  for (guint i = 0; i < 2; i++)
    if (row->of[i].there)
      lead[2 * i + 1] = lw_kind_row (sides[i].batch->steps[row->of[i].step].kind)->id;

  for (int of = LW_COMPARE_MINUTES; of < LW_N_QUANTITIES; of++)
    append_line (table, lead, row, of, csv);
}

char *
lw_compare_table (const GArray *rows,
                  const LwSide  sides[2],
                  gboolean      csv)
{
  static const char *const head[] = {
    "step", "kind", "other step", "other kind", "clock", "outcome", "unit", "this", "that", "difference",
  };
  GString *table = g_string_new (NULL);

  lw_listing_append_head (table, csv, G_N_ELEMENTS (head), head);
  for (guint i = 0; i < rows->len; i++)
    append_row (table, &g_array_index (rows, LwCompareRow, i), sides, csv);

  return g_string_free (table, FALSE);
}

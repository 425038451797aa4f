/* The columns: in CSV batch, start, other batch, other start; in both step, kind, other step, other kind, clock, outcome,
 * unit, this, that, difference. */
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

/* (transfer full) "2026-03-26 11:00". */
static char *
start_of (const LwSide *side)
{
  g_autoptr (GDateTime) when = g_date_time_new_from_unix_utc (side->batch->when_s);

  return when != NULL ? g_date_time_format (when, "%Y-%m-%d %H:%M") : g_strdup ("");
}

/* `lead`: which batches and when they start, then what the row is of; only CSV has the first four. */
static void
append_line (GString            *table,
             const char *const   lead[4 + 5],
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
  lw_listing_append_row (table, csv, csv ? 14 : 10,
                         (const char *[]) { lead[0], lead[1], lead[2], lead[3], lead[4], lead[5], lead[6], lead[7], lead[8],
                                            outcome, unit, a, b, difference } + (csv ? 0 : 4));
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
  g_autofree char *start_a = start_of (&sides[0]), *start_b = start_of (&sides[1]);
  const char *lead[4 + 5] = { sides[0].batch->name, start_a, sides[1].batch->name, start_b, step_a, "", step_b, "", clock };

  for (guint i = 0; i < 2; i++)
    if (row->of[i].there)
      lead[4 + 2 * i + 1] = lw_kind_row (sides[i].batch->steps[row->of[i].step].kind)->id;

  for (int of = LW_COMPARE_MINUTES; of < LW_N_QUANTITIES; of++)
    append_line (table, lead, row, of, csv);
}

static void
append_caption (GString      *table,
                const LwSide  sides[2])
{
  g_autofree char *start_a = start_of (&sides[0]), *start_b = start_of (&sides[1]), *names = NULL;

  names = g_strdup_printf ("This: %s, %s. That: %s, %s. Difference: that less this, then rounded.", sides[0].batch->name,
                           start_a, sides[1].batch->name, start_b);
  g_strdelimit (names, "\r\n", ' ');
  g_string_append_printf (table, "%s\n\n", names);
}

char *
lw_compare_table (const GArray *rows,
                  const LwSide  sides[2],
                  gboolean      csv)
{
  static const char *const head[] = {
    "batch", "start", "other batch", "other start", "step", "kind", "other step", "other kind", "clock", "outcome", "unit", "this", "that", "difference",
  };
  GString *table = g_string_new (NULL);

  if (!csv)
    append_caption (table, sides);
  lw_listing_append_head (table, csv, G_N_ELEMENTS (head) - (csv ? 0 : 4), head + (csv ? 0 : 4));
  for (guint i = 0; i < rows->len; i++)
    append_row (table, &g_array_index (rows, LwCompareRow, i), sides, csv);

  return g_string_free (table, FALSE);
}

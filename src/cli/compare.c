/* leafwend-cli compare: two batches and their difference, as a table. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <math.h>
#include <string.h>

#include "cli/listing.h"
#include "season/text.h"
#include "study/compare.h"

static const char told[] = N_ (
  "A and B are batches: names or the names' first words. With one file both are in it. Columns:\n"
  "  step, kind         the step of the first batch, from 1; “other” those of the second; empty where a batch\n"
  "                     has none\n"
  "  clock              with --by clock: hours and minutes since the midnight before a batch's start\n"
  "  outcome, unit      “minutes” is the time since the step's start\n"
  "  this, that         of the first batch and of the second\n"
  "  difference         the second less the first; empty where one of them has none\n"
  "By step, rows stand at step ends: steps of the same kind are matched in their order, and what has no match\n"
  "stands alone. By clock, they stand wherever a step of either batch ends.\n"
  "Exit status: 0 all went well, 1 the file or the work failed, 2 wrong usage.");

/* A batch of a file, computed. */
typedef struct
{
  LwSeason *season;
  const LwBatch *batch;
  LwTrack *track;
} Taken;

static void
taken_clear (Taken *taken)
{
  g_clear_pointer (&taken->track, lw_track_unref);
  g_clear_pointer (&taken->season, lw_season_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Taken, taken_clear)

/* FALSE and a complaint where it is not there or cannot be computed. */
static gboolean
take (Taken      *taken,
      const char *path,
      const char *name)
{
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwPlan) plan = NULL;
  guint at;

  taken->season = lw_command_season (path);
  if (taken->season == NULL || !lw_command_batch (taken->season, name, &at))
    return FALSE;

  g_assert (march != NULL);
  taken->batch = taken->season->batches[at];
  plan = lw_plan_new (taken->season, at);
  taken->track = lw_plan_march (plan, march, (LwSampling) { .samples = 160 });
  if (taken->track->failure.failed)
    {
      g_autofree char *text = lw_plan_failure_text (plan, taken->batch, taken->track);

      lw_complain ("%s: %s", taken->batch->name, text);
      return FALSE;
    }

  return TRUE;
}

/* A number with a digit more than its row for people, all of them for CSV; "" where there is none. */
static char *
cell_of (double   value,
         int      digits,
         gboolean csv)
{
  return csv && !isnan (value) ? lw_listing_number (value) : lw_listing_fixed (value, digits + 1);
}

static char *
clock_of (double clock_s)
{
  guint minutes = isnan (clock_s) ? 0 : (guint) lround (clock_s / 60);

  return isnan (clock_s) ? g_strdup ("") : g_strdup_printf ("%02u:%02u", minutes / 60, minutes % 60);
}

static void
append_values (GString            *table,
               const char *const   lead[5],
               const char         *outcome,
               const char         *unit,
               const LwCompareRow *row,
               const double        values[2],
               int                 digits,
               gboolean            csv)
{
  double one = row->of[0].there ? values[0] : NAN, other = row->of[1].there ? values[1] : NAN;
  g_autofree char *a = cell_of (one, digits, csv), *b = cell_of (other, digits, csv);
  g_autofree char *difference = cell_of (other - one, digits, csv);
  const char *cells[] = { lead[0], lead[1], lead[2], lead[3], lead[4], outcome, unit, a, b, difference };

  lw_listing_append_row (table, csv, G_N_ELEMENTS (cells), cells);
}

static void
append_row (GString            *table,
            const LwCompareRow *row,
            const Taken         taken[2],
            gboolean            csv)
{
  g_autofree char *clock = clock_of (row->clock_s);
  g_autofree char *step_a = row->of[0].there ? g_strdup_printf ("%u", row->of[0].step + 1) : g_strdup ("");
  g_autofree char *step_b = row->of[1].there ? g_strdup_printf ("%u", row->of[1].step + 1) : g_strdup ("");
  const char *lead[5] = { step_a, "", step_b, "", clock };
  double minutes[2] = { row->of[0].minute, row->of[1].minute };

  for (guint i = 0; i < 2; i++)
    if (row->of[i].there)
      lead[2 * i + 1] = lw_kind_row (taken[i].batch->steps[row->of[i].step].kind)->id;

  append_values (table, lead, "minutes", "min", row, minutes, 0, csv);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      const LwQuantityRow *quantity = lw_quantity_row (q);
      double values[2] = { lw_quantity_of (q, &row->of[0].is), lw_quantity_of (q, &row->of[1].is) };

      append_values (table, lead, quantity->id, quantity->unit, row, values, quantity->digits, csv);
    }
}

static gboolean
compare (const Taken  taken[2],
         gboolean     by_clock,
         gboolean     csv,
         const char  *output)
{
  static const char *const head[] = {
    "step", "kind", "other step", "other kind", "clock", "outcome", "unit", "this", "that", "difference",
  };
  const LwSide sides[2] = { { taken[0].batch, taken[0].track }, { taken[1].batch, taken[1].track } };
  g_autoptr (GArray) rows = by_clock ? lw_compare_clock (sides) : lw_compare_steps (sides);
  g_autoptr (GString) table = g_string_new (NULL);

  lw_listing_append_head (table, csv, G_N_ELEMENTS (head), head);
  for (guint i = 0; i < rows->len; i++)
    append_row (table, &g_array_index (rows, LwCompareRow, i), taken, csv);

  return lw_command_output (output, table->str, table->len);
}

int
lw_command_compare (int    argc,
                    char **argv)
{
  g_autofree char *by = NULL, *output = NULL;
  gboolean csv = FALSE, by_clock;
  const GOptionEntry entries[] = {
    { "by", 0, 0, G_OPTION_ARG_STRING, &by, N_ ("Match moments by step (the default) or by clock"), "step|clock" },
    { "csv", 'c', 0, G_OPTION_ARG_NONE, &csv, N_ ("CSV instead of Markdown"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write here instead of standard output"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  g_auto (Taken) one = { 0 }, other = { 0 };

  if (!lw_command_parse ("compare", _ ("SEASON A B | SEASON-A A SEASON-B B"), _ (told), entries, &argc, &argv))
    return LW_EXIT_USAGE;
  by_clock = g_strcmp0 (by, "clock") == 0;
  if (by != NULL && !by_clock && strcmp (by, "step") != 0)
    {
      lw_complain (_ ("compare: --by takes “step” or “clock”"));
      return LW_EXIT_USAGE;
    }
  if (argc != 4 && argc != 5)
    {
      lw_complain (_ ("compare: name a season's file and two batches, or two files with a batch each; "
                      "try “leafwend-cli compare --help”"));
      return LW_EXIT_USAGE;
    }

  if (!take (&one, argv[1], argv[2]) || !take (&other, argc == 5 ? argv[3] : argv[1], argv[argc - 1]))
    return LW_EXIT_WRONG;

  return compare ((Taken[2]) { one, other }, by_clock, csv, output) ? 0 : LW_EXIT_WRONG;
}

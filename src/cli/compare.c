/* leafwend-cli compare: two batches and their difference, as a table. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <string.h>

#include "season/text.h"
#include "study/compare-table.h"

static const char told[] = N_ (
  "A and B are batches: names or the names' first words. With one file both are in it. Columns:\n"
  "  batch, start       in CSV: the first batch and when it starts; “other” the second\n"
  "  step, kind         the step of the first batch, from 1; “other” those of the second; empty where a batch\n"
  "                     has none\n"
  "  clock              with --by clock: hours and minutes since the midnight before the first start\n"
  "  outcome, unit      “minutes” is the time since the step's start\n"
  "  this, that         of the first batch and of the second\n"
  "  difference         the second less the first, then rounded; empty where one of them has none\n"
  "By step, rows stand at step ends: steps of the same kind are matched in their order, and what has no match\n"
  "stands alone; where the last steps are no match, the finished teas stand below.\n"
  "By clock, they stand wherever a step of either batch ends. The days of the two do not count: 23:30 and 0:30 are an\n"
  "hour apart.\n"
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
  g_autofree char *failure = NULL;
  guint at;

  taken->season = lw_command_season (path);
  if (taken->season == NULL)
    return FALSE;
  if (!lw_command_batch (taken->season, name, &at))
    {
      /* There may be two files. */
      lw_complain (_ ("compare: “%s” was looked for in %s"), name, path);
      return FALSE;
    }

  taken->batch = taken->season->batches[at];
  taken->track = lw_compare_track (taken->season, at, &failure);
  if (taken->track == NULL)
    lw_complain ("%s: %s", taken->batch->name, failure);

  return taken->track != NULL;
}

static gboolean
compare (const Taken  taken[2],
         gboolean     by_clock,
         gboolean     csv,
         const char  *output)
{
  const LwSide sides[2] = { { taken[0].batch, taken[0].track }, { taken[1].batch, taken[1].track } };
  g_autoptr (GArray) rows = by_clock ? lw_compare_clock (sides) : lw_compare_steps (sides);
  g_autofree char *table = lw_compare_table (rows, sides, csv);

  return lw_command_output (output, table, strlen (table));
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

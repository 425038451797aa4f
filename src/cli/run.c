/* leafwend-cli run: a season's curves as CSV. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include "season/csv.h"
#include "season/surround.h"
#include "season/text.h"

#define EVERY_LEAST_S 0.1
#define EVERY_USUAL_S 60.0

static gboolean
run_batch (LwSeason  *season,
           guint      at,
           LwMarch   *march,
           LwSampling sampling,
           LwCsvFlags flags,
           GString   *csv)
{
  const LwBatch *batch = season->batches[at];
  g_autoptr (LwPlan) plan = lw_plan_new (season, at);
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, sampling);

  lw_csv_append_track (csv, batch, lw_season_profile (season, batch->leaf), track, flags);

  if (track->failure.failed)
    {
      g_autofree char *text = lw_plan_failure_text (plan, batch, track);

      lw_complain ("%s: %s", batch->name, text);
    }

  return !track->failure.failed;
}

int
lw_command_run (int    argc,
                char **argv)
{
  g_auto (GStrv) names = NULL;
  g_autofree char *output = NULL;
  double every_s = EVERY_USUAL_S;
  gboolean parts = FALSE, ends = FALSE, whole = TRUE;
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING_ARRAY, &names,
      N_ ("Only this batch; its name or the name's first word. May be given again."), N_ ("NAME") },
    { "every", 'e', 0, G_OPTION_ARG_DOUBLE, &every_s, N_ ("A row every so many seconds (60)"), N_ ("SECONDS") },
    { "ends", 0, 0, G_OPTION_ARG_NONE, &ends, N_ ("Rows at step ends only"), NULL },
    { "parts", 'p', 0, G_OPTION_ARG_NONE, &parts, N_ ("Rows for each part of the leaf too"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write here instead of standard output"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  LwCsvFlags flags;
  const char *path;
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (GArray) batches = NULL;
  g_autoptr (LwMarch) march = NULL;
  g_autoptr (GString) csv = g_string_new (NULL);

  if (!lw_command_options ("run", entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;
  if (!(every_s >= EVERY_LEAST_S))
    {
      lw_complain (_ ("run: --every takes seconds, %g or more"), EVERY_LEAST_S);
      return LW_EXIT_USAGE;
    }

  season = lw_command_season (path);
  if (season == NULL)
    return LW_EXIT_WRONG;
  batches = lw_command_batches (season, names);
  if (batches == NULL)
    return LW_EXIT_WRONG;

  march = lw_march_new ();
  g_assert (march != NULL);
  flags = (parts ? LW_CSV_PARTS : 0) | (ends ? LW_CSV_ENDS : 0);
  lw_csv_append_header (csv);
  for (guint i = 0; i < batches->len; i++)
    whole &= run_batch (season, g_array_index (batches, guint, i), march,
                        ends ? (LwSampling) { .samples = 1 } : (LwSampling) { .every_s = every_s }, flags, csv);

  if (!lw_command_output (output, csv->str, csv->len) || !whole)
    return LW_EXIT_WRONG;

  return 0;
}

/* leafwend-cli knockon: what one notch of each setting of a batch does, as CSV. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <string.h>

#include "season/text.h"
#include "study/knock-csv.h"

static const char told[] = N_ (
  "A row for each setting that can be turned, in the order of the steps. Columns:\n"
  "  step, kind      the step, from 1\n"
  "  setting, unit   as in the season's file; settings that follow the weather are left out\n"
  "  value           where the setting stands\n"
  "  notch           what is added to it; negative at the upper end of its range\n"
  "  moisture, ...   the change of each outcome by that notch at the end of the step that is asked for, computed\n"
  "                  anew and no tangent; empty where the batch cannot be computed with the notch");

static gboolean
write_knocks (LwSeason   *season,
              guint       at,
              int         step,
              const char *output)
{
  const LwBatch *batch = season->batches[at];
  g_autoptr (GArray) knocks = lw_knock_on (season, at, step, NULL);
  g_autofree char *csv = NULL;

  if (knocks == NULL)
    {
      lw_complain (_ ("%s: the batch cannot be computed; “leafwend-cli run” tells why"), batch->name);
      return FALSE;
    }

  csv = lw_knock_csv (batch, knocks);

  return lw_command_output (output, csv, strlen (csv));
}

int
lw_command_knockon (int    argc,
                    char **argv)
{
  g_autofree char *name = NULL, *output = NULL;
  int step = 0;
  const GOptionEntry entries[] = {
    { "batch", 'b', 0, G_OPTION_ARG_STRING, &name, N_ ("The batch; its name or the name's first word"), N_ ("NAME") },
    { "step", 's', 0, G_OPTION_ARG_INT, &step, N_ ("Outcomes at this step's end, from 1 (the last)"), N_ ("N") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write here instead of standard output"), N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL;
  guint at;

  if (!lw_command_options_told ("knockon", _ (told), entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;
  if (name == NULL || step < 0)
    {
      lw_complain (name == NULL ? _ ("knockon: name a batch with --batch; try “leafwend-cli knockon --help”")
                                : _ ("knockon: --step counts from 1"));
      return LW_EXIT_USAGE;
    }

  season = lw_command_season (path);
  if (season == NULL || !lw_command_batch (season, name, &at))
    return LW_EXIT_WRONG;
  if (step > (int) season->batches[at]->n_steps || season->batches[at]->n_steps == 0)
    {
      lw_complain (_ ("%s: the batch has %u steps"), season->batches[at]->name, season->batches[at]->n_steps);
      return LW_EXIT_WRONG;
    }

  return write_knocks (season, at, step - 1, output) ? 0 : LW_EXIT_WRONG;
}

/* leafwend-cli check: is a season's file sound? Every problem with its line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <stdio.h>

#include "season/text.h"

int
lw_command_check (int    argc,
                  char **argv)
{
  gboolean quiet = FALSE;
  const GOptionEntry entries[] = {
    { "quiet", 'q', 0, G_OPTION_ARG_NONE, &quiet, N_ ("Say nothing of a sound file"), NULL },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL;

  if (!lw_command_options ("check", entries, &argc, &argv, &path))
    return LW_EXIT_USAGE;

  season = lw_command_season (path);
  if (season == NULL)
    return LW_EXIT_WRONG;

  if (!quiet)
    {
      g_autofree char *batches = g_strdup_printf (ngettext ("%u batch", "%u batches", season->n_batches),
                                                  season->n_batches);

      printf (_ ("%s: sound, %s\n"), path, batches);
    }

  return 0;
}

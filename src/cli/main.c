/* leafwend-cli: the same numbers as the window, without one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <gsl/gsl_errno.h>
#include <libxml/parser.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>

#include "season/text.h"

static const LwCommand commands[] = {
  { "run", "SEASON [--batch NAME]... [--every SECONDS | --ends] [--parts] [-o FILE]",
    N_ ("write a season's curves as CSV"), lw_command_run },
  { "check", "SEASON [--quiet]", N_ ("say whether a season's file is sound"), lw_command_check },
  { "fit", "SEASON [--batch NAME]... [--leaf ID] [--free NAME]... [--leave-one-out] [--csv] [-o FILE]",
    N_ ("find what of the leaf must differ to agree with what was weighed"), lw_command_fit },
  { "heat", "SEASON [--batch NAME]... [-o FILE]",
    N_ ("write heat, fuel, water and hands of each step as CSV"), lw_command_heat },
  { "knockon", "SEASON --batch NAME [--step N] [-o FILE]",
    N_ ("write what one notch of each setting does to each outcome as CSV"), lw_command_knockon },
  { "reach", "SEASON --batch NAME [--free STEP:SETTING]... [--pin STEP:SETTING]... [-o FILE]",
    N_ ("find settings that meet a batch's aims"), lw_command_reach },
  { "replan", "SEASON --batch NAME [--at WHEN] [-o FILE]",
    N_ ("correct a batch under way by what was weighed, and plan its rest anew"), lw_command_replan },
  { "spread", "SEASON --batch NAME [--vary SOURCE=AMOUNT]... [--samples N] [--seed N] [--steadier] [--csv] [-o FILE]",
    N_ ("tell how steadily a batch meets its aims when leaf, weather and hand vary"), lw_command_spread },
  { "compare", "SEASON A B | SEASON-A A SEASON-B B [--by step|clock] [--csv] [-o FILE]",
    N_ ("write two batches and their difference as a table"), lw_command_compare },
  { "picture", "SEASON [--batch NAME]... -o FILE",
    N_ ("draw a batch on one sheet, as PNG, SVG or PDF"), lw_command_picture },
  { "card", "SEASON --batch NAME -o FILE [--paper A4|A3|Letter] [--landscape] [--load KG] [--sheet]",
    N_ ("draw a batch's wall card, and its batch sheet, as PDF, SVG or PNG"), lw_command_card },
  { "weather", "SEASON --import FILE --id ID [--name NAME] [-o FILE]",
    N_ ("put a table of hours into a season as a weather"), lw_command_weather },
  { "log", "SEASON --import FILE --batch NAME [--step N] [--minute M] [--take COLUMN=USE]... [--check] [-o FILE]",
    N_ ("check a table of temperatures, and put it into a batch as a log"), lw_command_log },
  { "teas", "[SEASON] [--csv] [-o FILE]",
    N_ ("list kinds of tea, their aims and where each comes from"), lw_command_teas },
  { "model", "[--steps] [--csv] [-o FILE]",
    N_ ("list the model's parameters, or the kinds of step"), lw_command_model },
};

static void
print_help (void)
{
  printf (_ ("Usage: leafwend-cli COMMAND SEASON [OPTION]...\n"
             "Compute what happens in tea leaf through the steps of a season's batches.\n\n"));
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    printf ("  leafwend-cli %s %s\n        %s\n", commands[i].name, commands[i].usage, _ (commands[i].summary));
  printf (_ ("\n  -h, --help     show this help; after a command, its options\n"
             "      --version  show the version\n\n"
             "Exit status: 0 all went well, 1 the file or the work failed, 2 wrong usage,\n"
             "3 an aim is missed, there is not enough data, or nothing steadier was found.\n"
             "The numbers are a model's estimate: they replace neither scale nor thermometer nor care\n"
             "with hot walls, steam, fumes, machines and food.\n"
             "Follow local codes and licensed practice.\n"));
}

static void
print_version (void)
{
  printf ("leafwend-cli (Leafwend) %s\n", LW_VERSION);
  printf (_ ("License GPLv3+: GNU GPL version 3 or later <https://gnu.org/licenses/gpl.html>.\n"
             "This is free software: you are free to change and redistribute it.\n"
             "There is NO WARRANTY, to the extent permitted by law.\n"));
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, g_getenv ("LEAFWEND_LOCALE") ? g_getenv ("LEAFWEND_LOCALE") : LW_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  xmlInitParser ();

  if (argc < 2)
    {
      lw_complain (_ ("name a command; try “leafwend-cli --help”"));
      return LW_EXIT_USAGE;
    }
  if (strcmp (argv[1], "--help") == 0 || strcmp (argv[1], "-h") == 0)
    return print_help (), 0;
  if (strcmp (argv[1], "--version") == 0)
    return print_version (), 0;

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    if (strcmp (argv[1], commands[i].name) == 0)
      return commands[i].run (argc - 1, argv + 1);

  lw_complain (_ ("there is no command “%s”; try “leafwend-cli --help”"), argv[1]);
  return LW_EXIT_USAGE;
}

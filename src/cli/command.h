/* What the commands share: options, seasons from files, output, complaints. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

#define LW_EXIT_WRONG 1 /* the file or the work failed */
#define LW_EXIT_USAGE 2 /* the command was not understood */
#define LW_EXIT_MISSED 3 /* reach: an aim cannot be met; fit: there is not enough data; spread: nothing steadier was found */

/* A command: `run` gets its own arguments, argv[0] being its name, and returns the exit status. */
typedef struct
{
  const char *name;
  const char *usage;   /* "SEASON [--batch NAME]..." */
  const char *summary; /* N_() */
  int (*run) (int argc, char **argv);
} LwCommand;

int       lw_command_run     (int             argc,
                              char          **argv);
int       lw_command_card    (int             argc,
                              char          **argv);
int       lw_command_check   (int             argc,
                              char          **argv);
int       lw_command_compare (int             argc,
                               char          **argv);
int       lw_command_fit     (int             argc,
                              char          **argv);
int       lw_command_heat    (int             argc,
                              char          **argv);
int       lw_command_knockon (int             argc,
                              char          **argv);
int       lw_command_log     (int             argc,
                              char          **argv);
int       lw_command_picture (int             argc,
                              char          **argv);
int       lw_command_reach   (int             argc,
                              char          **argv);
int       lw_command_replan  (int             argc,
                              char          **argv);
int       lw_command_spread  (int             argc,
                              char          **argv);
int       lw_command_teas    (int             argc,
                              char          **argv);
int       lw_command_weather (int             argc,
                              char          **argv);
int       lw_command_model   (int             argc,
                              char          **argv);

/* Parses `entries` out of argv; the season's file is what remains, one and only one. FALSE and a
 * complaint on stderr otherwise. */
gboolean  lw_command_options (const char     *name,
                              const GOptionEntry *entries,
                              int            *argc,
                              char         ***argv,
                              const char    **season_path);

/* The same; `told` stands under the options in the command's help. */
gboolean  lw_command_options_told (const char *name,
                                   const char *told,
                                   const GOptionEntry *entries,
                                   int        *argc,
                                   char     ***argv,
                                   const char **season_path);

/* Only the options; argv then holds the operands from 1 on, called `operands` in the command's help. */
gboolean  lw_command_parse   (const char     *name,
                              const char     *operands,
                              const char     *told,
                              const GOptionEntry *entries,
                              int            *argc,
                              char         ***argv);

/* Tells every problem on stderr; NULL if there is one. */
LwSeason *lw_command_season  (const char     *path);

/* Indices of the batches named, or of all if `names` is NULL. A name is the whole name or its first
 * word where only one batch begins with it. NULL and a complaint if one is not there. */
GArray   *lw_command_batches (const LwSeason *season,
                              char          **names);

/* The same for one name. FALSE and a complaint if it is not there. */
gboolean  lw_command_batch   (const LwSeason *season,
                              const char     *name,
                              guint          *batch);

/* Writes to the file, whole or not at all, or to standard output if `path` is NULL. What is no season never takes the place
 * of one. */
gboolean  lw_command_output  (const char     *path,
                              const char     *text,
                              gsize           length);

/* Saves the season's file as the window does, or writes it to standard output if `path` is "-". */
gboolean  lw_command_save    (const LwSeason *season,
                              const char     *path);

void      lw_complain        (const char     *format,
                              ...) G_GNUC_PRINTF (1, 2);

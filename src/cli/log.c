/* leafwend-cli log: what a table of temperatures holds, and the table into a batch as a log. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <stdio.h>
#include <string.h>

#include "season/document.h"
#include "season/edit.h"
#include "season/import.h"
#include "season/log-say.h"
#include "season/text.h"

static const char told[] =
  "Reads a table of times and temperatures and tells what was read, and of each row or value that is left out\n"
  "its line and why. With --check nothing is written. A table with dates begins by the clock, another one with\n"
  "the step named, or else with the batch.\n"
  "  --take \"Pan=wall\"   the column “Pan” is wall; also leaf, air, none, clock, stopwatch, seconds,\n"
  "                      minutes, hours, date";

typedef struct
{
  char *table, *batch, *output;
  char **take;
  int step;
  double minute;
  gboolean check;
} Wish;

static const struct
{
  const char *word;
  LwLogUse use;
  LwLogTime time;
} uses[] = {
  { "none", LW_USE_NONE, 0 }, { "leaf", LW_USE_LEAF, 0 }, { "wall", LW_USE_WALL, 0 }, { "air", LW_USE_AIR, 0 },
  { "date", LW_USE_DATE, 0 }, { "clock", LW_USE_TIME, LW_TIME_CLOCK }, { "seconds", LW_USE_TIME, LW_TIME_SECONDS },
  { "minutes", LW_USE_TIME, LW_TIME_MINUTES }, { "hours", LW_USE_TIME, LW_TIME_HOURS },
  { "stopwatch", LW_USE_TIME, LW_TIME_STOPWATCH },
};

static gboolean
take_column (LwLogTable *table,
             const char *wish)
{
  const char *is = strrchr (wish, '=');
  g_autofree char *name = is != NULL ? g_strndup (wish, (gsize) (is - wish)) : NULL;

  for (guint i = 0; name != NULL && i < table->n_columns; i++)
    for (guint k = 0; strcmp (table->columns[i].name, name) == 0 && k < G_N_ELEMENTS (uses); k++)
      if (strcmp (is + 1, uses[k].word) == 0)
        {
          lw_log_table_use (table, i, uses[k].use);
          if (uses[k].use == LW_USE_TIME)
            table->columns[i].time = uses[k].time;
          return TRUE;
        }

  lw_complain (_ ("log: “%s” is not COLUMN=USE with a column of the table and leaf, wall, air, none, date, clock,"
                  " stopwatch, seconds, minutes or hours"), wish);

  return FALSE;
}

static void
tell_problems (GPtrArray  *problems,
               const char *path)
{
  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *text = lw_problem_text (g_ptr_array_index (problems, i), path);

      fprintf (stderr, "%s\n", text);
    }
}

static void
tell_taken (const LwLogTaken *taken,
            const LwLogTable *table,
            FILE             *to)
{
  g_autofree char *rows = lw_say_taken (taken);

  fprintf (to, "%s\n", rows);
  for (guint i = 0; i < taken->log->n_curves; i++)
    {
      g_autofree char *curve = lw_say_curve (&taken->log->curves[i], table);

      fprintf (to, "%s\n", curve);
    }
}

/* (transfer full) tells all on the way; NULL if nothing could be read, and then `status` says how it ends. */
static LwLogTaken *
read_log (const Wish    *wish,
          const LwBatch *batch,
          int           *status)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwLogTable) table = lw_log_table_load (wish->table, problems);
  g_autofree char *name = lw_import_name (wish->table);
  g_autofree char *id = lw_import_log_id (batch, name);
  g_autoptr (LwLogTaken) taken = NULL;

  *status = LW_EXIT_WRONG;
  tell_problems (problems, wish->table);
  if (table == NULL)
    return NULL;

  for (char **at = wish->take; at != NULL && *at != NULL; at++)
    if (!take_column (table, *at))
      {
        *status = LW_EXIT_USAGE;
        return NULL;
      }

  taken = lw_log_take (table, id, name);
  tell_problems (taken->problems, wish->table);
  if (taken->untold > 0)
    fprintf (stderr, ngettext ("and %u more\n", "and %u more\n", taken->untold), taken->untold);
  if (taken->log == NULL)
    return NULL;

  tell_taken (taken, table, wish->output != NULL && strcmp (wish->output, "-") == 0 ? stderr : stdout);

  return g_steal_pointer (&taken);
}

static int
import_log (const Wish *wish,
            LwSeason   *season,
            guint       at,
            const char *path)
{
  const LwBatch *batch = season->batches[at];
  g_autoptr (LwLogTaken) taken = NULL;
  g_autoptr (LwSeason) next = NULL;
  LwBatchLog log = { NULL, wish->step - 1, wish->minute };
  int status;

  if (wish->step < 0 || wish->step > (int) batch->n_steps)
    {
      lw_complain (ngettext ("log: the batch has %u step", "log: the batch has %u steps", batch->n_steps), batch->n_steps);
      return LW_EXIT_USAGE;
    }
  taken = read_log (wish, batch, &status);
  if (taken == NULL)
    return status;
  if (wish->check)
    return 0;
  if (batch->n_logs >= LW_MAX_LOGS)
    {
      lw_complain (_ ("log: the batch has %d logs, and no room for one more"), LW_MAX_LOGS);
      return LW_EXIT_WRONG;
    }

  if (taken->dated && wish->step == 0)
    log.minute += (taken->start_s - (double) batch->when_s) / 60;
  if (log.minute < -LW_LOG_MOST_MINUTES || log.minute > LW_LOG_MOST_MINUTES)
    {
      lw_complain (_ ("log: it begins more than thirty days before or after the batch; name a --step"));
      return LW_EXIT_WRONG;
    }
  log.log = g_steal_pointer (&taken->log);
  next = lw_edit_add_log (season, at, log);

  return lw_command_save (next, wish->output != NULL ? wish->output : path) ? 0 : LW_EXIT_WRONG;
}

int
lw_command_log (int    argc,
                char **argv)
{
  Wish wish = { 0 };
  const GOptionEntry entries[] = {
    { "import", 'i', 0, G_OPTION_ARG_FILENAME, &wish.table, N_ ("The table: a CSV file of temperatures"), N_ ("FILE") },
    { "batch", 'b', 0, G_OPTION_ARG_STRING, &wish.batch, N_ ("The batch that it was logged of"), N_ ("NAME") },
    { "step", 's', 0, G_OPTION_ARG_INT, &wish.step, N_ ("It begins with that step, from 1"), N_ ("N") },
    { "minute", 'm', 0, G_OPTION_ARG_DOUBLE, &wish.minute, N_ ("And so much later"), N_ ("MINUTES") },
    { "take", 't', 0, G_OPTION_ARG_STRING_ARRAY, &wish.take, N_ ("What a column is"), N_ ("COLUMN=USE") },
    { "check", 'c', 0, G_OPTION_ARG_NONE, &wish.check, N_ ("Only tell what would be read"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &wish.output, N_ ("Write here instead of the season's own file"),
      N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  g_autoptr (LwSeason) season = NULL;
  const char *path;
  int status = LW_EXIT_USAGE;
  guint at;

  if (lw_command_options_told ("log", told, entries, &argc, &argv, &path))
    {
      if (wish.table == NULL || wish.batch == NULL)
        lw_complain (_ ("log: give --import FILE and --batch NAME; try “leafwend-cli log --help”"));
      else if ((season = lw_command_season (path)) == NULL || !lw_command_batch (season, wish.batch, &at))
        status = LW_EXIT_WRONG;
      else
        status = import_log (&wish, season, at, path);
    }

  g_free (wish.table);
  g_free (wish.batch);
  g_free (wish.output);
  g_strfreev (wish.take);

  return status;
}

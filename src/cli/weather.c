/* leafwend-cli weather: a table of hours into a season, as a new weather or in the place of one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cli/command.h"

#include <stdio.h>
#include <string.h>

#include "season/document.h"
#include "season/edit.h"
#include "season/shape.h"
#include "season/text.h"
#include "season/weather-csv.h"

static gboolean
is_id (const char *id)
{
  gsize length = strspn (id, "abcdefghijklmnopqrstuvwxyz0123456789-");

  return length >= 1 && length <= LW_MAX_ID && id[length] == '\0';
}

static gboolean
check_names (const char *table,
             const char *id,
             const char *name)
{
  if (table == NULL || id == NULL)
    lw_complain (_ ("weather: give --import FILE and --id ID; try “leafwend-cli weather --help”"));
  else if (!is_id (id))
    lw_complain (_ ("weather: an id is lower-case letters, digits and hyphens, at most %d of them"), LW_MAX_ID);
  else if (name != NULL && (*name == '\0' || !g_utf8_validate (name, -1, NULL)
                            || g_utf8_strlen (name, -1) > LW_MAX_TEXT))
    lw_complain (_ ("weather: a name has 1 to %d characters"), LW_MAX_TEXT);
  else
    return TRUE;

  return FALSE;
}

/* (transfer full) tells every problem on stderr; NULL if there is one. */
static LwWeather *
read_table (const char *path,
            const char *id,
            const char *name)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwWeather *weather = lw_weather_csv_load (path, id, name, problems);

  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *text = lw_problem_text (g_ptr_array_index (problems, i), path);

      fprintf (stderr, "%s\n", text);
    }

  return weather;
}

int
lw_command_weather (int    argc,
                    char **argv)
{
  g_autofree char *table = NULL, *id = NULL, *name = NULL, *output = NULL;
  const GOptionEntry entries[] = {
    { "import", 'i', 0, G_OPTION_ARG_FILENAME, &table, N_ ("The table: a CSV file with a row for each hour"),
      N_ ("FILE") },
    { "id", 0, 0, G_OPTION_ARG_STRING, &id, N_ ("The weather's id; one that is there is replaced"), N_ ("ID") },
    { "name", 'n', 0, G_OPTION_ARG_STRING, &name, N_ ("The weather's name"), N_ ("NAME") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &output, N_ ("Write here instead of the season's own file"),
      N_ ("FILE") },
    G_OPTION_ENTRY_NULL
  };
  const char *path;
  g_autoptr (LwSeason) season = NULL, next = NULL;
  const LwWeather *old;
  LwWeather *weather;

  if (!lw_command_options ("weather", entries, &argc, &argv, &path) || !check_names (table, id, name))
    return LW_EXIT_USAGE;

  season = lw_command_season (path);
  if (season == NULL)
    return LW_EXIT_WRONG;

  old = lw_season_weather (season, id);
  if (old == NULL && season->n_weathers >= LW_MAX_WEATHERS)
    {
      lw_complain (_ ("the season has %d weathers, and no room for one more; replace one of them"), LW_MAX_WEATHERS);
      return LW_EXIT_WRONG;
    }

  weather = read_table (table, id, name != NULL ? name : old != NULL ? old->name : id);
  if (weather == NULL)
    return LW_EXIT_WRONG;

  next = lw_edit_add_weather (season, weather);

  return lw_command_save (next, output != NULL ? output : path) ? 0 : LW_EXIT_WRONG;
}

/* Guessing columns: whole words of the heading decide, then what the cells look like. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/log-columns.h"

#include <string.h>

#include "season/table.h"
#include "season/weather-columns.h"

/* The first row found decides. */
static const struct
{
  const char *word;
  LwLogUse use;
} words[] = {
  { "date", LW_USE_DATE }, { "day", LW_USE_DATE },
  { "datetime", LW_USE_TIME }, { "timestamp", LW_USE_TIME }, { "time", LW_USE_TIME }, { "clock", LW_USE_TIME },
  { "elapsed", LW_USE_TIME }, { "stopwatch", LW_USE_TIME }, { "duration", LW_USE_TIME }, { "seconds", LW_USE_TIME },
  { "second", LW_USE_TIME }, { "sec", LW_USE_TIME },
  { "minutes", LW_USE_TIME }, { "minute", LW_USE_TIME }, { "min", LW_USE_TIME }, { "hours", LW_USE_TIME },
  { "leaf", LW_USE_LEAF }, { "leaves", LW_USE_LEAF }, { "tea", LW_USE_LEAF },
  { "wall", LW_USE_WALL }, { "pan", LW_USE_WALL }, { "drum", LW_USE_WALL }, { "surface", LW_USE_WALL },
  { "metal", LW_USE_WALL },
  { "air", LW_USE_AIR }, { "room", LW_USE_AIR }, { "ambient", LW_USE_AIR }, { "inlet", LW_USE_AIR },
  { "chamber", LW_USE_AIR },
};

static const struct
{
  const char *word;
  LwLogTime time;
} times[] = {
  { "minutes", LW_TIME_MINUTES }, { "minute", LW_TIME_MINUTES }, { "min", LW_TIME_MINUTES },
  { "hours", LW_TIME_HOURS }, { "hour", LW_TIME_HOURS }, { "h", LW_TIME_HOURS },
};

/* What goes by them with a colon counts from its start, and not from midnight; by minutes only where nothing larger stands
 * beside them, as in "HH:MM:SS". */
static const char *const counted[] = { "elapsed", "stopwatch", "duration", NULL };
static const char *const by_minutes[] = { "minutes", "min", "mm", NULL };
static const char *const larger[] = { "h", "hh", "dd", "yyyy", "clock", NULL };

/* "K" is also a type of thermocouple: a unit stands alone in its brackets, or behind a degree sign or "_". */
static const struct
{
  const char *text;
  const char *unit;
  double factor;
  double offset;
} units[] = {
  { "f", "°F", 5.0 / 9, -160.0 / 9 }, { "degf", "°F", 5.0 / 9, -160.0 / 9 }, { "fahrenheit", "°F", 5.0 / 9, -160.0 / 9 },
  { "k", "K", 1, -273.15 }, { "kelvin", "K", 1, -273.15 },
};

gboolean
lw_log_use_of (LwLogUse use,
               LwLogOf *of)
{
  *of = use == LW_USE_WALL ? LW_LOG_WALL : use == LW_USE_AIR ? LW_LOG_AIR : LW_LOG_LEAF;

  return use >= LW_USE_LEAF;
}

/* (transfer full) the letters of what stands where a unit would. */
static char *
unit_text (const char *text)
{
  const char *begin = strpbrk (text, "([");
  const char *degree = g_strrstr (text, "°"), *low = strrchr (text, '_');
  GString *letters = g_string_new (NULL);

  if (begin == NULL)
    begin = degree != NULL ? degree : low != NULL ? low : "";

  for (; *begin != '\0' && *begin != ')' && *begin != ']'; begin++)
    if (g_ascii_isalpha (*begin))
      g_string_append_c (letters, *begin);

  return g_string_free (letters, FALSE);
}

static void
guess_unit (LwLogColumn *column,
            const char  *text)
{
  g_autofree char *unit = unit_text (text);

  column->unit = "°C";
  column->factor = 1;
  column->offset = 0;
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (strcmp (unit, units[i].text) == 0)
      {
        column->unit = units[i].unit;
        column->factor = units[i].factor;
        column->offset = units[i].offset;
      }
}

static gboolean
has_word (const char        *text,
          const char *const *any)
{
  for (; *any != NULL; any++)
    if (lw_column_word (text, *any) != NULL)
      return TRUE;

  return FALSE;
}

static void
guess (LwLogColumn *column,
       const char  *first)
{
  /* Turns ℃ into °C. */
  g_autofree char *plain = g_utf8_normalize (column->name, -1, G_NORMALIZE_NFKC);
  g_autofree char *text = plain != NULL ? g_utf8_casefold (plain, -1) : g_strdup ("");

  guess_unit (column, text);
  column->use = LW_USE_NONE;
  column->time = strchr (first, ':') != NULL ? LW_TIME_CLOCK : LW_TIME_SECONDS;
  if (!column->named)
    return;

  for (guint i = 0; i < G_N_ELEMENTS (words) && column->use == LW_USE_NONE; i++)
    if (lw_column_word (text, words[i].word) != NULL)
      column->use = words[i].use;
  for (guint i = 0; i < G_N_ELEMENTS (times) && column->time == LW_TIME_SECONDS; i++)
    if (lw_column_word (text, times[i].word) != NULL)
      column->time = times[i].time;
  if (column->time == LW_TIME_CLOCK
      && (has_word (text, counted) || (has_word (text, by_minutes) && !has_word (text, larger))))
    column->time = LW_TIME_STOPWATCH;
}

static int
find_use (const LwLogColumn *columns,
          guint              n,
          LwLogUse           use)
{
  for (guint i = 0; i < n; i++)
    if (columns[i].use == use)
      return (int) i;

  return -1;
}

void
lw_log_columns_guess (LwLogColumn       *columns,
                      const char *const *first,
                      guint              n)
{
  int time, date;
  guint curves = 0;
  double counts_s;

  for (guint i = 0; i < n; i++)
    guess (&columns[i], first[i]);

  /* A date may hold the time too, and a table without names begins with its time. */
  time = find_use (columns, n, LW_USE_TIME);
  date = find_use (columns, n, LW_USE_DATE);
  if (time < 0)
    time = MAX (date, 0);
  for (guint i = 0; i < n; i++)
    if (columns[i].use == LW_USE_TIME || ((int) i != date && columns[i].use == LW_USE_DATE))
      columns[i].use = LW_USE_NONE;
  columns[time].use = LW_USE_TIME;
  /* Nor does a time beside a date count from its start. */
  if (strchr (first[time], ':') != NULL
      && (columns[time].time != LW_TIME_STOPWATCH || date >= 0 || !lw_table_stopwatch (first[time], &counts_s)))
    columns[time].time = LW_TIME_CLOCK;

  for (guint i = 0; i < n; i++)
    curves += columns[i].use >= LW_USE_LEAF;
  for (guint i = 0; i < n && curves == 0; i++)
    if (columns[i].use == LW_USE_NONE && lw_table_number (first[i], &(double) { 0 }))
      {
        columns[i].use = LW_USE_LEAF;
        curves++;
      }
}

/* Headers into columns: whole words decide what is meant, what follows them the unit. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/weather-columns.h"

#include <string.h>

#include "season/text.h"

static const struct
{
  const char *label;
  const char *sample;
} columns[LW_N_COLUMNS] = {
  [LW_COLUMN_TIME] = { N_ ("time"), "Time" },
  [LW_COLUMN_DATE] = { N_ ("date"), "Date" },
  [LW_COLUMN_TEMP] = { N_ ("air temperature"), "Air temperature (°C)" },
  [LW_COLUMN_HUMIDITY] = { N_ ("relative humidity"), "Humidity (%)" },
  [LW_COLUMN_SUN] = { N_ ("sunlight"), "Irradiance (W/m²)" },
  [LW_COLUMN_CLOUD] = { N_ ("cloud"), "Cloud (%)" },
  [LW_COLUMN_WIND] = { N_ ("wind"), "Wind (m/s)" },
  [LW_COLUMN_RAIN] = { N_ ("rain"), "Rain (mm)" },
};

/* Where several are in one header, the first row here decides. */
static const struct
{
  const char *word;
  LwColumnKind kind;
} names[] = {
  { "time", LW_COLUMN_TIME }, { "datetime", LW_COLUMN_TIME }, { "timestamp", LW_COLUMN_TIME },
  { "date", LW_COLUMN_DATE },
  { "humidity", LW_COLUMN_HUMIDITY }, { "rh", LW_COLUMN_HUMIDITY },
  { "cloud", LW_COLUMN_CLOUD }, { "clouds", LW_COLUMN_CLOUD }, { "cloudiness", LW_COLUMN_CLOUD },
  { "cloudcover", LW_COLUMN_CLOUD },
  { "wind", LW_COLUMN_WIND }, { "windspeed", LW_COLUMN_WIND },
  { "rain", LW_COLUMN_RAIN }, { "rainfall", LW_COLUMN_RAIN }, { "precipitation", LW_COLUMN_RAIN },
  { "sun", LW_COLUMN_SUN }, { "solar", LW_COLUMN_SUN }, { "irradiance", LW_COLUMN_SUN },
  { "radiation", LW_COLUMN_SUN }, { "ghi", LW_COLUMN_SUN },
  { "temperature", LW_COLUMN_TEMP }, { "temp", LW_COLUMN_TEMP },
};

/* Words of columns that look alike and hold something else. */
static const char *const others[] = {
  "dew", "dewpoint", "wet", "wetbulb", "soil", "ground", "surface", "water", "leaf", "apparent", "feels",
  "min", "max", "minimum", "maximum", "low", "mid", "high", "gust", "gusts", "direction", "probability",
  "chance", "diffuse", "direct", "normal", "longwave", "hours", "duration", "uv", "index", "indoor", "inside",
};

/* A factor of 0: known, and of no use. Longer ends stand before shorter ones that they hold. */
static const struct
{
  LwColumnKind kind;
  const char *end;
  double factor;
  double offset;
} units[] = {
  { LW_COLUMN_TIME, "utc", 0, 0 }, { LW_COLUMN_TIME, "gmt", 0, 0 },
  { LW_COLUMN_TEMP, "fahrenheit", 5.0 / 9, -160.0 / 9 }, { LW_COLUMN_TEMP, "kelvin", 1, -273.15 },
  { LW_COLUMN_TEMP, "celsius", 1, 0 }, { LW_COLUMN_TEMP, "f", 5.0 / 9, -160.0 / 9 },
  { LW_COLUMN_TEMP, "k", 1, -273.15 }, { LW_COLUMN_TEMP, "c", 1, 0 },
  { LW_COLUMN_HUMIDITY, "%", 1, 0 }, { LW_COLUMN_HUMIDITY, "pct", 1, 0 }, { LW_COLUMN_HUMIDITY, "percent", 1, 0 },
  { LW_COLUMN_SUN, "whm2", 0, 0 }, { LW_COLUMN_SUN, "jm2", 0, 0 }, { LW_COLUMN_SUN, "jcm2", 0, 0 },
  { LW_COLUMN_SUN, "kwm2", 1000, 0 }, { LW_COLUMN_SUN, "wm2", 1, 0 },
  { LW_COLUMN_CLOUD, "%", 1, 0 }, { LW_COLUMN_CLOUD, "pct", 1, 0 }, { LW_COLUMN_CLOUD, "percent", 1, 0 },
  { LW_COLUMN_CLOUD, "oktas", 12.5, 0 }, { LW_COLUMN_CLOUD, "okta", 12.5, 0 }, { LW_COLUMN_CLOUD, "tenths", 10, 0 },
  { LW_COLUMN_WIND, "kmh", 1 / 3.6, 0 }, { LW_COLUMN_WIND, "kph", 1 / 3.6, 0 }, { LW_COLUMN_WIND, "mph", 0.44704, 0 },
  { LW_COLUMN_WIND, "knots", 1.852 / 3.6, 0 }, { LW_COLUMN_WIND, "kn", 1.852 / 3.6, 0 },
  { LW_COLUMN_WIND, "kt", 1.852 / 3.6, 0 }, { LW_COLUMN_WIND, "ms1", 1, 0 }, { LW_COLUMN_WIND, "ms", 1, 0 },
  { LW_COLUMN_RAIN, "mm", 1, 0 }, { LW_COLUMN_RAIN, "inches", 25.4, 0 }, { LW_COLUMN_RAIN, "inch", 25.4, 0 },
  { LW_COLUMN_RAIN, "in", 25.4, 0 },
};

const char *
lw_column_label (LwColumnKind kind)
{
  return _ (columns[kind].label);
}

const char *
lw_column_sample (LwColumnKind kind)
{
  return columns[kind].sample;
}

/* Past the word at `at`, which is empty where no letter stands. */
static const char *
word_end (const char *at)
{
  while (*at != '\0' && g_unichar_isalpha (g_utf8_get_char (at)))
    at = g_utf8_next_char (at);

  return at;
}

const char *
lw_column_word (const char *text,
                const char *word)
{
  gsize length = strlen (word);

  for (const char *at = text; *at != '\0';)
    {
      const char *end = word_end (at);

      if ((gsize) (end - at) == length && strncmp (at, word, length) == 0)
        return end;
      at = end > at ? end : g_utf8_next_char (at);
    }

  return NULL;
}

/* (transfer full) letters, digits and percent signs only. */
static char *
unit_text (const char *text)
{
  GString *unit = g_string_new (NULL);

  for (const char *at = text; *at != '\0'; at = g_utf8_next_char (at))
    {
      gunichar c = g_utf8_get_char (at);

      if (g_unichar_isalnum (c) || c == '%')
        g_string_append_unichar (unit, c);
    }

  return g_string_free (unit, FALSE);
}

static void
set_unit (LwColumn   *column,
          const char *after)
{
  g_autofree char *unit = unit_text (after);

  column->factor = 1;
  column->offset = 0;
  column->unit_known = strpbrk (after, "/([") == NULL || *unit == '\0';

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].kind == column->kind && g_str_has_suffix (unit, units[i].end))
      {
        column->unit_known = units[i].factor != 0;
        column->factor = units[i].factor;
        column->offset = units[i].offset;
        return;
      }
}

gboolean
lw_column_named (const char *header,
                 LwColumn   *column)
{
  /* Turns ² into 2, ℃ into °C. */
  g_autofree char *plain = g_utf8_normalize (header, -1, G_NORMALIZE_NFKC);
  g_autofree char *text = plain != NULL ? g_utf8_casefold (plain, -1) : g_strdup ("");
  const char *after = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    if (lw_column_word (text, others[i]) != NULL)
      return FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      const char *found = after == NULL || names[i].kind == column->kind ? lw_column_word (text, names[i].word) : NULL;

      if (found != NULL && found > after)
        {
          after = found;
          column->kind = names[i].kind;
        }
    }

  if (after != NULL)
    set_unit (column, after);

  return after != NULL;
}

/* Tables in text. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/table.h"

#include <math.h>
#include <string.h>

#include "season/problem.h"
#include "season/text.h"

#define MOST_QUOTED 40
#define MOST_DIGITS 40
#define DAYS_TO_1970 719163 /* from 1 January of the year 1, as GDate counts */

char *
lw_table_text (const char *data,
               gsize       length,
               gsize       most,
               GPtrArray  *problems)
{
  static const char mark[] = "\xef\xbb\xbf";
  char *text;

  if (length > most)
    {
      lw_problems_add (problems, 0, _ ("Leave out what no batch needs."), _ ("The file is larger than %u MiB."),
                       (guint) (most / 1024 / 1024));
      return NULL;
    }
  if (memchr (data, '\0', length) != NULL)
    {
      lw_problems_add (problems, 0, _ ("Save the table as comma-separated text in UTF-8."),
                       _ ("The file is not plain text."));
      return NULL;
    }

  if (length >= strlen (mark) && memcmp (data, mark, strlen (mark)) == 0)
    {
      data += strlen (mark);
      length -= strlen (mark);
    }
  if (g_utf8_validate_len (data, length, NULL))
    return g_strndup (data, length);

  text = g_convert (data, (gssize) length, "UTF-8", "WINDOWS-1252", NULL, NULL, NULL);
  if (text == NULL)
    lw_problems_add (problems, 0, _ ("Save the table as comma-separated text in UTF-8."),
                     _ ("The file's letters are written in a way that is not known."));

  return text;
}

const char *
lw_table_line (char **at)
{
  char *line = *at, *end = line + strcspn (line, "\r\n");

  *at = end;
  if (*end != '\0')
    *at += end[0] == '\r' && end[1] == '\n' ? 2 : 1;
  *end = '\0';

  return line;
}

gboolean
lw_table_is_empty (const char *line)
{
  line += strspn (line, " \t,;");

  return *line == '\0' || *line == '#' || g_ascii_strncasecmp (line, "sep=", 4) == 0;
}

char
lw_table_separator (const char *line)
{
  return strchr (line, '\t') != NULL ? '\t' : strchr (line, ';') != NULL ? ';' : ',';
}

/* Past the cell at `at`, which is put into `cell`. In quotes, two quotes are one. */
static const char *
read_cell (const char *at,
           char        separator,
           GString    *cell)
{
  gboolean quoted = FALSE;

  for (; *at != '\0' && (quoted || *at != separator); at++)
    {
      if (*at != '"')
        g_string_append_c (cell, *at);
      else if (quoted && at[1] == '"')
        g_string_append_c (cell, *at++);
      else
        quoted = !quoted;
    }

  return at;
}

GPtrArray *
lw_table_cells (const char *line,
                char        separator)
{
  GPtrArray *cells = g_ptr_array_new_with_free_func (g_free);

  for (const char *at = line;; at++)
    {
      GString *cell = g_string_new (NULL);

      at = read_cell (at, separator, cell);
      g_ptr_array_add (cells, g_strstrip (g_string_free (cell, FALSE)));
      if (*at == '\0')
        return cells;
    }
}

guint
lw_table_count (const char *line,
                char        separator)
{
  gboolean quoted = FALSE;
  guint n = 1;

  for (; *line != '\0'; line++)
    {
      quoted ^= *line == '"';
      n += !quoted && *line == separator;
    }

  return n;
}

guint
lw_table_split (char        *line,
                char         separator,
                const char **cells,
                guint        most)
{
  guint n = 0;

  for (gboolean more = TRUE; more && n < most; n++)
    {
      char *from = line, *to = line;
      gboolean quoted = FALSE;

      for (; *line != '\0' && (quoted || *line != separator); line++)
        {
          if (*line != '"')
            *to++ = *line;
          else if (quoted && line[1] == '"')
            *to++ = *line++;
          else
            quoted = !quoted;
        }
      more = *line != '\0';
      line++;
      *to = '\0';
      cells[n] = g_strstrip (from);
    }

  return n;
}

gboolean
lw_table_number (const char *cell,
                 double     *value)
{
  char text[MOST_DIGITS + 1];
  gsize length = strspn (cell, "0123456789.,+-eE");
  char *comma, *end;

  if (length == 0 || length > MOST_DIGITS || cell[length] != '\0')
    return FALSE;

  memcpy (text, cell, length + 1);
  comma = strchr (text, ',');
  if (comma != NULL && strchr (text, '.') == NULL)
    *comma = '.';
  *value = g_ascii_strtod (text, &end);

  return *end == '\0' && isfinite (*value);
}

/* A number of `least` to `most` digits; `*at` goes on past it. */
static gboolean
digits (const char **at,
        guint        least,
        guint        most,
        guint       *number)
{
  guint n = 0;

  for (*number = 0; n < most && g_ascii_isdigit (**at); n++, ++*at)
    *number = 10 * *number + (guint) (**at - '0');

  return n >= least;
}

static gboolean
sign (const char **at,
      const char  *one_of)
{
  if (**at == '\0' || strchr (one_of, **at) == NULL)
    return FALSE;

  ++*at;

  return TRUE;
}

/* What stands behind the point or comma of a second, if there is one; `*at` goes on past it. */
static double
second_part (const char **at)
{
  double part = 0, tenth = 1;

  if (**at == '.' || **at == ',')
    for (++*at; g_ascii_isdigit (**at); ++*at)
      part += (**at - '0') * (tenth /= 10);

  return part;
}

gboolean
lw_table_stopwatch (const char *cell,
                    double     *since_s)
{
  guint number[3], n = 1;
  double part;

  if (!digits (&cell, 1, 6, &number[0]))
    return FALSE;
  for (; n < 3 && sign (&cell, ":"); n++)
    if (!digits (&cell, 1, 2, &number[n]) || number[n] > 59)
      return FALSE;
  part = second_part (&cell);
  if (n < 2 || *cell != '\0')
    return FALSE;

  *since_s = (n == 3 ? 3600.0 * number[0] + 60.0 * number[1] : 60.0 * number[0]) + number[n - 1] + part;

  return TRUE;
}

/* Also past those that keep a line together, as spreadsheets write them. */
static const char *
skip_space (const char *at)
{
  while (g_unichar_isspace (g_utf8_get_char (at)))
    at = g_utf8_next_char (at);

  return at;
}

/* Where "AM" or "PM" stands behind a time, the hour of the day's twenty-four; `*at` goes on past it. FALSE if it is none
 * of twelve. */
static gboolean
half_day (const char **at,
          guint       *hour)
{
  const char *half = skip_space (*at);
  gboolean late = g_ascii_strncasecmp (half, "pm", 2) == 0;

  if (!late && g_ascii_strncasecmp (half, "am", 2) != 0)
    return TRUE;
  if (*hour < 1 || *hour > 12)
    return FALSE;

  *hour = *hour % 12 + (late ? 12 : 0);
  *at = half + 2;

  return TRUE;
}

gboolean
lw_table_clock (const char *cell,
                double     *since_s)
{
  guint hour, minute, second = 0;
  double part = 0;

  if (!digits (&cell, 1, 2, &hour) || !sign (&cell, ":") || !digits (&cell, 1, 2, &minute))
    return FALSE;
  if (*cell == ':')
    {
      cell++;
      if (!digits (&cell, 1, 2, &second))
        return FALSE;
      part = second_part (&cell);
    }
  if (!half_day (&cell, &hour) || *cell != '\0' || hour > 23 || minute > 59 || second > 59)
    return FALSE;

  *since_s = 3600.0 * hour + 60.0 * minute + second + part;

  return TRUE;
}

/* "2026-04-12", "2026/04/12" or "12.4.2026"; `*at` goes on past it. */
static gboolean
date_days (const char **at,
           double      *days)
{
  const char *day_first = *at;
  guint year, month, day;
  GDate date;

  if (!(digits (at, 4, 4, &year) && sign (at, "-/") && digits (at, 1, 2, &month) && sign (at, "-/")
        && digits (at, 1, 2, &day)))
    {
      *at = day_first;
      if (!(digits (at, 1, 2, &day) && sign (at, ".") && digits (at, 1, 2, &month) && sign (at, ".")
            && digits (at, 4, 4, &year)))
        return FALSE;
    }
  if (year < 1000 || !g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year))
    return FALSE;

  g_date_clear (&date, 1);
  g_date_set_dmy (&date, (GDateDay) day, (GDateMonth) month, (GDateYear) year);
  *days = g_date_get_julian (&date) - (double) DAYS_TO_1970;

  return TRUE;
}

gboolean
lw_table_moment (const char *cell,
                 double     *when_s)
{
  double days, since_s;

  if (!date_days (&cell, &days) || !sign (&cell, "T ") || !lw_table_clock (cell, &since_s))
    return FALSE;

  *when_s = 86400 * days + since_s;

  return TRUE;
}

gboolean
lw_table_time (const char *cell,
               gint64     *when_s)
{
  double moment_s;

  if (!lw_table_moment (cell, &moment_s) || moment_s != floor (moment_s))
    return FALSE;

  *when_s = (gint64) moment_s;

  return TRUE;
}

char *
lw_table_quote (const char *cell)
{
  g_autofree char *start = g_utf8_substring (cell, 0, MIN (g_utf8_strlen (cell, -1), MOST_QUOTED));

  for (char *at = start; *at != '\0'; at++)
    if (g_ascii_iscntrl (*at))
      *at = ' ';

  return g_strconcat (start, strlen (start) < strlen (cell) ? "…" : "", NULL);
}

/* Tables in text. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/table.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "season/problem.h"
#include "season/text.h"

#define MOST_QUOTED 40
#define MOST_DIGITS 40

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

  return *line == '\0' || *line == '#';
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

gboolean
lw_table_time (const char *cell,
               gint64     *when_s)
{
  int year, month, day, hour, minute, second = 0, end = 0;
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time = NULL;

  if (sscanf (cell, "%4d-%2d-%2d%*1[T ]%2d:%2d%n", &year, &month, &day, &hour, &minute, &end) < 5 || end == 0)
    if (sscanf (cell, "%2d.%2d.%4d%*1[T ]%2d:%2d%n", &day, &month, &year, &hour, &minute, &end) < 5 || end == 0)
      return FALSE;

  cell += end;
  if (*cell == ':')
    {
      end = 0;
      if (sscanf (cell, ":%2d%n", &second, &end) < 1 || end == 0)
        return FALSE;
      cell += end;
    }
  if (*cell != '\0' || year < 1000)
    return FALSE;

  time = g_date_time_new (utc, year, month, day, hour, minute, second);
  if (time == NULL)
    return FALSE;

  *when_s = g_date_time_to_unix (time);

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

/* Points of logs, written and read. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/log-points.h"

#include <string.h>

#include "season/log.h"
#include "season/notation.h"

#define BLANKS " \t\r\n"
#define A_LINE 12
#define MOST_LETTERS 40

void
lw_points_append (GString        *to,
                  const LwCourse *course)
{
  guint n;
  const double *time_s = lw_course_times (course, &n), *temp_c = lw_course_values (course);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *seconds = lw_number_text (time_s[i]), *degrees = lw_number_text (temp_c[i]);

      g_string_append_printf (to, "%s%s %s", i % A_LINE == 0 ? "\n" : " ", seconds, degrees);
    }
  g_string_append_c (to, '\n');
}

/* The next word as a number; `*at` goes on past it. FALSE if it is none. */
static gboolean
next_number (const char **at,
             double      *number)
{
  gsize length = strcspn (*at, BLANKS);
  char word[MOST_LETTERS + 1];

  if (length > MOST_LETTERS)
    return FALSE;

  memcpy (word, *at, length);
  word[length] = '\0';
  *at += length;
  *at += strspn (*at, BLANKS);

  return lw_number_parse (word, number);
}

LwPointsFault
lw_points_parse (const char *text,
                 GArray     *time_s,
                 GArray     *temp_c,
                 guint      *point)
{
  const char *at = text + strspn (text, BLANKS);
  double last = -1;

  for (*point = 1; *at != '\0'; ++*point)
    {
      double seconds, degrees;

      if (*point > LW_MAX_POINTS)
        return LW_POINTS_MANY;
      if (!next_number (&at, &seconds))
        return LW_POINTS_WORD;
      if (*at == '\0')
        return LW_POINTS_ODD;
      if (!next_number (&at, &degrees))
        return LW_POINTS_WORD;
      if (!(seconds >= 0 && seconds <= LW_LOG_MOST_S && degrees >= LW_LOG_LOW_C && degrees <= LW_LOG_HIGH_C))
        return LW_POINTS_RANGE;
      if (!(seconds > last))
        return LW_POINTS_ORDER;

      last = seconds;
      g_array_append_val (time_s, seconds);
      g_array_append_val (temp_c, degrees);
    }

  return *point > 1 ? LW_POINTS_RIGHT : LW_POINTS_NONE;
}

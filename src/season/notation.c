/* Numbers and times as the document writes them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/notation.h"

#include <stdlib.h>

static const char *
skip_digits (const char *at)
{
  while (g_ascii_isdigit (*at))
    at++;

  return at;
}

/* Past the digits that must stand at `at`; NULL if there are none or `at` is NULL. */
static const char *
need_digits (const char *at)
{
  const char *end = at != NULL ? skip_digits (at) : NULL;

  return end != at ? end : NULL;
}

gboolean
lw_number_parse (const char *text,
                 double     *value)
{
  const char *at = need_digits (text + (*text == '-'));

  if (at != NULL && *at == '.')
    at = need_digits (at + 1);
  if (at != NULL && (*at == 'e' || *at == 'E'))
    at = need_digits (at + 1 + (at[1] == '-' || at[1] == '+'));
  if (at == NULL || *at != '\0')
    return FALSE;

  *value = g_ascii_strtod (text, NULL);

  return TRUE;
}

char *
lw_number_text (double value)
{
  static const char *const formats[] = { "%.15g", "%.16g", "%.17g" };
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  for (guint i = 0; i < G_N_ELEMENTS (formats); i++)
    {
      g_ascii_formatd (text, sizeof text, formats[i], value);
      if (g_ascii_strtod (text, NULL) == value)
        break;
    }

  return g_strdup (text);
}

/* "0" stands for a digit, all else for itself. */
static gboolean
has_form (const char *text,
          const char *form)
{
  for (; *form != '\0'; form++, text++)
    if (*form == '0' ? !g_ascii_isdigit (*text) : *text != *form)
      return FALSE;

  return *text == '\0';
}

gboolean
lw_time_parse (const char *text,
               gint64     *when_s)
{
  gboolean seconds = has_form (text, "0000-00-00T00:00:00");
  g_autoptr (GTimeZone) utc = g_time_zone_new_utc ();
  g_autoptr (GDateTime) time = NULL;

  if (!seconds && !has_form (text, "0000-00-00T00:00"))
    return FALSE;

  time = g_date_time_new (utc, atoi (text), atoi (text + 5), atoi (text + 8),
                          atoi (text + 11), atoi (text + 14), seconds ? atoi (text + 17) : 0);
  if (time == NULL)
    return FALSE;

  *when_s = g_date_time_to_unix (time);

  return TRUE;
}

char *
lw_time_text (gint64 when_s)
{
  g_autoptr (GDateTime) time = g_date_time_new_from_unix_utc (when_s);

  if (time == NULL)
    return g_strdup ("");

  return g_strdup_printf (g_date_time_get_second (time) != 0 ? "%04d-%02d-%02dT%02d:%02d:%02d"
                                                             : "%04d-%02d-%02dT%02d:%02d",
                          g_date_time_get_year (time), g_date_time_get_month (time),
                          g_date_time_get_day_of_month (time), g_date_time_get_hour (time),
                          g_date_time_get_minute (time), g_date_time_get_second (time));
}

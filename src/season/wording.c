/* How numbers are said. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/wording.h"

#include <math.h>

#include "season/text.h"

char *
lw_say_minutes (double minutes)
{
  int seconds = (int) lround (minutes * 60);
  int hours = seconds / 3600;
  int rest = seconds / 60 % 60;

  if (seconds < 60)
    /* Translators: seconds */
    return g_strdup_printf (_ ("%d s"), seconds);
  if (hours > 0 && seconds % 60 > 0)
    /* Translators: hours, minutes and seconds */
    return g_strdup_printf (_ ("%d h %d min %d s"), hours, rest, seconds % 60);
  if (hours > 0 && rest > 0)
    /* Translators: hours and minutes */
    return g_strdup_printf (_ ("%d h %d min"), hours, rest);
  if (hours > 0)
    /* Translators: hours */
    return g_strdup_printf (_ ("%d h"), hours);
  if (seconds % 60 > 0)
    /* Translators: minutes and seconds */
    return g_strdup_printf (_ ("%d min %d s"), rest, seconds % 60);

  /* Translators: minutes */
  return g_strdup_printf (_ ("%d min"), rest);
}

char *
lw_say_setting (LwSetting setting,
                double    value)
{
  const LwSettingRow *row = lw_setting_row (setting);
  const char *unit = lw_unit_words (row->unit);

  if (setting == LW_SET_MINUTES)
    return lw_say_minutes (value);

  /* Translators: a number and its unit */
  return g_strdup_printf (_ ("%.*f %s"), row->digits, value, unit);
}

char *
lw_say_kg (double kg)
{
  if (fabs (kg) < 0.9995)
    /* Translators: a weight in grams */
    return g_strdup_printf (_ ("%.0f g"), 1000 * kg);

  /* Translators: a weight */
  return g_strdup_printf (_ ("%.*f kg"), fabs (kg) < 9.995 ? 2 : 1, kg);
}

static char *
say_moment (gint64      when_s,
            const char *how)
{
  g_autoptr (GDateTime) date = g_date_time_new_from_unix_utc (when_s);

  return date != NULL ? g_date_time_format (date, how) : g_strdup ("");
}

char *
lw_say_date (gint64 when_s)
{
  /* Translators: day, month, year for g_date_time_format */
  return say_moment (when_s, _ ("%-d %b %Y"));
}

char *
lw_say_day (gint64 when_s)
{
  /* Translators: day and month for g_date_time_format */
  return say_moment (when_s, _ ("%-d %b"));
}

char *
lw_say_clock (gint64 when_s)
{
  /* Translators: hour and minute for g_date_time_format */
  return say_moment (when_s, _ ("%H:%M"));
}

char *
lw_say_moment (gint64 when_s)
{
  /* Translators: day, month, hour and minute for g_date_time_format */
  return say_moment (when_s, _ ("%-d %b, %H:%M"));
}

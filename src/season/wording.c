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
  const char *unit = row->unit[0] != '\0' ? _ (row->unit) : "";

  if (setting == LW_SET_MINUTES)
    return lw_say_minutes (value);

  /* Translators: a number and its unit */
  return g_strdup_printf (_ ("%.*f %s"), row->digits, value, unit);
}

char *
lw_say_date (gint64 when_s)
{
  g_autoptr (GDateTime) date = g_date_time_new_from_unix_utc (when_s);

  /* Translators: day, month, year for g_date_time_format */
  return date != NULL ? g_date_time_format (date, _ ("%-d %b %Y")) : g_strdup ("");
}

/* Checking and setting what is written down besides the steps. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/facts.h"

#include <gio/gio.h>
#include <math.h>
#include <string.h>

#include "season/document.h"
#include "season/edit.h"
#include "season/notation.h"
#include "season/shape.h"
#include "season/text.h"

/* Usual hours of a day's lowest and highest temperature: common practice, no source. */
#define LOW_HOUR 6
#define HIGH_HOUR 14

static void
range_of (LwElement   element,
          const char *attr,
          double     *low,
          double     *high)
{
  const LwShape *shape = lw_shape (element);

  for (guint i = 0; i < shape->n_attrs; i++)
    if (strcmp (shape->attrs[i].name, attr) == 0)
      {
        *low = shape->attrs[i].low;
        *high = shape->attrs[i].high;
        return;
      }

  g_assert_not_reached ();
}

static gboolean
refuse (GError    **error,
        const char *why)
{
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, why);

  return FALSE;
}

/* In the range that the document has for it. */
static gboolean
check_number (double      value,
              LwElement   element,
              const char *attr,
              const char *name,
              GError    **error)
{
  double low, high;
  g_autofree char *why = NULL;

  range_of (element, attr, &low, &high);
  if (value >= low && value <= high)
    return TRUE;

  /* Translators: what a number is of, and its range */
  why = g_strdup_printf (_ ("%s must be a number from %g to %g."), name, low, high);

  return refuse (error, why);
}

static gboolean
check_length (const char *text,
              GError    **error)
{
  g_autofree char *why = NULL;

  if (g_utf8_strlen (text, -1) <= LW_MAX_TEXT)
    return TRUE;

  why = g_strdup_printf (_ ("No name or note may be longer than %d characters."), LW_MAX_TEXT);

  return refuse (error, why);
}

gboolean
lw_batch_facts_check (const LwSeason     *season,
                      guint               batch,
                      const LwBatchFacts *facts,
                      GError            **error)
{
  int same = lw_season_batch (season, facts->name);
  g_autofree char *time = lw_time_text (facts->when_s);

  if (facts->name[0] == '\0')
    return refuse (error, _ ("The batch needs a name."));
  if (same >= 0 && same != (int) batch)
    return refuse (error, _ ("Another batch has that name."));
  if (time[0] == '\0')
    return refuse (error, _ ("The year must be from 1 to 9999."));
  if (!check_number (facts->fresh_kg, LW_E_BATCH, "fresh-kg", _ ("Fresh leaf"), error))
    return FALSE;

  for (guint i = 0; i < season->batches[batch]->n_steps; i++)
    if (!check_length (facts->step_notes[i], error))
      return FALSE;

  return check_length (facts->name, error) && check_length (facts->tea, error) && check_length (facts->note, error);
}

gboolean
lw_season_facts_check (const LwSeasonFacts *facts,
                       GError             **error)
{
  if (facts->name[0] == '\0')
    return refuse (error, _ ("The season needs a name."));

  return check_number (facts->altitude_m, LW_E_PLACE, "altitude-m", _ ("Altitude"), error)
         && check_number (facts->latitude_deg, LW_E_PLACE, "latitude-deg", _ ("Latitude"), error)
         && check_length (facts->name, error) && check_length (facts->place, error) && check_length (facts->note, error);
}

gboolean
lw_day_facts_check (const LwDayFacts *facts,
                    GError          **error)
{
  const LwDay *day = &facts->day;
  const struct { const char *attr; const char *name; double value; } numbers[] = {
    { "low-c", _ ("The lowest temperature"), day->low_c },
    { "low-hour", _ ("The hour of the lowest"), day->low_hour },
    { "high-c", _ ("The highest temperature"), day->high_c },
    { "high-hour", _ ("The hour of the highest"), day->high_hour },
    { "cloud-pct", _ ("Cloud"), day->cloud_pct },
    { "wind-m-s", _ ("Wind"), day->wind_m_s },
  };

  if (facts->name[0] == '\0')
    return refuse (error, _ ("The weather needs a name."));
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    if (!check_number (numbers[i].value, LW_E_DAY, numbers[i].attr, numbers[i].name, error))
      return FALSE;
  if (isnan (day->humidity_pct) == isnan (day->dew_point_c))
    return refuse (error, _ ("Give humidity or dew point, one of the two."));
  if (isnan (day->dew_point_c) ? !check_number (day->humidity_pct, LW_E_DAY, "humidity-pct", _ ("Humidity"), error)
                               : !check_number (day->dew_point_c, LW_E_DAY, "dew-point-c", _ ("Dew point"), error))
    return FALSE;
  if (day->low_c > day->high_c)
    return refuse (error, _ ("The lowest temperature is above the highest."));
  if (day->low_hour == day->high_hour)
    return refuse (error, _ ("The lowest and the highest temperature are at the same hour."));

  return check_length (facts->name, error) && check_length (facts->note, error);
}

static void
write_down (char      **into,
            const char *text)
{
  g_free (*into);
  *into = text[0] != '\0' ? g_strdup (text) : NULL;
}

LwWeather *
lw_day_facts_weather (const LwDayFacts *facts,
                      const char       *id)
{
  const LwDay *day = &facts->day;
  const LwHour hour = {
    .temp_c = day->low_c, .humidity_pct = day->humidity_pct, .wind_m_s = day->wind_m_s, .cloud_pct = day->cloud_pct,
  };
  gboolean same = day->low_c == day->high_c && !isnan (day->humidity_pct);
  LwWeather *weather = same ? lw_weather_new_constant (id, facts->name, &hour) : lw_weather_new_day (id, facts->name, day);

  write_down (&weather->note, facts->note);

  return weather;
}

gboolean
lw_day_facts_of (const LwWeather *weather,
                 LwDayFacts      *facts)
{
  const LwHour *hour = weather->hours;

  if (weather->form == LW_WEATHER_HOURS)
    return FALSE;

  *facts = (LwDayFacts) { weather->name, weather->day, weather->note != NULL ? weather->note : "" };
  if (weather->form == LW_WEATHER_CONSTANT)
    facts->day = (LwDay) { hour->temp_c, LOW_HOUR, hour->temp_c, HIGH_HOUR, hour->humidity_pct, NAN, hour->cloud_pct,
                           hour->wind_m_s };

  return TRUE;
}

LwSeason *
lw_edit_set_batch_facts (const LwSeason     *season,
                         guint               batch,
                         const LwBatchFacts *facts)
{
  g_autoptr (LwSeason) named = lw_edit_rename_batch (season, batch, facts->name);
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (named, batch, &own);

  write_down (&own->tea, facts->tea);
  write_down (&own->note, facts->note);
  own->when_s = facts->when_s;
  own->fresh_kg = facts->fresh_kg;
  own->made = facts->made;
  for (guint i = 0; i < own->n_steps; i++)
    write_down (&own->steps[i].note, facts->step_notes[i]);

  return next;
}

LwSeason *
lw_edit_set_season_facts (const LwSeason      *season,
                          const LwSeasonFacts *facts)
{
  LwSeason *next = lw_season_copy (season);

  g_free (next->name);
  next->name = g_strdup (facts->name);
  write_down (&next->place, facts->place);
  write_down (&next->note, facts->note);
  next->altitude_m = facts->altitude_m;
  next->latitude_deg = facts->latitude_deg;

  return next;
}

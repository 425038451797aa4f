/* Reading weathers: constant, a day that repeats, or a record of hours. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/reader.h"

#include <math.h>

#include "season/gate.h"
#include "season/text.h"

/* What stands in the element. */
typedef struct
{
  GArray *hours;
  LwHour constant;
  LwDay day;
  guint found;      /* bit per LwWeatherForm */
  char *note;
} Forms;

static double
number_or_nan (const LwValue *value)
{
  return value->given ? value->number : NAN;
}

static void
read_constant (LwReader *reader,
               xmlNode  *node,
               Forms    *forms)
{
  enum { TEMP, HUMIDITY, CLOUD, WIND };
  LwValue values[LW_MAX_ATTRS];

  lw_reader_attrs (reader, node, LW_E_CONSTANT, values);
  forms->constant = (LwHour) {
    .temp_c = values[TEMP].number,
    .humidity_pct = values[HUMIDITY].number,
    .sun_w_m2 = NAN,
    .wind_m_s = values[WIND].number,
    .cloud_pct = values[CLOUD].number,
  };
}

static void
check_day (LwReader    *reader,
           xmlNode     *node,
           const LwDay *day)
{
  if (day->low_c > day->high_c)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Exchange them."),
                    _ ("The day's “low-c” is above its “high-c”."));
  if (fabs (day->low_hour - day->high_hour) == 0 || fabs (day->low_hour - day->high_hour) == 24)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Give them hours that differ, such as 6 and 15."),
                    _ ("The day is coldest and warmest at the same hour."));
}

static void
read_day (LwReader *reader,
          xmlNode  *node,
          Forms    *forms)
{
  enum { LOW, LOW_HOUR, HIGH, HIGH_HOUR, HUMIDITY, DEW_POINT, CLOUD, WIND };
  LwValue values[LW_MAX_ATTRS];

  lw_reader_attrs (reader, node, LW_E_DAY, values);
  forms->day = (LwDay) {
    .low_c = values[LOW].number,
    .low_hour = values[LOW_HOUR].number,
    .high_c = values[HIGH].number,
    .high_hour = values[HIGH_HOUR].number,
    .humidity_pct = number_or_nan (&values[HUMIDITY]),
    .dew_point_c = number_or_nan (&values[DEW_POINT]),
    .cloud_pct = values[CLOUD].number,
    .wind_m_s = values[WIND].number,
  };
  if (values[LOW].given && values[LOW_HOUR].given && values[HIGH].given && values[HIGH_HOUR].given)
    check_day (reader, node, &forms->day);
}

static void
read_hour (LwReader *reader,
           xmlNode  *node,
           Forms    *forms)
{
  enum { TEMP, HUMIDITY, SUN, CLOUD, WIND, RAIN };
  LwValue values[LW_MAX_ATTRS];
  LwHour hour;

  lw_reader_attrs (reader, node, LW_E_HOUR, values);
  hour = (LwHour) {
    .temp_c = values[TEMP].number,
    .humidity_pct = values[HUMIDITY].number,
    .sun_w_m2 = number_or_nan (&values[SUN]),
    .wind_m_s = values[WIND].number,
    .cloud_pct = values[CLOUD].number,
    .rain_mm = values[RAIN].number,
  };
  g_array_append_val (forms->hours, hour);
}

static void
take_in_weather (LwReader *reader,
                 xmlNode  *node,
                 LwElement element,
                 gpointer  into)
{
  Forms *forms = into;

  if (element == LW_E_NOTE)
    {
      forms->note = lw_reader_note (reader, node, LW_E_NOTE, forms->note);
    }
  else if (element == LW_E_CONSTANT)
    {
      read_constant (reader, node, forms);
      forms->found |= 1 << LW_WEATHER_CONSTANT;
    }
  else if (element == LW_E_DAY)
    {
      read_day (reader, node, forms);
      forms->found |= 1 << LW_WEATHER_DAY;
    }
  else
    {
      read_hour (reader, node, forms);
      forms->found |= 1 << LW_WEATHER_HOURS;
    }
}

/* One form, and a start with hours only. */
static void
check_forms (LwReader      *reader,
             xmlNode       *node,
             const Forms   *forms,
             const LwValue *start)
{
  guint line = lw_gate_line (node);

  if (forms->found == 0)
    lw_reader_tell (reader, line, _ ("Add one of them."),
                    _ ("“weather” lacks an element “constant”, “day” or “hour”."));
  else if ((forms->found & (forms->found - 1)) != 0)
    lw_reader_tell (reader, line, _ ("Keep one, and make the other a weather of its own."),
                    _ ("“weather” holds more than one of “constant”, “day” and “hour”."));
  else if (forms->found == 1 << LW_WEATHER_HOURS && start->text == NULL)
    lw_reader_tell (reader, line, _ ("Add it: the time of the first hour."), _ ("“weather” lacks “start”."));
  else if (forms->found != 1 << LW_WEATHER_HOURS && start->text != NULL)
    lw_reader_tell (reader, line, _ ("Remove it: only a record of hours has a start."),
                    _ ("“weather” has a “start” but no “hour”."));
}

LwWeather *
lw_read_weather (LwReader *reader,
                 xmlNode  *node)
{
  enum { ID, NAME, START };
  g_autoptr (GArray) hours = g_array_new (FALSE, FALSE, sizeof (LwHour));
  Forms forms = { .hours = hours };
  LwValue values[LW_MAX_ATTRS];
  const char *id, *name;
  LwWeather *weather = NULL;

  lw_reader_attrs (reader, node, LW_E_WEATHER, values);
  lw_reader_children (reader, node, LW_E_WEATHER, take_in_weather, &forms);
  check_forms (reader, node, &forms, &values[START]);

  id = lw_value_text (&values[ID]);
  name = lw_value_text (&values[NAME]);
  if (hours->len > 0)
    weather = lw_weather_new (id, name, values[START].time_s, (const LwHour *) hours->data, hours->len);
  else if (forms.found & 1 << LW_WEATHER_CONSTANT)
    weather = lw_weather_new_constant (id, name, &forms.constant);
  else if (forms.found & 1 << LW_WEATHER_DAY)
    weather = lw_weather_new_day (id, name, &forms.day);

  if (weather != NULL)
    weather->note = forms.note;
  else
    g_free (forms.note);

  return weather;
}

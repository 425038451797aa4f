/* Tables of hours: what is read in which words and units, and what is told of the rest. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "../leaf/near.h"
#include "season/document.h"
#include "season/weather-csv.h"

#define START 1775988000 /* 2026-04-12T10:00 */
#define NAMES "time,temp_c,humidity_pct,sun_w_m2,wind_m_s\n"
#define ROW "2026-04-12T10:00,20,60,500,1\n"

static LwWeather *
read_text (const char *text)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwWeather *weather = lw_weather_csv_read (text, strlen (text), "w", "W", problems);

  if (weather == NULL)
    {
      const LwProblem *first = g_ptr_array_index (problems, 0);

      g_error ("line %u: %s %s", first->line, first->what, first->remedy);
    }
  g_assert_cmpuint (problems->len, ==, 0);

  return weather;
}

/* The same two hours in different clothes. */
static const char *const alike[] = {
  NAMES "2026-04-12T10:00,20.5,60,500,2\n2026-04-12T11:00,21,55,0,2.5\n",
  "\xef\xbb\xbf" NAMES "\r\n2026-04-12 10:00:00,20.5,60,500,2\r\n\r\n2026-04-12 11:00:00,21,55,-3,2.5\r\n,,,,\r\n",
  "# a station\rTime;Air temperature (°C);Relative humidity (%);Global radiation [W/m²];Wind speed (m/s)\r"
  "12.4.2026 10:00;20,5;60;500;2\r12.04.2026 11:00;21;55;0;2,5",
  "WIND (KM/H)\tRH\tDATE\tTIME\tTEMP\tIRRADIANCE (kW/m2)\tStation\n"
  "7,2\t60\t12.04.2026\t10:00\t20,5\t0,5\tA\n9,0\t55\t12.04.2026\t11:00\t21,0\t0\tA\n",
  "\"Time\",\"Dew point temperature (°C)\",\"Temperature (°F)\",\"Humidity (%)\",\"GHI W/m2\",\"Wind gust (m/s)\",\"Wind\"\n"
  "\"2026-04-12T10:00\",\"12\",\"68,9\",\"60\",\"500\",\"9\",\"2\"\n2026-04-12T11:00,12,69.8,55,0,9,2.5\n",
  "Date;Temperature (K);Humidity;Sun;Cloud (oktas);Wind (kn);Wind direction\n"
  "12.4.2026 10:00;293.65;60;500;8;3.88769;NW\n12.4.2026 11:00;294.15;55;0;8;4.85961;NW\n",
};

static void
test_alike (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (alike); i++)
    {
      g_autoptr (LwWeather) weather = read_text (alike[i]);

      g_assert_cmpstr (weather->id, ==, "w");
      g_assert_cmpstr (weather->name, ==, "W");
      g_assert_cmpint (weather->form, ==, LW_WEATHER_HOURS);
      g_assert_cmpint (weather->start_s, ==, START);
      g_assert_cmpuint (weather->n_hours, ==, 2);
      assert_within (weather->hours[0].temp_c, 20.5, 1e-9, "temperature");
      assert_within (weather->hours[0].humidity_pct, 60, 1e-9, "humidity");
      assert_within (weather->hours[0].sun_w_m2, 500, 1e-9, "sun");
      assert_within (weather->hours[0].wind_m_s, 2, 1e-4, "wind");
      assert_within (weather->hours[1].temp_c, 21, 1e-9, "temperature");
      assert_within (weather->hours[1].sun_w_m2, 0, 1e-9, "sun");
      assert_within (weather->hours[1].wind_m_s, 2.5, 1e-4, "wind");
    }
}

static void
test_cloud_and_rain (void)
{
  g_autoptr (LwWeather) weather = read_text ("time;temp;rh;cloud cover (oktas);wind;rain (in)\n"
                                             "2026-04-12T10:00;20;60;4;1;0.1\n2026-04-12T11:00;20;60;0;1;\n");

  g_assert_true (isnan (weather->hours[0].sun_w_m2));
  assert_within (weather->hours[0].cloud_pct, 50, 1e-9, "cloud");
  assert_within (weather->hours[0].rain_mm, 2.54, 1e-9, "rain");
  g_assert_false (weather->hours[1].rain_mm > 0);
}

static const struct
{
  const char *text;
  guint line;
  const char *phrase;
} wrong[] = {
  { "", 0, "no hours" },
  { "# nothing\n\n", 0, "no hours" },
  { NAMES, 0, "no hours" },
  { "time,temp,rh,sun\n" ROW, 1, "No column tells of wind" },
  { "time,temp,rh,wind\n" ROW, 1, "No column tells of sunlight or cloud" },
  { "when,temp,rh,sun,wind\n" ROW, 1, "No column tells of time" },
  { "\n" NAMES ROW ROW, 4, "stands in line 3 already" },
  { "time,temp,air temp,rh,sun,wind\n", 1, "More than one column says “air temperature”" },
  { "time,temp,rh,radiation (MJ/m2),wind\n", 1, "unit of the column “radiation (MJ/m2)”" },
  { "time,temp,rh,sun,wind (Bft)\n", 1, "unit of the column “wind (Bft)”" },
  { "time (UTC),temp,rh,sun,wind\n", 1, "unit of the column “time (UTC)”" },
  { NAMES "2026-04-12T10:00Z,20,60,500,1\n", 2, "not a date and time" },
  { NAMES "2026-04-12T10:00+08:00,20,60,500,1\n", 2, "not a date and time" },
  { NAMES "2026-04-31T10:00,20,60,500,1\n", 2, "not a date and time" },
  { NAMES "26-04-12T10:00,20,60,500,1\n", 2, "not a date and time" },
  { NAMES "2026-04-12,20,60,500,1\n", 2, "not a date and time" },
  { NAMES ",20,60,500,1\n", 2, "not a date and time" },
  { NAMES ROW "2026-04-12T13:00,20,60,500,1\n", 3, "2 hours are missing between 2026-04-12T10:00 and 2026-04-12T13:00" },
  { NAMES ROW "2026-04-12T09:00,20,60,500,1\n", 3, "comes after 2026-04-12T10:00 of line 2" },
  { NAMES ROW "2026-04-12T10:30,20,60,500,1\n", 3, "is not an hour after" },
  { NAMES "2026-04-12T10:00,20,60,500\n", 2, "There is no value of wind" },
  { NAMES "2026-04-12T10:00,,60,500,1\n", 2, "There is no value of air temperature" },
  { NAMES "2026-04-12T10:00,warm,60,500,1\n", 2, "“warm” as air temperature is not a number" },
  { NAMES "2026-04-12T10:00,nan,60,500,1\n", 2, "“nan” as air temperature is not a number" },
  { NAMES "2026-04-12T10:00,1e999,60,500,1\n", 2, "not a number" },
  { NAMES "2026-04-12T10:00,-9999,60,500,1\n", 2, "“-9999” is out of range as air temperature" },
  { NAMES "2026-04-12T10:00,20,0,500,1\n", 2, "“0” is out of range as relative humidity" },
  { NAMES "2026-04-12T10:00,20,60,-21,1\n", 2, "“-21” is out of range as sunlight" },
  { NAMES "2026-04-12T10:00,20,60,1600,1\n", 2, "“1600” is out of range as sunlight" },
  { NAMES "2026-04-12T10:00,20,5,60,500,1\n", 2, "out of range as wind" },
};

/* The problem in its line, with a remedy. */
static void
test_wrong (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (GPtrArray) problems = lw_problems_new ();
      gboolean told = FALSE;

      g_assert_null (lw_weather_csv_read (wrong[i].text, strlen (wrong[i].text), "w", "W", problems));
      for (guint k = 0; k < problems->len; k++)
        {
          const LwProblem *problem = g_ptr_array_index (problems, k);

          g_test_message ("%u: %s %s", problem->line, problem->what, problem->remedy);
          g_assert_cmpuint (strlen (problem->remedy), >, 5);
          told |= problem->line == wrong[i].line && strstr (problem->what, wrong[i].phrase) != NULL;
        }
      if (!told)
        g_error ("row %u is not told: %s", i, wrong[i].phrase);
    }
}

static void
assert_told (const char *data,
             gsize       length,
             const char *phrase,
             guint       most)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  const LwProblem *last;

  g_assert_null (lw_weather_csv_read (data, length, "w", "W", problems));
  g_assert_cmpuint (problems->len, <=, most);
  last = g_ptr_array_index (problems, problems->len - 1);
  if (strstr (last->what, phrase) == NULL)
    g_error ("“%s” instead of “%s”", last->what, phrase);
}

static void
test_bytes (void)
{
  static const char latin[] = "time;Temperature (\xb0" "C);rh;Sun (W/m\xb2);wind\n12.4.2026 10:00;20;60;500;1\n";
  g_autoptr (LwWeather) weather = read_text (latin);
  g_autofree char *blanks = g_strnfill (LW_MAX_FILE_BYTES + 1, ' ');
  g_autoptr (GPtrArray) problems = lw_problems_new ();

  g_assert_cmpfloat (weather->hours[0].sun_w_m2, ==, 500);
  assert_told (blanks, LW_MAX_FILE_BYTES + 1, "larger than 8 MiB", 1);
  assert_told (blanks, LW_MAX_FILE_BYTES, "no hours", 1);
  assert_told ("t\0i\0m\0e\0", 8, "not plain text", 1);
  g_assert_null (lw_weather_csv_load ("/", "w", "W", problems));
  g_assert_null (lw_weather_csv_load ("/no/such/file.csv", "w", "W", problems));
  g_assert_cmpuint (problems->len, ==, 2);
}

static char *
many_rows (guint n)
{
  GString *text = g_string_new (NAMES);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GDateTime) time = g_date_time_new_from_unix_utc (START + 3600 * (gint64) i);
      g_autofree char *clock = g_date_time_format (time, "%Y-%m-%dT%H:%M");

      g_string_append_printf (text, "%s,20,60,500,1\n", clock);
    }

  return g_string_free (text, FALSE);
}

static void
test_many (void)
{
  g_autofree char *most = many_rows (LW_MAX_HOURS), *more = many_rows (LW_MAX_HOURS + 1);
  g_autoptr (LwWeather) weather = read_text (most);
  g_autoptr (GString) bad = g_string_new (NAMES);

  g_assert_cmpuint (weather->n_hours, ==, LW_MAX_HOURS);
  assert_told (more, strlen (more), "more than 20000 rows", 1);

  for (guint i = 0; i < 20000; i++)
    g_string_append (bad, "x\n");
  assert_told (bad->str, bad->len, "The rest was not read", 60);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/table/alike", test_alike);
  g_test_add_func ("/table/cloud-and-rain", test_cloud_and_rain);
  g_test_add_func ("/table/wrong", test_wrong);
  g_test_add_func ("/table/bytes", test_bytes);
  g_test_add_func ("/table/many", test_many);

  return g_test_run ();
}

/* Any bytes may be given as a table of hours: reading never crashes, tells a problem or gives a weather, and a
 * season with that weather is written and read back. With a fuzzing engine, or alone: then on seeded changes of
 * the tables below. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "any-bytes.h"

#include "season/document.h"
#include "season/weather-csv.h"

#define N_CHANGED 20000

static guint n_weathers;

static void
write_and_read (LwWeather *weather)
{
  g_autoptr (LwSeason) season = lw_season_new ("s"), again = NULL;
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *text = NULL;
  gsize length;

  lw_season_add_weather (season, weather);
  text = lw_document_write (season, &length);
  again = lw_document_read (text, length, problems);
  demand (again != NULL && again->weathers[0]->n_hours == weather->n_hours, "what was written cannot be read");
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwWeather *weather = lw_weather_csv_read ((const char *) data, size, "w", "W", problems);

  demand ((weather != NULL) == (problems->len == 0), "neither a weather nor a problem, or both");
  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *told = lw_problem_text (g_ptr_array_index (problems, i), "file");

      demand (g_utf8_validate (told, -1, NULL), "a problem is no text");
    }

  if (weather != NULL)
    {
      n_weathers++;
      write_and_read (weather);
    }

  return 0;
}

#ifndef LW_FUZZ_ENGINE
static const char *const tables[] = {
  "time,temp_c,humidity_pct,sun_w_m2,wind_m_s\n2026-04-12T10:00,20.5,60,500,2\n2026-04-12T11:00,21,55,0,2.5\n",
  "# station\r\nDate;Time;Air temperature (°C);RH (%);Cloud (oktas);Wind (km/h);Rain (mm)\r\n"
  "12.4.2026;10:00;20,5;60;4;7,2;0,5\r\n12.4.2026;11:00;\"21\";55;0;9;\r\n",
  "Wind\tGHI [W/m\xb2]\tTemperature (\xb0" "F)\tHumidity\tTime\n1\t0\t68,9\t99\t2026-04-12 23:00:00\n"
  "1\t0\t68\t99\t2026-04-13 0:00\n",
  NULL,
};

static const char *const scraps[] = {
  "\"", "\"\"", ",", ";", "\t", "\n", "\r", "\r\n", ".", "-", "+", "e", "#", " ", "\xff", "\xef\xbb\xbf", "\xed\xa0\x80",
  "\xef\xbc\x85", "ﬃ", "²", "℃", "%", "(", "]", "/", "utc", "time", "date", "temp", "sun (kW/m2)", "rain (in)", "dew",
  "1e999", "nan", "0x1p9", "9999999999", "99999-99-99T99:99", "2026-04-12T10:00", "1.1.2026 00:00", "T", ":", "0",
  NULL,
};

int
main (int    argc,
      char **argv)
{
  return give_changed_tables (tables, scraps, N_CHANGED, &n_weathers, "weathers") ? 0 : 1;
}
#endif

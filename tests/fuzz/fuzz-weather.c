/* Any bytes may be given as a table of hours: reading never crashes, tells a problem or gives a weather, and a
 * season with that weather is written and read back. With a fuzzing engine, or alone: then on seeded changes of
 * the tables below. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "season/document.h"
#include "season/weather-csv.h"

#define N_CHANGED 20000
#define SEED 20260412

static guint n_weathers;

int LLVMFuzzerTestOneInput (const guint8 *data,
                            size_t        size);

static void
require (gboolean    holds,
         const char *what)
{
  if (holds)
    return;

  fprintf (stderr, "%s\n", what);
  abort ();
}

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
  require (again != NULL && again->weathers[0]->n_hours == weather->n_hours, "what was written cannot be read");
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwWeather *weather = lw_weather_csv_read ((const char *) data, size, "w", "W", problems);

  require ((weather != NULL) == (problems->len == 0), "neither a weather nor a problem, or both");
  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *told = lw_problem_text (g_ptr_array_index (problems, i), "file");

      require (g_utf8_validate (told, -1, NULL), "a problem is no text");
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
};

static const char *const scraps[] = {
  "\"", "\"\"", ",", ";", "\t", "\n", "\r", "\r\n", ".", "-", "+", "e", "#", " ", "\xff", "\xef\xbb\xbf", "\xed\xa0\x80",
  "\xef\xbc\x85", "ﬃ", "²", "℃", "%", "(", "]", "/", "utc", "time", "date", "temp", "sun (kW/m2)", "rain (in)", "dew",
  "1e999", "nan", "0x1p9", "9999999999", "99999-99-99T99:99", "2026-04-12T10:00", "1.1.2026 00:00", "T", ":", "0",
};

static void
change (GString *bytes,
        GRand   *random)
{
  int n = 1 << g_rand_int_range (random, 0, 4);

  for (int i = 0; i < n; i++)
    {
      gsize at = (gsize) g_rand_int_range (random, 0, (gint32) bytes->len + 1);
      gsize gone = (gsize) g_rand_int_range (random, 0, 6);

      if (g_rand_boolean (random) && at < bytes->len)
        {
          bytes->str[at] = (char) g_rand_int_range (random, g_rand_boolean (random) ? '0' : 0, 58);
          continue;
        }
      g_string_erase (bytes, (gssize) at, (gssize) MIN (gone, bytes->len - at));
      g_string_insert (bytes, (gssize) at, scraps[g_rand_int_range (random, 0, G_N_ELEMENTS (scraps))]);
    }
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);
  guint sound;

  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    LLVMFuzzerTestOneInput ((const guint8 *) tables[i], strlen (tables[i]));
  sound = n_weathers;

  for (guint i = 0; i < N_CHANGED; i++)
    {
      g_autoptr (GString) bytes = g_string_new (tables[i % G_N_ELEMENTS (tables)]);

      change (bytes, random);
      LLVMFuzzerTestOneInput ((const guint8 *) bytes->str, bytes->len);
    }

  printf ("%u tables; of %d changed ones %u are weathers\n", sound, N_CHANGED, n_weathers - sound);

  return sound == G_N_ELEMENTS (tables) && n_weathers > sound && n_weathers < N_CHANGED ? 0 : 1;
}
#endif

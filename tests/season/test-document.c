/* The document: what is written is read back whole, and the same season is the same bytes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#include "season/edit.h"
#include "season/notation.h"

static void
test_round_trip (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  gsize length, again_length;
  g_autofree char *text = lw_document_write (season, &length);
  g_autoptr (LwSeason) read = sample_read (text);
  g_autofree char *again = lw_document_write (read, &again_length);

  g_assert_cmpuint (length, ==, strlen (text));
  sample_assert_same (season, read);
  g_assert_cmpmem (text, length, again, again_length);
}

/* A season to start from can be saved as it is. */
static void
test_new_season (void)
{
  g_autoptr (LwSeason) season = lw_edit_new_season (1775989800);
  gsize length;
  g_autofree char *text = lw_document_write (season, &length);
  g_autoptr (LwSeason) read = sample_read (text);

  sample_assert_same (season, read);
}

/* The order of elements and attributes, the indent and the numbers are part of the format. */
static void
test_canonical (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "canonical.leafwend", NULL);
  g_autofree char *text = NULL, *written = NULL;
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (GError) error = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &text, NULL, &error));
  season = sample_read (text);
  written = lw_document_write (season, &length);

  g_assert_cmpstr (written, ==, text);
}

static void
test_numbers (void)
{
  static const struct
  {
    double value;
    const char *text;
  } rows[] = {
    { 0, "0" }, { 0.1, "0.1" }, { 1e-300, "1e-300" }, { 1e-15, "1e-15" },
    { 5e-324, "4.94065645841247e-324" }, { 123456789.123456789, "123456789.12345679" },
    { 1.0 / 3, "0.3333333333333333" }, { -24, "-24" }, { 1e5, "100000" },
    { 0.1 + 0.2, "0.30000000000000004" }, { 1.7976931348623157e308, "1.7976931348623157e+308" },
    { 4320, "4320" }, { 2.5, "2.5" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = lw_number_text (rows[i].value);
      double value;

      g_assert_cmpstr (text, ==, rows[i].text);
      g_assert_true (lw_number_parse (text, &value));
      g_assert_cmpfloat (value, ==, rows[i].value);
    }
}

/* Random bits: every finite double comes back. */
static void
test_numbers_seeded (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1250);

  for (int i = 0; i < 20000; i++)
    {
      guint64 bits = (guint64) g_rand_int (random) << 32 | g_rand_int (random);
      g_autofree char *text = NULL;
      double value, back;

      memcpy (&value, &bits, sizeof value);
      if (!isfinite (value))
        continue;

      text = lw_number_text (value);
      g_assert_true (lw_number_parse (text, &back));
      g_assert_cmpmem (&value, sizeof value, &back, sizeof back);
    }
}

static void
test_no_numbers (void)
{
  static const char *const texts[] = {
    "", "-", ".", ".5", "5.", "+5", "1e", "1e+", "e5", "1,5", "1 ", " 1", "0x10", "nan", "NaN",
    "inf", "INF", "1.2.3", "1e5.0", "--1", "１", "1\n", "1_000", "1'000",
  };
  double value;

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_assert_false (lw_number_parse (texts[i], &value));

  g_assert_true (lw_number_parse ("1e999", &value));
  g_assert_true (isinf (value));
}

static void
test_times (void)
{
  static const struct
  {
    const char *text;
    gint64 when_s;
  } rows[] = {
    { "1970-01-01T00:00", 0 }, { "2026-04-12T10:30", 1775989800 },
    { "2026-04-12T10:30:15", 1775989815 }, { "1969-12-31T23:59:59", -1 },
    { "0001-01-01T00:00", -62135596800 }, { "9999-12-31T23:59:59", 253402300799 },
    { "2024-02-29T00:00", 1709164800 },
  };
  static const char *const bad[] = {
    "", "2026-04-12", "2026-04-12 10:30", "2026-4-12T10:30", "2026-02-29T10:30",
    "2026-04-31T10:30", "2026-00-12T10:30", "2026-04-12T24:00", "2026-04-12T10:60",
    "2026-04-12T10:30:60", "0000-01-01T00:00", "2026-04-12T10:30Z", "2026-04-12T10:30:00.5",
    "12026-04-12T10:30", "2026-04-12T10:30 ",
  };
  gint64 when_s;

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = lw_time_text (rows[i].when_s);

      g_assert_cmpstr (text, ==, rows[i].text);
      g_assert_true (lw_time_parse (text, &when_s));
      g_assert_cmpint (when_s, ==, rows[i].when_s);
    }

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (lw_time_parse (bad[i], &when_s));
}

/* In a country that writes 12,5 the document is the same. */
static void
test_locale (void)
{
  static const char *const locales[] = { "de_DE.UTF-8", "fr_FR.UTF-8", "ru_RU.UTF-8" };
  g_autoptr (LwSeason) season = sample_season ();
  gsize length, there_length;
  g_autofree char *here = lw_document_write (season, &length);
  g_autofree char *there = NULL;
  g_autoptr (LwSeason) read = NULL;
  gboolean found = FALSE;

  for (guint i = 0; i < G_N_ELEMENTS (locales) && !found; i++)
    found = setlocale (LC_NUMERIC, locales[i]) != NULL;
  if (!found)
    {
      g_test_skip ("no locale with a decimal comma is installed");
      return;
    }

  there = lw_document_write (season, &there_length);
  read = sample_read (there);
  setlocale (LC_NUMERIC, "C");

  g_assert_cmpmem (here, length, there, there_length);
  sample_assert_same (season, read);
}

/* What XML cannot hold is replaced by a mark that shows, and the rest stays. */
static void
test_unwritable_characters (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autofree char *text = NULL;
  g_autoptr (LwSeason) read = NULL;
  gsize length;

  g_free (season->name);
  season->name = g_strdup ("a\x01" "b\xff" "c\xef\xbf\xbe" "d\n\t\r'e");
  text = lw_document_write (season, &length);
  read = sample_read (text);

  g_assert_cmpstr (read->name, ==, "a\uFFFDb\uFFFDc\uFFFDd\n\t\r'e");
}

static void
test_other_notations (void)
{
  static const char text[] =
    "\xef\xbb\xbf<w:season xmlns:w='urn:leafwend:season' name='A&#x42;&amp;' version='1'>\r\n"
    "<w:place latitude-deg='1E1' altitude-m='-0.50'/>\r\n"
    "<w:note><![CDATA[a <b> & it's ]]>c</w:note>"
    "<w:leaf id='x' name='X' fresh-moisture-pct='77.0' green='0'><w:note/><w:law/>"
    "<w:part name='p' share='1' exposure='1' area='1' cuticle='1' ruptured='0'/></w:leaf>"
    "</w:season>";
  g_autoptr (LwSeason) season = sample_read (text);

  g_assert_cmpstr (season->name, ==, "AB&");
  g_assert_cmpstr (season->note, ==, "a <b> & it's c");
  g_assert_cmpfloat (season->latitude_deg, ==, 10);
  g_assert_cmpfloat (season->altitude_m, ==, -0.5);
  g_assert_null (season->profiles[0]->note);
  g_assert_null (season->place);
}

/* Line numbers stay right where 16 bits end, and a long file is read in time. */
static void
test_large (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autofree LwHour *hours = g_new (LwHour, LW_MAX_HOURS);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *text = NULL, *cut = NULL;
  g_autoptr (LwSeason) read = NULL;
  const LwProblem *problem;
  char *wrong;
  gsize length;
  guint lines = 0;

  for (guint i = 0; i < LW_MAX_HOURS; i++)
    hours[i] = (LwHour) { i % 30, 50 + i % 50, i % 850, (i % 40) / 10.0 };
  for (guint i = 0; i < 4; i++)
    {
      g_autofree char *id = g_strdup_printf ("year-%u", i);

      lw_season_add_weather (season, lw_weather_new (id, id, 0, hours, LW_MAX_HOURS));
    }

  text = lw_document_write (season, &length);
  g_assert_cmpuint (length, <, LW_MAX_FILE_BYTES);
  read = sample_read (text);
  g_assert_cmpuint (read->weathers[4]->n_hours, ==, LW_MAX_HOURS);

  cut = g_strndup (text, length);
  wrong = strstr (cut, "made\" leaf=");
  *wrong = 'x';
  for (const char *at = cut; at < wrong; at++)
    lines += *at == '\n';
  g_assert_cmpuint (lines, >, 65535);
  g_assert_null (lw_document_read (cut, length, problems));
  problem = g_ptr_array_index (problems, 0);
  g_assert_cmpuint (problem->line, ==, lines + 1);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/document/round-trip", test_round_trip);
  g_test_add_func ("/document/new-season", test_new_season);
  g_test_add_func ("/document/canonical", test_canonical);
  g_test_add_func ("/document/numbers", test_numbers);
  g_test_add_func ("/document/numbers-seeded", test_numbers_seeded);
  g_test_add_func ("/document/no-numbers", test_no_numbers);
  g_test_add_func ("/document/times", test_times);
  g_test_add_func ("/document/locale", test_locale);
  g_test_add_func ("/document/unwritable-characters", test_unwritable_characters);
  g_test_add_func ("/document/other-notations", test_other_notations);
  g_test_add_func ("/document/large", test_large);

  return g_test_run ();
}

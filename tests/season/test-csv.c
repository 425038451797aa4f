/* Curves as comma-separated text: the columns, which rows there are, quoting. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/csv.h"

#include <string.h>

#include "season/surround.h"

#define HEADER                                                                                     \
  "batch,part,step,kind,minute,moisture_wb_pct,leaf_temp_c,enzyme_left_pct,oxidation_pct,"         \
  "rupture_pct,rupture_wilt_pct,rupture_heat_pct,rupture_roll_pct,roast_min,green_note,broken_pct," \
  "twist_pct,kg_per_kg_fresh\n"

/* A roll of 3 min and a rest of 5 min, of two parts. */
static LwSeason *
season_of (const char *name)
{
  LwSeason *season = lw_season_new ("s");
  LwProfile *leaf = lw_profile_new ("two", "Two");
  LwBatch *batch = lw_batch_new (name);
  LwStep rest = lw_step_new (LW_KIND_REST);

  lw_profile_add_part (leaf, "blade", (LwPart) { 0.8, 1, 1, 1, 0.005 });
  lw_profile_add_part (leaf, "stem, thick", (LwPart) { 0.2, 1, 0.5, 1, 0.01 });
  lw_step_set (&rest, LW_SET_MINUTES, 5);
  lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_ROLL));
  lw_batch_insert_step (batch, 1, rest);
  g_free (batch->leaf);
  batch->leaf = g_strdup ("two");
  batch->fresh_kg = 10;
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);

  return season;
}

/* (transfer full) the lines, without the header. */
static char **
rows_of (const char *name,
         LwSampling  sampling,
         LwCsvFlags  flags)
{
  g_autoptr (LwSeason) season = season_of (name);
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, sampling);
  g_autoptr (GString) text = g_string_new (NULL);

  lw_csv_append_track (text, season->batches[0], season->profiles[0], track, flags);
  g_assert_true (g_str_has_suffix (text->str, "\n"));
  g_string_truncate (text, text->len - 1);

  return g_strsplit (text->str, "\n", -1);
}

/* The rows begin so, and there are no more. */
static void
assert_rows (char             **rows,
             const char *const *begins,
             guint              n)
{
  g_assert_cmpuint (g_strv_length (rows), ==, n);
  for (guint i = 0; i < n; i++)
    if (!g_str_has_prefix (rows[i], begins[i]))
      g_error ("row %u is “%s”, not “%s”", i, rows[i], begins[i]);
}

static void
test_header (void)
{
  g_autoptr (GString) text = g_string_new (NULL);

  lw_csv_append_header (text);
  g_assert_cmpstr (text->str, ==, HEADER);
}

/* The moment at which a step ends and the next begins has one row. */
static void
test_samples (void)
{
  static const char *const begins[] = {
    "a,mean,1,roll,0,", "a,mean,1,roll,1.5,", "a,mean,1,roll,3,", "a,mean,2,rest,5.5,", "a,mean,2,rest,8,",
  };
  g_auto (GStrv) rows = rows_of ("a", (LwSampling) { .samples = 2 }, LW_CSV_MEAN);

  assert_rows (rows, begins, G_N_ELEMENTS (begins));
}

static void
test_every (void)
{
  static const char *const begins[] = {
    "a,mean,1,roll,0,", "a,mean,1,roll,2,", "a,mean,1,roll,3,", "a,mean,2,rest,4,", "a,mean,2,rest,6,",
    "a,mean,2,rest,8,",
  };
  g_auto (GStrv) rows = rows_of ("a", (LwSampling) { .every_s = 120 }, LW_CSV_MEAN);

  assert_rows (rows, begins, G_N_ELEMENTS (begins));
}

static void
test_ends (void)
{
  static const char *const begins[] = { "a,mean,1,roll,3,", "a,mean,2,rest,8," };
  g_auto (GStrv) rows = rows_of ("a", (LwSampling) { .samples = 7 }, LW_CSV_ENDS);

  assert_rows (rows, begins, G_N_ELEMENTS (begins));
}

static void
test_parts (void)
{
  static const char *const begins[] = {
    "a,mean,1,roll,3,", "a,blade,1,roll,3,", "a,\"stem, thick\",1,roll,3,",
    "a,mean,2,rest,8,", "a,blade,2,rest,8,", "a,\"stem, thick\",2,rest,8,",
  };
  g_auto (GStrv) rows = rows_of ("a", (LwSampling) { .samples = 1 }, LW_CSV_PARTS | LW_CSV_ENDS);

  assert_rows (rows, begins, G_N_ELEMENTS (begins));
}

static void
test_quoting (void)
{
  static const struct { const char *name; const char *begin; } names[] = {
    { "plain name", "plain name,mean," },
    { "a, b", "\"a, b\",mean," },
    { "the \"best\"", "\"the \"\"best\"\"\",mean," },
    { "\"", "\"\"\"\",mean," },
    { "one\rtwo", "\"one\rtwo\",mean," },
    { "春; 1'", "春; 1',mean," },
  };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_auto (GStrv) rows = rows_of (names[i].name, (LwSampling) { .samples = 1 }, LW_CSV_ENDS);
      const char *const begins[] = { names[i].begin, names[i].begin };

      assert_rows (rows, begins, G_N_ELEMENTS (begins));
    }
}

/* A line break inside quotes stays; it takes two lines to show it. */
static void
test_line_break (void)
{
  g_auto (GStrv) rows = rows_of ("one\ntwo", (LwSampling) { .samples = 1 }, LW_CSV_ENDS);

  g_assert_cmpuint (g_strv_length (rows), ==, 4);
  g_assert_cmpstr (rows[0], ==, "\"one");
  g_assert_true (g_str_has_prefix (rows[1], "two\",mean,1,roll,3,"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/csv/header", test_header);
  g_test_add_func ("/csv/samples", test_samples);
  g_test_add_func ("/csv/every", test_every);
  g_test_add_func ("/csv/ends", test_ends);
  g_test_add_func ("/csv/parts", test_parts);
  g_test_add_func ("/csv/quoting", test_quoting);
  g_test_add_func ("/csv/line-break", test_line_break);

  return g_test_run ();
}

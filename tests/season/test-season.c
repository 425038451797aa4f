/* The values: copying, sharing, references, steps that move. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <math.h>
#include <string.h>

#include "leaf/air.h"

static void
test_step_settings (void)
{
  LwStep step = lw_step_new (LW_KIND_FIX_PAN);

  g_assert_cmpfloat (lw_step_get (&step, LW_SET_WALL_C), ==, 260);
  g_assert_false (lw_step_is_given (&step, LW_SET_WALL_C));
  g_assert_true (lw_step_is_given (&step, LW_SET_MINUTES));

  lw_step_set (&step, LW_SET_WALL_C, 240);
  g_assert_true (lw_step_is_given (&step, LW_SET_WALL_C));
  g_assert_cmpfloat (lw_step_get (&step, LW_SET_WALL_C), ==, 240);

  lw_step_unset (&step, LW_SET_WALL_C);
  g_assert_false (lw_step_is_given (&step, LW_SET_WALL_C));
  g_assert_cmpfloat (lw_step_get (&step, LW_SET_WALL_C), ==, 260);
}

/* A step shares nothing with its copy. */
static void
test_step_copy (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  const LwStep *step = &season->batches[0]->steps[1];
  LwStep copy = lw_step_copy (step);

  g_assert_true (copy.note != step->note);
  g_assert_true (copy.aims != step->aims);
  g_assert_true (copy.weigh_ins != step->weigh_ins);
  g_assert_true (copy.weigh_ins[0].note != step->weigh_ins[0].note);
  g_assert_cmpstr (copy.weigh_ins[0].note, ==, "in the small tray");
  g_assert_cmpuint (copy.n_aims, ==, 2);

  lw_step_clear (&copy);
  g_assert_null (copy.note);
  g_assert_null (copy.aims);
  g_assert_null (copy.weigh_ins);
  g_assert_cmpuint (copy.n_weigh_ins, ==, 0);
}

static void
assert_kinds (const LwBatch *batch,
              const char    *kinds)
{
  g_autoptr (GString) found = g_string_new (NULL);

  for (guint i = 0; i < batch->n_steps; i++)
    g_string_append_printf (found, "%s%s", i > 0 ? " " : "",
                            lw_kind_row (batch->steps[i].kind)->id);

  g_assert_cmpstr (found->str, ==, kinds);
}

static void
test_batch_steps (void)
{
  static const struct
  {
    guint from;
    guint to;
    const char *kinds;
  } moves[] = {
    { 0, 0, "wither fix-pan roll dry-sun" }, { 0, 3, "fix-pan roll dry-sun wither" },
    { 3, 0, "wither fix-pan roll dry-sun" }, { 1, 2, "wither roll fix-pan dry-sun" },
    { 2, 1, "wither fix-pan roll dry-sun" }, { 3, 3, "wither fix-pan roll dry-sun" },
    { 3, 1, "wither dry-sun fix-pan roll" },
  };
  g_autoptr (LwBatch) batch = lw_batch_new ("b");

  lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_DRY_SUN));
  lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_WITHER));
  lw_batch_insert_step (batch, 1, lw_step_new (LW_KIND_ROLL));
  lw_batch_insert_step (batch, 1, lw_step_new (LW_KIND_FIX_PAN));

  for (guint i = 0; i < G_N_ELEMENTS (moves); i++)
    {
      lw_batch_move_step (batch, moves[i].from, moves[i].to);
      assert_kinds (batch, moves[i].kinds);
    }

  lw_batch_remove_step (batch, 1);
  assert_kinds (batch, "wither fix-pan roll");
  lw_batch_remove_step (batch, 2);
  lw_batch_remove_step (batch, 0);
  lw_batch_remove_step (batch, 0);
  assert_kinds (batch, "");
}

static void
test_batch_copy (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) changed = lw_season_copy (season);
  LwBatch *copy = lw_batch_copy (season->batches[0]);

  lw_season_put_batch (changed, 0, copy);
  sample_assert_same (season, changed);

  lw_step_set (&copy->steps[0], LW_SET_MINUTES, 17);
  lw_batch_remove_step (copy, 1);
  g_assert_cmpuint (season->batches[0]->n_steps, ==, 2);
  g_assert_cmpfloat (lw_step_get (&season->batches[0]->steps[0], LW_SET_MINUTES), ==, 1080);
}

/* A copied season shares its entries, and each outlives the other. */
static void
test_season_sharing (void)
{
  LwSeason *season = sample_season ();
  LwBatch *kept = lw_batch_ref (season->batches[1]);
  LwProfile *profile = lw_profile_ref (season->profiles[0]);
  LwWeather *weather = lw_weather_ref (season->weathers[0]);
  LwSeason *copy = lw_season_copy (season);

  g_assert_true (copy->batches != season->batches);
  g_assert_true (copy->batches[0] == season->batches[0]);
  g_assert_true (copy->profiles[0] == season->profiles[0]);
  g_assert_true (copy->weathers[0] == season->weathers[0]);

  lw_season_remove_batch (copy, 0);
  g_assert_cmpuint (copy->n_batches, ==, 1);
  g_assert_cmpuint (season->n_batches, ==, 2);
  g_assert_true (copy->batches[0] == kept);

  lw_season_unref (lw_season_ref (season));
  lw_season_unref (season);
  g_assert_cmpstr (copy->batches[0]->name, ==, "Batch & 13");
  lw_season_unref (copy);

  g_assert_cmpstr (kept->name, ==, "Batch & 13");
  g_assert_cmpstr (profile->id, ==, "upper-terrace-2");
  g_assert_cmpuint (weather->n_hours, ==, 6);
  lw_batch_unref (kept);
  lw_profile_unref (profile);
  lw_weather_unref (weather);
}

static void
test_season_find (void)
{
  g_autoptr (LwSeason) season = sample_season ();

  g_assert_true (lw_season_profile (season, "large-leaf") == season->profiles[1]);
  g_assert_null (lw_season_profile (season, "small-leaf"));
  g_assert_null (lw_season_profile (season, NULL));
  g_assert_true (lw_season_weather (season, "march") == season->weathers[0]);
  g_assert_null (lw_season_weather (season, NULL));
  g_assert_cmpint (lw_season_batch (season, "Batch & 13"), ==, 1);
  g_assert_cmpint (lw_season_batch (season, "13"), ==, -1);
}

static gpointer
share_from_thread (gpointer season)
{
  for (int i = 0; i < 20000; i++)
    {
      g_autoptr (LwSeason) copy = lw_season_copy (season);

      lw_season_put_batch (copy, 0, lw_batch_ref (copy->batches[1]));
    }

  return NULL;
}

static void
test_season_threads (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  GThread *threads[3];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new (NULL, share_from_thread, season);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);

  g_assert_cmpstr (season->batches[0]->name, ==, "Batch № 12");
}

static void
test_profile_law (void)
{
  g_autoptr (LwProfile) profile = lw_profile_new ("a", "A");
  guint field = (guint) lw_law_find ("k-ox");
  double start = lw_law_fields ()[field].value;

  g_assert_cmphex (profile->given, ==, 0);
  lw_profile_set_law (profile, field, 4e-4);
  g_assert_cmphex (profile->given, ==, G_GUINT64_CONSTANT (1) << field);
  g_assert_cmpfloat (lw_law_get (&profile->law, field), ==, 4e-4);
  lw_profile_set_law (profile, field, start);
  g_assert_cmphex (profile->given, ==, 0);
}

static void
test_profile_start (void)
{
  g_autoptr (LwProfile) profile = lw_profile_start ();
  double sum = 0, exposure = 0;

  g_assert_cmpuint (profile->n_parts, ==, 4);
  g_assert_cmpstr (profile->part_names[0], ==, "sheltered");
  for (guint i = 0; i < profile->n_parts; i++)
    {
      sum += profile->parts[i].share;
      exposure += profile->parts[i].share * profile->parts[i].exposure;
    }

  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-12);
  g_assert_cmpfloat_with_epsilon (exposure, 1, 0.01);
  g_assert_cmpfloat (lw_dry_basis (profile->fresh_moisture_pct), >, 3.3);
}

static void
test_weather_sky (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  const LwWeather *weather = season->weathers[0];
  LwAirNow now = lw_sky_at (weather->sky, (double) weather->start_s + 3600);

  g_assert_cmpfloat_with_epsilon (now.temp_c, weather->hours[1].temp_c, 1e-9);
  g_assert_cmpfloat_with_epsilon (now.vapour_pa, 0.99 * lw_air_saturation_pa (now.temp_c), 1e-6);
  g_assert_cmpfloat (now.sun_w_m2, ==, 850);
  g_assert_cmpfloat (now.wind_m_s, ==, 12);
}

static void
test_problem_text (void)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *with_line = NULL, *whole = NULL;

  lw_problems_add (problems, 12, "Add it.", "“%s” lacks “%s”.", "step", "minutes");
  lw_problems_add (problems, 0, "Open another.", "The file is empty.");
  with_line = lw_problem_text (g_ptr_array_index (problems, 0), "a.leafwend");
  whole = lw_problem_text (g_ptr_array_index (problems, 1), "a.leafwend");

  g_assert_cmpstr (with_line, ==, "a.leafwend:12: “step” lacks “minutes”. Add it.");
  g_assert_cmpstr (whole, ==, "a.leafwend: The file is empty. Open another.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/season/step-settings", test_step_settings);
  g_test_add_func ("/season/step-copy", test_step_copy);
  g_test_add_func ("/season/batch-steps", test_batch_steps);
  g_test_add_func ("/season/batch-copy", test_batch_copy);
  g_test_add_func ("/season/sharing", test_season_sharing);
  g_test_add_func ("/season/find", test_season_find);
  g_test_add_func ("/season/threads", test_season_threads);
  g_test_add_func ("/season/profile-law", test_profile_law);
  g_test_add_func ("/season/profile-start", test_profile_start);
  g_test_add_func ("/season/weather-sky", test_weather_sky);
  g_test_add_func ("/season/problem-text", test_problem_text);

  return g_test_run ();
}

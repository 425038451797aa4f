/* The two seasons that ship with the program: they can be read and computed, make-demo
 * writes the same bytes again, and the weigh-ins fit the leaf they were drawn from. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo-test.h"

#include <glib/gstdio.h>
#include <math.h>

#include "demo/garden.h"
#include "season/document.h"

#define EVERY_S 30

static const int years[] = { 2025, 2026 };
static const int documents[] = { 2025, 2026, DEMO_LESSONS };
static const char *make_demo;

static char *
data_path (const char *folder,
           int         year)
{
  g_autofree char *name = year == DEMO_LESSONS ? g_strdup ("ondry-ridge-lessons" LW_SEASON_SUFFIX)
                                               : g_strdup_printf ("ondry-ridge-%d" LW_SEASON_SUFFIX, year);

  return g_build_filename (folder, name, NULL);
}

static const char *
data_folder (void)
{
  const char *folder = g_getenv ("LEAFWEND_DATA");

  g_assert_nonnull (folder);

  return folder;
}

LwSeason *
demo_load (int year)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *path = data_path (data_folder (), year);
  LwSeason *season = lw_document_load (path, problems);

  for (guint i = 0; i < problems->len; i++)
    g_test_message ("%s", ((LwProblem *) problems->pdata[i])->what);
  g_assert_cmpuint (problems->len, ==, 0);
  g_assert_nonnull (season);

  return season;
}

LwTrack *
demo_march (LwSeason *season,
            guint     batch)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwMarch) march = lw_march_new ();
  LwTrack *track;

  g_assert_nonnull (plan);
  track = lw_plan_march (plan, march, (LwSampling) { .every_s = EVERY_S });
  g_assert_false (track->failure.failed);

  return track;
}

static void
test_counts (void)
{
  static const guint made[] = { 18, 14 }, planned[] = { 0, 2 };

  for (guint y = 0; y < G_N_ELEMENTS (years); y++)
    {
      g_autoptr (LwSeason) season = demo_load (years[y]);
      guint n = 0;

      for (guint i = 0; i < season->n_batches; i++)
        n += season->batches[i]->made;

      g_assert_cmpuint (n, ==, made[y]);
      g_assert_cmpuint (season->n_batches - n, ==, planned[y]);
      g_assert_cmpuint (season->n_profiles, ==, DEMO_N_PLOTS);
      g_assert_nonnull (strstr (season->note, "invented"));
    }
}

static gboolean
uses (const LwBatch *batch,
      LwKind         kind)
{
  for (guint i = 0; i < batch->n_steps; i++)
    if (batch->steps[i].kind == kind)
      return TRUE;

  return FALSE;
}

static void
test_kinds (void)
{
  guint used[LW_N_KINDS] = { 0 };

  for (guint y = 0; y < G_N_ELEMENTS (years); y++)
    {
      g_autoptr (LwSeason) season = demo_load (years[y]);

      for (guint i = 0; i < season->n_batches; i++)
        for (int kind = 0; kind < LW_N_KINDS; kind++)
          used[kind] += uses (season->batches[i], (LwKind) kind);
    }

  for (int kind = 0; kind < LW_N_KINDS; kind++)
    {
      g_test_message ("%s: %u batches", lw_kind_row ((LwKind) kind)->id, used[kind]);
      g_assert_cmpuint (used[kind], >=, 2);
    }
}

static void
test_same_bytes (void)
{
  g_autofree char *folder = g_dir_make_tmp ("leafwend-demo-XXXXXX", NULL);
  const char *argv[] = { make_demo, folder, NULL };
  int status;

  g_assert_true (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL,
                               &status, NULL));
  g_assert_cmpint (status, ==, 0);

  for (guint y = 0; y < G_N_ELEMENTS (documents); y++)
    {
      g_autofree char *shipped = data_path (data_folder (), documents[y]);
      g_autofree char *again = data_path (folder, documents[y]);
      g_autofree char *a = NULL, *b = NULL;

      g_assert_true (g_file_get_contents (shipped, &a, NULL, NULL));
      g_assert_true (g_file_get_contents (again, &b, NULL, NULL));
      g_assert_true (g_str_equal (a, b));
      g_remove (again);
    }
  g_rmdir (folder);
}

/* Every batch can be computed, and what was made is tea at the end. */
static void
test_finished (void)
{
  for (guint y = 0; y < G_N_ELEMENTS (years); y++)
    {
      g_autoptr (LwSeason) season = demo_load (years[y]);

      for (guint i = 0; i < season->n_batches; i++)
        {
          g_autoptr (LwTrack) track = demo_march (season, i);
          double moisture = lw_track_end (track, track->n_steps - 1, -1).moisture_wb_pct;

          g_test_message ("%d %s: %.1f %%", years[y], season->batches[i]->name, moisture);
          g_assert_cmpfloat (moisture, >, 3);
          g_assert_cmpfloat (moisture, <, 13);
        }
    }
}

/* How far a weigh-in is from a track, in its own standard deviations. */
static double
deviation (const LwBatch   *batch,
           const LwTrack   *track,
           guint            step,
           const LwWeighIn *seen)
{
  const LwMeasureRow *row = lw_measure_row (seen->of);
  LwOutcome outcome = lw_track_outcome_at (track, step, -1, 60 * seen->minute);
  double expected;

  if (row->quantity < 0)
    expected = lw_step_get (&batch->steps[step], LW_SET_WALL_C);
  else
    expected = lw_quantity_of ((LwQuantity) row->quantity, &outcome)
               * (seen->of == LW_WEIGHED_KG ? batch->fresh_kg : 1);

  return (seen->value - seen->tare_kg - expected) / seen->sd;
}

static double
sum_of_squares (const LwBatch *batch,
                const LwTrack *track)
{
  double sum = 0;

  for (guint i = 0; i < batch->n_steps; i++)
    for (guint k = 0; k < batch->steps[i].n_weigh_ins; k++)
      {
        double off = deviation (batch, track, i, &batch->steps[i].weigh_ins[k]);

        sum += off * off;
      }

  return sum;
}

static guint
count_weigh_ins (const LwBatch *batch)
{
  guint n = 0;

  for (guint i = 0; i < batch->n_steps; i++)
    n += batch->steps[i].n_weigh_ins;

  return n;
}

/* Drawn from the hidden leaf with the scatter they state, and clearly not from the shipped one. */
static void
test_weigh_ins (void)
{
  for (guint y = 0; y < G_N_ELEMENTS (years); y++)
    {
      g_autoptr (LwSeason) season = demo_load (years[y]);
      double hidden_sum = 0, shipped_sum = 0;
      guint n = 0;

      for (guint i = 0; i < season->n_batches; i++)
        {
          LwBatch *batch = season->batches[i];
          g_autoptr (LwSeason) hidden = demo_hidden_season (season, batch);
          g_autoptr (LwTrack) grown = demo_march (hidden, 0);
          g_autoptr (LwTrack) shipped = demo_march (season, i);

          hidden_sum += sum_of_squares (batch, grown);
          shipped_sum += sum_of_squares (batch, shipped);
          n += count_weigh_ins (batch);
        }

      g_test_message ("%d: %u weigh-ins, chi-square per point: hidden leaf %.2f, shipped %.1f",
                      years[y], n, hidden_sum / n, shipped_sum / n);
      g_assert_cmpfloat (hidden_sum / n, >, 0.5);
      g_assert_cmpfloat (hidden_sum / n, <, 1.6);
      g_assert_cmpfloat (shipped_sum / n, >, 10);
    }
}

static void
test_weigh_in_form (void)
{
  guint tares = 0, notes = 0;

  for (guint y = 0; y < G_N_ELEMENTS (years); y++)
    {
      g_autoptr (LwSeason) season = demo_load (years[y]);

      for (guint i = 0; i < season->n_batches; i++)
        {
          const LwBatch *batch = season->batches[i];
          guint n = count_weigh_ins (batch);

          g_assert_cmpuint (n, >=, batch->made ? 2 : 0);
          g_assert_cmpuint (n, <=, batch->made ? 8 : 0);
          for (guint k = 0; k < batch->n_steps; k++)
            for (guint w = 0; w < batch->steps[k].n_weigh_ins; w++)
              {
                tares += batch->steps[k].weigh_ins[w].tare_kg > 0;
                notes += batch->steps[k].weigh_ins[w].note != NULL;
              }
        }
    }

  g_assert_cmpuint (tares, >=, 4);
  g_assert_cmpuint (notes, >=, 4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_assert_cmpint (argc, ==, 2);
  make_demo = argv[1];

  g_test_add_func ("/demo/counts", test_counts);
  g_test_add_func ("/demo/kinds", test_kinds);
  g_test_add_func ("/demo/same-bytes", test_same_bytes);
  g_test_add_func ("/demo/finished", test_finished);
  g_test_add_func ("/demo/weigh-ins", test_weigh_ins);
  g_test_add_func ("/demo/weigh-in-form", test_weigh_in_form);
  demo_add_story ();
  demo_add_lessons ();
  demo_add_teas ();
  demo_add_fit ();
  demo_add_replan ();

  return g_test_run ();
}

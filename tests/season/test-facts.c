/* What is written down besides the steps: what may stand, and that an edit changes just that. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/facts.h"

#include <math.h>
#include <string.h>

#include "sample.h"
#include "season/document.h"
#include "season/lesson.h"

#define FULL 0
#define PLAIN 1

static LwBatchFacts
facts_of (const LwBatch *batch,
          const char   **notes)
{
  for (guint i = 0; i < batch->n_steps; i++)
    notes[i] = batch->steps[i].note != NULL ? batch->steps[i].note : "";

  return (LwBatchFacts) {
    .name = batch->name, .tea = batch->tea != NULL ? batch->tea : "", .when_s = batch->when_s, .fresh_kg = batch->fresh_kg,
    .made = batch->made, .note = batch->note != NULL ? batch->note : "", .step_notes = notes,
  };
}

static void
assert_refused (const LwSeason     *season,
                const LwBatchFacts *facts,
                const char         *why)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (lw_batch_facts_check (season, FULL, facts, &error));
  g_assert_nonnull (strstr (error->message, why));
}

static void
test_batch_check (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  const LwBatch *batch = season->batches[FULL];
  const char *notes[LW_MAX_STEPS];
  const LwBatchFacts good = facts_of (batch, notes);
  g_autofree char *most = g_strnfill (LW_MAX_TEXT, 'a'), *more = g_strnfill (LW_MAX_TEXT + 1, 'a');
  LwBatchFacts facts = good;

  g_assert_true (lw_batch_facts_check (season, FULL, &good, NULL));
  facts.name = "";
  assert_refused (season, &facts, "needs a name");
  facts.name = season->batches[PLAIN]->name;
  assert_refused (season, &facts, "Another batch");
  facts = good;
  facts.when_s = G_MAXINT64 / 2;
  assert_refused (season, &facts, "year");
  facts = good;
  facts.fresh_kg = NAN;
  assert_refused (season, &facts, "0.001 to 100000");
  facts.fresh_kg = 1e5;
  facts.note = most;
  g_assert_true (lw_batch_facts_check (season, FULL, &facts, NULL));
  notes[1] = more;
  assert_refused (season, &facts, "4000 characters");
}

static void
test_batch_edit (void)
{
  g_autoptr (LwSeason) season = sample_season (), untouched = sample_season (), same = NULL, next = NULL;
  const char *notes[LW_MAX_STEPS];
  LwBatchFacts facts = facts_of (season->batches[FULL], notes);

  same = lw_edit_set_batch_facts (season, FULL, &facts);
  sample_assert_same (same, season);

  facts.name = "Another";
  facts.tea = facts.note = notes[1] = "";
  facts.fresh_kg = 12.5;
  facts.made = FALSE;
  facts.when_s = 0;
  notes[0] = "Slow.";
  next = lw_edit_set_batch_facts (season, FULL, &facts);
  g_assert_cmpstr (next->batches[FULL]->name, ==, "Another");
  g_assert_null (next->batches[FULL]->tea);
  g_assert_null (next->batches[FULL]->note);
  g_assert_cmpfloat (next->batches[FULL]->fresh_kg, ==, 12.5);
  g_assert_cmpint (next->batches[FULL]->when_s, ==, 0);
  g_assert_false (next->batches[FULL]->made);
  g_assert_cmpstr (next->batches[FULL]->steps[0].note, ==, "Slow.");
  g_assert_null (next->batches[FULL]->steps[1].note);
  g_assert_cmpstr (next->lessons[0]->shown[0], ==, "Another");
  sample_assert_same (season, untouched);
}

static void
test_day (void)
{
  const LwDayFacts good = { "Hot", { -5, 6, 25, 14, NAN, -10, 0, 60 }, "Note." };
  const struct { gsize at; double value; const char *why; } wrong[] = {
    { offsetof (LwDay, low_c), 26, "above the highest" }, { offsetof (LwDay, low_c), -41, "-40 to 60" },
    { offsetof (LwDay, high_hour), 6, "same hour" }, { offsetof (LwDay, high_hour), 24.5, "0 to 24" },
    { offsetof (LwDay, humidity_pct), 50, "one of the two" }, { offsetof (LwDay, dew_point_c), NAN, "one of the two" },
    { offsetof (LwDay, wind_m_s), NAN, "0 to 60" }, { offsetof (LwDay, cloud_pct), 101, "0 to 100" },
  };
  LwDayFacts facts, same = { "Same", { 20, 6, 20, 14, 50, NAN, 5, 1 }, "" };
  g_autoptr (LwWeather) weather = lw_day_facts_weather (&good, "hot"), constant = lw_day_facts_weather (&same, "same");

  g_assert_true (lw_day_facts_check (&good, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (GError) error = NULL;

      facts = good;
      *(double *) ((char *) &facts.day + wrong[i].at) = wrong[i].value;
      g_assert_false (lw_day_facts_check (&facts, &error));
      g_assert_nonnull (strstr (error->message, wrong[i].why));
    }

  g_assert_cmpint (weather->form, ==, LW_WEATHER_DAY);
  g_assert_true (lw_day_facts_of (weather, &facts));
  g_assert_cmpmem (&facts.day, sizeof facts.day, &good.day, sizeof good.day);
  g_assert_cmpstr (facts.note, ==, "Note.");
  g_assert_cmpint (constant->form, ==, LW_WEATHER_CONSTANT);
  g_assert_true (lw_day_facts_of (constant, &facts));
  g_assert_cmpfloat (facts.day.low_c, ==, 20);
  g_assert_cmpfloat (facts.day.high_c, ==, 20);
  g_assert_true (lw_day_facts_check (&facts, NULL));
}

static void
test_season (void)
{
  g_autoptr (LwSeason) season = sample_season (), untouched = sample_season (), next = NULL;
  g_autoptr (GError) error = NULL;
  LwSeasonFacts facts = { "Later", "", 8848.5, -33.25, "" };

  g_assert_true (lw_season_facts_check (&facts, NULL));
  next = lw_edit_set_season_facts (season, &facts);
  g_assert_cmpstr (next->name, ==, "Later");
  g_assert_null (next->place);
  g_assert_null (next->note);
  g_assert_cmpfloat (next->altitude_m, ==, 8848.5);
  g_assert_cmpfloat (next->latitude_deg, ==, -33.25);
  sample_assert_same (season, untouched);

  facts.latitude_deg = 90.5;
  g_assert_false (lw_season_facts_check (&facts, &error));
  g_assert_nonnull (strstr (error->message, "-90 to 90"));
  facts = (LwSeasonFacts) { "", "", 0, 0, "" };
  g_clear_error (&error);
  g_assert_false (lw_season_facts_check (&facts, &error));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/facts/batch-check", test_batch_check);
  g_test_add_func ("/facts/batch-edit", test_batch_edit);
  g_test_add_func ("/facts/season", test_season);
  g_test_add_func ("/facts/day", test_day);

  return g_test_run ();
}

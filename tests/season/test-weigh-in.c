/* Weigh-ins as they are entered: the edits, what is refused and at which field. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <gio/gio.h>
#include <math.h>

#include "season/correction.h"
#include "season/document.h"
#include "season/measured.h"
#include "season/weigh-in.h"

#define FULL 0 /* of the sample; its second step has three weigh-ins, at 0.1, 12.7 and 13 */
#define PAN 1

static const LwStep *
pan (const LwSeason *season)
{
  return &season->batches[FULL]->steps[PAN];
}

static char written[] = "by the window";

static void
test_add (void)
{
  g_autoptr (LwSeason) season = sample_season (), untouched = sample_season ();
  g_autoptr (LwSeason) next = lw_edit_add_weigh_in (season, FULL, PAN, (LwWeighIn) { 12.7, LW_LEAF_C, 82, 2, 0, written });
  const LwStep *step = pan (next);

  g_assert_cmpuint (step->n_weigh_ins, ==, 4);
  /* After the one of the same minute, before the later one, and with a note of its own. */
  g_assert_cmpint (step->weigh_ins[1].of, ==, LW_JUDGED_OXIDATION_PCT);
  g_assert_cmpint (step->weigh_ins[2].of, ==, LW_LEAF_C);
  g_assert_cmpfloat (step->weigh_ins[2].value, ==, 82);
  g_assert_cmpstr (step->weigh_ins[2].note, ==, written);
  g_assert_true (step->weigh_ins[2].note != written);
  g_assert_cmpint (step->weigh_ins[3].of, ==, LW_NOTED);
  sample_assert_same (season, untouched);
  g_assert_true (next->batches[1] == season->batches[1]);
}

static void
test_change (void)
{
  g_autoptr (LwSeason) season = sample_season (), untouched = sample_season ();
  LwWeighIn later = pan (season)->weigh_ins[0];
  g_autoptr (LwSeason) next = NULL;

  later.minute = 12.9;
  later.value = 6;
  next = lw_edit_change_weigh_in (season, FULL, PAN, 0, later);
  g_assert_cmpuint (pan (next)->n_weigh_ins, ==, 3);
  g_assert_cmpint (pan (next)->weigh_ins[0].of, ==, LW_JUDGED_OXIDATION_PCT);
  g_assert_true (lw_weigh_in_same (&pan (next)->weigh_ins[1], &later));
  g_assert_false (lw_weigh_in_same (&pan (next)->weigh_ins[1], &pan (season)->weigh_ins[0]));
  sample_assert_same (season, untouched);

  /* Of two in one minute each keeps its place. */
  for (guint at = 0; at < 2; at++)
    {
      g_autoptr (LwSeason) two = lw_edit_add_weigh_in (season, FULL, PAN, pan (season)->weigh_ins[0]);
      g_autoptr (LwSeason) changed = NULL;

      later = pan (two)->weigh_ins[at];
      later.value = 5;
      changed = lw_edit_change_weigh_in (two, FULL, PAN, at, later);
      g_assert_cmpfloat (pan (changed)->weigh_ins[at].value, ==, 5);
      later.minute = 0;
      g_clear_pointer (&changed, lw_season_unref);
      changed = lw_edit_change_weigh_in (two, FULL, PAN, at, later);
      g_assert_cmpfloat (pan (changed)->weigh_ins[0].value, ==, 5);
    }
}

static void
test_remove (void)
{
  g_autoptr (LwSeason) season = sample_season (), untouched = sample_season ();
  g_autoptr (LwSeason) next = lw_edit_remove_weigh_in (season, FULL, PAN, 1);
  g_autoptr (LwSeason) again = lw_edit_add_weigh_in (next, FULL, PAN, pan (season)->weigh_ins[1]);

  g_assert_cmpuint (pan (next)->n_weigh_ins, ==, 2);
  g_assert_cmpint (pan (next)->weigh_ins[1].of, ==, LW_NOTED);
  sample_assert_same (again, untouched);
  for (guint i = 0; i < 2; i++)
    {
      LwSeason *less = lw_edit_remove_weigh_in (next, FULL, PAN, 0);

      lw_season_unref (next);
      next = less;
    }
  g_assert_cmpuint (pan (next)->n_weigh_ins, ==, 0);
}

static void
assert_refused (LwWeighIn    weigh_in,
                LwWeighField field)
{
  g_autoptr (GError) error = NULL;
  LwWeighField wrong;

  g_assert_false (lw_weigh_in_check (&weigh_in, 25, &wrong, &error));
  g_assert_cmpint (wrong, ==, field);
  g_assert_nonnull (error);
}

static void
test_refused (void)
{
  g_autofree char *at_most = g_strnfill (LW_MAX_TEXT, 'x'), *longer = g_strnfill (LW_MAX_TEXT + 1, 'x');
  char bell[] = "bell \a", words[] = "two\nlines";
  const LwWeighIn good = { 25, LW_WEIGHED_KG, 7.1, 0.02, 0.35, words };
  LwWeighField wrong;
  LwWeighIn bad = good;

  g_assert_true (lw_weigh_in_check (&good, 25, &wrong, NULL));
  g_assert_true (lw_weigh_in_check (&(LwWeighIn) { 0, LW_NOTED, 0, 0, 0, at_most }, 25, &wrong, NULL));

  bad.value = NAN;
  assert_refused (bad, LW_WEIGH_VALUE);
  assert_refused ((LwWeighIn) { 1, LW_LEAF_C, 301, 2, 0, NULL }, LW_WEIGH_VALUE);
  assert_refused ((LwWeighIn) { 1, LW_JUDGED_OXIDATION_PCT, -1, 2, 0, NULL }, LW_WEIGH_VALUE);
  bad = good;
  bad.tare_kg = 7.1;
  assert_refused (bad, LW_WEIGH_TARE);
  bad.tare_kg = NAN;
  assert_refused (bad, LW_WEIGH_TARE);
  bad = good;
  bad.sd = 0;
  assert_refused (bad, LW_WEIGH_SD);
  bad.sd = NAN;
  assert_refused (bad, LW_WEIGH_SD);
  bad = good;
  bad.minute = 25.01;
  assert_refused (bad, LW_WEIGH_MINUTE);
  bad.minute = NAN;
  assert_refused (bad, LW_WEIGH_MINUTE);
  bad = good;
  bad.note = longer;
  assert_refused (bad, LW_WEIGH_NOTE);
  bad.note = bell;
  assert_refused (bad, LW_WEIGH_NOTE);
  assert_refused ((LwWeighIn) { 1, LW_NOTED, 0, 0, 0, NULL }, LW_WEIGH_NOTE);
}

/* Whatever is taken can be saved and read again. */
static void
test_taken_is_saved (void)
{
  char note[] = "a note";
  g_autoptr (LwSeason) season = sample_season ();
  gsize length;

  for (int of = 0; of < LW_N_MEASURES; of++)
    {
      const LwMeasureRow *row = lw_measure_row ((LwMeasure) of);
      gboolean noted = of == LW_NOTED;

      for (guint end = 0; end < 2; end++)
        {
          LwWeighIn weigh_in = { 1, (LwMeasure) of, end ? row->high : row->low, noted ? 0 : LW_LEAST_SD, 0, note };
          g_autoptr (LwSeason) next = NULL;
          LwWeighField wrong;

          if (of == LW_WEIGHED_KG && end == 0)
            weigh_in.value = 0.001;
          g_assert_true (lw_weigh_in_check (&weigh_in, 25, &wrong, NULL));
          next = lw_edit_add_weigh_in (season, FULL, PAN, weigh_in);
          lw_season_unref (season);
          season = g_steal_pointer (&next);
        }
    }

  {
    g_autoptr (GPtrArray) problems = lw_problems_new ();
    g_autofree char *text = lw_document_write (season, &length);
    g_autoptr (LwSeason) read = lw_document_read (text, length, problems);

    g_assert_nonnull (read);
    sample_assert_same (read, season);
  }
}

static void
test_fresh_moisture (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  LwBatch *batch = lw_batch_copy (season->batches[FULL]);

  /* The sample is corrected by a tenth of a point. */
  g_assert_cmpfloat_with_epsilon (lw_fresh_moisture_pct (season, batch), 78.2, 1e-9);
  lw_batch_drop_corrections (batch);
  g_assert_cmpfloat (lw_fresh_moisture_pct (season, batch), ==, 78.3);
  batch->fresh_moisture_pct = NAN;
  g_assert_cmpfloat (lw_fresh_moisture_pct (season, batch), ==,
                     lw_season_profile (season, batch->leaf)->fresh_moisture_pct);
  lw_batch_unref (batch);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/weigh-in/add", test_add);
  g_test_add_func ("/weigh-in/change", test_change);
  g_test_add_func ("/weigh-in/remove", test_remove);
  g_test_add_func ("/weigh-in/refused", test_refused);
  g_test_add_func ("/weigh-in/taken-is-saved", test_taken_is_saved);
  g_test_add_func ("/weigh-in/fresh-moisture", test_fresh_moisture);

  return g_test_run ();
}

/* A journal and a season that were changed apart from each other: told from one that only lags, and joined without loss. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <gio/gio.h>
#include <math.h>
#include <string.h>

#include "season/correction.h"
#include "season/edit.h"
#include "season/journal.h"
#include "season/weigh-in.h"

#define NOW_S 1795630000.25
#define FULL 0 /* of the sample; its second step has three weigh-ins */
#define PAN 1

/* What the journal says of `season` when `filed` is in the file, as it is read again. */
static void
journal_of (LwJournalEntry *entry,
            LwRun           run,
            const LwSeason *filed,
            const LwSeason *season)
{
  g_autofree char *line = lw_journal_line (&run, NOW_S, "/a.leafwend", filed, filed->batches[FULL]->name, season, FULL);
  guint damaged;

  g_assert_true (lw_journal_read (line, strlen (line), entry, &damaged));
}

static LwSeason *
with_entry (const LwSeason *season,
            double          minute,
            double          value)
{
  return lw_edit_add_weigh_in (season, FULL, PAN, (LwWeighIn) { minute, LW_LEAF_C, value, 2, 0, NULL });
}

static LwSeason *
with_note (const LwSeason *season,
           const char     *note)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, FULL, &own);

  g_free (own->note);
  own->note = g_strdup (note);

  return next;
}

static LwRun
run_in (guint step)
{
  LwRun run = lw_run_start (1795628475);

  run.step = step;

  return run;
}

/* As it comes from the disk. */
static LwSeason *
read_again (const LwSeason *season)
{
  gsize length;
  g_autofree char *text = lw_document_write (season, &length);

  return sample_read (text);
}

static void
test_stand (void)
{
  g_autoptr (LwSeason) sample = sample_season (), season = read_again (sample), more = with_entry (season, 3, 71);
  g_autoptr (LwSeason) theirs = with_note (season, "theirs"), elsewhere = lw_edit_rename_batch (season, 1, "theirs");
  g_autoptr (LwSeason) gone = lw_edit_remove_batch (season, FULL), saved = read_again (more);
  g_auto (LwJournalEntry) entry = { 0 };

  journal_of (&entry, run_in (PAN), season, more);
  g_assert_cmpint (lw_journal_stand (season, &entry), ==, LW_JOURNAL_AHEAD);
  g_assert_cmpint (lw_journal_stand (elsewhere, &entry), ==, LW_JOURNAL_AHEAD);
  g_assert_cmpint (lw_journal_stand (saved, &entry), ==, LW_JOURNAL_SAME);
  g_assert_cmpint (lw_journal_stand (theirs, &entry), ==, LW_JOURNAL_APART);
  g_assert_cmpint (lw_journal_stand (gone, &entry), ==, LW_JOURNAL_NO_BATCH);
}

/* A batch that was never saved is missing in the file, and nobody else took it out. */
static void
test_never_saved (void)
{
  g_autoptr (LwSeason) season = sample_season (), gone = lw_edit_remove_batch (season, FULL);
  g_auto (LwJournalEntry) entry = { 0 };
  LwRun run = run_in (PAN);
  g_autofree char *line = lw_journal_line (&run, NOW_S, "/a.leafwend", gone, season->batches[FULL]->name, season, FULL);
  guint damaged;

  g_assert_true (lw_journal_read (line, strlen (line), &entry, &damaged));
  g_assert_null (entry.base);
  g_assert_cmpint (lw_journal_stand (gone, &entry), ==, LW_JOURNAL_AHEAD);
  g_assert_cmpint (lw_journal_stand (season, &entry), ==, LW_JOURNAL_SAME);
}

/* Of the run: its start, the time of the step that ended, its entry. Of the file: its note, its entry, its later steps. */
static void
test_join (void)
{
  g_autoptr (LwSeason) season = sample_season (), entered = with_entry (season, 3, 71);
  g_autoptr (LwSeason) begun = lw_edit_begin_batch (entered, FULL, 1795628000);
  g_autoptr (LwSeason) ended = lw_edit_end_step (begun, FULL, PAN - 1, 61);
  g_autoptr (LwSeason) noted = with_note (season, "theirs"), theirs = with_entry (noted, 1, 55), joined = NULL, again = NULL;
  g_auto (LwJournalEntry) entry = { 0 };
  const LwBatch *batch;
  guint at, n;

  journal_of (&entry, run_in (PAN), season, ended);
  joined = lw_journal_join (theirs, &entry, &at, &n);
  g_assert_nonnull (joined);
  g_assert_cmpuint (at, ==, FULL);
  g_assert_cmpuint (n, ==, 1);
  batch = joined->batches[FULL];
  g_assert_cmpstr (batch->note, ==, "theirs");
  g_assert_cmpint (batch->when_s, ==, 1795628000);
  g_assert_nonnull (batch->plan);
  g_assert_cmpfloat (lw_step_get (&batch->steps[PAN - 1], LW_SET_MINUTES), ==, 61);
  g_assert_cmpuint (batch->steps[PAN].n_weigh_ins, ==, 5);
  for (guint i = 1; i < 5; i++)
    g_assert_cmpfloat (batch->steps[PAN].weigh_ins[i - 1].minute, <=, batch->steps[PAN].weigh_ins[i].minute);
  g_assert_cmpuint (batch->n_steps, ==, season->batches[FULL]->n_steps);

  /* Once more is the same, and it can be written and read. */
  again = lw_journal_join (joined, &entry, &at, &n);
  g_assert_cmpuint (n, ==, 0);
  sample_assert_same (again, joined);
  g_clear_pointer (&again, lw_season_unref);
  again = read_again (joined);
  sample_assert_same (again, joined);
}

/* The file would have the step end before the entry: it lasts as the run had it. */
static void
test_join_longer (void)
{
  g_autoptr (LwSeason) season = sample_season (), longer = lw_edit_set (season, FULL, PAN, LW_SET_MINUTES, 25);
  g_autoptr (LwSeason) entered = with_entry (longer, 24, 71), theirs = with_note (season, "theirs"), joined = NULL;
  g_auto (LwJournalEntry) entry = { 0 };
  guint at, n;

  journal_of (&entry, run_in (PAN), season, entered);
  joined = lw_journal_join (theirs, &entry, &at, &n);
  g_assert_cmpfloat (lw_step_get (&joined->batches[FULL]->steps[PAN], LW_SET_MINUTES), ==, 25);
}

/* The file has other steps: what was measured in the pan has no place in a roast. */
static void
test_no_join (void)
{
  g_autoptr (LwSeason) season = sample_season (), entered = with_entry (season, 3, 71);
  g_autoptr (LwSeason) other = lw_edit_set_kind (season, FULL, PAN, LW_KIND_ROAST), less = lw_edit_remove_batch (season, FULL);
  g_auto (LwJournalEntry) entry = { 0 };
  guint at, n;

  journal_of (&entry, run_in (0), season, entered);
  g_assert_null (lw_journal_join (other, &entry, &at, &n));
  g_assert_null (lw_journal_join (less, &entry, &at, &n));
}

/* The leaf of the file has fewer parts by now: a correction of more could not be saved. */
static void
test_other_parts (void)
{
  g_autoptr (LwSeason) season = sample_season (), entered = with_entry (season, 3, 71), corrected = NULL, back = NULL;
  g_autoptr (LwSeason) theirs = lw_season_copy (season), again = NULL;
  LwProfile *leaf = lw_season_profile (season, season->batches[FULL]->leaf);
  LwProfile *less = lw_profile_copy_bare (leaf);
  LwPart whole = leaf->parts[0];
  g_autofree LwState *shifts = g_new0 (LwState, leaf->n_parts);
  g_auto (LwJournalEntry) entry = { 0 };
  gboolean no_weather, changed;
  guint at, n;

  whole.share = 1;
  lw_profile_add_part (less, leaf->part_names[0], whole);
  lw_season_put_profile (theirs, less);
  corrected = lw_edit_correct (entered, FULL, PAN, lw_correction_new (entered->batches[FULL], PAN, 4, 1, shifts, leaf->n_parts));
  journal_of (&entry, run_in (PAN), season, corrected);
  back = lw_journal_put_back (theirs, &entry, &at, &n, &no_weather, &changed);
  again = read_again (back);
  sample_assert_same (again, back);
  g_clear_pointer (&back, lw_season_unref);
  g_clear_pointer (&again, lw_season_unref);
  back = lw_journal_join (theirs, &entry, &at, &n);
  again = read_again (back);
  sample_assert_same (again, back);
}

static LwSeason *
with_correction (const LwSeason *season,
                 guint           step,
                 double          minute,
                 double          points)
{
  const LwBatch *batch = season->batches[FULL];
  guint n_parts = lw_season_profile (season, batch->leaf)->n_parts;
  g_autofree LwState *shifts = g_new0 (LwState, n_parts);

  return lw_edit_correct (season, FULL, step, lw_correction_new (batch, step, minute, points, shifts, n_parts));
}

/* A batch has one correction, and joined it is the run's. */
static void
test_join_corrections (void)
{
  g_autoptr (LwSeason) plain = sample_season (), season = with_entry (plain, 3, 71);
  g_autoptr (LwSeason) theirs = with_correction (season, PAN, 3, 2), same = with_correction (season, PAN, 4, 2);
  g_autoptr (LwSeason) early = lw_edit_add_weigh_in (season, FULL, 0, (LwWeighIn) { 5, LW_LEAF_C, 20, 2, 0, NULL });
  g_autoptr (LwSeason) run = with_correction (early, 0, 5, 1), again = with_correction (season, PAN, 3, 1), joined = NULL;
  g_auto (LwJournalEntry) entry = { 0 };
  guint at, n;

  journal_of (&entry, run_in (PAN), season, run);
  joined = lw_journal_join (theirs, &entry, &at, &n);
  g_assert_nonnull (joined->batches[FULL]->steps[0].correction);
  g_assert_null (joined->batches[FULL]->steps[PAN].correction);
  g_clear_pointer (&joined, lw_season_unref);
  lw_journal_entry_clear (&entry);

  journal_of (&entry, run_in (PAN), season, again);
  joined = lw_journal_join (same, &entry, &at, &n);
  g_assert_cmpfloat (joined->batches[FULL]->steps[PAN].correction->fresh_points, ==, 1);
}

/* Both together are more than a step can hold. */
static void
test_join_too_many (void)
{
  g_autoptr (LwSeason) season = sample_season (), theirs = lw_season_ref (season), run = with_entry (season, 2.5, 99);
  g_auto (LwJournalEntry) entry = { 0 };
  guint at, n;

  while (theirs->batches[FULL]->steps[PAN].n_weigh_ins < LW_MAX_WEIGH_INS)
    {
      g_autoptr (LwSeason) before = g_steal_pointer (&theirs);

      theirs = with_entry (before, 3, before->batches[FULL]->steps[PAN].n_weigh_ins);
    }
  journal_of (&entry, run_in (PAN), season, run);
  g_assert_null (lw_journal_join (theirs, &entry, &at, &n));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/journal-back/stand", test_stand);
  g_test_add_func ("/journal-back/never-saved", test_never_saved);
  g_test_add_func ("/journal-back/join", test_join);
  g_test_add_func ("/journal-back/join-longer", test_join_longer);
  g_test_add_func ("/journal-back/join-corrections", test_join_corrections);
  g_test_add_func ("/journal-back/join-too-many", test_join_too_many);
  g_test_add_func ("/journal-back/no-join", test_no_join);
  g_test_add_func ("/journal-back/other-parts", test_other_parts);

  return g_test_run ();
}

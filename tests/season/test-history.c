/* The history goes back and forth between seasons and knows which one is in the file. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include "season/edit.h"

/* Pushes a season of that name. */
static void
push (LwHistory  *history,
      const char *name)
{
  g_autoptr (LwSeason) season = lw_season_new (name);

  lw_history_push (history, season, name);
}

static gboolean
amend (LwHistory  *history,
       const char *name)
{
  g_autoptr (LwSeason) season = lw_season_new (name);

  return lw_history_amend (history, season);
}

static LwHistory *
history_of_start (void)
{
  g_autoptr (LwSeason) start = lw_season_new ("start");

  return lw_history_new (start);
}

static void
assert_at (const LwHistory *history,
           const char      *now,
           const char      *undo,
           const char      *redo)
{
  g_assert_cmpstr (lw_history_now (history)->name, ==, now);
  g_assert_cmpstr (lw_history_undo_label (history), ==, undo);
  g_assert_cmpstr (lw_history_redo_label (history), ==, redo);
}

static void
test_undo_and_redo (void)
{
  g_autoptr (LwHistory) history = history_of_start ();

  assert_at (history, "start", NULL, NULL);
  g_assert_false (lw_history_undo (history));
  g_assert_false (lw_history_redo (history));

  push (history, "a");
  push (history, "b");
  assert_at (history, "b", "b", NULL);
  g_assert_false (lw_history_redo (history));
  g_assert_true (lw_history_undo (history));
  assert_at (history, "a", "a", "b");
  g_assert_true (lw_history_undo (history));
  assert_at (history, "start", NULL, "a");
  g_assert_false (lw_history_undo (history));
  g_assert_true (lw_history_redo (history));
  g_assert_true (lw_history_redo (history));
  assert_at (history, "b", "b", NULL);
}

/* A new edit after an undo takes the place of what was undone. */
static void
test_branch (void)
{
  g_autoptr (LwHistory) history = history_of_start ();

  push (history, "a");
  push (history, "b");
  lw_history_undo (history);
  lw_history_undo (history);
  push (history, "c");
  assert_at (history, "c", "c", NULL);
  g_assert_false (lw_history_redo (history));
  g_assert_true (lw_history_undo (history));
  assert_at (history, "start", NULL, "c");
}

static void
test_amend (void)
{
  g_autoptr (LwHistory) history = history_of_start ();

  /* Undo could not get before the start. */
  g_assert_false (amend (history, "x"));
  assert_at (history, "start", NULL, NULL);

  push (history, "a");
  g_assert_true (amend (history, "a more"));
  assert_at (history, "a more", "a", NULL);
  g_assert_true (lw_history_amend (history, lw_history_now (history)));
  assert_at (history, "a more", "a", NULL);

  /* What was saved stays as it is. */
  lw_history_mark_saved (history);
  g_assert_false (amend (history, "x"));
  g_assert_true (lw_history_is_saved (history));

  /* Nor may something that was undone follow on what it was not made from. */
  push (history, "b");
  push (history, "c");
  lw_history_undo (history);
  g_assert_false (amend (history, "x"));
  assert_at (history, "b", "b", "c");
  lw_history_redo (history);
  g_assert_true (amend (history, "c more"));
  lw_history_undo (history);
  assert_at (history, "b", "b", "c");
}

static void
test_saved (void)
{
  g_autoptr (LwHistory) history = history_of_start ();

  g_assert_true (lw_history_is_saved (history));
  push (history, "a");
  g_assert_false (lw_history_is_saved (history));
  lw_history_undo (history);
  g_assert_true (lw_history_is_saved (history));
  lw_history_redo (history);
  lw_history_mark_saved (history);
  push (history, "b");
  lw_history_undo (history);
  g_assert_true (lw_history_is_saved (history));
  lw_history_undo (history);
  g_assert_false (lw_history_is_saved (history));

  /* Now what was saved is gone, and nothing that there is may pass for it. */
  push (history, "c");
  g_assert_false (lw_history_is_saved (history));
  lw_history_undo (history);
  g_assert_false (lw_history_is_saved (history));
  lw_history_redo (history);
  push (history, "d");
  g_assert_false (lw_history_is_saved (history));
  lw_history_mark_saved (history);
  g_assert_true (lw_history_is_saved (history));
}

/* The history holds what it was given, and only as long as it must. */
static void
test_holds (void)
{
  LwSeason *season = sample_season ();
  LwSeason *next = lw_edit_set (season, 0, 0, LW_SET_MINUTES, 17);
  LwHistory *history = lw_history_new (season);

  lw_history_push (history, next, "set");
  lw_season_unref (season);
  lw_history_undo (history);
  g_assert_true (lw_history_now (history) == season);
  push (history, "other");
  lw_history_free (history);
  g_assert_cmpfloat (lw_step_get (&next->batches[0]->steps[0], LW_SET_MINUTES), ==, 17);
  lw_season_unref (next);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/history/undo-and-redo", test_undo_and_redo);
  g_test_add_func ("/history/branch", test_branch);
  g_test_add_func ("/history/amend", test_amend);
  g_test_add_func ("/history/saved", test_saved);
  g_test_add_func ("/history/holds", test_holds);

  return g_test_run ();
}

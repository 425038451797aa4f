/* A run among what else moves its batch: searches for what is locked, undo and redo. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "run-window.h"

/* Settings of a step of the batch other than its time, side by side. */
static GArray *
settings_of (const RunWindow *window,
             guint         step)
{
  const LwStep *here = &lw_session_batch (window->session)->steps[step];
  const LwKindRow *kind = lw_kind_row (here->kind);
  GArray *values = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint k = 1; k < kind->n_settings; k++)
    {
      double value = lw_step_get (here, kind->settings[k].setting);

      g_array_append_val (values, value);
    }

  return values;
}

static void
await (const RunWindow *window)
{
  while (lw_session_seeks (window->session))
    g_main_context_iteration (NULL, TRUE);
}

/* What is locked is held by what is ahead: what was made stays as it was made. */
static void
test_what_passed_stays (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) window = { 0 };
  g_autoptr (GArray) first = NULL, second = NULL, first_then = NULL, second_then = NULL;
  double dry;

  run_window_open (&window, path);
  run_start (&window);
  lw_session_compute (window.session);
  lw_session_lock (window.session, -1, LW_MOISTURE, TRUE);
  first = settings_of (&window, 0);
  second = settings_of (&window, 1);
  dry = lw_step_get (&lw_session_batch (window.session)->steps[2], LW_SET_MINUTES);

  run_go_on (3 * 3600);
  lw_running_next (window.running);
  await (&window);
  first_then = settings_of (&window, 0);
  second_then = settings_of (&window, 1);
  g_assert_cmpmem (first->data, first->len * sizeof (double), first_then->data, first_then->len * sizeof (double));
  g_assert_cmpmem (second->data, second->len * sizeof (double), second_then->data, second_then->len * sizeof (double));
  g_assert_cmpfloat (lw_step_get (&lw_session_batch (window.session)->steps[0], LW_SET_MINUTES), ==, 180);
  g_assert_cmpfloat (lw_step_get (&lw_session_batch (window.session)->steps[2], LW_SET_MINUTES), !=, dry);
}

/* Redo leads to what the search made of the step's end, and the run is there, too. */
static void
test_redo_after_a_search (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) window = { 0 };
  double dry;

  run_window_open (&window, path);
  run_start (&window);
  lw_session_compute (window.session);
  lw_session_lock (window.session, -1, LW_MOISTURE, TRUE);
  dry = lw_step_get (&lw_session_batch (window.session)->steps[2], LW_SET_MINUTES);
  run_go_on (3 * 3600);
  lw_running_next (window.running);
  await (&window);
  g_assert_cmpfloat (lw_step_get (&lw_session_batch (window.session)->steps[2], LW_SET_MINUTES), !=, dry);
  run_go_on (60);
  lw_session_undo (window.session);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 0), 181, 1e-9);
  lw_session_redo (window.session);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 1), 1, 1e-9);
}

/* One undo too many leads to before the start, and redo back into the run. */
static void
test_undo_past_the_start (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) window = { 0 };

  run_window_open (&window, path);
  run_start (&window);
  run_go_on (300);
  run_weigh (&window, 9);
  lw_session_undo (window.session);
  lw_session_undo (window.session);
  g_assert_true (lw_session_is_saved (window.session));
  g_assert_false (lw_running_in_hand (window.running));
  lw_session_redo (window.session);
  lw_session_redo (window.session);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 0), 5, 1e-9);
  run_window_clear (&window);

  run_window_open (&window, path);
  g_assert_nonnull (strstr (window.told, "1 entry"));
}

/* A pause is of its step alone, however soon the step began after the one before. */
static void
test_two_steps_in_a_second (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) window = { 0 };

  run_window_open (&window, path);
  run_start (&window);
  lw_running_next (window.running);
  lw_running_pause (window.running, TRUE);
  lw_session_undo (window.session);
  run_minute (&window, 0);
  g_assert_false (lw_running_is_paused (window.running));
}

/* What was shown whole and taken is not moved on by what is locked. */
static void
test_what_is_taken (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) window = { 0 };
  LwSeason *next;

  run_window_open (&window, path);
  lw_session_compute (window.session);
  lw_session_lock (window.session, -1, LW_MOISTURE, TRUE);
  next = lw_edit_set (lw_session_base (window.session), 0, 0, LW_SET_MINUTES, 300);
  lw_session_put (window.session, next, "Taken");
  g_assert_false (lw_session_seeks (window.session));
  g_assert_true (lw_session_base (window.session) == next);
  lw_session_undo (window.session);
  g_assert_false (lw_session_seeks (window.session));
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *folder = g_dir_make_tmp ("running-XXXXXX", NULL);

  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/running-undo/what-passed-stays", test_what_passed_stays);
  g_test_add_func ("/running-undo/redo-after-a-search", test_redo_after_a_search);
  g_test_add_func ("/running-undo/undo-past-the-start", test_undo_past_the_start);
  g_test_add_func ("/running-undo/two-steps-in-a-second", test_two_steps_in_a_second);
  g_test_add_func ("/running-undo/what-is-taken", test_what_is_taken);

  return g_test_run ();
}

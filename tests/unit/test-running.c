/* The running batch when the computer's clock is set, when the lid is closed, and when two windows have one season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "run-window.h"

/* Looks at the clock as a tick does. */
static void
look (const RunWindow *window)
{
  lw_running_pause (window->running, TRUE);
  lw_running_pause (window->running, FALSE);
}

static void
test_clock_is_set (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) window = { 0 };

  run_window_open (&window, path);
  run_start (&window);
  run_go_on (600);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 0), 10, 1e-9);

  run_now_s -= 7200;
  look (&window);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 0), 10, 1e-9);
  g_assert_nonnull (strstr (window.told, "clock was set"));
  g_clear_pointer (&window.told, g_free);
  run_go_on (60);
  look (&window);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 0), 11, 1e-9);
  g_assert_null (window.told);

  /* In a pause, and forwards. */
  lw_running_pause (window.running, TRUE);
  run_go_on (30);
  run_now_s += 86400;
  lw_running_pause (window.running, FALSE);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 0), 11, 1e-9);

  /* The step's end is by it, and so is the step that undo goes back to. */
  lw_running_next (window.running);
  g_assert_cmpfloat_with_epsilon (lw_step_get (&lw_session_batch (window.session)->steps[0], LW_SET_MINUTES), 11, 1e-9);
  run_go_on (120);
  run_now_s -= 600;
  look (&window);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 1), 2, 1e-9);
  lw_session_undo (window.session);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 0), 13, 1e-9);
}

/* Time under a closed lid is time. */
static void
test_closed_lid (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) window = { 0 };

  run_window_open (&window, path);
  run_start (&window);
  run_go_on (8 * 3600);
  look (&window);
  g_assert_cmpfloat_with_epsilon (run_minute (&window, 0), 480, 1e-9);
  g_assert_null (window.told);
}

/* Set back while no window was there. */
static void
test_set_back_meanwhile (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) first = { 0 }, second = { 0 };

  run_window_open (&first, path);
  run_start (&first);
  run_go_on (1500);
  run_weigh (&first, 8);
  run_window_clear (&first);

  run_now_s -= 86400;
  run_window_open (&second, path);
  g_assert_nonnull (strstr (second.told, "1 entry"));
  g_assert_nonnull (strstr (second.told, "set back"));
  g_assert_cmpfloat_with_epsilon (run_minute (&second, 0), 25, 1e-9);
  run_go_on (60);
  look (&second);
  g_assert_cmpfloat_with_epsilon (run_minute (&second, 0), 26, 1e-9);
}

/* The second cannot run what the first does; once that is gone nothing is started over what it had. */
static void
test_two_windows (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) first = { 0 }, second = { 0 };
  g_autoptr (GError) error = NULL;

  run_window_open (&first, path);
  run_start (&first);
  run_go_on (300);
  run_weigh (&first, 9);

  run_window_open (&second, path);
  g_assert_nonnull (strstr (second.told, "Another window"));
  g_assert_cmpint (lw_running_batch (second.running), ==, -1);
  g_assert_false (lw_running_take_over (second.running));
  g_assert_false (lw_running_start (second.running, &error));
  g_assert_nonnull (strstr (error->message, "Another window"));
  g_clear_error (&error);

  run_window_clear (&first);
  run_go_on (300);
  g_assert_true (lw_running_take_over (second.running));
  g_assert_nonnull (strstr (second.told, "1 entry"));
  g_assert_cmpfloat_with_epsilon (run_minute (&second, 0), 10, 1e-9);
  g_assert_cmpuint (lw_session_batch (second.session)->steps[0].n_weigh_ins, ==, 1);
  g_assert_false (lw_running_take_over (second.running));
}

/* Even where nobody asks for it. */
static void
test_left_behind (void)
{
  g_autofree char *path = run_season_path ();
  g_auto (RunWindow) first = { 0 }, second = { 0 };
  g_autoptr (GError) error = NULL;

  run_window_open (&first, path);
  run_start (&first);
  run_window_open (&second, path);
  run_weigh (&first, 9);
  run_window_clear (&first);

  g_assert_false (lw_running_start (second.running, &error));
  g_assert_nonnull (strstr (error->message, "goes on here"));
  g_assert_cmpuint (lw_session_batch (second.session)->steps[0].n_weigh_ins, ==, 1);
  run_minute (&second, 0);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *folder = g_dir_make_tmp ("running-XXXXXX", NULL);

  g_setenv ("XDG_DATA_HOME", folder, TRUE);
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/running/clock-is-set", test_clock_is_set);
  g_test_add_func ("/running/closed-lid", test_closed_lid);
  g_test_add_func ("/running/set-back-meanwhile", test_set_back_meanwhile);
  g_test_add_func ("/running/two-windows", test_two_windows);
  g_test_add_func ("/running/left-behind", test_left_behind);

  return g_test_run ();
}

/* The running batch when the computer's clock is set, when the lid is closed, and when two windows have one season. The
 * clock is this file's. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/running.h"

#include <glib/gstdio.h>
#include <string.h>

#include "../plain-season.h"
#include "bench/clock.h"
#include "season/document.h"
#include "season/edit.h"
#include "season/weigh-in.h"

#define BEGAN_S 1790000000.0

static double now_s, steady_s;

double
lw_clock_now_s (void)
{
  return now_s;
}

double
lw_clock_offset_s (void)
{
  return now_s - steady_s;
}

double
lw_clock_pace (void)
{
  return 1;
}

gint64
lw_clock_place_s (double at_s)
{
  return (gint64) at_s;
}

static void
go_on (double s)
{
  now_s += s;
  steady_s += s;
}

/* One window's. */
typedef struct
{
  LwSession *session;
  LwRunning *running;
  char *told;
} Window;

static void
told_cb (Window     *window,
         const char *words)
{
  g_free (window->told);
  window->told = g_strdup (words);
}

static char *
season_path (void)
{
  static guint n;
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  g_autofree char *name = g_strdup_printf ("%u.leafwend", n++);
  char *path = g_build_filename (g_get_user_data_dir (), name, NULL);
  g_autoptr (LwSeason) season = plain_season (kinds, G_N_ELEMENTS (kinds));
  g_autoptr (GError) error = NULL;

  now_s = BEGAN_S;
  steady_s = 1000;
  lw_document_save (season, path, &error);
  g_assert_no_error (error);

  return path;
}

static void
window_open (Window     *window,
             const char *path)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_load (path, problems);

  g_assert_nonnull (season);
  *window = (Window) { lw_session_new (), NULL, NULL };
  window->running = lw_running_new (window->session);
  g_signal_connect_swapped (window->running, "told", G_CALLBACK (told_cb), window);
  lw_session_open (window->session, season, path);
}

/* As by kill -9: nothing is saved. */
static void
window_clear (Window *window)
{
  g_clear_object (&window->running);
  g_clear_object (&window->session);
  g_clear_pointer (&window->told, g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Window, window_clear)

static void
start (Window *window)
{
  g_autoptr (GError) error = NULL;

  lw_running_start (window->running, &error);
  g_assert_no_error (error);
}

static double
minute_of (const Window *window,
           guint         step)
{
  double minute;
  guint at;

  g_assert_true (lw_running_now (window->running, &at, &minute));
  g_assert_cmpuint (at, ==, step);

  return minute;
}

static void
weigh (const Window *window,
       double        kg)
{
  double minute;
  guint step;

  g_assert_true (lw_running_now (window->running, &step, &minute));
  lw_session_edit (window->session,
                   lw_edit_add_weigh_in (lw_session_base (window->session), 0, step,
                                         (LwWeighIn) { minute, LW_WEIGHED_KG, kg, 0.02, 0, NULL }), "Weigh", NULL);
}

/* Looks at the clock as a tick does. */
static void
look (const Window *window)
{
  lw_running_pause (window->running, TRUE);
  lw_running_pause (window->running, FALSE);
}

static void
test_clock_is_set (void)
{
  g_autofree char *path = season_path ();
  g_auto (Window) window = { 0 };

  window_open (&window, path);
  start (&window);
  go_on (600);
  g_assert_cmpfloat_with_epsilon (minute_of (&window, 0), 10, 1e-9);

  now_s -= 7200;
  look (&window);
  g_assert_cmpfloat_with_epsilon (minute_of (&window, 0), 10, 1e-9);
  g_assert_nonnull (strstr (window.told, "clock was set"));
  g_clear_pointer (&window.told, g_free);
  go_on (60);
  look (&window);
  g_assert_cmpfloat_with_epsilon (minute_of (&window, 0), 11, 1e-9);
  g_assert_null (window.told);

  /* In a pause, and forwards. */
  lw_running_pause (window.running, TRUE);
  go_on (30);
  now_s += 86400;
  lw_running_pause (window.running, FALSE);
  g_assert_cmpfloat_with_epsilon (minute_of (&window, 0), 11, 1e-9);

  /* The step's end is by it, and so is the step that undo goes back to. */
  lw_running_next (window.running);
  g_assert_cmpfloat_with_epsilon (lw_step_get (&lw_session_batch (window.session)->steps[0], LW_SET_MINUTES), 11, 1e-9);
  go_on (120);
  now_s -= 600;
  look (&window);
  g_assert_cmpfloat_with_epsilon (minute_of (&window, 1), 2, 1e-9);
  lw_session_undo (window.session);
  g_assert_cmpfloat_with_epsilon (minute_of (&window, 0), 13, 1e-9);
}

/* Time under a closed lid is time. */
static void
test_closed_lid (void)
{
  g_autofree char *path = season_path ();
  g_auto (Window) window = { 0 };

  window_open (&window, path);
  start (&window);
  go_on (8 * 3600);
  look (&window);
  g_assert_cmpfloat_with_epsilon (minute_of (&window, 0), 480, 1e-9);
  g_assert_null (window.told);
}

/* Set back while no window was there. */
static void
test_set_back_meanwhile (void)
{
  g_autofree char *path = season_path ();
  g_auto (Window) first = { 0 }, second = { 0 };

  window_open (&first, path);
  start (&first);
  go_on (1500);
  weigh (&first, 8);
  window_clear (&first);

  now_s -= 86400;
  window_open (&second, path);
  g_assert_nonnull (strstr (second.told, "1 entry"));
  g_assert_nonnull (strstr (second.told, "set back"));
  g_assert_cmpfloat_with_epsilon (minute_of (&second, 0), 25, 1e-9);
  go_on (60);
  look (&second);
  g_assert_cmpfloat_with_epsilon (minute_of (&second, 0), 26, 1e-9);
}

/* Settings of a step of the batch other than its time, side by side. */
static GArray *
settings_of (const Window *window,
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
await (const Window *window)
{
  while (lw_session_seeks (window->session))
    g_main_context_iteration (NULL, TRUE);
}

/* What is locked is held by what is ahead: what was made stays as it was made. */
static void
test_what_passed_stays (void)
{
  g_autofree char *path = season_path ();
  g_auto (Window) window = { 0 };
  g_autoptr (GArray) first = NULL, second = NULL, first_then = NULL, second_then = NULL;
  double dry;

  window_open (&window, path);
  start (&window);
  lw_session_compute (window.session);
  lw_session_lock (window.session, -1, LW_MOISTURE, TRUE);
  first = settings_of (&window, 0);
  second = settings_of (&window, 1);
  dry = lw_step_get (&lw_session_batch (window.session)->steps[2], LW_SET_MINUTES);

  go_on (3 * 3600);
  lw_running_next (window.running);
  await (&window);
  first_then = settings_of (&window, 0);
  second_then = settings_of (&window, 1);
  g_assert_cmpmem (first->data, first->len * sizeof (double), first_then->data, first_then->len * sizeof (double));
  g_assert_cmpmem (second->data, second->len * sizeof (double), second_then->data, second_then->len * sizeof (double));
  g_assert_cmpfloat (lw_step_get (&lw_session_batch (window.session)->steps[0], LW_SET_MINUTES), ==, 180);
  g_assert_cmpfloat (lw_step_get (&lw_session_batch (window.session)->steps[2], LW_SET_MINUTES), !=, dry);
}

/* What was shown whole and taken is not moved on by what is locked. */
static void
test_what_is_taken (void)
{
  g_autofree char *path = season_path ();
  g_auto (Window) window = { 0 };
  LwSeason *next;

  window_open (&window, path);
  lw_session_compute (window.session);
  lw_session_lock (window.session, -1, LW_MOISTURE, TRUE);
  next = lw_edit_set (lw_session_base (window.session), 0, 0, LW_SET_MINUTES, 300);
  lw_session_put (window.session, next, "Taken");
  g_assert_false (lw_session_seeks (window.session));
  g_assert_true (lw_session_base (window.session) == next);
  lw_session_undo (window.session);
  g_assert_false (lw_session_seeks (window.session));
}

/* The second cannot run what the first does; once that is gone nothing is started over what it had. */
static void
test_two_windows (void)
{
  g_autofree char *path = season_path ();
  g_auto (Window) first = { 0 }, second = { 0 };
  g_autoptr (GError) error = NULL;

  window_open (&first, path);
  start (&first);
  go_on (300);
  weigh (&first, 9);

  window_open (&second, path);
  g_assert_nonnull (strstr (second.told, "Another window"));
  g_assert_cmpint (lw_running_batch (second.running), ==, -1);
  g_assert_false (lw_running_take_over (second.running));
  g_assert_false (lw_running_start (second.running, &error));
  g_assert_nonnull (strstr (error->message, "Another window"));
  g_clear_error (&error);

  window_clear (&first);
  go_on (300);
  g_assert_true (lw_running_take_over (second.running));
  g_assert_nonnull (strstr (second.told, "1 entry"));
  g_assert_cmpfloat_with_epsilon (minute_of (&second, 0), 10, 1e-9);
  g_assert_cmpuint (lw_session_batch (second.session)->steps[0].n_weigh_ins, ==, 1);
  g_assert_false (lw_running_take_over (second.running));
}

/* Even where nobody asks for it. */
static void
test_left_behind (void)
{
  g_autofree char *path = season_path ();
  g_auto (Window) first = { 0 }, second = { 0 };
  g_autoptr (GError) error = NULL;

  window_open (&first, path);
  start (&first);
  window_open (&second, path);
  weigh (&first, 9);
  window_clear (&first);

  g_assert_false (lw_running_start (second.running, &error));
  g_assert_nonnull (strstr (error->message, "goes on here"));
  g_assert_cmpuint (lw_session_batch (second.session)->steps[0].n_weigh_ins, ==, 1);
  minute_of (&second, 0);
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
  g_test_add_func ("/running/what-passed-stays", test_what_passed_stays);
  g_test_add_func ("/running/what-is-taken", test_what_is_taken);
  g_test_add_func ("/running/two-windows", test_two_windows);
  g_test_add_func ("/running/left-behind", test_left_behind);

  return g_test_run ();
}

/* What tests of a run share; the clock is this file's. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-window.h"

#include "../plain-season.h"
#include "bench/clock.h"
#include "season/document.h"
#include "season/edit.h"
#include "season/weigh-in.h"

#define BEGAN_S 1790000000.0

double run_now_s, run_steady_s;

double
lw_clock_now_s (void)
{
  return run_now_s;
}

double
lw_clock_offset_s (void)
{
  return run_now_s - run_steady_s;
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

void
run_go_on (double s)
{
  run_now_s += s;
  run_steady_s += s;
}

static void
told_cb (RunWindow     *window,
         const char *words)
{
  g_free (window->told);
  window->told = g_strdup (words);
}

char *
run_season_path (void)
{
  static guint n;
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  g_autofree char *name = g_strdup_printf ("%u.leafwend", n++);
  char *path = g_build_filename (g_get_user_data_dir (), name, NULL);
  g_autoptr (LwSeason) season = plain_season (kinds, G_N_ELEMENTS (kinds));
  g_autoptr (GError) error = NULL;

  run_now_s = BEGAN_S;
  run_steady_s = 1000;
  lw_document_save (season, path, &error);
  g_assert_no_error (error);

  return path;
}

void
run_window_open (RunWindow     *window,
             const char *path)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_load (path, problems);

  g_assert_nonnull (season);
  *window = (RunWindow) { lw_session_new (), NULL, NULL };
  window->running = lw_running_new (window->session);
  g_signal_connect_swapped (window->running, "told", G_CALLBACK (told_cb), window);
  lw_session_open (window->session, season, path);
}

void
run_window_clear (RunWindow *window)
{
  g_clear_object (&window->running);
  g_clear_object (&window->session);
  g_clear_pointer (&window->told, g_free);
}

void
run_start (RunWindow *window)
{
  g_autoptr (GError) error = NULL;

  lw_running_start (window->running, &error);
  g_assert_no_error (error);
}

double
run_minute (const RunWindow *window,
           guint         step)
{
  double minute;
  guint at;

  g_assert_true (lw_running_now (window->running, &at, &minute));
  g_assert_cmpuint (at, ==, step);

  return minute;
}

void
run_weigh (const RunWindow *window,
       double        kg)
{
  double minute;
  guint step;

  g_assert_true (lw_running_now (window->running, &step, &minute));
  lw_session_edit (window->session,
                   lw_edit_add_weigh_in (lw_session_base (window->session), 0, step,
                                         (LwWeighIn) { minute, LW_WEIGHED_KG, kg, 0.02, 0, NULL }), "Weigh", NULL);
}

/* How much work lies between a pointer's motion and the new picture: the longest demo
 * batch, three panels, 1440x900, a real window; alone, and with twelve batches laid over. Prints medians; asserts
 * nothing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>

#include "bench/app.h"
#include "bench/desktop.h"
#include "bench/overlays.h"
#include "bench/window-private.h"
#include "season/document.h"
#include "season/surround.h"

#define FRAMES 120
#define WIDTH 1440
#define HEIGHT 900
#define OVER 12

typedef struct
{
  GMainLoop *loop;
  LwSession *session;
  GdkFrameClock *clock;
  guint step;
  double minutes;
  guint frame;
  gboolean waiting;       /* for the picture of a motion */
  gint64 paint_us;        /* when the frame began */
  gint64 compute_us;      /* what this frame's computation took */
  GArray *compute;
  GArray *draw;
} Run;

static int
by_size (const void *a,
         const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

static double
quantile (GArray *values,
          double  q)
{
  g_array_sort (values, by_size);

  return g_array_index (values, double, (guint) (q * (values->len - 1)));
}

static gboolean
move_cb (gpointer data)
{
  Run *run = data;
  const LwSeason *base = lw_session_base (run->session);
  guint batch = (guint) lw_session_batch_index (run->session);
  /* To and fro by a notch at a time, as a hand does. */
  guint phase = run->frame % 40;
  double minutes = run->minutes + (phase < 20 ? phase : 40 - phase);

  lw_scale_set_minutes (lw_session_scale (run->session), run->step, minutes);
  lw_session_preview (run->session, lw_edit_set (base, batch, run->step, LW_SET_MINUTES, minutes));
  run->waiting = TRUE;

  return G_SOURCE_REMOVE;
}

/* Computes when the frame clock asks for it, as the board does, and notes the time. */
static void
update_cb (GdkFrameClock *clock,
           Run           *run)
{
  gint64 begin = g_get_monotonic_time ();

  lw_session_compute (run->session);
  run->compute_us = g_get_monotonic_time () - begin;
}

static void
before_cb (GdkFrameClock *clock,
           Run           *run)
{
  run->paint_us = g_get_monotonic_time ();
}

static void
after_cb (GdkFrameClock *clock,
          Run           *run)
{
  double compute = (double) run->compute_us / 1e3;
  double draw = (double) (g_get_monotonic_time () - run->paint_us) / 1e3 - compute;

  if (!run->waiting)
    return;

  run->waiting = FALSE;
  /* The first frames warm up fonts and caches. */
  if (run->frame >= 10)
    {
      g_array_append_val (run->compute, compute);
      g_array_append_val (run->draw, draw);
    }
  if (run->frame++ < FRAMES)
    g_idle_add (move_cb, run);
  else
    g_main_loop_quit (run->loop);
}

static guint
longest_batch (const LwSeason *season)
{
  guint longest = 0;

  for (guint i = 1; i < season->n_batches; i++)
    if (season->batches[i]->n_steps > season->batches[longest]->n_steps)
      longest = i;

  return longest;
}

static gboolean
begin_cb (gpointer data)
{
  Run *run = data;
  GtkWidget *window = g_object_get_data (G_OBJECT (run->session), "window");

  run->clock = gtk_widget_get_frame_clock (window);
  g_signal_connect (run->clock, "before-paint", G_CALLBACK (before_cb), run);
  g_signal_connect (run->clock, "update", G_CALLBACK (update_cb), run);
  g_signal_connect (run->clock, "after-paint", G_CALLBACK (after_cb), run);
  lw_session_drag_begin (run->session);
  g_idle_add (move_cb, run);

  return G_SOURCE_REMOVE;
}

/* Drags and waits until it is over; returns the median work a frame, ms. */
static double
measure (Run        *run,
         const char *words)
{
  double together;

  run->frame = 0;
  g_array_set_size (run->compute, 0);
  g_array_set_size (run->draw, 0);
  g_timeout_add (1500, begin_cb, run);
  g_main_loop_run (run->loop);
  lw_session_drag_cancel (run->session);
  g_signal_handlers_disconnect_by_data (run->clock, run);

  together = quantile (run->compute, 0.5) + quantile (run->draw, 0.5);
  g_print ("%s\n", words);
  g_print ("  compute  median %5.2f ms, 95 %% under %5.2f ms\n", quantile (run->compute, 0.5), quantile (run->compute, 0.95));
  g_print ("  draw     median %5.2f ms, 95 %% under %5.2f ms\n", quantile (run->draw, 0.5), quantile (run->draw, 0.95));
  g_print ("  together median %5.2f ms of work a frame (a frame at 60 Hz has 16.7 ms)\n", together);

  return together;
}

/* Lays others of the season over the batch in hand. */
static void
lay_over (Run *run)
{
  LwOverlays *overlays = lw_overlays_of (run->session);
  LwSeason *season = lw_session_base (run->session);

  for (guint i = 0; i < season->n_batches && lw_overlays_n (overlays) < OVER; i++)
    lw_overlays_lay (overlays, season, NULL, i, TRUE);
}

/* A full computation, nothing remembered, for the figure beside. */
static double
full_ms (LwSeason *season,
         guint     batch)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwMarch) march = lw_march_new ();
  gint64 begin;
  enum { TIMES = 40 };

  lw_track_unref (lw_plan_march (plan, march, (LwSampling) { .samples = 160 }));
  begin = g_get_monotonic_time ();
  for (int i = 0; i < TIMES; i++)
    {
      plan->leaf.fresh_water *= 1 + 1e-9;
      lw_track_unref (lw_plan_march (plan, march, (LwSampling) { .samples = 160 }));
    }

  return (double) (g_get_monotonic_time () - begin) / 1e3 / TIMES;
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *path = g_build_filename (g_getenv ("LEAFWEND_DATA"), "ondry-ridge-2026.leafwend", NULL);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = NULL;
  Run run = { .step = 0 };
  const LwBatch *batch;
  GtkWidget *window;
  double alone, over;
  guint longest;

  setlocale (LC_ALL, "");
  gtk_init ();
  lw_desktop_style (gdk_display_get_default ());
  season = lw_document_load (path, problems);
  g_assert_nonnull (season);
  longest = longest_batch (season);
  batch = season->batches[longest];

  window = lw_window_new (NULL, season, NULL);
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  run.session = LW_WINDOW (window)->session;
  lw_session_choose (run.session, longest);
  gtk_window_present (GTK_WINDOW (window));

  /* The first step: everything after it is computed anew with every motion. */
  run.minutes = lw_step_get (&batch->steps[0], LW_SET_MINUTES);
  run.loop = g_main_loop_new (NULL, FALSE);
  run.compute = g_array_new (FALSE, FALSE, sizeof (double));
  run.draw = g_array_new (FALSE, FALSE, sizeof (double));
  g_object_set_data (G_OBJECT (run.session), "window", window);
  g_print ("Drag of the first step of \"%s\": %u steps, %u parts, 3 panels, %dx%d\n", batch->name, batch->n_steps,
           lw_season_profile (season, batch->leaf)->n_parts, WIDTH, HEIGHT);
  alone = measure (&run, "Alone:");
  lay_over (&run);
  over = measure (&run, "With twelve batches laid over:");
  g_print ("  %.2f times the work alone\n", over / alone);
  for (guint i = 0; i < season->n_batches; i++)
    if (season->batches[i]->n_steps == 4)
      {
        g_print ("Full computation of \"%s\", four steps: %.2f ms\n", season->batches[i]->name, full_ms (season, i));
        break;
      }
  g_print ("Full computation of \"%s\": %.2f ms\n", batch->name, full_ms (season, longest));

  return 0;
}

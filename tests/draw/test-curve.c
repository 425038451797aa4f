/* Curves say what the track says, and thinning them changes nothing that can be seen. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/curve.h"
#include "draw/trace.h"
#include "sample.h"

static void
test_values (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwTrack) track = sample_track (season, 20);

  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      g_autoptr (LwCurves) curves = lw_curves_new (track, q);

      g_assert_cmpuint (lw_curves_n_steps (curves), ==, track->n_steps);
      for (guint step = 0; step < track->n_steps; step++)
        {
          guint n;
          const double *minutes = lw_curves_minutes (curves, step, &n);

          g_assert_cmpuint (n, ==, track->steps[step]->n);
          for (guint i = 0; i < n; i++)
            for (int part = -1; part < (int) lw_curves_n_parts (curves); part++)
              {
                LwOutcome outcome = lw_track_outcome (track, step, part, i);
                double value = lw_curves_values (curves, step, part)[i];

                g_assert_cmpfloat (value, ==, lw_quantity_of (q, &outcome));
                g_assert_cmpfloat (value, >=, lw_curves_lowest (curves, step)[i]);
                g_assert_cmpfloat (value, <=, lw_curves_highest (curves, step)[i]);
                g_assert_cmpfloat (minutes[i], ==, track->steps[step]->time_s[i] / 60);
              }
        }
    }
}

static void
test_range (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwTrack) track = sample_track (season, 20);
  g_autoptr (LwCurves) curves = lw_curves_new (track, LW_MOISTURE);
  double low, high, least = INFINITY, most = -INFINITY;

  for (guint step = 0; step < track->n_steps; step++)
    for (guint i = 0; i < track->steps[step]->n; i++)
      {
        least = MIN (least, lw_curves_lowest (curves, step)[i]);
        most = MAX (most, lw_curves_highest (curves, step)[i]);
      }
  lw_curves_range (curves, &low, &high);
  g_assert_cmpfloat (low, ==, least);
  g_assert_cmpfloat (high, ==, most);
}

/* A track that failed in its first step has no curves, but a range all the same. */
static void
test_empty (void)
{
  LwTrack none = { .n_parts = 1 };
  g_autoptr (LwCurves) curves = lw_curves_new (&none, LW_OXIDATION);
  double low, high;

  lw_curves_range (curves, &low, &high);
  g_assert_cmpuint (lw_curves_n_steps (curves), ==, 0);
  g_assert_cmpfloat (low, ==, 0);
  g_assert_cmpfloat (high, ==, 0);
}

/* y of a path of straight pieces at x. */
static double
path_y (const cairo_path_t *path,
        double              x)
{
  double from_x = NAN, from_y = NAN;

  for (int i = 0; i < path->num_data; i += path->data[i].header.length)
    {
      double to_x = path->data[i + 1].point.x, to_y = path->data[i + 1].point.y;

      if (from_x <= x && x <= to_x && to_x > from_x)
        return from_y + (x - from_x) / (to_x - from_x) * (to_y - from_y);
      from_x = to_x;
      from_y = to_y;
    }

  return from_y;
}

static double
wave (double x)
{
  return 90 + 60 * sin (x / 70) + (x > 300 ? 20 : 0);
}

static void
test_thinning (void)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  cairo_path_t *path;
  LwTrace trace;

  lw_trace_begin (&trace, cr, 0.15);
  for (guint i = 0; i <= 900; i++)
    lw_trace_point (&trace, i * 0.9, wave (i * 0.9));
  lw_trace_end (&trace);

  /* Cairo keeps paths to the 256th of a pixel. */
  path = cairo_copy_path (cr);
  for (guint i = 0; i <= 900; i++)
    g_assert_cmpfloat_with_epsilon (path_y (path, i * 0.9), wave (i * 0.9), 0.15 + 0.02);
  g_assert_cmpuint (trace.n, <, 120);

  cairo_path_destroy (path);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* Far more samples than pixels: two points a pixel at the most, and no extreme is lost. */
static void
test_extremes (void)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (surface);
  double top, bottom;
  LwTrace trace;

  lw_trace_begin (&trace, cr, 0.15);
  for (guint i = 0; i < 20000; i++)
    lw_trace_point (&trace, i / 200.0, i == 7777 ? -40 : i == 12345 ? 140 : i % 2 * 100.0);
  lw_trace_end (&trace);

  cairo_path_extents (cr, NULL, &top, NULL, &bottom);
  g_assert_cmpfloat_with_epsilon (top, -40, 0.01);
  g_assert_cmpfloat_with_epsilon (bottom, 140, 0.01);
  g_assert_cmpuint (trace.n, <=, 2 * 100 + 2);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/curve/values", test_values);
  g_test_add_func ("/draw/curve/range", test_range);
  g_test_add_func ("/draw/curve/empty", test_empty);
  g_test_add_func ("/draw/curve/thinning", test_thinning);
  g_test_add_func ("/draw/curve/extremes", test_extremes);

  return g_test_run ();
}

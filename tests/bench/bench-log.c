/* What a log of a day's seconds costs: to read, to draw, and to reckon with. Prints medians; asserts nothing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "draw/curve.h"
#include "draw/panel.h"
#include "season/edit.h"
#include "season/log-csv.h"
#include "season/surround.h"

#define ROWS 86400
#define RUNS 21
#define WIDTH 960
#define HEIGHT 150

static double times[RUNS];

static int
by_size (const void *a,
         const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
median_ms (void)
{
  qsort (times, RUNS, sizeof *times, by_size);

  return times[RUNS / 2];
}

/* Leaf, wall and air with waves and a thermocouple's noise of `noise` C, to a tenth. */
static char *
table_new (double noise)
{
  GString *text = g_string_new ("Time,Leaf (°C),Wall (°C),Air (°C)\n");
  g_autoptr (GRand) dice = g_rand_new_with_seed (7);

  for (int i = 0; i < ROWS; i++)
    g_string_append_printf (text, "2026-04-%02dT%02d:%02d:%02d,%.1f,%.1f,%.1f\n", 12 + i / 72000, (4 + i / 3600) % 24,
                            i / 60 % 60, i % 60, 60 + 30 * sin (i / 700.0) + g_rand_double_range (dice, -noise, noise),
                            240 + 30 * sin (i / 300.0) + g_rand_double_range (dice, -noise, noise),
                            26 + 6 * sin (i / 9000.0) + g_rand_double_range (dice, -noise, noise));

  return g_string_free (text, FALSE);
}

static LwLog *
read_log (const char *text)
{
  LwLog *log = NULL;

  for (int i = 0; i < RUNS; i++)
    {
      g_autoptr (GPtrArray) problems = lw_problems_new ();
      gint64 begin = g_get_monotonic_time ();
      g_autoptr (LwLogTable) table = lw_log_table_read (text, strlen (text), problems);
      g_autoptr (LwLogTaken) taken = lw_log_take (table, "day", "Day");

      times[i] = (double) (g_get_monotonic_time () - begin) / 1000;
      g_clear_pointer (&log, lw_log_unref);
      log = g_steal_pointer (&taken->log);
    }
  printf ("  read %d rows, three columns: %.0f ms\n", ROWS, median_ms ());
  for (guint i = 0; i < log->n_curves; i++)
    {
      const LwFollowed *fine = &log->curves[i].followed[0], *coarse = lw_log_coarsest (&log->curves[i]);
      guint n, m, few;

      lw_course_times (log->curves[i].course, &n);
      lw_course_times (fine->course, &m);
      lw_course_times (coarse->course, &few);
      printf ("    %s: %u points within %g C; reckoned with %u within %.2f C, in long steps with %u within %.2f C\n", lw_log_of_id (log->curves[i].of), n,
              log->curves[i].within_c, m, fine->off_c, few, coarse->off_c);
    }

  return log;
}

static double
march_ms (LwSeason    *season,
          LwMarchCost *cost)
{
  for (int i = 0; i < RUNS; i++)
    {
      g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
      g_autoptr (LwMarch) march = lw_march_new ();
      gint64 begin = g_get_monotonic_time ();
      g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = 120, .turns = TRUE });

      times[i] = (double) (g_get_monotonic_time () - begin) / 1000;
      *cost = *lw_march_cost (march);
    }

  return median_ms ();
}

static double
draw_ms (LwSeason *season,
         gboolean  quick,
         gboolean  logs)
{
  const LwBatch *batch = season->batches[0];
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = 120, .turns = TRUE });
  g_autoptr (LwCurves) curves = lw_curves_new (track, LW_LEAF_TEMP);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  const LwLetter letter = { .base_px = 13 };
  double minutes[LW_SCALE_MAX_STEPS];
  LwScale scale;

  for (guint i = 0; i < batch->n_steps; i++)
    minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  lw_scale_fill_view (&scale, (LwScaleView) { FALSE, -1, logs }, minutes, batch->n_steps, 0, WIDTH, FALSE);

  for (int i = 0; i < RUNS; i++)
    {
      LwPanelLook look = {
        .quantity = LW_LEAF_TEMP, .scale = &scale, .curves = curves, .batch = batch, .fresh_moisture_pct = 77, .quick = quick,
      };
      cairo_t *cr = cairo_create (surface);
      gint64 begin = g_get_monotonic_time ();
      LwAxis axis = lw_panel_axis (&look);

      lw_panel_draw (cr, WIDTH, HEIGHT, &look, &axis, &letter, lw_palette (FALSE));
      cairo_surface_flush (surface);
      times[i] = (double) (g_get_monotonic_time () - begin) / 1000;
      cairo_destroy (cr);
    }
  cairo_surface_destroy (surface);

  return median_ms ();
}

static void
measure (double noise)
{
  g_autofree char *text = table_new (noise);
  g_autoptr (LwSeason) plain = lw_edit_new_season (1775973600); /* when the log begins */
  g_autoptr (LwLog) log = NULL;
  g_autoptr (LwSeason) logged = NULL, wall = NULL, both = NULL;
  LwMarchCost cost, wall_cost, both_cost;
  double alone, with_wall, with_both;

  printf ("noise of %g C:\n", noise);
  log = read_log (text);
  logged = lw_edit_add_log (plain, 0, (LwBatchLog) { lw_log_ref (log), -1, 0 });
  wall = lw_edit_follow_log (logged, 0, 1, LW_SET_WALL_C, "day");
  both = lw_edit_follow_log (wall, 0, 0, LW_SET_AIR_C, "day");

  alone = march_ms (plain, &cost);
  with_wall = march_ms (wall, &wall_cost);
  with_both = march_ms (both, &both_cost);
  printf ("  march: %.2f ms, %lu solver steps; wall of the pan by the log: %.2f ms, %lu (%.2f times); air of 18 h of wither,"
          " too: %.2f ms, %lu (%.2f times)\n", alone, cost.solver_steps, with_wall, wall_cost.solver_steps,
          with_wall / alone, with_both, both_cost.solver_steps, with_both / alone);
  for (int quick = 1; quick >= 0; quick--)
    printf ("  panel of leaf temperature %s: %.2f ms; with the log of leaf %.2f ms; of wall and air, too, %.2f ms\n",
            quick ? "while dragging" : "at rest", draw_ms (plain, quick, FALSE), draw_ms (logged, quick, FALSE),
            draw_ms (logged, quick, TRUE));
}

int
main (void)
{
  setlocale (LC_ALL, "");
  measure (0.15);
  measure (1);

  return 0;
}

/* Logs in the panel of leaf temperature: where the lines are, which of them, and that reading from the right mirrors
 * them; and names beside the curves of a log by itself. Pixels are looked at where nothing else is drawn. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/log-picture.h"
#include "draw/panel.h"
#include "sample.h"

#define WIDTH 800
#define HEIGHT 300

static void
add_log (LwSeason *season)
{
  const double time_s[] = { 0, 600, 2100 }, leaf_c[] = { 90, 60, 60 }, wall_c[] = { 280, 280, 280 };
  LwLog *log = lw_log_new ("log", "Log");

  log->rows = log->first_line = log->last_line = 3;
  lw_log_add_curve (log, LW_LOG_LEAF, NULL, 0, time_s, leaf_c, 3);
  lw_log_add_curve (log, LW_LOG_WALL, NULL, 0, time_s, wall_c, 3);
  lw_batch_add_log (season->batches[0], (LwBatchLog) { log, 1, 0 });
}

typedef struct
{
  LwScale scale;
  LwPanelLook look;
  LwAxis axis;
  LwLetter letter;
  cairo_surface_t *surface;
} Panel;

static void
draw (Panel    *panel,
      LwSeason *season,
      LwQuantity of,
      gboolean  logs,
      gboolean  rtl)
{
  const LwBatch *batch = season->batches[0];
  double minutes[LW_SCALE_MAX_STEPS];
  cairo_t *cr;

  for (guint i = 0; i < batch->n_steps; i++)
    minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  lw_scale_fill_view (&panel->scale, (LwScaleView) { FALSE, -1, logs }, minutes, batch->n_steps, 0, WIDTH, rtl);
  panel->look = (LwPanelLook) { .quantity = of, .scale = &panel->scale, .batch = batch, .fresh_moisture_pct = 77 };
  panel->axis = lw_panel_axis (&panel->look);
  panel->letter = (LwLetter) { .base_px = 13, .rtl = rtl };
  panel->surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cr = cairo_create (panel->surface);
  lw_panel_draw (cr, WIDTH, HEIGHT, &panel->look, &panel->axis, &panel->letter, lw_palette (FALSE));
  cairo_destroy (cr);
  cairo_surface_flush (panel->surface);
}

static void
panel_clear (Panel *panel)
{
  cairo_surface_destroy (panel->surface);
}

/* Whether a dark or coloured pixel is within two of the value's place. */
static gboolean
is_drawn (const Panel *panel,
          guint        step,
          double       minute,
          double       value)
{
  const guint8 *data = cairo_image_surface_get_data (panel->surface);
  int stride = cairo_image_surface_get_stride (panel->surface);
  double top, bottom;
  int x = (int) lw_scale_x (&panel->scale, step, minute), y;

  lw_panel_plot (HEIGHT, &panel->letter, &top, &bottom);
  y = (int) lw_axis_y (&panel->axis, top, bottom, value);
  for (int dy = -2; dy <= 2; dy++)
    for (int dx = -4; dx <= 4; dx++)
      {
        const guint8 *at = data + (y + dy) * stride + 4 * (x + dx);

        if (MIN (MIN (at[0], at[1]), at[2]) < 120)
          return TRUE;
      }

  return FALSE;
}

static void
test_lines (gconstpointer rtl)
{
  g_autoptr (LwSeason) season = sample_season ();
  Panel without = { 0 }, leaf = { 0 }, all = { 0 }, moisture = { 0 };

  draw (&without, season, LW_LEAF_TEMP, TRUE, GPOINTER_TO_INT (rtl));
  add_log (season);
  draw (&leaf, season, LW_LEAF_TEMP, FALSE, GPOINTER_TO_INT (rtl));
  draw (&all, season, LW_LEAF_TEMP, TRUE, GPOINTER_TO_INT (rtl));
  draw (&moisture, season, LW_MOISTURE, TRUE, GPOINTER_TO_INT (rtl));

  /* The axis makes room for what is shown, and only for that. */
  g_assert_cmpfloat (without.axis.high, <, 90);
  g_assert_cmpfloat (leaf.axis.high, >=, 90);
  g_assert_cmpfloat (leaf.axis.high, <, 280);
  g_assert_cmpfloat (all.axis.high, >=, 280);
  g_assert_cmpfloat (moisture.axis.high, <=, 100);

  g_assert_true (is_drawn (&leaf, 1, 5, 75));
  g_assert_true (is_drawn (&leaf, 1, 12, 60));
  g_assert_false (is_drawn (&leaf, 0, 300, 75));
  g_assert_false (is_drawn (&leaf, 3, 200, 60));
  g_assert_true (is_drawn (&all, 1, 12, 60));
  g_assert_true (is_drawn (&all, 1, 12, 280));
  g_assert_false (is_drawn (&moisture, 1, 12, 60));

  panel_clear (&without);
  panel_clear (&leaf);
  panel_clear (&all);
  panel_clear (&moisture);
}

/* A wall that was measured stands in the panel of leaf temperature where walls are shown, and makes room for itself. */
static void
test_measured_wall (gconstpointer rtl)
{
  g_autoptr (LwSeason) season = sample_season ();
  Panel without = { 0 }, with = { 0 }, moisture = { 0 };
  const LwWeighIn wall = { 10, LW_WALL_C, 270, 5, 0, NULL };
  double value;

  lw_batch_add_weigh_in (season->batches[0], 1, wall);
  draw (&without, season, LW_LEAF_TEMP, FALSE, GPOINTER_TO_INT (rtl));
  draw (&with, season, LW_LEAF_TEMP, TRUE, GPOINTER_TO_INT (rtl));
  draw (&moisture, season, LW_MOISTURE, TRUE, GPOINTER_TO_INT (rtl));
  g_assert_cmpfloat (without.axis.high, <, 270);
  g_assert_cmpfloat (with.axis.high, >=, 275);
  g_assert_false (lw_panel_measured (&without.look, &wall, 0, &value));
  g_assert_false (lw_panel_measured (&moisture.look, &wall, 0, &value));
  g_assert_true (lw_panel_measured (&with.look, &wall, 1, &value));
  g_assert_cmpfloat (value, ==, 275);
  g_assert_true (is_drawn (&with, 1, 10, 270));
  g_assert_false (is_drawn (&with, 1, 16, 270));

  panel_clear (&without);
  panel_clear (&with);
  panel_clear (&moisture);
}

/* Dark pixels in a band of the picture of a log by itself: of its letters where no line runs. */
static guint
n_dark (const LwLog *log,
        gboolean     rtl,
        int          x1,
        int          x2,
        int          y1,
        int          y2)
{
  const LwLetter letter = { .base_px = 13, .rtl = rtl };
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  int stride = cairo_image_surface_get_stride (surface);
  guint n = 0;

  lw_log_picture_draw (cr, WIDTH, HEIGHT, log, &letter, lw_palette (FALSE));
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = y1; y < y2; y++)
    for (int x = x1; x < x2; x++)
      {
        const guint8 *at = cairo_image_surface_get_data (surface) + y * stride + 4 * x;

        n += MIN (MIN (at[0], at[1]), at[2]) < 120;
      }
  cairo_surface_destroy (surface);

  return n;
}

/* Two level curves: the names stand at their beginning, where reading begins, and nowhere else. */
static void
test_names (void)
{
  const double time_s[] = { 0, 2100 }, leaf_c[] = { 60, 60 }, wall_c[] = { 280, 280 };
  g_autoptr (LwLog) log = lw_log_new ("log", "Log");

  log->rows = log->first_line = log->last_line = 2;
  lw_log_add_curve (log, LW_LOG_LEAF, "The leaf", 0, time_s, leaf_c, 2);
  lw_log_add_curve (log, LW_LOG_WALL, NULL, 0, time_s, wall_c, 2);

  for (int rtl = 0; rtl < 2; rtl++)
    {
      int begin = rtl ? WIDTH / 2 : 60, end = rtl ? WIDTH - 60 : WIDTH / 2;
      guint lines = n_dark (log, rtl, WIDTH - end, WIDTH - begin, 0, HEIGHT);

      g_assert_cmpuint (n_dark (log, rtl, begin, end, 0, HEIGHT), >, lines + 50);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/logs/lines", GINT_TO_POINTER (FALSE), test_lines);
  g_test_add_data_func ("/logs/lines-rtl", GINT_TO_POINTER (TRUE), test_lines);
  g_test_add_data_func ("/logs/measured-wall", GINT_TO_POINTER (FALSE), test_measured_wall);
  g_test_add_data_func ("/logs/measured-wall-rtl", GINT_TO_POINTER (TRUE), test_measured_wall);
  g_test_add_func ("/logs/names", test_names);

  return g_test_run ();
}

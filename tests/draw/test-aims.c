/* Aims as lines of the result, and under the pointer in a panel, in both reading directions. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "draw/aim-grip.h"
#include "draw/outcome.h"
#include "draw/verdict.h"
#include "sample.h"

#define HEIGHT 200.0
#define LAST 4

static const LwLetter letter = { .base_px = 13 };

typedef struct
{
  LwSeason *season;
  LwTrack *track;
  LwCurves *curves;
  LwScale scale;
  LwPanelLook look;
  LwAxis axis;
} Panel;

static void
panel_init (Panel     *panel,
            LwQuantity quantity,
            gboolean   rtl)
{
  const LwBatch *batch;
  double minutes[LW_SCALE_MAX_STEPS];

  panel->season = sample_season ();
  panel->track = sample_track (panel->season, 20);
  panel->curves = lw_curves_new (panel->track, quantity);
  batch = panel->season->batches[0];
  for (guint i = 0; i < batch->n_steps; i++)
    minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  lw_scale_fill (&panel->scale, minutes, batch->n_steps, 10, 900, rtl);
  panel->look = (LwPanelLook) {
    .quantity = quantity, .scale = &panel->scale, .curves = panel->curves, .batch = batch, .fresh_moisture_pct = 77,
  };
  panel->axis = lw_panel_axis (&panel->look);
}

static void
panel_clear (Panel *panel)
{
  lw_curves_unref (panel->curves);
  lw_track_unref (panel->track);
  lw_season_unref (panel->season);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Panel, panel_clear)

static double
y_of (const Panel *panel,
      double       value)
{
  double top, bottom;

  lw_panel_plot (HEIGHT, &letter, &top, &bottom);

  return lw_axis_y (&panel->axis, top, bottom, value);
}

/* `in` px inside the end edge of the step's column. */
static double
x_of (const Panel *panel,
      guint        step,
      double       in)
{
  double end = lw_scale_x (&panel->scale, step, panel->scale.minutes[step]);

  return panel->scale.rtl ? end + in : end - in;
}

static LwAimGrip
grip (const Panel *panel,
      guint        step,
      double       in,
      double       value)
{
  return lw_aim_grip_at (&panel->look, &panel->axis, &letter, HEIGHT, x_of (panel, step, in), y_of (panel, value));
}

static LwAim
dragged (const Panel     *panel,
         const LwAimGrip *from,
         double           to,
         gboolean         fine)
{
  return lw_aim_grip_drag (from, &panel->axis, &letter, HEIGHT, y_of (panel, to), fine);
}

/* The sample's rupture is aimed at 60 to 70 after the roll. */
static void
test_bracket (gconstpointer rtl)
{
  g_auto (Panel) panel = { 0 };
  LwAimGrip high, low, both;
  LwAim aim;

  panel_init (&panel, LW_RUPTURE, GPOINTER_TO_INT (rtl));
  high = grip (&panel, 2, 4, 70);
  low = grip (&panel, 2, 4, 60);
  both = grip (&panel, 2, 4, 65);
  g_assert_cmpint (high.part, ==, LW_AIM_HIGH);
  g_assert_cmpint (low.part, ==, LW_AIM_LOW);
  g_assert_cmpint (both.part, ==, LW_AIM_BOTH);
  g_assert_cmpint (high.step, ==, 2);

  aim = dragged (&panel, &high, 80.2, FALSE);
  g_assert_cmpfloat (aim.low, ==, 60);
  g_assert_cmpfloat_with_epsilon (aim.high, 80, 1e-9);
  aim = dragged (&panel, &high, 80.2, TRUE);
  g_assert_cmpfloat_with_epsilon (aim.high, 80.2, 1e-9);

  /* No side passes the other, or the end of the range. */
  aim = dragged (&panel, &high, 20, FALSE);
  g_assert_cmpfloat (aim.high, >, aim.low);
  g_assert_cmpfloat (aim.low, ==, 60);
  aim = dragged (&panel, &low, 90, FALSE);
  g_assert_cmpfloat (aim.low, <, aim.high);

  aim = dragged (&panel, &both, 60, FALSE);
  g_assert_cmpfloat_with_epsilon (aim.low, 55, 1e-9);
  g_assert_cmpfloat_with_epsilon (aim.high, 65, 1e-9);
}

/* Oxidation of the finished tea is at most 5: the open side cannot be taken, and stays open. */
static void
test_open_side (void)
{
  g_auto (Panel) panel = { 0 };
  LwAimGrip high;
  LwAim aim;

  panel_init (&panel, LW_OXIDATION, FALSE);
  high = grip (&panel, LAST, 4, 5);
  g_assert_cmpint (high.part, ==, LW_AIM_HIGH);
  g_assert_cmpint (high.step, ==, -1);
  aim = dragged (&panel, &high, 8, FALSE);
  g_assert_true (isinf (aim.low) && aim.low < 0);
  g_assert_cmpfloat_with_epsilon (aim.high, 8, 1e-9);
}

/* Where a column has no aim of the quantity, its end edge makes one, from press to release. */
static void
test_new (gconstpointer rtl)
{
  g_auto (Panel) panel = { 0 };
  LwAimGrip edge;
  LwAim aim;

  panel_init (&panel, LW_RUPTURE, GPOINTER_TO_INT (rtl));
  edge = grip (&panel, 1, 3, 30);
  g_assert_cmpint (edge.part, ==, LW_AIM_NEW);
  g_assert_cmpint (edge.step, ==, 1);
  aim = dragged (&panel, &edge, 42, FALSE);
  g_assert_cmpint (aim.of, ==, LW_RUPTURE);
  g_assert_cmpfloat_with_epsilon (aim.low, 30, 0.5 + 1e-9);
  g_assert_cmpfloat_with_epsilon (aim.high, 42, 0.5 + 1e-9);

  g_assert_cmpint (grip (&panel, LAST, 3, 30).step, ==, -1);
  g_assert_cmpint (grip (&panel, 1, 30, 30).part, ==, LW_AIM_NONE);
}

static void
test_verdicts (void)
{
  static const struct
  {
    LwOutcomeLook look;
    const char *verdict; /* NULL: nothing is wanted */
  } rows[] = {
    { { LW_MOISTURE, 5, NAN, FALSE, 0, 0, NAN, 0.3, NULL }, NULL },
    { { LW_MOISTURE, 5, NAN, TRUE, 3, 6, NAN, 0.3, NULL }, "within" },
    { { LW_MOISTURE, 7, NAN, TRUE, 3, 6, NAN, 0.3, NULL }, "above" },
    { { LW_MOISTURE, 2, NAN, TRUE, 3, 6, NAN, 0.3, NULL }, "below" },
    { { LW_MOISTURE, 2, NAN, TRUE, -INFINITY, 6, NAN, 0.3, NULL }, "within" },
    { { LW_MOISTURE, 5.2, NAN, FALSE, 0, 0, 5, 0.3, NULL }, "held" },
    { { LW_MOISTURE, 6.2, NAN, TRUE, 3, 6, 5, 0.3, NULL }, "+1.2 off" },
    { { LW_GREEN, 0.1, NAN, FALSE, 0, 0, 0.25, 0.01, NULL }, "−0.15 off" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *verdict = lw_outcome_verdict (&rows[i].look);

      g_assert_cmpstr (verdict, ==, rows[i].verdict);
    }
}

static void
test_words (void)
{
  g_autofree char *both = lw_outcome_window (LW_MOISTURE, 3, 6.5);
  g_autofree char *most = lw_outcome_window (LW_OXIDATION, -INFINITY, 8);
  g_autofree char *least = lw_outcome_window (LW_WEIGHT, 0.25, INFINITY);
  g_autofree char *more = lw_outcome_change (LW_MOISTURE, 0.26);
  g_autofree char *none = lw_outcome_change (LW_MOISTURE, 0.04);
  g_autofree char *unknown = lw_outcome_change (LW_MOISTURE, NAN);

  g_assert_cmpstr (both, ==, "3.0 to 6.5");
  g_assert_cmpstr (most, ==, "at most 8.0");
  g_assert_cmpstr (least, ==, "at least 0.250");
  g_assert_cmpstr (more, ==, "+0.3");
  g_assert_cmpstr (none, ==, "");
  g_assert_cmpstr (unknown, ==, "");
}

/* Where there is ink of the warning's colour in the line's picture; the middle of it, px, or -1. */
static double
warning_at (const LwOutcomeLook *look,
            gboolean             rtl)
{
  enum { WIDTH = 300 };
  const LwPalette *palette = lw_palette (FALSE);
  LwLetter own = letter;
  int height = (int) lw_outcome_height (look, &letter), n = 0;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, height);
  cairo_t *cr = cairo_create (surface);
  double sum = 0;

  own.rtl = rtl;
  lw_ink_use (cr, palette->card);
  cairo_paint (cr);
  lw_outcome_draw (cr, WIDTH, look, &own, palette);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  for (int y = 0; y < height; y++)
    for (int x = 0; x < WIDTH; x++)
      {
        guint32 pixel;

        memcpy (&pixel, cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface) + 4 * x, 4);
        if (fabs ((pixel >> 16 & 255) / 255.0 - palette->warning.r) < 0.1
            && fabs ((pixel >> 8 & 255) / 255.0 - palette->warning.g) < 0.1)
          {
            sum += x;
            n++;
          }
      }
  cairo_surface_destroy (surface);

  return n > 0 ? sum / n : -1;
}

/* Only what misses warns, and its mark stands on the side where it misses, mirrored when read from the right. */
static void
test_picture (void)
{
  LwOutcomeLook look = {
    .quantity = LW_RUPTURE, .value = 50, .change = NAN, .aimed = TRUE, .low = 40, .high = 60, .held = NAN, .tolerance = 1,
  };
  double plain, below, above;

  g_assert_cmpfloat (warning_at (&look, FALSE), ==, -1);
  look.value = 20;
  below = warning_at (&look, FALSE);
  look.value = 80;
  above = warning_at (&look, FALSE);
  g_assert_cmpfloat (below, >, 0);
  g_assert_cmpfloat (above, >, below);
  g_assert_cmpfloat (warning_at (&look, TRUE), <, 150);

  look.aimed = FALSE;
  plain = lw_outcome_height (&look, &letter);
  look.held = 50;
  g_assert_cmpfloat (lw_outcome_height (&look, &letter), >, plain);
  g_assert_cmpfloat (warning_at (&look, FALSE), >, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_data_func ("/aims/bracket/ltr", GINT_TO_POINTER (FALSE), test_bracket);
  g_test_add_data_func ("/aims/bracket/rtl", GINT_TO_POINTER (TRUE), test_bracket);
  g_test_add_func ("/aims/open-side", test_open_side);
  g_test_add_data_func ("/aims/new/ltr", GINT_TO_POINTER (FALSE), test_new);
  g_test_add_data_func ("/aims/new/rtl", GINT_TO_POINTER (TRUE), test_new);
  g_test_add_func ("/aims/verdicts", test_verdicts);
  g_test_add_func ("/aims/words", test_words);
  g_test_add_func ("/aims/picture", test_picture);

  return g_test_run ();
}

/* Bands in a panel: where the samples are, and in three ways that differ without their colour; the axis holds them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/panel.h"
#include "sample.h"

#define WIDTH 900
#define HEIGHT 420
#define STEP 0       /* its band is high there */

static const LwLetter letter = { .base_px = 13 };

typedef struct
{
  LwSeason *season;
  LwSpread *spread;
  LwScale scale;
  LwPanelLook look;
  LwAxis axis;
  cairo_surface_t *with;
  cairo_surface_t *without;
} Panel;

static cairo_surface_t *
draw (const Panel       *panel,
      const LwPanelLook *look)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);

  lw_panel_draw (cr, WIDTH, HEIGHT, look, &panel->axis, &letter, lw_palette_print ());
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  return surface;
}

static void
panel_init (Panel     *panel,
            LwQuantity quantity,
            gboolean   rtl)
{
  LwPanelLook bare;
  LwSpreadAsk ask;
  double minutes[LW_SCALE_MAX_STEPS];
  const LwBatch *batch;

  panel->season = sample_season ();
  batch = panel->season->batches[0];
  for (guint i = 0; i < batch->n_steps; i++)
    minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  lw_scale_fill (&panel->scale, minutes, batch->n_steps, 10, WIDTH - 20, rtl);

  lw_spread_ask_init (&ask);
  ask.samples = 200;
  ask.rows = 0;
  ask.points = 12;
  panel->spread = lw_spread_new (panel->season, 0, &ask, NULL);
  panel->look = (LwPanelLook) { .quantity = quantity, .scale = &panel->scale, .spread = panel->spread };
  panel->axis = lw_panel_axis (&panel->look);
  bare = panel->look;
  bare.spread = NULL;
  panel->with = draw (panel, &panel->look);
  panel->without = draw (panel, &bare);
}

static void
panel_clear (Panel *panel)
{
  cairo_surface_destroy (panel->with);
  cairo_surface_destroy (panel->without);
  lw_spread_free (panel->spread);
  lw_season_unref (panel->season);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Panel, panel_clear)

static guint32
pixel (cairo_surface_t *surface,
       int              x,
       int              y)
{
  return *(const guint32 *) (gpointer) (cairo_image_surface_get_data (surface) + y * cairo_image_surface_get_stride (surface)
                                        + 4 * x);
}

static double
y_of (const Panel *panel,
      double       value)
{
  double top, bottom;

  lw_panel_plot (HEIGHT, &letter, &top, &bottom);

  return lw_axis_y (&panel->axis, top, bottom, value);
}

/* Pixels that differ by the bands, per hundred, in columns round a point of the step, between two values. */
static double
marked (const Panel *panel,
        guint        point,
        double       from,
        double       to)
{
  double x = lw_scale_x (&panel->scale, STEP, panel->scale.minutes[STEP] * point / panel->spread->points);
  int top = (int) ceil (y_of (panel, to)), bottom = (int) floor (y_of (panel, from));
  guint n = 0, all = 0;

  for (int y = top; y <= bottom; y++)
    for (int i = -6; i < 6; i++, all++)
      n += pixel (panel->with, (int) x + i, y) != pixel (panel->without, (int) x + i, y);

  return all > 0 ? 100.0 * n / all : NAN;
}

/* How many shades of grey there are. */
static guint
shades (const Panel *panel,
        guint        point,
        double       from,
        double       to)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  double x = lw_scale_x (&panel->scale, STEP, panel->scale.minutes[STEP] * point / panel->spread->points);

  for (int y = (int) ceil (y_of (panel, to)); y <= (int) floor (y_of (panel, from)); y++)
    for (int i = -6; i < 6; i++)
      g_hash_table_add (seen, GUINT_TO_POINTER (pixel (panel->with, (int) x + i, y)));

  return g_hash_table_size (seen);
}

/* Moisture in the wither scatters enough to be measured in pixels. */
static void
test_place (gconstpointer rtl)
{
  g_auto (Panel) panel = { 0 };
  const LwSpan *span;
  double px;

  panel_init (&panel, LW_MOISTURE, GPOINTER_TO_INT (rtl));
  span = lw_spread_band (panel.spread, STEP, 6, LW_MOISTURE);
  px = fabs (y_of (&panel, span->q95) - y_of (&panel, span->q05));
  g_assert_cmpfloat (px, >, 12);

  g_assert_cmpfloat (marked (&panel, 6, span->q25, span->q75), >, 99);
  g_assert_cmpfloat (marked (&panel, 6, span->q75, span->q95), >, 90);
  g_assert_cmpfloat (marked (&panel, 6, (span->q95 + panel.axis.high) / 2, panel.axis.high), <, 1);
  g_assert_cmpfloat (marked (&panel, 6, panel.axis.low, (span->q05 + panel.axis.low) / 2), <, 1);
  /* The middle half is hatched. */
  g_assert_cmpuint (shades (&panel, 6, span->q25 + 0.2, span->q75 - 0.2), >, 6);
}

/* What cannot be computed has no bands, and nothing of another batch is drawn. */
static void
test_none (void)
{
  g_auto (Panel) panel = { 0 };
  double low, high;
  guint n;

  panel_init (&panel, LW_OXIDATION, FALSE);
  g_assert_true (lw_panel_spans (&panel.look, &low, &high));
  g_assert_cmpfloat (panel.axis.high, >=, high);
  g_assert_cmpfloat (low, >=, 0);

  n = panel.scale.n;
  panel.scale.n = n - 1;
  g_assert_false (lw_panel_spans (&panel.look, &low, &high));
  panel.scale.n = n;
  panel.spread->failed = panel.spread->samples;
  g_assert_false (lw_panel_spans (&panel.look, &low, &high));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_data_func ("/bands/place", GINT_TO_POINTER (FALSE), test_place);
  g_test_add_data_func ("/bands/place-rtl", GINT_TO_POINTER (TRUE), test_place);
  g_test_add_func ("/bands/none", test_none);

  return g_test_run ();
}

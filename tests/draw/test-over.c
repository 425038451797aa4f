/* Batches laid over: where their names stand, and that the kept picture of their lines shows what drawing them
 * anew would. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "draw/labels.h"
#include "draw/panel.h"
#include "sample.h"

#define WIDTH 900
#define HEIGHT 170
#define GUTTER 120.0

/* Inside, none on another in its lane, in the order of their wishes. */
static void
assert_sound (const LwLabel *labels,
              guint          n,
              double         top,
              double         bottom,
              double         height)
{
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpfloat (labels[i].y - height / 2, >=, top - 1e-9);
      g_assert_cmpfloat (labels[i].y + height / 2, <=, bottom + 1e-9);
      for (guint k = 0; k < n; k++)
        if (k != i && labels[k].lane == labels[i].lane)
          {
            g_assert_cmpfloat (fabs (labels[k].y - labels[i].y), >=, height - 1e-9);
            if (labels[i].want < labels[k].want)
              g_assert_cmpfloat (labels[i].y, <, labels[k].y);
          }
    }
}

static void
test_labels_apart (void)
{
  LwLabel labels[] = { { .want = 80 }, { .want = 20 }, { .want = 50 } };

  g_assert_cmpuint (lw_labels_place (labels, 3, 0, 100, 12), ==, 1);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (labels[i].y, labels[i].want, 1e-9);
}

/* Two on one point share the way; by hand: 44 and 56 around 50. One pushed in from the edge stays inside. */
static void
test_labels_together (void)
{
  LwLabel labels[] = { { .want = 50 }, { .want = 50 }, { .want = 99 }, { .want = -7 } };

  g_assert_cmpuint (lw_labels_place (labels, 4, 0, 100, 12), ==, 1);
  g_assert_cmpfloat_with_epsilon (labels[0].y, 44, 1e-9);
  g_assert_cmpfloat_with_epsilon (labels[1].y, 56, 1e-9);
  g_assert_cmpfloat_with_epsilon (labels[2].y, 94, 1e-9);
  g_assert_cmpfloat_with_epsilon (labels[3].y, 6, 1e-9);
  assert_sound (labels, 4, 0, 100, 12);
}

static void
test_labels_many (void)
{
  LwLabel labels[40];

  for (guint n = 1; n <= G_N_ELEMENTS (labels); n++)
    {
      for (guint i = 0; i < n; i++)
        labels[i] = (LwLabel) { .want = (i * 37) % 101 };
      g_assert_cmpuint (lw_labels_place (labels, n, 0, 100, 12), ==, (n + 7) / 8);
      assert_sound (labels, n, 0, 100, 12);
    }
  g_assert_cmpuint (lw_labels_place (labels, 3, 0, 5, 12), ==, 0);
  g_assert_cmpuint (lw_labels_place (labels, 0, 0, 100, 12), ==, 0);
}

typedef struct
{
  LwSeason *season;
  LwTrack *track;
  LwCurves *curves;
  LwScale scale;
  LwPanelOverlay overlays[2];
  LwPanelLook look;
} Made;

static const double times[] = { 1140, 35, 3, 480, 20 }; /* those of the sample */
static const int columns[] = { 0, 1, -1, 3, 4 };

static void
made_init (Made    *made,
           gboolean by_clock,
           gboolean rtl)
{
  double minutes[5];

  made->season = sample_season ();
  made->track = sample_track (made->season, 60);
  made->curves = lw_curves_new (made->track, LW_MOISTURE);
  for (guint i = 0; i < 5; i++)
    minutes[i] = lw_step_get (&made->season->batches[0]->steps[i], LW_SET_MINUTES);
  lw_scale_fill_view (&made->scale, (LwScaleView) { by_clock, -1 }, minutes, 5, rtl ? 14 + GUTTER : 14,
                      WIDTH - 28 - GUTTER, rtl);
  for (guint i = 0; i < 2; i++)
    made->overlays[i] = (LwPanelOverlay) {
      .curves = made->curves, .minutes = times, .n = 5, .columns = columns, .begins = 90.0 * i - 30, .tag = i == 0 ? "A" : "B",
      .name = "13 short wither", .ink = { 1, 0, 0, 1 },
    };
  made->look = (LwPanelLook) {
    .quantity = LW_MOISTURE, .scale = &made->scale, .overlays = made->overlays, .n_overlays = 2, .gutter = TRUE,
  };
}

static void
made_clear (Made *made)
{
  lw_curves_unref (made->curves);
  lw_track_unref (made->track);
  lw_season_unref (made->season);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Made, made_clear)

static cairo_surface_t *
picture (const Made *made)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  LwLetter letter = { .base_px = 13 };
  LwAxis axis = lw_panel_axis (&made->look);

  lw_panel_draw (cr, WIDTH, HEIGHT, &made->look, &axis, &letter, lw_palette (FALSE));
  cairo_destroy (cr);
  cairo_surface_flush (surface);

  return surface;
}

/* How many px between `from` and `to` differ by more than a shade. */
static guint
differing (cairo_surface_t *a,
           cairo_surface_t *b,
           double           from,
           double           to)
{
  const unsigned char *one = cairo_image_surface_get_data (a), *other = cairo_image_surface_get_data (b);
  int stride = cairo_image_surface_get_stride (a);
  guint n = 0;

  for (int y = 0; y < HEIGHT; y++)
    for (int x = (int) ceil (MAX (from, 0)); x < (int) MIN (to, WIDTH); x++)
      for (int c = 0; c < 4; c++)
        if (abs (one[y * stride + 4 * x + c] - other[y * stride + 4 * x + c]) > 40)
          {
            n++;
            break;
          }

  return n;
}

static guint
red (cairo_surface_t *surface,
     double           from,
     double           to)
{
  const unsigned char *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  guint n = 0;

  for (int y = 40; y < HEIGHT; y++)
    for (int x = (int) ceil (MAX (from, 0)); x < (int) MIN (to, WIDTH); x++)
      n += data[y * stride + 4 * x + 2] > 180 && data[y * stride + 4 * x + 1] < 80;

  return n;
}

/* At rest the same but for rounding; while dragged, a column that only shifts shows the same lines as anew. */
static void
test_kept (void)
{
  for (guint i = 0; i < 4; i++)
    {
      g_autoptr (LwPanelKept) kept = lw_panel_kept_new ();
      g_auto (Made) made = { 0 };
      cairo_surface_t *plain, *first, *again, *moved, *anew;
      double left, right;

      made_init (&made, i & 1, i & 2);
      plain = picture (&made);
      made.look.kept = kept;
      first = picture (&made);
      again = picture (&made);
      g_assert_cmpuint (differing (plain, first, 0, WIDTH), <, 20);
      g_assert_cmpuint (differing (first, again, 0, WIDTH), ==, 0);

      made.look.quick = TRUE;
      lw_scale_set_minutes (&made.scale, 1, 70);
      moved = picture (&made);
      made.look.kept = NULL;
      anew = picture (&made);
      lw_scale_column (&made.scale, 3, &left, &right);
      if (i & 1)
        {
          left = 0;
          right = WIDTH;
        }
      g_assert_cmpuint (red (anew, left, right), >, 30);
      g_assert_cmpuint (differing (first, moved, 0, WIDTH), >, 0);
      g_assert_cmpuint (red (moved, left + 3, right - 3), >, red (anew, left + 3, right - 3) * 2 / 3);
      g_assert_cmpuint (red (moved, left + 3, right - 3), <, red (anew, left + 3, right - 3) * 3 / 2);

      cairo_surface_destroy (plain);
      cairo_surface_destroy (first);
      cairo_surface_destroy (again);
      cairo_surface_destroy (moved);
      cairo_surface_destroy (anew);
    }
}

/* Nothing is drawn over a step without a match; another stamp draws the lines anew. */
static void
test_gap (void)
{
  g_autoptr (LwPanelKept) kept = lw_panel_kept_new ();
  g_auto (Made) made = { 0 };
  cairo_surface_t *with, *without;
  double left, right;

  made_init (&made, FALSE, FALSE);
  made.look.kept = kept;
  with = picture (&made);
  lw_scale_column (&made.scale, 2, &left, &right);
  g_assert_cmpuint (red (with, left + 2, right - 2), ==, 0);
  lw_scale_column (&made.scale, 3, &left, &right);
  g_assert_cmpuint (red (with, left + 2, right - 2), >, 30);

  made.overlays[0].n = made.overlays[1].n = 1;
  made.look.overlays_stamp++;
  without = picture (&made);
  g_assert_cmpuint (red (without, left + 2, right - 2), ==, 0);
  cairo_surface_destroy (with);
  cairo_surface_destroy (without);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/over/labels-apart", test_labels_apart);
  g_test_add_func ("/over/labels-together", test_labels_together);
  g_test_add_func ("/over/labels-many", test_labels_many);
  g_test_add_func ("/over/kept", test_kept);
  g_test_add_func ("/over/gap", test_gap);

  return g_test_run ();
}

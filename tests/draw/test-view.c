/* The scale by clock and with one column large, and the clock's ruler: what is even, what
 * fills, what stays put, what can still be reached. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/block.h"
#include "draw/panel.h"
#include "draw/ruler.h"

#define ORIGIN 14.0
#define N G_N_ELEMENTS (minutes)
#define LEAST_PX (LW_BLOCK_LEAST - 1e-9)

static const double minutes[] = { 1140, 35, 3, 0.75, 480, 20 };

static const LwScaleView by_clock = { TRUE, -1 };

static LwScale
filled (LwScaleView view,
        double      room,
        gboolean    rtl)
{
  LwScale scale;

  lw_scale_fill_view (&scale, view, minutes, N, ORIGIN, room, rtl);

  return scale;
}

/* x goes with the time from the batch's begin, whatever the step. */
static void
test_even (void)
{
  double all = 0;

  for (guint i = 0; i < N; i++)
    all += minutes[i];

  for (int rtl = 0; rtl < 2; rtl++)
    {
      LwScale scale = filled (by_clock, 900, rtl);
      double before = 0;

      for (guint i = 0; i < N; i++)
        {
          for (double share = 0; share <= 1; share += 0.25)
            {
              double along = (before + share * minutes[i]) / all * 900;

              g_assert_cmpfloat_with_epsilon (lw_scale_x (&scale, i, share * minutes[i]),
                                              ORIGIN + (rtl ? 900 - along : along), 1e-6);
            }
          before += minutes[i];
        }
    }
}

/* Blocks stand side by side over the whole width, in order, none narrower than the least, and one that has more
 * than that does not go beyond its column. */
static void
check_blocks (const LwScale *scale)
{
  double end = lw_scale_block_begin (scale, 0);

  for (guint i = 0; i < scale->n; i++)
    {
      double left, right, column_left, column_right;

      lw_scale_block (scale, i, &left, &right);
      lw_scale_column (scale, i, &column_left, &column_right);
      g_assert_cmpfloat (right - left, >=, LEAST_PX);
      g_assert_cmpfloat_with_epsilon (scale->rtl ? right : left, end, 1e-9);
      end = scale->rtl ? left : right;
      if (right - left > LW_BLOCK_LEAST + 1e-6)
        g_assert_true (scale->rtl ? end >= column_left - 1e-6 : end <= column_right + 1e-6);
    }
}

static void
test_blocks (void)
{
  for (int rtl = 0; rtl < 2; rtl++)
    for (double room = N * LW_BLOCK_LEAST; room < 3000; room *= 1.3)
      {
        LwScale scale = filled (by_clock, room, rtl);
        double left, right;

        check_blocks (&scale);
        lw_scale_block (&scale, rtl ? 0 : N - 1, &left, &right);
        g_assert_cmpfloat_with_epsilon (right, ORIGIN + room, 1e-6);
        g_assert_cmpfloat (lw_scale_least_width_view (by_clock, minutes, N), <=, room);
      }
}

/* By step every block has its column. */
static void
test_blocks_by_step (void)
{
  LwScale scale = filled (LW_SCALE_BY_STEP, 1200, FALSE), plain;

  lw_scale_fill (&plain, minutes, N, ORIGIN, 1200, FALSE);
  for (guint i = 0; i < N; i++)
    {
      double left, right, column_left, column_right;

      lw_scale_block (&scale, i, &left, &right);
      lw_scale_column (&scale, i, &column_left, &column_right);
      g_assert_cmpfloat (left, ==, column_left);
      g_assert_cmpfloat_with_epsilon (right, column_right, 1e-9);
      g_assert_cmpfloat (scale.start[i], ==, plain.start[i]);
    }
}

/* In every view the dragged column alone changes its width, and its end is where the pointer is. */
static void
test_drag (void)
{
  static const LwScaleView views[] = { { FALSE, -1 }, { TRUE, -1 }, { FALSE, 0 }, { TRUE, 2 } };

  for (guint v = 0; v < G_N_ELEMENTS (views); v++)
    for (int rtl = 0; rtl < 2; rtl++)
      for (guint i = 0; i < N; i++)
        for (double more = 1; more < 60; more *= 3)
          {
            LwScale scale = filled (views[v], 900, rtl), before = scale;
            double x = lw_scale_x (&scale, i, minutes[i]) + (rtl ? -more : more);
            double longer = lw_scale_minutes_for (&scale, i, x);

            g_assert_cmpfloat (longer, >, minutes[i]);
            lw_scale_set_minutes (&scale, i, longer);
            g_assert_cmpfloat_with_epsilon (lw_scale_x (&scale, i, longer), x, 1e-6);
            for (guint k = 0; k < N; k++)
              if (k != i)
                g_assert_cmpfloat (scale.width[k], ==, before.width[k]);
            check_blocks (&scale);
          }
}

static void
test_zoom (void)
{
  for (int zoomed = 0; zoomed < (int) N; zoomed++)
    for (int clock = 0; clock < 2; clock++)
      {
        LwScale scale = filled ((LwScaleView) { clock, zoomed }, 1000, FALSE);

        g_assert_cmpfloat_with_epsilon (scale.total, 1000, 1e-6);
        for (int i = 0; i < (int) N; i++)
          g_assert_cmpfloat_with_epsilon (scale.width[i], i == zoomed ? 1000 - (N - 1) * LW_BLOCK_LEAST : LW_BLOCK_LEAST,
                                          1e-6);
      }
}

/* A step that is not there cannot be large; too little room keeps what columns need. */
static void
test_zoom_odd (void)
{
  LwScale scale = filled ((LwScaleView) { FALSE, N }, 1000, FALSE), plain = filled (LW_SCALE_BY_STEP, 1000, FALSE);
  LwScaleView view = { FALSE, 0 };

  g_assert_cmpint (scale.view.zoomed, ==, -1);
  g_assert_cmpfloat (scale.width[0], ==, plain.width[0]);

  scale = filled (view, 50, FALSE);
  g_assert_cmpfloat_with_epsilon (scale.total, lw_scale_least_width_view (view, minutes, N), 1e-9);
}

/* Other times in the same view: as if they had been there from the first. */
static void
test_refill (void)
{
  static const double other[] = { 35, 1140, 480, 3, 0.75, 60 };
  LwScale scale = filled (by_clock, 800, TRUE), anew;

  lw_scale_refill (&scale, other);
  lw_scale_fill_view (&anew, by_clock, other, N, ORIGIN, 800, TRUE);
  for (guint i = 0; i < N; i++)
    g_assert_cmpfloat (lw_scale_x (&scale, i, other[i]), ==, lw_scale_x (&anew, i, other[i]));
}

static void
test_blend (void)
{
  LwScale from = filled (LW_SCALE_BY_STEP, 900, FALSE), to = filled ((LwScaleView) { FALSE, 2 }, 900, FALSE), scale;

  for (double way = 0; way <= 1; way += 0.25)
    {
      lw_scale_blend (&scale, &from, &to, way);
      for (guint i = 0; i < N; i++)
        g_assert_cmpfloat_with_epsilon (scale.width[i], from.width[i] + way * (to.width[i] - from.width[i]), 1e-9);
      check_blocks (&scale);
    }
  g_assert_cmpint (scale.view.zoomed, ==, 2);
}

static double
wide (const char *text,
      gpointer    data)
{
  return (double) g_utf8_strlen (text, -1) * *(double *) data;
}

static const LwTick *
tick_saying (GArray     *ticks,
             const char *text)
{
  for (guint i = 0; i < ticks->len; i++)
    if (g_strcmp0 (g_array_index (ticks, LwTick, i).text, text) == 0)
      return &g_array_index (ticks, LwTick, i);

  return NULL;
}

/* Words stay apart and inside, in any room and letter. */
static void
test_clock_words (void)
{
  for (int rtl = 0; rtl < 2; rtl++)
    for (int zoomed = -1; zoomed < (int) N; zoomed++)
      for (double room = 300; room < 2500; room *= 1.4)
        for (double letter = 5; letter < 15; letter += 3)
          {
            LwScale scale = filled ((LwScaleView) { TRUE, zoomed }, room, rtl);
            g_autoptr (GArray) ticks = lw_ruler_clock_ticks (&scale, 1774864800, wide, &letter);
            double end = -INFINITY;
            guint words = 0;

            for (guint n = 0; n < ticks->len; n++)
              {
                const LwTick *tick = &g_array_index (ticks, LwTick, rtl ? ticks->len - 1 - n : n);

                if (tick->text == NULL)
                  continue;
                words++;
                g_assert_cmpfloat (tick->left, >, end + 10);
                g_assert_cmpfloat (tick->left, >=, ORIGIN);
                end = tick->right;
              }
            g_assert_cmpuint (words, >=, 1);
          }
}

/* 30 March 2026, 10:00, for 27 h 58 min: one midnight, round hours, each where its time is. */
static void
test_clock_times (void)
{
  LwScale scale = filled (by_clock, 1000, FALSE);
  double letter = 6, all = 0;
  g_autoptr (GArray) ticks = lw_ruler_clock_ticks (&scale, 1774864800, wide, &letter);
  const LwTick *noon, *midnight;

  for (guint i = 0; i < N; i++)
    all += minutes[i];

  g_assert_cmpstr (g_array_index (ticks, LwTick, 0).text, ==, "30 Mar, 10:00");
  g_assert_cmpfloat (g_array_index (ticks, LwTick, 0).x, ==, ORIGIN);
  midnight = tick_saying (ticks, "31 Mar");
  g_assert_nonnull (midnight);
  g_assert_cmpfloat_with_epsilon (midnight->x, ORIGIN + 14 * 60 / all * 1000, 1e-6);
  noon = tick_saying (ticks, "12:00");
  g_assert_nonnull (noon);
  g_assert_cmpfloat (noon->x, >, midnight->x);
  g_assert_null (tick_saying (ticks, "00:00"));
}

/* Begun at 23:55: midnight stands too near to be told, and the next word says the day, once. */
static void
test_clock_midnight (void)
{
  LwScale scale = filled (by_clock, 1000, FALSE);
  double letter = 6;
  g_autoptr (GArray) ticks = lw_ruler_clock_ticks (&scale, 1774864800 + 60 * (13 * 60 + 55), wide, &letter);
  guint words = 0;

  g_assert_cmpstr (g_array_index (ticks, LwTick, 0).text, ==, "30 Mar, 23:55");
  g_assert_null (tick_saying (ticks, "31 Mar"));
  for (guint i = 1; i < ticks->len; i++)
    {
      const char *text = g_array_index (ticks, LwTick, i).text;

      if (text == NULL)
        continue;
      if (words++ == 0)
        g_assert_true (g_str_has_prefix (text, "31 Mar, 0"));
      else
        g_assert_false (g_str_has_prefix (text, "31 Mar"));
    }
  g_assert_cmpuint (words, >=, 3);
}

/* Zoomed, the ruler tells the large column's own minutes on the clock. */
static void
test_clock_zoomed (void)
{
  LwScale scale = filled ((LwScaleView) { TRUE, 1 }, 1000, FALSE);
  double letter = 6, left, right;
  g_autoptr (GArray) ticks = lw_ruler_clock_ticks (&scale, 1774864800, wide, &letter);

  lw_scale_column (&scale, 1, &left, &right);
  /* The first step ends at 5:00 the next day. */
  g_assert_cmpstr (g_array_index (ticks, LwTick, 0).text, ==, "31 Mar, 05:00");
  for (guint i = 0; i < ticks->len; i++)
    {
      g_assert_cmpuint (g_array_index (ticks, LwTick, i).step, ==, 1);
      g_assert_true (g_array_index (ticks, LwTick, i).x >= left && g_array_index (ticks, LwTick, i).x <= right + 1e-6);
    }
  g_assert_nonnull (tick_saying (ticks, "05:20"));
}

/* Pixels of a picture that are not as they were. */
static guint
drawn (cairo_surface_t *surface,
       int              from_y,
       int              to_y)
{
  const guint32 *pixels = (const guint32 *) (gpointer) cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface) / 4;
  guint n = 0;

  for (int y = from_y; y < to_y; y++)
    for (int x = 0; x < cairo_image_surface_get_width (surface); x++)
      n += pixels[y * stride + x] != 0;

  return n;
}

/* The clock's ruler is drawn: leads at its top, ticks and words under them. */
static void
test_draw_ruler (void)
{
  for (int rtl = 0; rtl < 2; rtl++)
    {
      LwScale scale = filled (by_clock, 900, rtl);
      LwLetter letter = { .base_px = 13 };
      cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 930, 40);
      cairo_t *cr = cairo_create (surface);

      lw_ruler_draw_clock (cr, 930, &scale, 1774864800, &letter, lw_palette (FALSE));
      cairo_destroy (cr);
      cairo_surface_flush (surface);
      g_assert_cmpuint (drawn (surface, 0, (int) LW_RULER_LEAD), >, 20);
      g_assert_cmpuint (drawn (surface, (int) LW_RULER_LEAD, 40), >, 400);
      cairo_surface_destroy (surface);
    }
}

/* A block of the least width shows its sign and its line, and needs no words to fit. */
static void
test_draw_slim (void)
{
  LwStep step = lw_step_new (LW_KIND_ROLL);
  LwBlockLook look = { .step = &step, .leading = 3 };
  LwLetter letter = { .base_px = 13 };
  int height = (int) lw_block_height (&letter), line_y = (int) lw_block_line_y (LW_KIND_ROLL, height, &letter, 3);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) LW_BLOCK_LEAST, height);
  cairo_t *cr = cairo_create (surface);
  const guint32 *pixels;
  LwInk press = lw_palette (FALSE)->press;

  g_assert_true (lw_block_is_slim (LW_BLOCK_LEAST));
  g_assert_false (lw_block_is_slim (LW_COLUMN_LEAST - 6));
  lw_block_draw (cr, LW_BLOCK_LEAST, height, &look, &letter, lw_palette (FALSE));
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  pixels = (const guint32 *) (gpointer) cairo_image_surface_get_data (surface);
  /* The handle, in its colour. */
  g_assert_cmpuint (pixels[line_y * cairo_image_surface_get_stride (surface) / 4 + (int) LW_BLOCK_LEAST / 2] >> 16 & 255, ==,
                    (guint) lround (press.r * 255));
  cairo_surface_destroy (surface);
  lw_step_clear (&step);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/view/even", test_even);
  g_test_add_func ("/draw/view/blocks", test_blocks);
  g_test_add_func ("/draw/view/blocks-by-step", test_blocks_by_step);
  g_test_add_func ("/draw/view/drag", test_drag);
  g_test_add_func ("/draw/view/zoom", test_zoom);
  g_test_add_func ("/draw/view/zoom-odd", test_zoom_odd);
  g_test_add_func ("/draw/view/refill", test_refill);
  g_test_add_func ("/draw/view/blend", test_blend);
  g_test_add_func ("/draw/view/clock-words", test_clock_words);
  g_test_add_func ("/draw/view/clock-times", test_clock_times);
  g_test_add_func ("/draw/view/clock-midnight", test_clock_midnight);
  g_test_add_func ("/draw/view/clock-zoomed", test_clock_zoomed);
  g_test_add_func ("/draw/view/draw-ruler", test_draw_ruler);
  g_test_add_func ("/draw/view/draw-slim", test_draw_slim);

  return g_test_run ();
}

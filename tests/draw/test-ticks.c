/* Axes with round ends, ticks far enough apart, words that never meet. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/ruler.h"
#include "draw/space.h"
#include "draw/ticks.h"

static void
test_axis (void)
{
  for (double low = -40; low < 100; low += 3.7)
    for (double span = 0.013; span < 2000; span *= 1.9)
      for (guint most = 2; most < 8; most++)
        {
          LwAxis axis = lw_axis_round (low, low + span, most);
          double lead = axis.gap / pow (10, floor (log10 (axis.gap) + 1e-9));

          g_assert_cmpfloat (axis.low, <=, low + 1e-6 * span);
          g_assert_cmpfloat (axis.high, >=, (low + span) * (1 - 1e-9) - 1e-6 * span);
          g_assert_cmpfloat ((axis.high - axis.low) / axis.gap, <=, most + 1e-6);
          g_assert_cmpfloat (fabs ((lead - 1) * (lead - 2) * (lead - 5)), <, 1e-6);
          g_assert_cmpfloat_with_epsilon (axis.low / axis.gap, round (axis.low / axis.gap), 1e-6);
          g_assert_cmpfloat_with_epsilon (axis.high / axis.gap, round (axis.high / axis.gap), 1e-6);
        }
}

static void
test_axis_odd (void)
{
  static const double odd[][2] = {
    { 0, 0 }, { 7, 7 }, { NAN, 1 }, { -INFINITY, INFINITY }, { 1e-300, 2e-300 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      LwAxis axis = lw_axis_round (odd[i][0], odd[i][1], 5);

      g_assert_cmpfloat (axis.gap, >, 0);
      g_assert_cmpfloat (axis.high, >, axis.low);
    }

  g_assert_cmpfloat (lw_axis_round (0, 100, 5).high, ==, 100);
  g_assert_cmpfloat (lw_axis_round (0, 77, 5).high, ==, 80);
}

static void
test_axis_inverts (void)
{
  LwAxis axis = lw_axis_round (0, 77, 5);

  for (double value = -5; value < 90; value += 1.3)
    {
      double y = lw_axis_y (&axis, 35, 180, value);

      g_assert_cmpfloat_with_epsilon (lw_axis_value (&axis, 35, 180, y), value, 1e-9);
    }
  g_assert_cmpfloat_with_epsilon (lw_axis_y (&axis, 35, 180, 0), 180, 1e-9);
  g_assert_cmpfloat_with_epsilon (lw_axis_y (&axis, 35, 180, 80), 35, 1e-9);
}

static void
test_apart (void)
{
  for (double minutes = 0.1; minutes < 5000; minutes *= 1.3)
    for (double width = 64; width < 1500; width *= 1.4)
      for (double apart = 20; apart < 120; apart += 13)
        g_assert_cmpfloat (lw_ticks_minutes (minutes, width, apart) / minutes * width, >=,
                           apart * (1 - 1e-6));

  g_assert_cmpfloat (lw_ticks_minutes (3, 150, 40), ==, 1);
  g_assert_cmpfloat (lw_ticks_minutes (1140, 330, 50), ==, 180);
}

static void
test_text (void)
{
  static const struct { double minute, gap; const char *text; } said[] = {
    { 0, 5, "0" }, { 10, 5, "10 min" }, { 360, 360, "6 h" }, { 0.5, 0.5, "30 s" },
    { 1.5, 0.5, "1 min 30 s" }, { 90, 30, "1 h 30 min" }, { 1440, 720, "24 h" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (said); i++)
    {
      g_autofree char *text = lw_ticks_text (said[i].minute, said[i].gap);

      g_assert_cmpstr (text, ==, said[i].text);
    }
}

static double
wide (const char *text,
      gpointer    data)
{
  return (double) g_utf8_strlen (text, -1) * *(double *) data;
}

static void
check_words (const LwScale *scale,
             double         letter)
{
  g_autoptr (GArray) ticks = lw_ruler_ticks (scale, wide, &letter);
  guint zeros = 0;

  for (guint i = 0; i < ticks->len; i++)
    {
      const LwTick *tick = &g_array_index (ticks, LwTick, i);
      double left, right;

      lw_scale_column (scale, tick->step, &left, &right);
      g_assert_true (tick->x >= left - 1e-6 && tick->x <= right + 1e-6);
      if (tick->step + 1 < scale->n)
        g_assert_true (tick->minute <= 0 || tick->minute < scale->minutes[tick->step]);
      if (tick->text == NULL)
        continue;

      zeros += tick->minute <= 0;
      g_assert_true (tick->left >= left && tick->right <= right);
      for (guint k = 0; k < i; k++)
        {
          const LwTick *other = &g_array_index (ticks, LwTick, k);

          if (other->text != NULL)
            g_assert_true (other->right < tick->left || tick->right < other->left);
        }
    }
  g_assert_cmpuint (zeros, ==, scale->n);
}

static void
test_words_never_meet (void)
{
  static const double letters[] = { 5, 6.5, 9, 14 };

  for (int rtl = 0; rtl < 2; rtl++)
    for (guint l = 0; l < G_N_ELEMENTS (letters); l++)
      for (double minute = 0.1; minute < 4320; minute *= 1.45)
        for (double room = 128; room < 2500; room *= 1.6)
          {
            double minutes[] = { minute, 35, 4320 / minute };
            LwScale scale;

            lw_scale_fill (&scale, minutes, G_N_ELEMENTS (minutes), 7, room, rtl);
            check_words (&scale, letters[l]);
          }
}

/* A round time at a column's end is left to the next column's 0; the last column tells its end. */
static void
test_ends (void)
{
  static const double minutes[] = { 60, 480 };
  double letter = 6;
  LwScale scale;
  g_autoptr (GArray) ticks = NULL;

  lw_scale_fill (&scale, minutes, 2, 0, 900, FALSE);
  ticks = lw_ruler_ticks (&scale, wide, &letter);
  for (guint i = 0; i < ticks->len; i++)
    if (g_array_index (ticks, LwTick, i).step == 0)
      g_assert_cmpfloat (g_array_index (ticks, LwTick, i).minute, <, 60);
  g_assert_cmpfloat (g_array_index (ticks, LwTick, ticks->len - 1).minute, ==, 480);
  g_assert_cmpstr (g_array_index (ticks, LwTick, ticks->len - 1).text, ==, "8 h");
}

/* However low a panel is and however large its letters, its axis has a number. */
static void
test_one_at_least (void)
{
  for (double high = 20; high <= 100; high += 20)
    for (double px = 8; px < 60; px += 4)
      for (double tall = 10; tall < 300; tall += 7)
        {
          const LwAxis axis = { 0, high, 20 };
          const LwLetter letter = { .family = "Sans", .base_px = px };
          const LwSpace space = { .top = 0, .bottom = tall, .axis = &axis, .letter = &letter };
          guint told = 0, ticks = (guint) lround (high / axis.gap);

          for (guint i = 1; i <= ticks; i++)
            told += lw_space_tick_told (&space, i);
          g_assert_cmpuint (told, >, 0);
          g_assert_true (told == 1 || tall / told >= 1.2 * lw_letter_line (&letter));
        }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/ticks/axis", test_axis);
  g_test_add_func ("/draw/ticks/axis-odd", test_axis_odd);
  g_test_add_func ("/draw/ticks/axis-inverts", test_axis_inverts);
  g_test_add_func ("/draw/ticks/apart", test_apart);
  g_test_add_func ("/draw/ticks/one-at-least", test_one_at_least);
  g_test_add_func ("/draw/ticks/text", test_text);
  g_test_add_func ("/draw/ticks/words-never-meet", test_words_never_meet);
  g_test_add_func ("/draw/ticks/ends", test_ends);

  return g_test_run ();
}

/* The column scale: what fills, what inverts, what mirrors and what stays put. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/scale.h"

static const double minutes[] = { 1140, 35, 3, 0.75, 480 };
#define N G_N_ELEMENTS (minutes)

static LwScale
filled (double   room,
        gboolean rtl)
{
  LwScale scale;

  lw_scale_fill (&scale, minutes, N, 20, room, rtl);

  return scale;
}

static void
test_fill (void)
{
  LwScale scale = filled (900, FALSE);
  double left, right, end = 20;

  g_assert_cmpfloat_with_epsilon (scale.total, 900, 1e-9);
  for (guint i = 0; i < N; i++)
    {
      lw_scale_column (&scale, i, &left, &right);
      g_assert_cmpfloat_with_epsilon (left, end, 1e-9);
      g_assert_cmpfloat (right - left, >=, LW_COLUMN_LEAST);
      g_assert_cmpfloat_with_epsilon (right - left, 64 + scale.stretch * log2 (1 + minutes[i] / 2),
                                      1e-9);
      end = right;
    }
  g_assert_cmpfloat_with_epsilon (end, 920, 1e-9);
}

static void
test_too_small (void)
{
  LwScale scale = filled (200, FALSE);

  g_assert_cmpfloat (scale.stretch, ==, 10);
  g_assert_cmpfloat_with_epsilon (scale.total, lw_scale_least_width (minutes, N), 1e-9);
  g_assert_cmpfloat (scale.total, >, 200);
}

static void
test_no_time (void)
{
  static const double none[] = { 0, 0 };
  LwScale scale;
  guint step;
  double minute;

  lw_scale_fill (&scale, none, 2, 0, 500, FALSE);
  g_assert_cmpfloat (scale.total, ==, 2 * LW_COLUMN_LEAST);
  g_assert_cmpfloat (lw_scale_x (&scale, 1, 0), ==, LW_COLUMN_LEAST);
  g_assert_true (lw_scale_at (&scale, 70, &step, &minute));
  g_assert_cmpuint (step, ==, 1);
  g_assert_cmpfloat (minute, ==, 0);

  lw_scale_fill (&scale, none, 0, 0, 500, FALSE);
  g_assert_false (lw_scale_at (&scale, 10, &step, &minute));
}

static void
test_invert (void)
{
  for (int rtl = 0; rtl < 2; rtl++)
    for (double room = 150; room < 3000; room += 171)
      {
        LwScale scale = filled (room, rtl);

        for (guint i = 0; i < N; i++)
          for (double share = 0.01; share < 1; share += 0.07)
            {
              guint step;
              double minute;
              double x = lw_scale_x (&scale, i, share * minutes[i]);

              g_assert_true (lw_scale_at (&scale, x, &step, &minute));
              g_assert_cmpuint (step, ==, i);
              g_assert_cmpfloat_with_epsilon (minute, share * minutes[i], 1e-6);
            }
      }
}

static void
test_clamped (void)
{
  LwScale scale = filled (900, FALSE);
  guint step;
  double minute;

  g_assert_true (lw_scale_at (&scale, -500, &step, &minute));
  g_assert_cmpuint (step, ==, 0);
  g_assert_cmpfloat (minute, ==, 0);
  g_assert_true (lw_scale_at (&scale, 5000, &step, &minute));
  g_assert_cmpuint (step, ==, N - 1);
  g_assert_cmpfloat (minute, ==, minutes[N - 1]);
}

static void
test_mirror (void)
{
  LwScale ltr = filled (900, FALSE), rtl = filled (900, TRUE);

  for (guint i = 0; i < N; i++)
    {
      double left, right, other_left, other_right;

      lw_scale_column (&ltr, i, &left, &right);
      lw_scale_column (&rtl, i, &other_left, &other_right);
      g_assert_cmpfloat (other_left, <, other_right);
      g_assert_cmpfloat_with_epsilon (left - 20, 920 - other_right, 1e-9);
      g_assert_cmpfloat_with_epsilon (right - 20, 920 - other_left, 1e-9);
      g_assert_cmpfloat_with_epsilon (lw_scale_x (&rtl, i, 0), other_right, 1e-9);
    }
}

/* While a column is dragged nothing before it moves, and what is after only shifts. */
static void
test_frozen (void)
{
  LwScale scale = filled (900, FALSE), before = scale;

  lw_scale_set_minutes (&scale, 1, 80);
  g_assert_cmpfloat (scale.stretch, ==, before.stretch);
  for (guint i = 0; i < N; i++)
    {
      if (i != 1)
        g_assert_cmpfloat (scale.width[i], ==, before.width[i]);
      if (i < 2)
        g_assert_cmpfloat (scale.start[i], ==, before.start[i]);
    }
  g_assert_cmpfloat (scale.width[1], >, before.width[1]);
  g_assert_cmpfloat_with_epsilon (scale.total - before.total, scale.width[1] - before.width[1],
                                  1e-9);
}

/* A column that fits another time keeps its place, then and when a neighbour is dragged. */
static void
test_fit (void)
{
  LwScale scale = filled (900, FALSE), before = scale;

  lw_scale_fit_minutes (&scale, 2, 3 * before.minutes[2]);
  lw_scale_set_minutes (&scale, 1, 80);
  g_assert_cmpfloat_with_epsilon (scale.width[2], before.width[2], 1e-9);
  g_assert_cmpfloat (scale.width[1], >, before.width[1]);
  g_assert_cmpfloat_with_epsilon (lw_scale_x (&scale, 2, 3 * before.minutes[2]),
                                  lw_scale_x (&before, 2, before.minutes[2]) + scale.start[2] - before.start[2], 1e-9);
}

/* The pointer stays on the edge that it holds. */
static void
test_minutes_for (void)
{
  for (int rtl = 0; rtl < 2; rtl++)
    for (guint i = 0; i < N; i++)
      for (double wanted = 0.5; wanted < 4000; wanted *= 1.7)
        {
          LwScale scale = filled (900, rtl);
          double edge;

          lw_scale_set_minutes (&scale, i, wanted);
          edge = lw_scale_x (&scale, i, wanted);
          g_assert_cmpfloat_with_epsilon (lw_scale_minutes_for (&scale, i, edge), wanted,
                                          wanted * 1e-10);
        }
}

static void
test_minutes_for_least (void)
{
  LwScale scale = filled (900, FALSE);
  double left, right;

  lw_scale_column (&scale, 1, &left, &right);
  g_assert_cmpfloat (lw_scale_minutes_for (&scale, 1, left), ==, 0);
  g_assert_cmpfloat (lw_scale_minutes_for (&scale, 1, left + LW_COLUMN_LEAST), ==, 0);
}

static void
test_slot (void)
{
  for (int rtl = 0; rtl < 2; rtl++)
    {
      LwScale scale = filled (900, rtl);

      for (guint i = 0; i < N; i++)
        {
          double left, right;

          lw_scale_column (&scale, i, &left, &right);
          g_assert_cmpuint (lw_scale_slot (&scale, i, (left + right) / 2), ==, i);
        }
      g_assert_cmpuint (lw_scale_slot (&scale, 1, -99), ==, rtl ? N - 1 : 0);
      g_assert_cmpuint (lw_scale_slot (&scale, 1, 9999), ==, rtl ? 0 : N - 1);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/scale/fill", test_fill);
  g_test_add_func ("/draw/scale/too-small", test_too_small);
  g_test_add_func ("/draw/scale/no-time", test_no_time);
  g_test_add_func ("/draw/scale/invert", test_invert);
  g_test_add_func ("/draw/scale/clamped", test_clamped);
  g_test_add_func ("/draw/scale/mirror", test_mirror);
  g_test_add_func ("/draw/scale/frozen", test_frozen);
  g_test_add_func ("/scale/fit", test_fit);
  g_test_add_func ("/draw/scale/minutes-for", test_minutes_for);
  g_test_add_func ("/draw/scale/minutes-for-least", test_minutes_for_least);
  g_test_add_func ("/draw/scale/slot", test_slot);

  return g_test_run ();
}

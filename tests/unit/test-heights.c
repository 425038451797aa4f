/* Panels sharing a height: shares, gaps that are moved, and proportions kept. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/heights.h"

#define LEAST 96.0
#define N 4

static double
sum (const double *heights)
{
  return heights[0] + heights[1] + heights[2] + heights[3];
}

static void
test_share (void)
{
  static const double even[N] = { 1, 1, 1, 1 }, uneven[N] = { 1, 3, 2, 2 };
  double heights[N];

  lw_heights_share (even, N, 800, heights);
  for (guint i = 0; i < N; i++)
    g_assert_cmpfloat (heights[i], ==, 200);
  lw_heights_share (uneven, N, 800, heights);
  g_assert_cmpfloat (heights[0], ==, 100);
  g_assert_cmpfloat (heights[1], ==, 300);
  g_assert_cmpfloat (sum (heights), ==, 800);
}

/* At the least that is needed the lowest is as low as it may be. */
static void
test_need (void)
{
  static const double ratios[N] = { 1, 3, 2, 1.5 };
  double heights[N];

  lw_heights_share (ratios, N, lw_heights_need (ratios, N, LEAST), heights);
  g_assert_cmpfloat_with_epsilon (heights[0], LEAST, 1e-9);
}

/* A gap moved down or up: the neighbours trade, then those beyond give; none goes under the least. */
static void
test_move (void)
{
  for (guint gap = 0; gap + 1 < N; gap++)
    for (double by = -500; by <= 500; by += 20)
      {
        double heights[N] = { 150, 200, 130, 180 };
        double before = sum (heights), above = 0;

        lw_heights_move (heights, N, gap, by, LEAST);
        for (guint i = 0; i < N; i++)
          g_assert_cmpfloat (heights[i], >=, LEAST);
        for (guint i = 0; i <= gap; i++)
          above += heights[i];

        if (by <= 0)
          {
            static const double tops[] = { 150, 350, 480 };

            g_assert_cmpfloat_with_epsilon (sum (heights), before, 1e-9);
            g_assert_cmpfloat_with_epsilon (above, MAX (tops[gap] + by, (gap + 1) * LEAST), 1e-9);
          }
        else
          {
            g_assert_cmpfloat (sum (heights), >=, before - 1e-9);
          }
      }
}

/* Down, the panel above grows by just as much as the gap moved, and the whole only by what nobody can give. */
static void
test_grow (void)
{
  double heights[N] = { 150, 100, 100, 180 };

  lw_heights_move (heights, N, 0, 60, LEAST);
  g_assert_cmpfloat (heights[0], ==, 210);
  g_assert_cmpfloat (heights[1], ==, LEAST);
  g_assert_cmpfloat (heights[2], ==, LEAST);
  g_assert_cmpfloat_with_epsilon (heights[3], 128, 1e-9);

  lw_heights_move (heights, N, 0, 100, LEAST);
  g_assert_cmpfloat (heights[0], ==, 310);
  g_assert_cmpfloat_with_epsilon (sum (heights), 310 + 3 * LEAST, 1e-9);

  lw_heights_move (heights, N, 0, 1e6, LEAST);
  g_assert_cmpfloat_with_epsilon (heights[0], LW_HEIGHTS_MOST_RATIO * LEAST, 1e-9);
}

static void
test_ratios (void)
{
  static const double heights[N] = { 200, 100, 150, 5000 };
  double ratios[N];

  lw_heights_ratios (heights, N, ratios);
  g_assert_cmpfloat (ratios[0], ==, 2);
  g_assert_cmpfloat (ratios[1], ==, 1);
  g_assert_cmpfloat (ratios[2], ==, 1.5);
  g_assert_cmpfloat (ratios[3], ==, LW_HEIGHTS_MOST_RATIO);
  lw_heights_ratios (heights, 0, ratios);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/heights/share", test_share);
  g_test_add_func ("/heights/need", test_need);
  g_test_add_func ("/heights/move", test_move);
  g_test_add_func ("/heights/grow", test_grow);
  g_test_add_func ("/heights/ratios", test_ratios);

  return g_test_run ();
}

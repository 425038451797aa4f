/* The sky record: passes its points, stays between them, never jumps. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/sky.h"
#include "near.h"

static const LwAirNow hours[] = {
  { 12, 1200, 0, 1 }, { 15, 1300, 0, 2 }, { 15, 1250, 300, 2 }, { 24, 1400, 800, 0.5 }, { 20, 1400, 100, 0 },
};

static void
test_points (void)
{
  g_autoptr (LwSky) sky = lw_sky_new (7200, 3600, hours, G_N_ELEMENTS (hours));

  for (guint i = 0; i < G_N_ELEMENTS (hours); i++)
    {
      LwAirNow now = lw_sky_at (sky, 7200 + 3600.0 * i);

      assert_within (now.temp_c, hours[i].temp_c, 1e-12, "temperature");
      assert_within (now.sun_w_m2, hours[i].sun_w_m2, 1e-9, "sun");
    }

  assert_within (lw_sky_at (sky, -1e9).temp_c, 12, 0, "before");
  assert_within (lw_sky_at (sky, 1e9).temp_c, 20, 0, "after");
}

static void
test_between (void)
{
  g_autoptr (LwSky) sky = lw_sky_new (0, 3600, hours, G_N_ELEMENTS (hours));
  double last = hours[0].temp_c;

  for (double t = 0; t <= 4 * 3600; t += 10)
    {
      LwAirNow now = lw_sky_at (sky, t);
      guint i = MIN ((guint) (t / 3600), 3);

      g_assert_cmpfloat (now.temp_c, >=, MIN (hours[i].temp_c, hours[i + 1].temp_c) - 1e-9);
      g_assert_cmpfloat (now.temp_c, <=, MAX (hours[i].temp_c, hours[i + 1].temp_c) + 1e-9);
      g_assert_cmpfloat (now.sun_w_m2, >=, -1e-9);
      g_assert_cmpfloat (fabs (now.temp_c - last), <, 0.1);
      last = now.temp_c;
    }
}

static void
test_single (void)
{
  g_autoptr (LwSky) sky = lw_sky_new (0, 3600, hours, 1);

  assert_within (lw_sky_at (sky, 1234).vapour_pa, 1200, 0, "constant");
}

/* Five points of a day, 4.8 h apart: the last leads to the first, every day alike. */
static void
test_day (void)
{
  g_autoptr (LwSky) sky = lw_sky_new_day (hours, G_N_ELEMENTS (hours));
  double last = hours[0].temp_c;

  for (guint i = 0; i < G_N_ELEMENTS (hours); i++)
    for (int day = -2; day < 3; day++)
      assert_within (lw_sky_at (sky, 86400.0 * day + 17280 * i).temp_c, hours[i].temp_c, 1e-9, "point");

  for (double t = 0; t <= 2 * 86400; t += 30)
    {
      LwAirNow now = lw_sky_at (sky, t);

      assert_within (now.temp_c, last, 0.05, "no jump");
      assert_within (lw_sky_at (sky, t - 5 * 86400).vapour_pa, now.vapour_pa, 1e-6, "every day");
      last = now.temp_c;
    }

  /* From the last point's 20 to the first's 12, half way. */
  assert_within (lw_sky_at (sky, 86400 - 8640).temp_c, 16, 2, "over midnight");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/sky/points", test_points);
  g_test_add_func ("/sky/between", test_between);
  g_test_add_func ("/sky/single", test_single);
  g_test_add_func ("/sky/day", test_day);

  return g_test_run ();
}

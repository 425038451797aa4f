/* Moist air against published tables. Each table names its source and the bound it
 * is held to; where the source prints few digits the bound is half its last digit. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/air.h"
#include "near.h"

/* Saturation pressure and latent heat from IAPWS-IF97 (W. Wagner et al., J. Eng. Gas
 * Turbines Power 122:150, 2000), computed from its coefficients. */
static const struct { double temp_c, saturation_pa, latent_kj_kg; } steam[] = {
  { 10, 1228.2, 2477.2 }, { 20, 2339.2, 2453.6 }, { 25, 3169.7, 2441.7 }, { 30, 4246.7, 2429.8 },
  { 40, 7384.4, 2406.0 }, { 50, 12351, 2382.0 },  { 60, 19946, 2357.7 },  { 80, 47415, 2308.1 },
  { 100, 101418, 2256.5 }, { 120, 198665, 2202.2 },
};

static void
test_steam (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (steam); i++)
    {
      assert_relative (lw_air_saturation_pa (steam[i].temp_c), steam[i].saturation_pa, 2e-4, "saturation");
      assert_relative (lw_air_latent_j_kg (steam[i].temp_c), 1e3 * steam[i].latent_kj_kg, 1e-4, "latent heat");
    }
}

/* ASHRAE Handbook Fundamentals 2017, chapter 1, table 3 (as quoted by a general psychrometrics library). */
static const struct { double temp_c, pa; } ashrae_steam[] = {
  { 5, 872.6 }, { 25, 3169.7 }, { 50, 12351.3 }, { 100, 101418 }, { 150, 476101.4 },
};

static void
test_ashrae_steam (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (ashrae_steam); i++)
    assert_relative (lw_air_saturation_pa (ashrae_steam[i].temp_c), ashrae_steam[i].pa, 2e-4, "saturation");
}

/* W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22:783 (1993): the saturation equation's own values. */
static void
test_saturation_equation (void)
{
  assert_within (lw_air_saturation_pa (0), 611.21, 0.005, "0 C");
  assert_within (lw_air_saturation_pa (20), 2339.2, 0.05, "20 C");
  assert_within (lw_air_saturation_pa (40), 7385.1, 0.05, "40 C");
  assert_within (lw_air_saturation_pa (60), 19947, 0.5, "60 C");
  assert_within (lw_air_saturation_pa (80), 47416, 0.5, "80 C");
  assert_within (lw_air_saturation_pa (100), 101418, 0.5, "100 C");
}

/* ISO 2533:1975 at geometric altitude; boiling points from IAPWS-IF97 at geopotential altitude. */
static const struct { double altitude_m, pa; } atmosphere[] = {
  { 0, 101325 }, { 1000, 89876 }, { 1500, 84560 }, { 2000, 79501 },
};

static const struct { double pa, boiling_c; } boiling[] = {
  { 101325, 99.97 }, { 95461, 98.31 }, { 89875, 96.65 }, { 84556, 94.98 }, { 79495, 93.32 }, { 74683, 91.64 },
};

static void
test_altitude (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (atmosphere); i++)
    assert_within (lw_air_pressure_pa (atmosphere[i].altitude_m), atmosphere[i].pa, 1, "pressure");
  for (guint i = 0; i < G_N_ELEMENTS (boiling); i++)
    assert_within (lw_air_boiling_c (boiling[i].pa), boiling[i].boiling_c, 0.006, "boiling point");
}

/* Made with the equations of ASHRAE Handbook Fundamentals 2017, chapter 1. */
static const struct { double temp_c, humidity, pa, wet_bulb_c, ratio, dew_c; } moist[] = {
  { 20, 0.50, 101325, 13.78, 0.00726, 9.27 },  { 25, 0.50, 101325, 17.89, 0.00988, 13.86 },
  { 25, 0.60, 101325, 19.47, 0.01190, 16.70 }, { 25, 0.60, 84556, 19.16, 0.01431, 16.70 },
  { 30, 0.50, 101325, 22.01, 0.01331, 18.45 }, { 30, 0.70, 101325, 25.50, 0.01880, 23.93 },
  { 35, 0.30, 101325, 21.52, 0.01054, 14.84 },
};

/* npm package psychrolib 1.1.1, the same equations with more digits. */
static const struct { double temp_c, humidity, wet_bulb_c, ratio, dew_c; } digits[] = {
  { 25, 0.5, 17.8894321, 0.00988104369, 13.8639733 },
  { 35, 0.8, 31.8141754, 0.0289204293, 31.0246346 },
  { 20, 0.4, 12.3550509, 0.00579585546, 6.0042633 },
};

static void
test_moist_air (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (moist); i++)
    {
      double vapour = moist[i].humidity * lw_air_saturation_pa (moist[i].temp_c);

      assert_within (lw_air_wet_bulb_c (moist[i].temp_c, vapour, moist[i].pa), moist[i].wet_bulb_c, 0.02, "wet bulb");
      assert_within (lw_air_humidity (vapour, moist[i].pa), moist[i].ratio, 1e-5, "humidity ratio");
      assert_within (lw_air_dew_point_c (vapour), moist[i].dew_c, 0.02, "dew point");
    }

  for (guint i = 0; i < G_N_ELEMENTS (digits); i++)
    {
      double vapour = digits[i].humidity * lw_air_saturation_pa (digits[i].temp_c);

      assert_within (lw_air_wet_bulb_c (digits[i].temp_c, vapour, 101325), digits[i].wet_bulb_c, 3e-3, "wet bulb");
      assert_relative (lw_air_humidity (vapour, 101325), digits[i].ratio, 4e-4, "humidity ratio");
      assert_within (lw_air_dew_point_c (vapour), digits[i].dew_c, 6e-3, "dew point");
    }
}

/* ASHRAE Handbook Fundamentals 2017, chapter 1, example 1: 40 C, wet bulb 20 C: W 0.0065, humidity 0.14. */
static void
test_example (void)
{
  double vapour = 0.14 * lw_air_saturation_pa (40);

  assert_within (lw_air_wet_bulb_c (40, vapour, 101325), 20, 0.1, "wet bulb");
  assert_within (lw_air_humidity (vapour, 101325), 0.0065, 1e-4, "humidity ratio");
}

/* 25 C, 60 % air heated at constant humidity ratio, by the ASHRAE equations. */
static const struct { double temp_c, humidity_pct, wet_bulb_c; } heated[] = {
  { 60, 9.5, 28.7 }, { 80, 4.0, 32.7 }, { 100, 1.9, 36.1 }, { 120, 0.96, 39.1 },
};

static void
test_heated (void)
{
  double vapour = 0.6 * lw_air_saturation_pa (25);

  for (guint i = 0; i < G_N_ELEMENTS (heated); i++)
    {
      assert_within (100 * vapour / lw_air_saturation_pa (heated[i].temp_c), heated[i].humidity_pct, 0.06, "humidity");
      assert_within (lw_air_wet_bulb_c (heated[i].temp_c, vapour, 101325), heated[i].wet_bulb_c, 0.06, "wet bulb");
    }
}

static void
test_inverse (void)
{
  for (double t = -20; t <= 200; t += 7)
    assert_within (lw_air_boiling_c (lw_air_saturation_pa (t)), t, 1e-8, "boiling of saturation");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/air/steam-tables", test_steam);
  g_test_add_func ("/air/ashrae-steam", test_ashrae_steam);
  g_test_add_func ("/air/saturation-equation", test_saturation_equation);
  g_test_add_func ("/air/altitude", test_altitude);
  g_test_add_func ("/air/moist", test_moist_air);
  g_test_add_func ("/air/example", test_example);
  g_test_add_func ("/air/heated", test_heated);
  g_test_add_func ("/air/inverse", test_inverse);

  return g_test_run ();
}

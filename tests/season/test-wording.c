/* How the trade says numbers, in English and the C locale. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/wording.h"

static void
test_minutes (void)
{
  static const struct { double minutes; const char *said; } rows[] = {
    { 0, "0 s" },
    { 0.75, "45 s" },
    { 1, "1 min" },
    { 5.5, "5 min 30 s" },
    { 0.999, "1 min" },
    { 59.5, "59 min 30 s" },
    { 60, "1 h" },
    { 61, "1 h 1 min" },
    { 1100, "18 h 20 min" },
    { 90.5, "1 h 30 min 30 s" },
    { 60.75, "1 h 0 min 45 s" },
    { 4320, "72 h" },
    { 1.0 / 12, "5 s" },
    { 25.083333, "25 min 5 s" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *said = lw_say_minutes (rows[i].minutes);

      g_assert_cmpstr (said, ==, rows[i].said);
    }
}

static void
test_settings (void)
{
  static const struct { LwSetting setting; double value; const char *said; } rows[] = {
    { LW_SET_MINUTES, 5.5, "5 min 30 s" },
    { LW_SET_WALL_C, 260, "260 °C" },
    { LW_SET_AIR_C, 21.5001, "22 °C" },
    { LW_SET_AIR_M_S, 0.15, "0.15 m/s" },
    { LW_SET_SPREAD_KG_M2, 1.2, "1.2 kg/m²" },
    { LW_SET_COVER_PCT, 85, "85 %" },
    { LW_SET_TURNING_PER_H, 0.5, "0.5 per hour" },
    { LW_SET_PRESS_KPA, 3, "3.0 kPa" },
    { LW_SET_STEAM_W_M2K, 3000, "3000 W/m²K" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *said = lw_say_setting (rows[i].setting, rows[i].value);

      g_assert_cmpstr (said, ==, rows[i].said);
    }
}

static void
test_kg (void)
{
  static const struct { double kg; const char *said; } rows[] = {
    { 7.1, "7.10 kg" }, { 0.85, "850 g" }, { 0.9996, "1.00 kg" }, { 9.996, "10.0 kg" }, { 24.06, "24.1 kg" },
    { 0.0104, "10 g" }, { 0, "0 g" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *said = lw_say_kg (rows[i].kg);

      g_assert_cmpstr (said, ==, rows[i].said);
    }
}

static void
test_date (void)
{
  g_autofree char *date = lw_say_date (1775989815);
  g_autofree char *never = lw_say_date (G_MAXINT64);

  g_assert_cmpstr (date, ==, "12 Apr 2026");
  g_assert_cmpstr (never, ==, "");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/wording/minutes", test_minutes);
  g_test_add_func ("/wording/settings", test_settings);
  g_test_add_func ("/wording/kg", test_kg);
  g_test_add_func ("/wording/date", test_date);

  return g_test_run ();
}

/* Film, wall contact and sorption against textbook and published values. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/film.h"
#include "leaf/law.h"
#include "leaf/soft.h"
#include "leaf/sorption.h"
#include "near.h"

/* Laminar plate, Nu = 0.664 Re^0.5 Pr^(1/3), air at 25 C (textbook; numbers worked with
 * nu 1.562e-5, k 0.026, Pr 0.71 to two or three digits). */
static const struct { double length_m, speed_m_s, film_w_m2k; } plate[] = {
  { 0.02, 0.1, 8.7 }, { 0.02, 0.5, 19.5 }, { 0.02, 1.2, 30.2 },
  { 0.04, 0.1, 6.2 }, { 0.04, 0.5, 13.8 }, { 0.04, 1.2, 21.3 },
  { 0.06, 0.1, 5.0 }, { 0.06, 0.5, 11.2 }, { 0.06, 1.2, 17.4 },
};

static void
test_plate (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (plate); i++)
    assert_within (lw_film_w_m2k (plate[i].speed_m_s, plate[i].length_m, 0), plate[i].film_w_m2k, 0.06, "film");

  assert_within (lw_film_w_m2k (0, 0.06, 4.5), 4.5, 0.01, "still air");
}

/* erfc from M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, table 7.1
 * (1 - erf), and its asymptotic series 7.1.23 for large arguments. */
static const struct { double b, erfc; } table_7_1[] = {
  { 0.1, 0.8875370840 }, { 0.5, 0.4795001222 }, { 1.0, 0.1572992071 }, { 1.5, 0.0338948535 }, { 2.0, 0.0046777350 },
};

static void
test_erfcx (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (table_7_1); i++)
    {
      double b = table_7_1[i].b;

      assert_relative (lw_film_erfcx (b), exp (b * b) * table_7_1[i].erfc, 2e-8, "erfcx");
    }

  for (double b = 9; b < 1e6; b *= 3)
    {
      double series = (1 - 0.5 / (b * b) + 0.75 / pow (b, 4) - 1.875 / pow (b, 6)) / (b * sqrt (G_PI));

      assert_relative (lw_film_erfcx (b), series, 2e-7, "erfcx, large");
    }

  assert_relative (lw_film_erfcx (8 - 1e-9), lw_film_erfcx (8 + 1e-9), 1e-8, "no jump where the form changes");
}

/* F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass Transfer, semi-infinite solid
 * with surface convection: at b = h sqrt (alpha t) / k = 1 the surface has taken 0.572 of the difference. */
static void
test_skin (void)
{
  double conduct = 0.5, heat = 3.5e6, film = 300;
  double touch_s = conduct * heat / (film * film);

  assert_within (lw_film_skin (film, touch_s, conduct, heat), 0.572, 5e-4, "skin at b = 1");
  assert_within (lw_film_skin (film, 0, conduct, heat), 0, 1e-12, "skin at once");
  assert_within (lw_film_skin (film, 1e12, conduct, heat), 1, 1e-4, "skin at last");
}

static void
test_exposure (void)
{
  assert_within (lw_film_exposure (0), 1, 1e-12, "one leaf alone");
  assert_within (lw_film_exposure (3), 1 - exp (-1), 1e-12, "three layers");
  assert_within (30 * lw_film_exposure (30), 3, 2e-3, "a deep heap shows three layers");
}

/* Points of tea: 8.73 % wet basis mean of retail black tea near a_w 0.58 (Ikeda and Watase, Tea Res. J.
 * 2016(122):9-14: nearly all below 0.60 to 0.65); 4 % and a_w 0.26 (a Taiwan station, second-hand); high
 * end by Raoult with 322 g/mol solutes (Yamada, Inokura, Araki, leaf freezing): 0.982 at 75 %. */
static void
test_sorption (void)
{
  LwLaw law = lw_law_start ();

  assert_within (lw_sorption_activity (&law, 0.04 / 0.96, 25), 0.26, 0.02, "4 % wet basis");
  assert_within (lw_sorption_activity (&law, 0.0873 / 0.9127, 25), 0.58, 0.03, "8.73 % wet basis");
  assert_within (lw_sorption_activity (&law, 3, 25), 0.982, 0.012, "75 % wet basis");

  for (double activity = 0.05; activity < 0.97; activity += 0.05)
    assert_within (lw_sorption_activity (&law, lw_sorption_water (&law, activity, 40), 40), activity, 1e-12, "inverse");
}

/* Net isosteric heat from two temperatures, Clausius-Clapeyron: the stated 6 kJ/mol near 7 % dry basis. */
static void
test_sorption_heat (void)
{
  LwLaw law = lw_law_start ();
  double cool = lw_sorption_activity (&law, 0.07, 25), warm = lw_sorption_activity (&law, 0.07, 45);
  double heat_kj_mol = 8.314e-3 * log (warm / cool) / (1 / 298.15 - 1 / 318.15);

  assert_within (heat_kj_mol, 6, 3, "net heat of sorption");
}

static void
test_soft (void)
{
  assert_within (lw_soft_positive (5, 0.1), 5, 1e-3, "above");
  g_assert_cmpfloat (lw_soft_positive (-1e6, 1e-3), >, 0);
  assert_within (lw_soft_min (3, 8, 0.1), 3, 1e-3, "min");
  assert_within (lw_soft_max (3, 8, 0.1), 8, 1e-3, "max");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/film/plate", test_plate);
  g_test_add_func ("/film/erfcx", test_erfcx);
  g_test_add_func ("/film/skin", test_skin);
  g_test_add_func ("/film/exposure", test_exposure);
  g_test_add_func ("/film/sorption", test_sorption);
  g_test_add_func ("/film/sorption-heat", test_sorption_heat);
  g_test_add_func ("/film/soft", test_soft);

  return g_test_run ();
}

/* The right-hand side against solutions known in closed form. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/film.h"
#include "leaf/rates.h"
#include "leaf/sorption.h"
#include "near.h"
#include "sample.h"

static LwConditions
still (double temp_c,
       double humidity)
{
  return (LwConditions) {
    .duration_s = 3600, .pressure_pa = 101325, .air_temp_c = temp_c, .humidity = humidity,
    .air_m_s = 0.3, .spread_kg_m2 = 1.2,
  };
}

static void
rates_now (const LwBoundary *b,
           const LwState    *s,
           LwState          *rate)
{
  LwAround around = lw_boundary_at (b, 0);

  lw_rates (b, &around, s, rate);
}

/* A leaf in equilibrium with the air neither gains nor loses water. */
static void
test_equilibrium (void)
{
  LwLeaf leaf = sample_leaf ();
  LwConditions at = still (30, 0.5);
  LwBoundary b = lw_boundary_new (&at, &leaf, &leaf.parts[0]);
  LwState s = lw_state_fresh (&leaf), rate;

  s.temp_c = 30;
  s.water = lw_sorption_water (&leaf.law, 0.5, 30);
  rates_now (&b, &s, &rate);
  assert_within (rate.water, 0, 1e-15, "water");
  assert_within (rate.temp_c, 0, 1e-12, "temperature");
}

/* A wet body that the air alone heats sits at the wet bulb of its own film: with the ratio of the
 * two films known, h (T_a - T) = L g M/(R T_m) P ln (...) (psychrometer balance, textbook). */
static void
test_wet_leaf_temperature (void)
{
  LwLeaf leaf = sample_leaf ();
  LwConditions at = still (35, 0.3);
  LwPart part = leaf.parts[0];
  LwBoundary b;
  LwState s = lw_state_fresh (&leaf), rate;
  double low = 0, high = 35;

  /* A skin that holds nothing back leaves the films alone. */
  part.cuticle = 1e6;
  b = lw_boundary_new (&at, &leaf, &part);

  for (int i = 0; i < 60; i++)
    {
      s.temp_c = 0.5 * (low + high);
      rates_now (&b, &s, &rate);
      if (rate.temp_c > 0)
        low = s.temp_c;
      else
        high = s.temp_c;
    }

  /* Table value for a ventilated wet bulb: 21.52 C (ASHRAE equations). A leaf's water is less active
   * (a_w 0.98) and its Lewis factor 0.90 is not 1: within half a degree. */
  assert_within (s.temp_c, 21.52, 0.5, "wet leaf");
}

/* Dry leaf in air without exchange of water: Newton's cooling, exactly exponential. */
static void
test_newton (void)
{
  LwLeaf leaf = sample_leaf ();
  LwConditions at = still (60, 0.3);
  LwBoundary b;
  LwState s = lw_state_fresh (&leaf), rate;
  LwPart part = leaf.parts[0];
  LwAround around;
  LwFlows f;

  part.cuticle = 0;
  b = lw_boundary_new (&at, &leaf, &part);
  around = lw_boundary_at (&b, 0);
  rates_now (&b, &s, &rate);
  f = lw_rates_flows (&b, &around, &s);
  assert_within (f.evaporated_kg_s, 0, 0, "no skin, no water");
  assert_relative (rate.temp_c,
                   lw_film_w_m2k (0.3, 0.06, 4.5) * b.area_m2_kg * (60 - 22)
                     / (leaf.law.c_dry_j_kgk + leaf.fresh_water * leaf.law.c_water_j_kgk),
                   1e-12, "warming");
}

/* The place's boiling point caps wet leaf however hot the wall is. */
static void
test_boiling (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;
  double boiling_c, highest = 0;

  sample_steps (steps);
  steps[SAMPLE_PAN].wall_c = 400;
  steps[SAMPLE_PAN].duration_s = 300;
  boiling_c = lw_air_boiling_c (steps[0].pressure_pa);

  track = lw_march_run (march, &leaf, &steps[SAMPLE_PAN], 1, (LwSampling) { .samples = 100 });
  g_assert_false (track->failure.failed);
  for (guint i = 0; i < track->steps[0]->n; i++)
    {
      const LwState *s = lw_track_state (track, 0, 0, i);

      if (s->water > 1)
        highest = MAX (highest, s->temp_c);
    }

  /* Water in leaf is a little less active than pure water: the cap lies just above. */
  g_assert_cmpfloat (highest, >, boiling_c - 10);
  g_assert_cmpfloat (highest, <, boiling_c + 2);
}

/* Steam at the boiling point adds the water that its latent heat is worth. */
static void
test_steam (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;
  const LwState *end;
  double rise, expected;

  sample_steps (steps);
  track = lw_march_run (march, &leaf, &steps[SAMPLE_STEAM], 1, (LwSampling) { .samples = 10 });
  end = lw_track_state (track, 0, 0, track->steps[0]->n - 1);
  assert_within (end->temp_c, steps[SAMPLE_STEAM].air_temp_c, 0.5, "leaf in steam");

  rise = end->temp_c - 22;
  expected = (leaf.law.c_dry_j_kgk + leaf.fresh_water * leaf.law.c_water_j_kgk) * rise
             / lw_air_latent_j_kg (steps[SAMPLE_STEAM].air_temp_c);
  /* The condensed water is itself warmed, the air at the leaf gives some heat too. */
  assert_relative (end->water - leaf.fresh_water, expected, 0.12, "condensed water");
}

/* Enzyme at constant 80 C in wet leaf: first order, k_inact (1 - 0.5 exp (-X / 0.4)). */
static void
test_first_order (void)
{
  LwLeaf leaf = sample_leaf ();
  LwConditions at = still (80, 0.9);
  LwBoundary b = lw_boundary_new (&at, &leaf, &leaf.parts[0]);
  LwState s = lw_state_fresh (&leaf), rate;

  s.temp_c = 80;
  rates_now (&b, &s, &rate);
  assert_relative (rate.enzyme, -leaf.law.inactivate_s, 1e-3, "enzyme at 80 C");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/rates/equilibrium", test_equilibrium);
  g_test_add_func ("/rates/wet-leaf", test_wet_leaf_temperature);
  g_test_add_func ("/rates/newton", test_newton);
  g_test_add_func ("/rates/boiling", test_boiling);
  g_test_add_func ("/rates/steam", test_steam);
  g_test_add_func ("/rates/first-order", test_first_order);

  return g_test_run ();
}

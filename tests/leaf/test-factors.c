/* The factors of each way, multiplied and added, are the rates, whatever the state and the step. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/factors.h"
#include "near.h"
#include "sample.h"

#define STATES 400
#define LOST_DIGITS 1e-12

static double
pick (GRand *rand,
      double low,
      double high)
{
  return g_rand_double_range (rand, low, high);
}

static LwState
random_state (GRand *rand)
{
  return (LwState) {
    .water = pick (rand, 0.01, 4), .temp_c = pick (rand, 2, 180), .wilt = pick (rand, 0, 1),
    .heat = pick (rand, 0, 2), .roll = pick (rand, 0, 2), .twist = pick (rand, 0, 1),
    .enzyme = pick (rand, 0, 1), .oxidation = pick (rand, 0, 1), .roast_min = pick (rand, 0, 30),
    .green = pick (rand, 0, 1), .broken = pick (rand, 0, 1),
  };
}

/* Rates as lw_rates has them, each in the direction of its name. */
static void
rates_of (const LwBoundary *b,
          const LwAround   *around,
          const LwState    *s,
          double            rates[LW_N_RATES])
{
  LwState rate;
  double whole = b->intact * exp (-(s->wilt + s->heat + s->roll));

  lw_rates (b, around, s, &rate);
  rates[LW_RATE_OXIDATION] = rate.oxidation;
  rates[LW_RATE_WATER] = -rate.water;
  rates[LW_RATE_RUPTURE] = whole * (rate.wilt + rate.heat + rate.roll);
  rates[LW_RATE_ENZYME] = -rate.enzyme;
  rates[LW_RATE_ROAST] = rate.roast_min;
}

static void
assert_adds_up (const LwBoundary *b,
                const LwAround   *around,
                const LwState    *s)
{
  double rates[LW_N_RATES], sums[LW_N_RATES] = { 0 }, gross[LW_N_RATES] = { 0 };

  rates_of (b, around, s, rates);
  for (LwWay way = 0; way < LW_N_WAYS; way++)
    {
      LwFactors factors = lw_rates_factors (b, around, s, way);
      double product = lw_factors_product (&factors);

      g_assert_cmpuint (factors.n, >, 0);
      sums[lw_way_rate (way)] += product;
      gross[lw_way_rate (way)] += fabs (product);
    }

  /* Where ways cancel, as steam and evaporation can, the bound is relative to what is added. */
  for (guint i = 0; i < LW_N_RATES; i++)
    assert_within (sums[i], rates[i], LOST_DIGITS * gross[i], "sum of the ways");
}

static void
test_product (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260412);

  sample_steps (steps);
  for (guint step = 0; step < SAMPLE_STEPS; step++)
    for (guint i = 0; i < STATES; i++)
      {
        LwBoundary b[G_N_ELEMENTS (sample_parts)];
        LwState s[G_N_ELEMENTS (sample_parts)];
        LwAround around;

        for (guint part = 0; part < leaf.n_parts; part++)
          {
            b[part] = lw_boundary_new (&steps[step], &leaf, &leaf.parts[part]);
            s[part] = random_state (rand);
          }
        around = lw_boundary_at (&b[0], pick (rand, 0, steps[step].duration_s));
        lw_rates_meet (b, s, leaf.n_parts, &around);
        for (guint part = 0; part < leaf.n_parts; part++)
          assert_adds_up (&b[part], &around, &s[part]);
      }
}

static double
factor (const LwFactors *factors,
        LwFactorName     name)
{
  for (guint i = 0; i < factors->n; i++)
    if (factors->factors[i].name == name)
      return factors->factors[i].value;

  g_assert_not_reached ();
}

/* A factor is what its name says. */
static void
test_names (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  LwState s = lw_state_fresh (&leaf);
  LwBoundary b;
  LwAround around;
  LwFactors ox, lost, rolled, roast;

  sample_steps (steps);
  b = lw_boundary_new (&steps[SAMPLE_ROLL], &leaf, &leaf.parts[0]);
  around = lw_boundary_at (&b, 0);
  s.temp_c = 27;
  s.enzyme = 0.3;
  s.oxidation = 0.25;
  s.heat = 0.5;

  ox = lw_rates_factors (&b, &around, &s, LW_WAY_OXIDISED);
  assert_relative (ox.base, leaf.law.oxidise_s, 1e-15, "pace");
  assert_relative (factor (&ox, LW_FACTOR_WARMTH), 1.0, 1e-12, "warmth at its reference");
  assert_relative (factor (&ox, LW_FACTOR_ENZYME), 0.3, 1e-15, "enzyme");
  assert_relative (factor (&ox, LW_FACTOR_LEFT), 0.75, 1e-15, "left");
  assert_relative (factor (&ox, LW_FACTOR_MIXED), lw_state_rupture (&s, &leaf.parts[0]), 1e-12, "mixed");

  rolled = lw_rates_factors (&b, &around, &s, LW_WAY_ROLLED);
  assert_relative (factor (&rolled, LW_FACTOR_PRESS), 3.0, 1e-15, "pressure");
  assert_relative (factor (&rolled, LW_FACTOR_WHOLE), 1 - lw_state_rupture (&s, &leaf.parts[0]), 1e-12, "whole");
  g_assert_cmpfloat (factor (&rolled, LW_FACTOR_SOFT), >, 1);

  lost = lw_rates_factors (&b, &around, &s, LW_WAY_EVAPORATED);
  assert_relative (factor (&lost, LW_FACTOR_WATER), 1.0, 1e-12, "fresh leaf's water");
  g_assert_cmpfloat (factor (&lost, LW_FACTOR_FILM), <, 1);
  g_assert_cmpfloat (factor (&lost, LW_FACTOR_OPENED), >, 1);

  /* Nothing touches a wall here. */
  roast = lw_rates_factors (&b, &around, &s, LW_WAY_TOUCHED);
  assert_within (lw_factors_product (&roast), 0, 0, "no wall");

  for (LwWay way = 0; way < LW_N_WAYS; way++)
    {
      LwFactors all = lw_rates_factors (&b, &around, &s, way);

      for (guint i = 0; i < all.n; i++)
        if (!lw_factor_is_times (all.factors[i].name))
          assert_within (all.factors[i].value, 0.5, 0.5 + 1e-3, "a share, but for rounded bounds");
    }
}

/* The reference of the pull is what it says: leaf and air at 25 C, 60 % humidity, at the sea. */
static void
test_pull (void)
{
  LwLeaf leaf = sample_leaf ();
  LwConditions at = { .duration_s = 60, .pressure_pa = 101325, .air_temp_c = 25, .humidity = 0.6, .air_m_s = 0.3,
                      .spread_kg_m2 = 1 };
  LwBoundary b = lw_boundary_new (&at, &leaf, &leaf.parts[0]);
  LwAround around = lw_boundary_at (&b, 0);
  LwState s = lw_state_fresh (&leaf);
  LwFactors lost;

  s.temp_c = 25;
  lost = lw_rates_factors (&b, &around, &s, LW_WAY_EVAPORATED);
  assert_within (factor (&lost, LW_FACTOR_PULL), 1, 0.05, "pull");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/factors/product", test_product);
  g_test_add_func ("/factors/names", test_names);
  g_test_add_func ("/factors/pull", test_pull);

  return g_test_run ();
}

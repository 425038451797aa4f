/* Heat and fuel: the flows close the leaf's own balance, the heat is that of the water it drives off, and
 * what is bought, what is free, and what needs hands is told apart. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "season/correction.h"
#include "season/edit.h"
#include "study/heat.h"

#define USUAL 160  /* samples a step, as in the window */

static const LwKind chain[] = {
  LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_SUN, LW_KIND_ROAST,
  LW_KIND_FIX_STEAM, LW_KIND_TUMBLE, LW_KIND_REST, LW_KIND_FIX_DRUM, LW_KIND_DRY_AIR,
};

static LwSeason *
season_of (const LwKind *kinds,
           guint         n,
           double        fresh_kg)
{
  LwSeason *season = lw_season_new ("S");
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new ("1");

  season->altitude_m = 1250;
  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  batch->fresh_kg = fresh_kg;
  batch->when_s = 8 * 3600;
  for (guint i = 0; i < n; i++)
    lw_batch_insert_step (batch, i, lw_step_new (kinds[i]));
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);

  return season;
}

static LwHeat *
heat_of (LwSeason  *season,
         LwSampling sampling,
         double     tolerance)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;

  if (tolerance > 0)
    lw_march_set_tolerance (march, tolerance);
  track = lw_plan_march (plan, march, sampling);
  g_assert_false (track->failure.failed);

  return lw_heat_new (plan, season->batches[0], track);
}

static void
assert_closes (const LwHeat *heat,
               double        bound,
               const char   *how)
{
  for (guint i = 0; i < heat->n_steps; i++)
    {
      double miss = lw_heat_miss (&heat->steps[i]);

      g_test_message ("%s, step %u: the flows miss by %.2g", how, i + 1, miss);
      g_assert_cmpfloat (fabs (miss), <=, bound);
    }
  g_assert_cmpfloat (fabs (lw_heat_miss (&heat->batch)), <=, bound);
}

static void
test_closes (void)
{
  g_autoptr (LwSeason) season = season_of (chain, G_N_ELEMENTS (chain), 10);
  g_autoptr (LwHeat) window = heat_of (season, (LwSampling) { .samples = USUAL }, 0);
  g_autoptr (LwHeat) minutes = heat_of (season, (LwSampling) { .every_s = 60 }, 0);
  g_autoptr (LwHeat) coarse = heat_of (season, (LwSampling) { .samples = 1 }, 0);
  g_autoptr (LwHeat) fine = heat_of (season, (LwSampling) { .samples = 8000 }, 1e-9);

  assert_closes (window, 1e-3, "160 a step");
  assert_closes (minutes, 1e-3, "every minute");
  assert_closes (coarse, 2e-3, "ends only");
  assert_closes (fine, 1e-6, "fine");

  for (guint i = 0; i < fine->n_steps; i++)
    g_assert_cmpfloat (fabs (window->steps[i].heat_j - fine->steps[i].heat_j), <=, 1e-3 * fine->steps[i].gross_j);
}

/* 2.2 to 2.5 MJ for each kg of water between 25 and 100 C (textbook). A pan's wall pays that, the warming of the
 * leaf and what the air takes; hot air hardly more than that once the leaf is warm. */
static void
test_latent (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  g_autoptr (LwSeason) season = season_of (kinds, G_N_ELEMENTS (kinds), 8);
  g_autoptr (LwHeat) heat = heat_of (season, (LwSampling) { .samples = USUAL }, 0);
  double wither = heat->steps[0].latent_j / heat->steps[0].water_kg;
  double pan = heat->steps[1].heat_j / heat->steps[1].water_kg;
  double air = heat->steps[3].heat_j / heat->steps[3].water_kg;

  g_test_message ("J per kg of water: wither %.4g, pan %.4g, hot air %.4g", wither, pan, air);
  g_assert_cmpfloat (wither, >, 2.40e6);
  g_assert_cmpfloat (wither, <, 2.50e6);
  g_assert_cmpfloat (pan, >, 2.3e6);
  g_assert_cmpfloat (pan, <, 4.5e6);
  g_assert_cmpfloat (air, >, 2.2e6);
  g_assert_cmpfloat (air, <, 3.2e6);
}

static void
test_free (void)
{
  const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_DRY_SUN };
  g_autoptr (LwSeason) season = season_of (kinds, G_N_ELEMENTS (kinds), 8);
  g_autoptr (LwHeat) heat = heat_of (season, (LwSampling) { .samples = USUAL }, 0);

  g_assert_cmpfloat (heat->batch.fuel_j, ==, 0);
  g_assert_cmpfloat (heat->batch.heat_j, ==, 0);
  g_assert_cmpfloat (heat->batch.free_j, >, 0);
  g_assert_cmpfloat (heat->steps[0].sun_j, ==, 0);
  g_assert_cmpfloat (heat->steps[1].sun_j, >, 0.5 * heat->steps[1].latent_j);
}

static void
test_sums (void)
{
  g_autoptr (LwSeason) season = season_of (chain, G_N_ELEMENTS (chain), 10);
  g_autoptr (LwHeat) heat = heat_of (season, (LwSampling) { .samples = USUAL }, 0);
  double water = 0, fuel = 0, minutes = 0;

  for (guint i = 0; i < heat->n_steps; i++)
    {
      const LwHeatStep *s = &heat->steps[i];
      const LwHearth *hearth = lw_hearth (season->batches[0]->steps[i].kind);

      g_assert_cmpfloat_with_epsilon (s->heat_j + s->free_j, s->wall_j + s->steam_j + s->air_j + s->sun_j, 1e-6);
      g_assert_cmpfloat (s->fuel_j * hearth->efficiency, <=, s->heat_j * (1 + 1e-12));
      g_assert_true (hearth->efficiency > 0 || s->fuel_j == 0);
      g_assert_cmpfloat (hearth->efficiency, <, 1);
      g_assert_nonnull (hearth->source);
      water += s->water_kg;
      fuel += s->fuel_j;
      minutes += s->minutes;
    }
  g_assert_cmpfloat_with_epsilon (heat->batch.water_kg, water, 1e-9);
  g_assert_cmpfloat_with_epsilon (heat->batch.fuel_j, fuel, 1e-3);
  g_assert_cmpfloat_with_epsilon (heat->batch.minutes, minutes, 1e-9);
  g_assert_cmpfloat_with_epsilon (heat->made_kg + heat->batch.water_kg, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (heat->made_per_fresh * 10, heat->made_kg, 1e-12);
  g_assert_cmpfloat_with_epsilon (lw_heat_fuel_kwh_per_kg (heat) * heat->made_kg * LW_J_PER_KWH, fuel, 1e-3);
}

/* Ten kilograms in a pan for four are two and a half loads of 25 minutes by hand. */
static void
test_hands (void)
{
  const LwKind kinds[] = { LW_KIND_FIX_PAN, LW_KIND_WITHER };
  g_autoptr (LwSeason) much = season_of (kinds, 2, 10), little = season_of (kinds, 2, 1);
  g_autoptr (LwHeat) of_much = heat_of (much, (LwSampling) { .samples = 1 }, 0);
  g_autoptr (LwHeat) of_little = heat_of (little, (LwSampling) { .samples = 1 }, 0);

  g_assert_cmpfloat_with_epsilon (of_much->steps[0].loads, 2.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (of_much->steps[0].hands_h, 2.5 * 25 / 60, 1e-12);
  g_assert_cmpfloat (of_little->steps[0].loads, ==, 1);
  g_assert_cmpfloat (of_much->steps[1].loads, ==, 1);
  g_assert_cmpfloat (of_much->batch.loads, ==, 2.5);
  /* 18 h turned once in ten hours: 1.8 turns of 10 kg, a quarter of a minute each. */
  g_assert_cmpfloat_with_epsilon (of_much->steps[1].hands_h, 1.8 * 10 * 0.25 / 60, 1e-12);
  /* The heat is that of the leaf: ten times the leaf, ten times the heat. */
  g_assert_cmpfloat_with_epsilon (of_much->steps[0].heat_j / of_little->steps[0].heat_j, 10, 1e-9);
}

static void
test_nothing (void)
{
  g_autoptr (LwSeason) season = season_of (chain, 0, 4);
  g_autoptr (LwHeat) heat = heat_of (season, (LwSampling) { .samples = 1 }, 0);

  g_assert_cmpuint (heat->n_steps, ==, 0);
  g_assert_cmpfloat (heat->made_kg, ==, 4);
  g_assert_cmpfloat (heat->batch.fuel_j, ==, 0);
}

/* What a weigh-in corrected is no flow: with it the balance closes as without. */
static void
test_corrected (void)
{
  g_autoptr (LwSeason) season = season_of (chain, G_N_ELEMENTS (chain), 10), corrected = NULL;
  guint n_parts = season->profiles[0]->n_parts;
  g_autofree LwState *shifts = g_new0 (LwState, n_parts);
  g_autoptr (LwHeat) heat = NULL;

  for (guint i = 0; i < n_parts; i++)
    shifts[i] = (LwState) { .water = 0.1, .temp_c = -4 };
  corrected = lw_edit_correct (season, 0, 1, lw_correction_new (season->batches[0], 1, 12, 0, shifts, n_parts));
  heat = heat_of (corrected, (LwSampling) { .samples = USUAL }, 0);
  assert_closes (heat, 1e-3, "corrected");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/heat/closes", test_closes);
  g_test_add_func ("/heat/corrected", test_corrected);
  g_test_add_func ("/heat/latent", test_latent);
  g_test_add_func ("/heat/free", test_free);
  g_test_add_func ("/heat/sums", test_sums);
  g_test_add_func ("/heat/hands", test_hands);
  g_test_add_func ("/heat/nothing", test_nothing);

  return g_test_run ();
}

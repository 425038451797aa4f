/* Water and heat are conserved: what the states show equals what flowed, summed
 * apart from the solver by Simpson's rule, to 1e-6 of what flowed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/rates.h"
#include "near.h"
#include "sample.h"

#define INTERVALS 24000 /* even, fine enough for the first seconds in a hot pan */

typedef struct
{
  double water;  /* net into the leaf, kg/kg */
  double heat;   /* into the leaf, J/kg: all flows, and what the water carries */
  double gross_water;
  double gross_heat;
} Sums;

static Sums
sum_flows (const LwTrack      *track,
           const LwConditions *at,
           guint               part)
{
  LwBoundary all[G_N_ELEMENTS (sample_parts)];
  const LwBoundary *b = &all[part];
  double gap = at->duration_s / INTERVALS;
  Sums sums = { 0 };

  for (guint k = 0; k < track->n_parts; k++)
    all[k] = lw_boundary_new (at, &track->leaf, &track->parts[k]);

  for (guint i = 0; i <= INTERVALS; i++)
    {
      const LwState *s = lw_track_state (track, 0, part, i);
      LwAround around = lw_boundary_at (b, i * gap);
      LwFlows f;
      double weight = gap / 3 * (i == 0 || i == INTERVALS ? 1 : i % 2 ? 4 : 2);
      double net, carried, in;

      lw_rates_meet (all, lw_track_state (track, 0, 0, i), track->n_parts, &around);
      f = lw_rates_flows (b, &around, s);
      net = f.condensed_kg_s + f.shared_kg_s - f.evaporated_kg_s;
      carried = track->leaf.law.c_water_j_kgk * s->temp_c * net;
      in = f.from_air_w + f.from_sun_w + f.from_wall_w + f.from_steam_w + f.from_shared_w - f.latent_w;

      sums.water += weight * net;
      sums.gross_water += weight * (fabs (f.condensed_kg_s) + fabs (f.evaporated_kg_s) + fabs (f.shared_kg_s));
      sums.heat += weight * (in + carried);
      sums.gross_heat += weight * (fabs (f.from_air_w) + fabs (f.from_sun_w) + fabs (f.from_wall_w)
                                   + fabs (f.from_steam_w) + fabs (f.from_shared_w) + fabs (f.latent_w) + fabs (carried));
    }

  return sums;
}

static double
enthalpy (const LwLaw   *law,
          const LwState *s)
{
  return (law->c_dry_j_kgk + law->c_water_j_kgk * s->water) * s->temp_c;
}

static void
test_balance (gconstpointer data)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;
  const LwConditions *at = &steps[GPOINTER_TO_UINT (data)];

  sample_steps (steps);
  lw_march_set_tolerance (march, 1e-9);
  track = lw_march_run (march, &leaf, at, 1, (LwSampling) { .samples = INTERVALS });
  g_assert_false (track->failure.failed);

  for (guint part = 0; part < leaf.n_parts; part++)
    {
      const LwState *first = lw_track_state (track, 0, part, 0);
      const LwState *last = lw_track_state (track, 0, part, INTERVALS);
      Sums sums = sum_flows (track, at, part);

      assert_within (last->water - first->water, sums.water, 1e-6 * sums.gross_water, "water");
      assert_within (enthalpy (&leaf.law, last) - enthalpy (&leaf.law, first), sums.heat,
                     1e-6 * sums.gross_heat, "heat");
    }
}

int
main (int argc, char **argv)
{
  static const char *const names[SAMPLE_STEPS] = { "wither", "pan", "roll", "sun", "steam", "hot-air", "covered" };

  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < SAMPLE_STEPS; i++)
    {
      g_autofree char *path = g_strdup_printf ("/balance/%s", names[i]);

      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_balance);
    }

  return g_test_run ();
}

/* The solver is driven directly, so that a step can begin at any state. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "balance.h"

#include <math.h>
#include <string.h>

#include "leaf/rates.h"
#include "leaf/solver.h"

#define MOST_PARTS 8
#define TOLERANCE 1e-10
#define LEAST 1e-4    /* kg/kg that flowed; what is less counts as this much */
#define PANELS 4      /* of a step of the solver; even */

typedef struct
{
  double net[MOST_PARTS];
  double gross[MOST_PARTS];
} Water;

static void
add_moment (const LwBoundary *boundaries,
            const LwState    *states,
            guint             n,
            double            t_s,
            double            weight,
            Water            *water)
{
  LwAround around = lw_boundary_at (boundaries, t_s);

  lw_rates_meet (boundaries, states, n, &around);
  for (guint i = 0; i < n; i++)
    {
      LwFlows f = lw_rates_flows (&boundaries[i], &around, &states[i]);

      water->net[i] += weight * (f.condensed_kg_s + f.shared_kg_s - f.evaporated_kg_s);
      water->gross[i] += weight * (fabs (f.condensed_kg_s) + fabs (f.shared_kg_s) + fabs (f.evaporated_kg_s));
    }
}

double
balance_of_water (const LwPlan  *plan,
                  const LwTrack *track,
                  guint          step)
{
  g_autoptr (LwSolver) solver = lw_solver_new ();
  double end_s = plan->steps[step].duration_s, from_s = 0, worst = 0;
  guint n = track->n_parts;
  LwBoundary boundaries[MOST_PARTS];
  LwState states[MOST_PARTS] = { 0 }, first[MOST_PARTS] = { 0 }, before[MOST_PARTS];
  Water water = { 0 };

  g_assert_cmpuint (n, <=, MOST_PARTS);
  for (guint i = 0; i < n; i++)
    boundaries[i] = lw_boundary_new (&plan->steps[step], &track->leaf, &track->parts[i]);
  memcpy (first, lw_track_state (track, step, 0, 0), n * sizeof *first);
  memcpy (states, first, sizeof states);
  lw_solver_set_tolerance (solver, TOLERANCE);
  g_assert_cmpint (lw_solver_start (solver, boundaries, states, n), ==, 0);

  while (from_s < end_s)
    {
      double to_s, weight_s;

      /* Asked for a moment past where it is, the solver takes one step of its own and tells how far it got. */
      memcpy (before, states, sizeof before);
      g_assert_cmpint (lw_solver_advance (solver, nextafter (from_s, INFINITY), states), ==, 0);
      to_s = MIN (lw_solver_time_s (solver), end_s);
      weight_s = (to_s - from_s) / (3 * PANELS);
      add_moment (boundaries, before, n, from_s, weight_s, &water);

      for (guint k = 1; k <= PANELS; k++)
        {
          double t_s = k < PANELS ? from_s + k * (to_s - from_s) / PANELS : to_s;

          g_assert_cmpint (lw_solver_advance (solver, t_s, states), ==, 0);
          add_moment (boundaries, states, n, t_s, weight_s * (k == PANELS ? 1 : k % 2 == 1 ? 4 : 2), &water);
        }
      from_s = to_s;
    }

  for (guint i = 0; i < n; i++)
    worst = fmax (worst, fabs (states[i].water - first[i].water - water.net[i]) / (water.gross[i] + LEAST));

  return worst;
}

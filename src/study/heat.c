/* Heat by the model's own flows, summed over a track. Between two samples the states are read off a cubic
 * through both and their rates; where the sum then misses the leaf's own heat, as it does in the first
 * second of steam, that interval is solved anew and summed over the solver's own steps. Nothing is made to fit. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/heat.h"

#include <math.h>
#include <string.h>

#include "leaf/rates.h"
#include "leaf/solver.h"

#define REFINE_TOLERANCE 1e-7
#define MISS_ALLOWED 1e-4     /* of a step's flows, spread over its intervals */
#define PANELS 4              /* of a solver's step, by Simpson's rule; even */
#define TURN_MIN_PER_KG 0.25  /* of hands for each turn of the leaf; assumed */

#define BY_HEARTH "assumed; open fires under a vessel give it 0.1 to 0.2 of their heat (from memory)"
#define BY_DRUM "assumed; fired drums give their load 0.3 to 0.4 (from memory)"
#define BY_STEAM "assumed; a boiler at 0.6, and half its steam passes the leaf by"
#define BY_DRIER "assumed; tea driers give the leaf 0.3 to 0.45 of their heat (from memory)"
#define BY_ROAST "assumed; dry leaf takes up little of what warms it"
#define NO_FIRE "nothing is burnt"

/* Hands: common practice, no source. The pan is tossed without a pause, a shaken basket and steam that lasts
 * seconds are not left, a drum is fed and watched, a rolling table is loaded, eased and unloaded. */
static const LwHearth hearths[LW_N_KINDS] = {
  [LW_KIND_WITHER] = { FALSE, 0, 0, NO_FIRE },
  [LW_KIND_TUMBLE] = { FALSE, 0, 1, NO_FIRE },
  [LW_KIND_FIX_PAN] = { TRUE, 0.15, 1, BY_HEARTH },
  [LW_KIND_FIX_DRUM] = { TRUE, 0.35, 1, BY_DRUM },
  [LW_KIND_FIX_STEAM] = { TRUE, 0.3, 1, BY_STEAM },
  [LW_KIND_ROLL] = { FALSE, 0, 0.25, NO_FIRE },
  [LW_KIND_REST] = { FALSE, 0, 0, NO_FIRE },
  [LW_KIND_DRY_SUN] = { FALSE, 0, 0, NO_FIRE },
  [LW_KIND_DRY_AIR] = { TRUE, 0.35, 0, BY_DRIER },
  [LW_KIND_ROAST] = { TRUE, 0.25, 0, BY_ROAST },
};

/* Sums of flows in J per kg of dry leaf, over time and parts. */
typedef struct
{
  double wall;
  double steam;
  double air;
  double sun;
  double shared;  /* between parts; over the batch nothing */
  double latent;
  double carried;
  double gross;
} Sums;

/* The step under way. */
typedef struct
{
  const LwTrack *track;
  guint step;
  LwBoundary *boundaries;
  LwSolver *solver;       /* (nullable) made when first needed */
  LwState *states;        /* room for one moment */
  LwState *rates;         /* and for two more: the rates at an interval's ends, or a step's first states */
} Walk;

const LwHearth *
lw_hearth (LwKind kind)
{
  return &hearths[kind];
}

static double
moment_heat (const LwTrack *track,
             const LwState *states)
{
  const LwLaw *law = &track->leaf.law;
  double heat = 0;

  for (guint i = 0; i < track->n_parts; i++)
    heat += track->parts[i].share * (law->c_dry_j_kgk + law->c_water_j_kgk * states[i].water) * states[i].temp_c;

  return heat;
}

static double
moment_water (const LwTrack *track,
              const LwState *states)
{
  double water = 0;

  for (guint i = 0; i < track->n_parts; i++)
    water += track->parts[i].share * states[i].water;

  return water;
}

/* Adds the flows at one moment, for `seconds`. */
static void
add_moment (const Walk    *walk,
            double         t_s,
            const LwState *states,
            double         seconds,
            Sums          *sums)
{
  const LwTrack *track = walk->track;
  LwAround around = lw_boundary_at (walk->boundaries, t_s);

  lw_rates_meet (walk->boundaries, states, track->n_parts, &around);
  for (guint i = 0; i < track->n_parts; i++)
    {
      double weight = seconds * track->parts[i].share;
      LwFlows f = lw_rates_flows (&walk->boundaries[i], &around, &states[i]);
      double carried = track->leaf.law.c_water_j_kgk * states[i].temp_c
                       * (f.condensed_kg_s + f.shared_kg_s - f.evaporated_kg_s);

      sums->wall += weight * f.from_wall_w;
      sums->steam += weight * f.from_steam_w;
      sums->air += weight * f.from_air_w;
      sums->sun += weight * f.from_sun_w;
      sums->shared += weight * f.from_shared_w;
      sums->latent += weight * f.latent_w;
      sums->carried += weight * carried;
      sums->gross += weight * (fabs (f.from_wall_w) + fabs (f.from_steam_w) + fabs (f.from_air_w)
                               + fabs (f.from_sun_w) + fabs (f.latent_w) + fabs (carried));
    }
}

static void
rates_at (const Walk    *walk,
          double         t_s,
          const LwState *states,
          LwState       *rates)
{
  LwAround around = lw_boundary_at (walk->boundaries, t_s);

  lw_rates_meet (walk->boundaries, states, walk->track->n_parts, &around);
  for (guint i = 0; i < walk->track->n_parts; i++)
    lw_rates (&walk->boundaries[i], &around, &states[i], &rates[i]);
}

/* The states `on` of the way from sample `i` to the next: the cubic of Hermite. */
static void
between (const Walk *walk,
         guint       i,
         double      gap_s,
         double      on)
{
  gsize n = walk->track->n_parts * LW_N_STATE;
  const double *a = (const double *) lw_track_state (walk->track, walk->step, 0, i), *b = a + n;
  const double *from = (const double *) walk->rates, *to = from + n;
  double *at = (double *) walk->states;
  double off = 1 - on;

  for (gsize k = 0; k < n; k++)
    at[k] = off * off * ((1 + 2 * on) * a[k] + on * gap_s * from[k])
            + on * on * ((1 + 2 * off) * b[k] - off * gap_s * to[k]);
}

/* The flows from sample `i` to the next by Gauss's rule of three points. */
static Sums
read_interval (const Walk *walk,
               guint       i)
{
  static const struct { double on, weight; } points[] = {
    { 0.1127016653792583, 5.0 / 18 }, { 0.5, 8.0 / 18 }, { 0.8872983346207417, 5.0 / 18 },
  };
  const double *time_s = walk->track->steps[walk->step]->time_s;
  double gap_s = time_s[i + 1] - time_s[i];
  guint n = walk->track->n_parts;
  Sums sums = { 0 };

  if (i == 0)
    rates_at (walk, time_s[0], lw_track_state (walk->track, walk->step, 0, 0), walk->rates);
  else
    memcpy (walk->rates, walk->rates + n, n * sizeof *walk->rates);
  rates_at (walk, time_s[i + 1], lw_track_state (walk->track, walk->step, 0, i + 1), walk->rates + n);

  for (guint k = 0; k < G_N_ELEMENTS (points); k++)
    {
      between (walk, i, gap_s, points[k].on);
      add_moment (walk, time_s[i] + points[k].on * gap_s, walk->states, points[k].weight * gap_s, &sums);
    }

  return sums;
}

/* The same, solved anew from sample `i`. FALSE if that cannot be done. */
static gboolean
solve_interval (Walk  *walk,
                guint  i,
                Sums  *into)
{
  const LwTrack *track = walk->track;
  const double *time_s = track->steps[walk->step]->time_s;
  double gap_s = time_s[i + 1] - time_s[i], reached_s = 0;
  g_autofree LwBoundary *own = g_memdup2 (walk->boundaries, track->n_parts * sizeof *own);
  Walk there = *walk;
  Sums sums = { 0 };

  for (guint k = 0; k < track->n_parts; k++)
    {
      own[k].at.clock_s += time_s[i];
      own[k].at.duration_s = gap_s;
    }
  there.boundaries = own;
  memcpy (walk->states, lw_track_state (track, walk->step, 0, i), track->n_parts * sizeof *walk->states);

  if (walk->solver == NULL && (walk->solver = lw_solver_new ()) != NULL)
    lw_solver_set_tolerance (walk->solver, REFINE_TOLERANCE);
  if (walk->solver == NULL || lw_solver_start (walk->solver, own, walk->states, track->n_parts) != 0)
    return FALSE;

  while (reached_s < gap_s)
    {
      double from_s = reached_s, weight_s;

      /* Asked for a moment past where it is, the solver takes one step of its own and tells how far it got. */
      memcpy (walk->rates, walk->states, track->n_parts * sizeof *walk->rates);
      if (lw_solver_advance (walk->solver, nextafter (from_s, INFINITY), walk->states) != 0)
        return FALSE;
      reached_s = MIN (lw_solver_time_s (walk->solver), gap_s);
      weight_s = (reached_s - from_s) / (3 * PANELS);
      add_moment (&there, from_s, walk->rates, weight_s, &sums);

      for (guint k = 1; k <= PANELS; k++)
        {
          double t_s = k < PANELS ? from_s + k * (reached_s - from_s) / PANELS : reached_s;

          if (lw_solver_advance (walk->solver, t_s, walk->states) != 0)
            return FALSE;
          add_moment (&there, t_s, walk->states, weight_s * (k == PANELS ? 1 : k % 2 == 1 ? 4 : 2), &sums);
        }
    }
  *into = sums;

  return TRUE;
}

static double
net (const Sums *sums)
{
  return sums->wall + sums->steam + sums->air + sums->sun + sums->shared - sums->latent + sums->carried;
}

static void
add (Sums       *to,
     const Sums *one)
{
  for (gsize k = 0; k < sizeof *to / sizeof (double); k++)
    ((double *) to)[k] += ((const double *) one)[k];
}

static Sums
sum_step (Walk *walk)
{
  const LwTrack *track = walk->track;
  guint n = track->steps[walk->step]->n - 1;
  g_autofree Sums *each = g_new (Sums, n);
  Sums all = { 0 };
  double allowed = 0;

  for (guint i = 0; i < n; i++)
    {
      each[i] = read_interval (walk, i);
      allowed += each[i].gross * MISS_ALLOWED / n;
    }

  for (guint i = 0; i < n; i++)
    {
      double change = moment_heat (track, lw_track_state (track, walk->step, 0, i + 1))
                      - moment_heat (track, lw_track_state (track, walk->step, 0, i));

      /* Written so that a sum that is no number is solved anew, too. */
      if (!(fabs (net (&each[i]) - change) <= allowed))
        solve_interval (walk, i, &each[i]);
      add (&all, &each[i]);
    }

  return all;
}

static void
tell_step (LwHeatStep    *to,
           const LwBatch *batch,
           const LwStep  *step,
           const Sums    *sums,
           double         dry_kg)
{
  const LwHearth *hearth = lw_hearth (step->kind);
  gboolean has_load = lw_kind_setting (step->kind, LW_SET_LOAD_KG) != NULL;
  gboolean turned = lw_kind_setting (step->kind, LW_SET_TURNING_PER_H) != NULL;
  double air_j = dry_kg * sums->air, wall_j = dry_kg * sums->wall;
  double bought_air_j = hearth->heats_air ? MAX (air_j, 0) : 0;

  to->minutes = lw_step_get (step, LW_SET_MINUTES);
  to->loads = has_load ? MAX (batch->fresh_kg / lw_step_get (step, LW_SET_LOAD_KG), 1) : 1;
  to->wall_j = wall_j;
  to->steam_j = dry_kg * sums->steam;
  to->air_j = air_j;
  to->sun_j = dry_kg * sums->sun;
  to->latent_j = dry_kg * sums->latent;
  to->carried_j = dry_kg * sums->carried;
  to->gross_j = dry_kg * sums->gross;
  to->heat_j = MAX (wall_j, 0) + to->steam_j + bought_air_j;
  to->free_j = to->sun_j + air_j - bought_air_j + MIN (wall_j, 0);
  to->fuel_j = hearth->efficiency > 0 ? to->heat_j / hearth->efficiency : 0;
  to->hands_h = hearth->hands * to->loads * to->minutes / 60;
  if (turned)
    to->hands_h += lw_step_get (step, LW_SET_TURNING_PER_H) * to->minutes / 60 * TURN_MIN_PER_KG * batch->fresh_kg / 60;
}

static void
add_step (LwHeatStep       *batch,
          const LwHeatStep *step)
{
  double loads = MAX (batch->loads, step->loads);

  for (gsize k = 0; k < sizeof *batch / sizeof (double); k++)
    ((double *) batch)[k] += ((const double *) step)[k];
  batch->loads = loads;
}

static LwHeatStep
heat_of_step (Walk          *walk,
              const LwPlan  *plan,
              const LwBatch *batch,
              double         dry_kg)
{
  const LwTrack *track = walk->track;
  guint step = walk->step;
  const LwState *first = lw_track_state (track, step, 0, 0);
  const LwState *last = lw_track_state (track, step, 0, track->steps[step]->n - 1);
  guint jump = lw_segment_jump (track->steps[step]);
  LwHeatStep told = { 0 };
  Sums sums;

  for (guint i = 0; i < track->n_parts; i++)
    walk->boundaries[i] = lw_boundary_new (&plan->steps[step], &track->leaf, &track->parts[i]);

  sums = sum_step (walk);
  tell_step (&told, batch, &batch->steps[step], &sums, dry_kg);
  told.stored_j = moment_heat (track, last) - moment_heat (track, first);
  told.water_kg = moment_water (track, first) - moment_water (track, last);
  if (jump > 0)
    {
      /* What a correction put into the leaf or took out of it is no flow's. */
      const LwState *after = lw_track_state (track, step, 0, jump), *before = after - track->n_parts;
      told.stored_j -= moment_heat (track, after) - moment_heat (track, before);
      told.water_kg += moment_water (track, after) - moment_water (track, before);
    }
  told.stored_j *= dry_kg;
  told.water_kg *= dry_kg;

  return told;
}

LwHeat *
lw_heat_new (const LwPlan  *plan,
             const LwBatch *batch,
             const LwTrack *track)
{
  g_autofree LwBoundary *boundaries = g_new (LwBoundary, track->n_parts);
  g_autofree LwState *states = g_new (LwState, track->n_parts), *rates = g_new (LwState, 2 * track->n_parts);
  Walk walk = { .track = track, .boundaries = boundaries, .states = states, .rates = rates };
  double dry_kg = batch->fresh_kg / (1 + track->leaf.fresh_water);
  LwHeat *heat = g_new0 (LwHeat, 1);

  heat->n_steps = track->n_steps;
  heat->steps = g_new0 (LwHeatStep, track->n_steps);
  for (walk.step = 0; walk.step < track->n_steps; walk.step++)
    {
      heat->steps[walk.step] = heat_of_step (&walk, plan, batch, dry_kg);
      add_step (&heat->batch, &heat->steps[walk.step]);
    }
  g_clear_pointer (&walk.solver, lw_solver_free);

  heat->made_per_fresh = track->n_steps > 0 ? lw_track_end (track, track->n_steps - 1, -1).kg_per_kg_fresh : 1;
  heat->made_kg = heat->made_per_fresh * batch->fresh_kg;

  return heat;
}

void
lw_heat_free (LwHeat *heat)
{
  g_free (heat->steps);
  g_free (heat);
}

double
lw_heat_miss (const LwHeatStep *step)
{
  double flows = step->wall_j + step->steam_j + step->air_j + step->sun_j - step->latent_j + step->carried_j;

  return step->gross_j > 0 ? (flows - step->stored_j) / step->gross_j : 0;
}

double
lw_heat_fuel_kwh_per_kg (const LwHeat *heat)
{
  return heat->made_kg > 0 ? heat->batch.fuel_j / LW_J_PER_KWH / heat->made_kg : NAN;
}

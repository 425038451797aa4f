/* The root functions: plain differences from a bound, of means by share. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/turning.h"

#include <math.h>

#define LEADS_LEAST 0.01  /* of all cells */
#define GONE 0.01
#define BEYOND 1e-100

/* Means of the batch. */
typedef struct
{
  double water;
  double temp_c;
  double enzyme;
  double oxidation;
  double roast_min;
  double rupture;
  double wilt;     /* of rupture, as in LwOutcome */
  double heat;
  double roll;
} Means;

int
lw_turning_way (LwTurnKind kind)
{
  static const int ways[LW_N_TURNS] = {
    [LW_TURN_WATER_HALF] = -1,
    [LW_TURN_MOISTURE_REACHED] = -1,
    [LW_TURN_MOISTURE_PASSED] = -1,
    [LW_TURN_SURFACE_DRY] = -1,
    [LW_TURN_HOT] = 1,
    [LW_TURN_ENZYME_HALF] = -1,
    [LW_TURN_ENZYME_GONE] = -1,
    [LW_TURN_OXIDATION_HALF] = 1,
    [LW_TURN_RUPTURE_HALF] = 1,
    [LW_TURN_HEAT_LEADS] = 1,
    [LW_TURN_ROLLING_LEADS] = 1,
    [LW_TURN_ROASTED] = 1,
  };

  return ways[kind];
}

static void
add_part (const LwBoundary *b,
          const LwState    *s,
          Means            *to)
{
  double exposure = s->wilt + s->heat + s->roll;
  double ruptured = b->intact * -expm1 (-exposure);
  double each = exposure > 0 ? b->share * ruptured / exposure : 0;

  to->water += b->share * s->water;
  to->temp_c += b->share * s->temp_c;
  to->enzyme += b->share * s->enzyme;
  to->oxidation += b->share * s->oxidation;
  to->roast_min += b->share * s->roast_min;
  to->rupture += b->share * (1 - b->intact + ruptured);
  to->wilt += each * s->wilt;
  to->heat += each * s->heat;
  to->roll += each * s->roll;
}

/* The part that lies more open than the others, or -1. */
static int
surface (const LwBoundary *boundaries,
         guint             n)
{
  guint most = 0;

  for (guint i = 1; i < n; i++)
    if (boundaries[i].exposure > boundaries[most].exposure)
      most = i;

  return boundaries[most].exposure > 1 ? (int) most : -1;
}

void
lw_turning_values (const LwBoundary *boundaries,
                   const LwState    *states,
                   guint             n,
                   const LwAimed    *aimed,
                   double            values[LW_N_TURNS])
{
  int open = surface (boundaries, n);
  Means mean = { 0 };

  for (guint i = 0; i < n; i++)
    add_part (&boundaries[i], &states[i], &mean);

  values[LW_TURN_WATER_HALF] = mean.water - 0.5 * boundaries->fresh_water;
  values[LW_TURN_MOISTURE_REACHED] = isfinite (aimed->high) ? mean.water - aimed->high : 1;
  values[LW_TURN_MOISTURE_PASSED] = isfinite (aimed->low) ? mean.water - aimed->low : 1;
  values[LW_TURN_SURFACE_DRY] = open >= 0 ? states[open].water - lw_dry_basis (LW_NEARLY_DRY_WB_PCT) : 1;
  values[LW_TURN_HOT] = mean.temp_c - LW_HOT_C;
  values[LW_TURN_ENZYME_HALF] = mean.enzyme - 0.5;
  values[LW_TURN_ENZYME_GONE] = mean.enzyme - GONE;
  values[LW_TURN_OXIDATION_HALF] = mean.oxidation - 0.5;
  values[LW_TURN_RUPTURE_HALF] = mean.rupture - 0.5;
  values[LW_TURN_HEAT_LEADS] = mean.heat - fmax (fmax (mean.wilt, mean.roll), LEADS_LEAST);
  values[LW_TURN_ROLLING_LEADS] = mean.roll - fmax (fmax (mean.wilt, mean.heat), LEADS_LEAST);
  values[LW_TURN_ROASTED] = mean.roast_min - LW_ROASTED_MIN;

  /* CVODE gives up where a function is 0 and stays it for a few roundings, as slow ones do: 0 is past the turn. */
  for (LwTurnKind kind = 0; kind < LW_N_TURNS; kind++)
    if (values[kind] == 0)
      values[kind] = lw_turning_way (kind) * BEYOND;
}

void
lw_turning_jumped (const LwBoundary *boundaries,
                   const LwState    *before,
                   const LwState    *after,
                   guint             n,
                   const LwAimed    *aimed,
                   double            t_s,
                   GArray           *turns)
{
  double was[LW_N_TURNS], is[LW_N_TURNS];

  lw_turning_values (boundaries, before, n, aimed, was);
  lw_turning_values (boundaries, after, n, aimed, is);
  for (LwTurnKind kind = 0; kind < LW_N_TURNS; kind++)
    if (lw_turning_way (kind) * was[kind] < 0 && lw_turning_way (kind) * is[kind] >= 0)
      {
        LwTurn turn = { kind, t_s };

        g_array_append_val (turns, turn);
      }
}

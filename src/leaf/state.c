/* From states to what a maker would say. Only arithmetic, no model. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/state.h"

#include <math.h>

LwState
lw_state_fresh (const LwLeaf *leaf)
{
  return (LwState) {
    .water = leaf->fresh_water,
    .temp_c = leaf->fresh_temp_c,
    .enzyme = 1,
    .green = leaf->fresh_green,
  };
}

void
lw_state_bound (LwState *s)
{
  s->water = fmax (s->water, 0);
  s->enzyme = CLAMP (s->enzyme, 0, 1);
  s->oxidation = CLAMP (s->oxidation, 0, 1);
  s->broken = CLAMP (s->broken, 0, 1);
  s->twist = CLAMP (s->twist, 0, 1);
  s->wilt = fmax (s->wilt, 0);
  s->heat = fmax (s->heat, 0);
  s->roll = fmax (s->roll, 0);
  s->roast_min = fmax (s->roast_min, 0);
  s->green = fmax (s->green, 0);
}

double
lw_state_rupture (const LwState *state,
                  const LwPart  *part)
{
  return 1 - (1 - part->ruptured) * exp (-(state->wilt + state->heat + state->roll));
}

/* A logistic curve of log (amount), without its log: an amount of 0 is no matter. */
static double
beyond (double amount,
        double bound,
        double width)
{
  return 1 / (1 + pow (bound / amount, 1 / width));
}

LwOutcome
lw_outcome_part (const LwState *state,
                 const LwPart  *part,
                 double         fresh_water)
{
  double rupture = lw_state_rupture (state, part);
  double exposure = state->wilt + state->heat + state->roll;
  double each = exposure > 0 ? 100 * (rupture - part->ruptured) / exposure : 0;
  double moisture = lw_wet_basis_pct (state->water);

  return (LwOutcome) {
    .moisture_wb_pct = moisture,
    .leaf_temp_c = state->temp_c,
    .enzyme_left_pct = 100 * state->enzyme,
    .oxidation_pct = 100 * state->oxidation,
    .rupture_pct = 100 * rupture,
    .rupture_wilt_pct = each * state->wilt,
    .rupture_heat_pct = each * state->heat,
    .rupture_roll_pct = each * state->roll,
    .roast_min = state->roast_min,
    .green_note = state->green,
    .broken_pct = 100 * state->broken,
    .twist_pct = 100 * state->twist,
    .kg_per_kg_fresh = (1 + state->water) / (1 + fresh_water),
    .nearly_dry_pct = 100 / (1 + exp ((moisture - LW_NEARLY_DRY_WB_PCT) / LW_NEARLY_DRY_WIDTH)),
    .roasted_pct = 100 * beyond (state->roast_min, LW_ROASTED_MIN, LW_ROASTED_WIDTH),
  };
}

LwOutcome
lw_outcome_all (const LwLeaf  *leaf,
                const LwState *states,
                LwOutcome     *parts)
{
  LwOutcome mean = { 0 };
  double water = 0, square = 0, moisture = 0;

  for (guint i = 0; i < leaf->n_parts; i++)
    {
      const LwPart *part = &leaf->parts[i];
      LwOutcome one = lw_outcome_part (&states[i], part, leaf->fresh_water);
      double *to = (double *) &mean;
      const double *from = (const double *) &one;

      for (gsize k = 0; k < sizeof mean / sizeof *to; k++)
        to[k] += part->share * from[k];

      water += part->share * states[i].water;
      moisture += part->share * one.moisture_wb_pct;
      square += part->share * one.moisture_wb_pct * one.moisture_wb_pct;
      if (parts != NULL)
        parts[i] = one;
    }

  /* Weighing the batch gives the mean of the water, not of the percentages. */
  mean.moisture_wb_pct = lw_wet_basis_pct (water);
  mean.uneven_pct = sqrt (MAX (square - moisture * moisture, 0));

  return mean;
}

LwOutcome
lw_outcome_mean (const LwLeaf  *leaf,
                 const LwState *states)
{
  return lw_outcome_all (leaf, states, NULL);
}

double
lw_wet_basis_pct (double water)
{
  return 100 * water / (1 + water);
}

double
lw_dry_basis (double wet_basis_pct)
{
  return wet_basis_pct / (100 - wet_basis_pct);
}

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

double
lw_state_rupture (const LwState *state,
                  const LwPart  *part)
{
  return 1 - (1 - part->ruptured) * exp (-(state->wilt + state->heat + state->roll));
}

LwOutcome
lw_outcome_part (const LwState *state,
                 const LwPart  *part,
                 double         fresh_water)
{
  double rupture = lw_state_rupture (state, part);
  double exposure = state->wilt + state->heat + state->roll;
  double each = exposure > 0 ? 100 * (rupture - part->ruptured) / exposure : 0;

  return (LwOutcome) {
    .moisture_wb_pct = lw_wet_basis_pct (state->water),
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
  };
}

LwOutcome
lw_outcome_mean (const LwLeaf  *leaf,
                 const LwState *states)
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
    }

  /* Weighing the batch gives the mean of the water, not of the percentages. */
  mean.moisture_wb_pct = lw_wet_basis_pct (water);
  mean.uneven_pct = sqrt (MAX (square - moisture * moisture, 0));

  return mean;
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

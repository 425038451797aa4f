/* The state as the solver holds it: the enzyme stands as -log of what is left. Its loss is then a plain sum,
 * which cannot swing back and be taken for enzyme, however hot the leaf. All else is as in the model. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "leaf/rates.h"

#define LW_LEAST_ENZYME 1e-300

/* The size at which a state starts to matter: absolute tolerance for a relative one of 1. */
static const LwState lw_inner_size = {
  .water = 0.05,
  .temp_c = 10,
  .enzyme = 0.05,
  .oxidation = 0.05,
  .wilt = 0.05,
  .heat = 0.05,
  .roll = 0.05,
  .roast_min = 0.2,
  .green = 0.05,
  .broken = 0.05,
  .twist = 0.05,
};

static inline LwState
lw_inner_outside (const LwState *inner)
{
  LwState s = *inner;

  s.enzyme = fmax (exp (-inner->enzyme), LW_LEAST_ENZYME);

  return s;
}

static inline void
lw_inner_take (LwState *state)
{
  state->enzyme = -log (fmax (state->enzyme, LW_LEAST_ENZYME));
}

/* lw_rates of and for inner states. */
static inline void
lw_inner_rates (const LwBoundary *boundary,
                const LwAround   *around,
                const LwState    *inner,
                LwState          *rate)
{
  LwState s = lw_inner_outside (inner);

  lw_rates (boundary, around, &s, rate);
  rate->enzyme /= -s.enzyme;
}

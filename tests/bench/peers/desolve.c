/* The leaf's own right-hand side for deSolve, R's integrators: a shared object with the C calls
 * that R makes. One batch at a time, no checks of what R passes: desolve.R is the only caller. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "leaf/rates.h"
#include "season/document.h"
#include "season/surround.h"

#define N_TOLD 13 /* outcomes that the CSV has of a part: the first of LwOutcome */
G_STATIC_ASSERT (offsetof (LwOutcome, kg_per_kg_fresh) == (N_TOLD - 1) * sizeof (double));

void leaf_open     (char **season, char **batch, int *sizes);
void leaf_begin    (int *step, double *duration_s, double *state);
void leaf_sizes    (double *size);
void leaf_rates    (int *n, double *t_s, double *state, double *rate, double *out, int *ints);
void leaf_outcomes (double *state, double *outcomes);

static LwPlan *plan;
static LwBoundary *boundaries;

/* `sizes` is then the number of steps, of parts, and of states of a part. */
void
leaf_open (char **season,
           char **batch,
           int   *sizes)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) loaded = lw_document_load (*season, problems);

  g_assert (loaded != NULL);
  plan = lw_plan_new (loaded, (guint) lw_season_batch (loaded, *batch));
  boundaries = g_new (LwBoundary, plan->leaf.n_parts);
  sizes[0] = (int) plan->n_steps;
  sizes[1] = (int) plan->leaf.n_parts;
  sizes[2] = (int) LW_N_STATE;
}

/* Step 0 also sets `state` to that of fresh leaf. */
void
leaf_begin (int    *step,
            double *duration_s,
            double *state)
{
  LwState fresh = lw_state_fresh (&plan->leaf);

  for (guint i = 0; i < plan->leaf.n_parts; i++)
    {
      boundaries[i] = lw_boundary_new (&plan->steps[*step], &plan->leaf, &plan->leaf.parts[i]);
      if (*step == 0)
        memcpy (&state[i * LW_N_STATE], &fresh, sizeof fresh);
    }
  *duration_s = plan->steps[*step].duration_s;
}

/* The size at which each state starts to matter: that of SciPy's runs too, and nearly that of leaf/inner.h. */
void
leaf_sizes (double *size)
{
  const LwState one = {
    .water = 0.05,
    .temp_c = 10,
    .enzyme = 0.02,
    .oxidation = 0.05,
    .wilt = 0.05,
    .heat = 0.05,
    .roll = 0.05,
    .roast_min = 0.2,
    .green = 0.05,
    .broken = 0.05,
    .twist = 0.05,
  };

  for (guint i = 0; i < plan->leaf.n_parts; i++)
    memcpy (&size[i * LW_N_STATE], &one, sizeof one);
}

void
leaf_rates (int    *n,
            double *t_s,
            double *state,
            double *rate,
            double *out,
            int    *ints)
{
  const LwState *s = (const LwState *) state;
  LwAround around = lw_boundary_at (boundaries, *t_s);

  lw_rates_meet (boundaries, s, plan->leaf.n_parts, &around);
  for (guint i = 0; i < plan->leaf.n_parts; i++)
    lw_rates (&boundaries[i], &around, &s[i], (LwState *) rate + i);
}

/* Of the mean of the batch, then of each part. */
void
leaf_outcomes (double *state,
               double *outcomes)
{
  const LwState *s = (const LwState *) state;
  LwOutcome one = lw_outcome_mean (&plan->leaf, s);

  memcpy (outcomes, &one, N_TOLD * sizeof *outcomes);
  for (guint i = 0; i < plan->leaf.n_parts; i++)
    {
      one = lw_outcome_part (&s[i], &plan->leaf.parts[i], plan->leaf.fresh_water);
      memcpy (&outcomes[(i + 1) * N_TOLD], &one, N_TOLD * sizeof *outcomes);
    }
}

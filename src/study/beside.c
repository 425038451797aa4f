/* The comparison; a weight is told as the moisture it means. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/beside.h"

#include <math.h>

#include "season/measured.h"

#define LATE 1e-9 /* minutes */

static gboolean
beside_wall (const LwStep    *step,
             const LwWeighIn *weigh_in,
             LwBeside        *beside)
{
  if (weigh_in->of != LW_WALL_C || lw_kind_setting (step->kind, LW_SET_WALL_C) == NULL)
    return FALSE;

  beside->measured = weigh_in->value;
  beside->sd = weigh_in->sd;
  beside->model = lw_step_get (step, LW_SET_WALL_C);

  return TRUE;
}

static gboolean
beside_leaf (const LwBatch   *batch,
             guint            step,
             const LwWeighIn *weigh_in,
             const LwTrack   *track,
             double           fresh_moisture_pct,
             LwBeside        *beside)
{
  LwQuantity of = (LwQuantity) beside->of;
  LwOutcome outcome;
  double high, low;

  if (track == NULL || step >= track->n_steps
      || !lw_measured (weigh_in, of, batch->fresh_kg, fresh_moisture_pct, 0, &beside->measured)
      || !lw_measured (weigh_in, of, batch->fresh_kg, fresh_moisture_pct, 1, &high)
      || !lw_measured (weigh_in, of, batch->fresh_kg, fresh_moisture_pct, -1, &low))
    return FALSE;

  outcome = lw_track_outcome_at (track, step, -1, weigh_in->minute * 60);
  beside->sd = (high - low) / 2;
  beside->model = lw_quantity_of (of, &outcome);

  return TRUE;
}

gboolean
lw_beside (const LwBatch   *batch,
           guint            step,
           const LwWeighIn *weigh_in,
           const LwTrack   *track,
           double           fresh_moisture_pct,
           LwBeside        *beside)
{
  const LwStep *here = &batch->steps[step];

  beside->of = weigh_in->of == LW_WEIGHED_KG ? LW_MOISTURE : lw_measure_row (weigh_in->of)->quantity;
  if (weigh_in->minute > lw_step_get (here, LW_SET_MINUTES) + LATE
      || !(beside->of < 0 ? beside_wall (here, weigh_in, beside)
                          : beside_leaf (batch, step, weigh_in, track, fresh_moisture_pct, beside)))
    return FALSE;

  beside->off_sds = (beside->measured - beside->model) / beside->sd;

  return isfinite (beside->off_sds);
}

/* Weights by what the batch weighed fresh; all else as it was read. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/measured.h"

#include <math.h>

#include "season/correction.h"

gboolean
lw_measured (const LwWeighIn *weigh_in,
             LwQuantity       of,
             double           fresh_kg,
             double           fresh_moisture_pct,
             double           off,
             double          *value)
{
  double measured = weigh_in->value + off * weigh_in->sd;
  double of_fresh = (measured - weigh_in->tare_kg) / fresh_kg;
  double water = of_fresh * (1 + lw_dry_basis (fresh_moisture_pct)) - 1;

  if (weigh_in->of == LW_WEIGHED_KG)
    {
      *value = of == LW_MOISTURE ? lw_wet_basis_pct (MAX (water, 0)) : of_fresh;
      return (of == LW_MOISTURE || of == LW_WEIGHT) && isfinite (*value);
    }

  *value = measured;

  return lw_measure_row (weigh_in->of)->quantity == (int) of;
}

double
lw_fresh_moisture_pct (const LwSeason *season,
                       const LwBatch  *batch)
{
  return lw_batch_fresh_moisture (batch, lw_season_profile (season, batch->leaf));
}

double
lw_foretold (const LwWeighIn *weigh_in,
             const LwOutcome *outcome,
             double           fresh_kg)
{
  int quantity = lw_measure_row (weigh_in->of)->quantity;

  g_return_val_if_fail (quantity >= 0, NAN);

  if (weigh_in->of == LW_WEIGHED_KG)
    return outcome->kg_per_kg_fresh * fresh_kg + weigh_in->tare_kg;

  return lw_quantity_of ((LwQuantity) quantity, outcome);
}

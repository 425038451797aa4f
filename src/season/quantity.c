/* The tables of outcomes and measurements. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/quantity.h"

#include <string.h>

#include "season/text.h"

#define ROW(id, label, unit, digits, low, high, member) \
  { id, label, unit, digits, low, high, offsetof (LwOutcome, member) }

static const LwQuantityRow quantities[LW_N_QUANTITIES] = {
  [LW_MOISTURE] = ROW ("moisture", N_ ("Moisture"), N_ ("% wet basis"), 1, 0, 95, moisture_wb_pct),
  [LW_OXIDATION] = ROW ("oxidation", N_ ("Oxidation"), N_ ("%"), 1, 0, 100, oxidation_pct),
  [LW_RUPTURE] = ROW ("rupture", N_ ("Cell rupture"), N_ ("%"), 1, 0, 100, rupture_pct),
  [LW_LEAF_TEMP] = ROW ("leaf-temp", N_ ("Leaf temperature"), N_ ("°C"), 0, -20, 300, leaf_temp_c),
  [LW_ENZYME] = ROW ("enzyme", N_ ("Enzyme left"), N_ ("%"), 1, 0, 100, enzyme_left_pct),
  [LW_ROAST] = ROW ("roast", N_ ("Roast"), N_ ("min at 120 °C"), 1, 0, 1e6, roast_min),
  [LW_GREEN] = ROW ("green", N_ ("Green note"), "", 2, 0, 10, green_note),
  [LW_BROKEN] = ROW ("broken", N_ ("Broken leaf"), N_ ("%"), 1, 0, 100, broken_pct),
  [LW_TWIST] = ROW ("twist", N_ ("Twist"), N_ ("%"), 0, 0, 100, twist_pct),
  [LW_WEIGHT] = ROW ("weight", N_ ("Weight"), N_ ("kg per kg fresh"), 3, 0, 2, kg_per_kg_fresh),
  [LW_UNEVEN] = ROW ("uneven", N_ ("Unevenness"), N_ ("% points"), 1, 0, 50, uneven_pct),
  [LW_NEARLY_DRY] = ROW ("nearly-dry", N_ ("Nearly dry leaf"), N_ ("% of leaf"), 1, 0, 100, nearly_dry_pct),
  [LW_ROASTED] = ROW ("roasted", N_ ("Roasted leaf"), N_ ("% of leaf"), 1, 0, 100, roasted_pct),
};

static const LwMeasureRow measures[LW_N_MEASURES] = {
  [LW_WEIGHED_KG] = { "weight-kg", N_ ("weight"), N_ ("kg"), LW_WEIGHT, 0.02, 0, 1e5 },
  [LW_LEAF_C] = { "leaf-c", N_ ("leaf temperature"), N_ ("°C"), LW_LEAF_TEMP, 2, -20, 300 },
  [LW_WALL_C] = { "wall-c", N_ ("wall temperature"), N_ ("°C"), -1, 5, -20, 600 },
  [LW_METER_PCT] = { "meter-pct", N_ ("moisture meter"), N_ ("% wet basis"), LW_MOISTURE, 1, 0, 95 },
  [LW_JUDGED_OXIDATION_PCT] = { "oxidation-pct", N_ ("judged oxidation"), N_ ("%"), LW_OXIDATION, 5, 0, 100 },
  [LW_JUDGED_BROKEN_PCT] = { "broken-pct", N_ ("judged breakage"), N_ ("%"), LW_BROKEN, 5, 0, 100 },
  [LW_NOTED] = { "note", N_ ("note"), "", -1, 0, 0, 0 },
};

const LwQuantityRow *
lw_quantity_row (LwQuantity quantity)
{
  return &quantities[quantity];
}

const LwMeasureRow *
lw_measure_row (LwMeasure measure)
{
  return &measures[measure];
}

int
lw_quantity_find (const char *id)
{
  for (int i = 0; i < LW_N_QUANTITIES; i++)
    if (strcmp (quantities[i].id, id) == 0)
      return i;

  return -1;
}

int
lw_measure_find (const char *id)
{
  for (int i = 0; i < LW_N_MEASURES; i++)
    if (strcmp (measures[i].id, id) == 0)
      return i;

  return -1;
}

double
lw_quantity_of (LwQuantity       quantity,
                const LwOutcome *outcome)
{
  return *(const double *) ((const char *) outcome + quantities[quantity].offset);
}

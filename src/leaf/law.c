/* The parameter table. A value without a published source says
 * "assumed, fitted to common practice"; docs/model.md is written from here. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/law.h"

#include <string.h>

#define FITTED "assumed, fitted to common practice"
#define ROW(symbol, unit, member, value, low, high, meaning, source) \
  { symbol, unit, offsetof (LwLaw, member), value, low, high, meaning, source }

static const LwLawField fields[] = {
  ROW ("sla", "m2/kg", sla_m2_kg, 14, 6, 30, "leaf area, one face, per kg of dry leaf", FITTED),
  ROW ("c-dry", "J/(kg K)", c_dry_j_kgk, 1450, 1100, 2000, "heat capacity of dry leaf",
       "from memory (textbook range 1300 to 1500)"),
  ROW ("c-water", "J/(kg K)", c_water_j_kgk, 4186, 4170, 4220, "heat capacity of water",
       "IAPWS-IF97, mean of 0 to 100 C"),
  ROW ("halsey-a", "1", halsey_a, 2.15, 0.5, 6, "modified Halsey isotherm, constant",
       "fitted to published points of tea (see docs/model.md)"),
  ROW ("halsey-b", "1/K", halsey_b_k, -0.012, -0.05, 0, "modified Halsey isotherm, by temperature",
       "fitted: net heat of sorption near 6 kJ/mol"),
  ROW ("halsey-c", "1", halsey_c, 1.085, 0.5, 3, "modified Halsey isotherm, exponent",
       "fitted to published points of tea (see docs/model.md)"),
  ROW ("g-cut", "m/s", cut_m_s, 2.1e-4, 2e-5, 1e-3, "vapour conductance of the whole skin of a fresh leaf",
       "fitted to room wither and white tea (second-hand, see docs/model.md)"),
  ROW ("g-rupture", "1", cut_rupture, 30, 0, 100, "how much ruptured cells open the skin",
       "fitted: wet rolled leaf in hot air, fluid-bed drying (see docs/model.md)"),
  ROW ("x-fall", "kg/kg", falling_water, 0.7, 0.1, 2, "water at which drying has slowed to half", FITTED),
  ROW ("shrink", "1", shrink, 0.45, 0, 0.9, "share of its area a fully twisted leaf loses", FITTED),
  ROW ("k-even", "1/s", even_s, 2e-5, 0, 1e-3, "water passed between parts that lie covered, per difference of activity",
       FITTED),
  ROW ("k-wilt", "1/s", wilt_s, 2e-6, 0, 1e-4, "rupture by wilting at 25 C in fully stressed leaf", FITTED),
  ROW ("x-wilt", "kg/kg", wilt_water, 2.6, 1, 4, "water below which leaf is under wilting stress", FITTED),
  ROW ("k-age", "1/s", age_s, 1.6e-5, 0, 1e-4, "enzyme lost to wilting stress", FITTED),
  ROW ("k-heat", "1/s", heat_s, 6.5e-4, 0, 1e-2, "rupture by heat at 90 C", FITTED),
  ROW ("z-heat", "K", heat_z_k, 32, 10, 60, "warming that makes heat rupture ten times faster", FITTED),
  ROW ("k-roll", "1/(s kPa)", roll_s_kpa, 0.55e-4, 0, 1e-3, "rupture by rolling",
       "fitted: black tea rolled to 70 to 80 % (second-hand, see docs/model.md)"),
  ROW ("soft", "1", soft, 6, 0, 30, "how much leaf softened by heat yields more to rolling", FITTED),
  ROW ("k-ox", "1/s", oxidise_s, 3.0e-4, 0, 5e-3, "oxidation by enzyme at 27 C in fully mixed leaf",
       "fitted: rolled leaf needs 2 to 4 h at 24 to 29 C (Jolvis Pou, J. Biosyst. Eng. 41:85, 2016)"),
  ROW ("ea-ox", "J/mol", oxidise_j_mol, 45e3, 20e3, 90e3, "activation energy of oxidation",
       "from memory (placeholder 40 to 60 kJ/mol)"),
  ROW ("x-ox", "kg/kg", oxidise_water, 0.6, 0.05, 2, "water at which oxidation has slowed to half", FITTED),
  ROW ("k-yellow", "1/s", yellow_s, 0.8e-5, 0, 1e-3, "oxidation without enzyme at 45 C", FITTED),
  ROW ("k-inact", "1/s", inactivate_s, 0.064, 1e-3, 1, "loss of enzyme at 80 C in wet leaf", FITTED),
  ROW ("ea-inact", "J/mol", inactivate_j_mol, 200e3, 60e3, 350e3, "activation energy of enzyme loss",
       "from memory (z near 12 C at 80 C)"),
  ROW ("z-roast", "K", roast_z_k, 25, 10, 60, "warming that makes roasting ten times faster", FITTED),
  ROW ("k-green", "1/s", green_s, 3e-4, 0, 1e-2, "loss of green note at 80 C", FITTED),
  ROW ("z-green", "K", green_z_k, 30, 10, 60, "warming that drives green note off ten times faster", FITTED),
  ROW ("green-form", "1", green_form, 0.6, 0, 3, "green note formed by rupture of living cells", FITTED),
  ROW ("k-break", "1/(s kPa)", break_s_kpa, 2.5e-5, 0, 1e-3, "breaking of dry leaf under pressure", FITTED),
  ROW ("x-break", "kg/kg", break_water, 0.9, 0.2, 2, "water below which leaf under pressure breaks", FITTED),
  ROW ("k-twist", "1/(s kPa^1/2)", twist_s, 2e-4, 0, 1e-2, "twisting of leaf under pressure", FITTED),
  ROW ("sun-absorbed", "1", sun_absorbed, 0.65, 0.3, 0.95, "share of sunlight a leaf on the mat absorbs",
       "from memory (0.50 single leaf to 0.85 dark dry leaf)"),
  ROW ("leaf-length", "m", leaf_length_m, 0.06, 0.01, 0.2, "length of leaf along the air stream", FITTED),
  ROW ("film-floor", "W/(m2 K)", film_floor_w_m2k, 4.5, 1, 10, "heat transfer in still air, free convection",
       "free convection at 4 cm and 5 K (Nu = 0.50 Gr^1/4), from memory"),
};

G_STATIC_ASSERT (G_N_ELEMENTS (fields) == LW_N_LAW);

const LwLawField *
lw_law_fields (void)
{
  return fields;
}

int
lw_law_find (const char *symbol)
{
  for (guint i = 0; i < LW_N_LAW; i++)
    if (strcmp (fields[i].symbol, symbol) == 0)
      return (int) i;

  return -1;
}

LwLaw
lw_law_start (void)
{
  LwLaw law = { 0 };

  for (guint i = 0; i < LW_N_LAW; i++)
    lw_law_set (&law, i, fields[i].value);

  return law;
}

double
lw_law_get (const LwLaw *law,
            guint        field)
{
  g_return_val_if_fail (field < LW_N_LAW, 0);

  return *(const double *) ((const char *) law + fields[field].offset);
}

void
lw_law_set (LwLaw *law,
            guint  field,
            double value)
{
  g_return_if_fail (field < LW_N_LAW);

  *(double *) ((char *) law + fields[field].offset) = value;
}

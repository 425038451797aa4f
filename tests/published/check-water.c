/* Sorption, finished moisture, withering and the leaf's skin beside published figures. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks.h"

#include <math.h>

#include "claim.h"
#include "leaf/air.h"
#include "leaf/sorption.h"
#include "trial.h"

#define TRADE_CHINA "trade page dzyyw.com"
#define WHITE_CURVE "trade page 368tea.com"

static double
activity (double wet_basis_pct,
          double temp_c)
{
  const LwLaw law = lw_law_start ();

  return lw_sorption_activity (&law, lw_dry_basis (wet_basis_pct), temp_c);
}

/* Heat of sorption over that of evaporation, kJ/mol, from two temperatures (Clausius and Clapeyron). */
static double
sorption_kj_mol (double water,
                 double low_c,
                 double high_c)
{
  const LwLaw law = lw_law_start ();
  double rise = log (lw_sorption_activity (&law, water, high_c) / lw_sorption_activity (&law, water, low_c));

  return 1e-3 * LW_GAS * rise / (1 / (low_c + LW_ZERO_C) - 1 / (high_c + LW_ZERO_C));
}

void
check_sorption (void)
{
  claim ((Claim) {
    .what = "water activity", .unit = "", .digits = 2,
    .conditions = "green tea, 4 % water, 25 °C",
    .model = activity (4, 25),
    .low = 0.26, .high = 0.26, .scatter = 0.03,
    .source = "a Taiwan research station, quoted by trade page jlteaco.com",
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "water activity", .unit = "", .digits = 2,
    .conditions = "retail black tea, 8.73 % water, 25 °C",
    .model = activity (8.73, 25),
    .low = -INFINITY, .high = 0.65,
    .source = "Ikeda and Watase, Tea Res. J. 2016(122):9",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "water activity", .unit = "", .digits = 3,
    .conditions = "fresh leaf, 75 % water, 25 °C",
    .model = activity (75, 25),
    .low = 0.982, .high = 0.982, .scatter = 0.01,
    .source = "freezing of tea leaf, Yamada and others, J. Jpn. Soc. Agric. Mach. Food Eng. 84(6); Raoult",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "water activity", .unit = "", .digits = 3,
    .conditions = "leaf, 50 % water, 25 °C",
    .model = activity (50, 25),
    .low = 0.947, .high = 0.947, .scatter = 0.02,
    .source = "the same, drawn out beyond what was measured",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "water activity", .unit = "", .digits = 3,
    .conditions = "leaf, 30 % water, 25 °C",
    .model = activity (30, 25),
    .low = 0.885, .high = 0.885, .scatter = 0.03,
    .source = "the same, drawn out beyond what was measured",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "net heat of sorption", .unit = "kJ/mol", .digits = 1,
    .conditions = "withered leaf, 0.09 kg/kg, 20 to 40 °C",
    .model = sorption_kj_mol (0.09, 20, 40),
    .low = 29.5, .high = 29.5, .stated = 5.1,
    .source = "Ghodake, Goswami and Chakraverty, J. Food Eng. 78:827, 2007",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "net heat of sorption", .unit = "kJ/mol", .digits = 1,
    .conditions = "black tea, 0.08 kg/kg, 20 to 40 °C",
    .model = sorption_kj_mol (0.08, 20, 40),
    .low = 16.8, .high = 16.8, .stated = 5.8,
    .source = "the same",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "net heat of sorption", .unit = "kJ/mol", .digits = 1,
    .conditions = "green tea granules, 0.05 kg/kg, 20 to 50 °C",
    .model = sorption_kj_mol (0.05, 20, 50),
    .low = 0.2, .high = 4.1, .scatter = 5, .stated = 9.3,
    .source = "Sinija and Mishra, J. Food Eng., 2008 (44.1 to 48.0 in all, less 43.9 of water)",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "net heat of sorption", .unit = "kJ/mol", .digits = 1,
    .conditions = "fresh leaf, 0.40 kg/kg, 15 to 30 °C",
    .model = sorption_kj_mol (0.40, 15, 30),
    .low = 0, .high = 0, .scatter = 1.5,
    .source = "Botheju, Amaratunge and Abeysinghe, about 2008",
    .seen = SEEN_ABSTRACT });
}

void
check_finished (void)
{
  const LwLaw law = lw_law_start ();
  const LwPart whole = { .share = 1, .exposure = 1, .area = 1, .cuticle = 1 };
  const struct { double fresh, end, kg; const char *conditions; } row[] = {
    { 75, 5, 3.80, "75 to 5 % water" },
    { 77, 7, 4.04, "77 to 7 % water" },
    { 80, 3, 4.85, "80 to 3 % water" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (row); i++)
    {
      const LwState dry = { .water = lw_dry_basis (row[i].end) };

      claim ((Claim) {
        .what = "fresh leaf per kg of made tea", .unit = "kg", .digits = 2,
        .conditions = row[i].conditions,
        .model = 1 / lw_outcome_part (&dry, &whole, lw_dry_basis (row[i].fresh)).kg_per_kg_fresh,
        .low = row[i].kg, .high = row[i].kg, .scatter = 0.01,
        .source = "balance of dry matter; buyers' figures lie at 4 to 5",
        .seen = SEEN_CALCULATED });
    }

  claim ((Claim) {
    .what = "moisture at rest in mould-safe air", .unit = "%", .digits = 1,
    .conditions = "60 % humidity, 25 °C",
    .model = lw_wet_basis_pct (lw_sorption_water (&law, 0.60, 25)),
    .low = 8.0, .high = 10.0, .scatter = 0.5,
    .source = "our own band around the points above; limits for made tea are 7 to 10 %",
    .seen = SEEN_CALCULATED });
}

void
check_wither (void)
{
  g_autoptr (LwTrack) room = TRIAL (76, 18, STEP (WITHER, 40 * 60, SET (AIR_C, 21.5), SET (HUMIDITY_PCT, 70),
                                                  SET (SPREAD_KG_M2, 0.6)));
  g_autoptr (LwTrack) trough = TRIAL (76, 8, STEP (WITHER, 24 * 60, SET (AIR_C, 35), SET (HUMIDITY_PCT, 32),
                                                   SET (SPREAD_KG_M2, 0.6), SET (AIR_M_S, 0.5)));
  g_autoptr (LwTrack) deep = TRIAL (76, 8, STEP (WITHER, 240, SET (AIR_C, 35), SET (HUMIDITY_PCT, 32),
                                                 SET (SPREAD_KG_M2, 20), SET (AIR_M_S, 0.5)));
  g_autoptr (LwTrack) sun = TRIAL (76, 11, STEP (WITHER, 8 * 60, SET (AIR_C, 28), SET (HUMIDITY_PCT, 50),
                                                 SET (SPREAD_KG_M2, 0.5), SET (AIR_M_S, 0.5), SET (SUN_PCT, 100)));
  g_autoptr (LwTrack) white = TRIAL (76, 8, STEP (WITHER, 72 * 60, SET (AIR_C, 25), SET (HUMIDITY_PCT, 60),
                                                  SET (SPREAD_KG_M2, 0.4)));
  double to_70_h = trial_minutes_until (white, LW_WEIGHT, 0.30) / 60;

  claim ((Claim) {
    .what = "wither from 76 to 62 % water", .unit = "h", .digits = 1,
    .conditions = "21.5 °C, 70 % humidity, 0.6 kg/m² (usual, from memory)",
    .model = trial_minutes_until (room, LW_MOISTURE, 62) / 60,
    .low = 18, .high = 18, .scatter = 4,
    .source = TRADE_CHINA,
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "wither from 76 to 62 % water", .unit = "h", .digits = 1,
    .conditions = "the same air warmed to 35 °C, 0.6 kg/m²",
    .model = trial_minutes_until (trough, LW_MOISTURE, 62) / 60,
    .low = 3, .high = 4, .scatter = 1,
    .source = TRADE_CHINA " (a trough; its depth not said)",
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "moisture after 3.5 h in a trough", .unit = "%", .digits = 1,
    .conditions = "the same air at 35 °C, 20 kg/m², from 76 %",
    .model = trial_at (deep, 210).moisture_wb_pct,
    .low = 60, .high = 64, .scatter = 1, .stated = 75.6,
    .source = TRADE_CHINA,
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "wither from 76 to 62 % water", .unit = "h", .digits = 1,
    .conditions = "full sun from 11 h, 28 °C, 50 % humidity, 0.5 kg/m²",
    .model = trial_minutes_until (sun, LW_MOISTURE, 62) / 60,
    .low = 1, .high = 1, .scatter = 0.5,
    .source = TRADE_CHINA,
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "sun wither until a tenth of the weight is lost", .unit = "min", .digits = 0,
    .conditions = "the same sun",
    .model = trial_minutes_until (sun, LW_WEIGHT, 0.90),
    .low = 15, .high = 60,
    .source = "oolong, trade page taiwanteatour.blogspot.com",
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "white tea until 70 % of its weight is lost", .unit = "h", .digits = 1,
    .conditions = "25 °C, 60 % humidity, 0.4 kg/m²",
    .model = to_70_h,
    .low = 30, .high = 40, .scatter = 5,
    .source = WHITE_CURVE,
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "white tea ten hours later", .unit = "% of weight", .digits = 1,
    .conditions = "the same",
    .model = trial_loss_pct (trial_at (white, MIN (60 * (to_70_h + 10), 72 * 60))),
    .low = 72, .high = 73, .scatter = 1,
    .source = WHITE_CURVE,
    .seen = SEEN_SECOND_HAND });
}

void
check_area (void)
{
  const LwLaw law = lw_law_start ();
  g_autoptr (LwTrack) white = TRIAL (76, 8, STEP (WITHER, 35 * 60, SET (AIR_C, 25), SET (HUMIDITY_PCT, 60),
                                                  SET (SPREAD_KG_M2, 0.4)));

  claim ((Claim) {
    .what = "area left after a white-tea wither", .unit = "of fresh", .digits = 2,
    .conditions = "25 °C, 60 % humidity, 35 h",
    .model = 1 - law.shrink * trial_end (white).twist_pct / 100,
    .low = 0.68, .high = 0.68, .scatter = 0.1, .stated = 1.00,
    .source = "stomata counted per mm², a Fujian journal, cyxb.fjnyxb.cn article 112",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "specific heat of fresh leaf", .unit = "kJ/(kg K)", .digits = 2,
    .conditions = "77 % water",
    .model = 1e-3 * (law.c_dry_j_kgk + lw_dry_basis (77) * law.c_water_j_kgk) / (1 + lw_dry_basis (77)),
    .low = 3.2, .high = 4,
    .source = "13 species, Zhang and others, Plant Methods, 2025, doi 10.1186/s13007-025-01326-3",
    .seen = SEEN_ABSTRACT });
}

void
check_spreading (void)
{
  g_autoptr (LwTrack) green = TRIAL (77, 10, STEP (WITHER, 24 * 60, SET (AIR_C, 22), SET (HUMIDITY_PCT, 68),
                                                   SET (SPREAD_KG_M2, 5)));
  g_autoptr (LwTrack) bag = TRIAL (77, 10, STEP (WITHER, 30 * 60, SET (AIR_C, 22), SET (HUMIDITY_PCT, 99),
                                                 SET (SPREAD_KG_M2, 5), SET (COVER_PCT, 95)));
  LwOutcome kept = trial_end (bag);

  claim ((Claim) {
    .what = "spreading until 10 % of weight is lost", .unit = "h", .digits = 1,
    .conditions = "22 °C, 68 % humidity, 5 kg/m² (5 to 10 cm)",
    .model = trial_minutes_until (green, LW_WEIGHT, 0.90) / 60,
    .low = 2, .high = 6, .scatter = 0.5, .stated = 18.7,
    .source = "trade page gunnetworking.com",
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "cells ruptured by 30 h without drying", .unit = "%", .digits = 1,
    .conditions = "22 °C, covered, 99 % humidity",
    .model = kept.rupture_wilt_pct + kept.rupture_heat_pct,
    .low = 0, .high = 0, .scatter = 2,
    .source = "Sanderson, J. Sci. Food Agric. 19:637, 1968 (membranes leak no more than fresh)",
    .seen = SEEN_ABSTRACT });
}

void
check_skin (void)
{
  const LwLaw law = lw_law_start ();
  double both_m_s = 2 * law.cut_m_s; /* of both faces, for one face of area */

  claim ((Claim) {
    .what = "conductance of a detached leaf", .unit = "mmol/(m² s)", .digits = 1,
    .conditions = "both faces, per area of one, 25 °C",
    .model = 40.9e3 * both_m_s,
    .low = 5, .high = 8.7, .stated = 17.2,
    .source = "worked back from the 18 h and white-tea withers above, 20 m²/kg assumed",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "conductance of a kg of dry leaf", .unit = "10⁻³ m³/(kg s)", .digits = 2,
    .conditions = "both faces, all of it in the air",
    .model = 1e3 * both_m_s * law.sla_m2_kg,
    .low = 2.44, .high = 4.26, .scatter = 1, .stated = 5.88,
    .source = "the same",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "least conductance of leaves", .unit = "mmol/(m² s)", .digits = 1,
    .conditions = "many species",
    .model = 40.9e3 * both_m_s,
    .low = 2, .high = 20,
    .source = "Duursma and others, New Phytol., 2018",
    .seen = SEEN_MEMORY });
}

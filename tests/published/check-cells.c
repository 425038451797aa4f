/* Enzymes, fixing, oxidation and ruptured cells beside published figures. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks.h"

#include "claim.h"
#include "leaf/air.h"
#include "leaf/rates.h"
#include "trial.h"

#define LN10 2.302585092994046

/* Rates of the wet starting leaf held at a temperature, away from any wall. */
static LwState
rates_at (double temp_c,
          double water,
          double ruptured)
{
  const LwLaw law = lw_law_start ();
  const LwPart part = { .share = 1, .exposure = 1, .area = 1, .cuticle = 1, .ruptured = ruptured };
  const LwLeaf leaf = { .law = law, .fresh_water = 3.35, .n_parts = 1, .parts = &part };
  const LwConditions at = { .duration_s = 1, .pressure_pa = 101325, .air_temp_c = temp_c, .humidity = 0.5,
                            .air_m_s = 0.1, .spread_kg_m2 = 1 };
  const LwState state = { .water = water, .temp_c = temp_c, .enzyme = 1 };
  LwBoundary boundary = lw_boundary_new (&at, &leaf, &part);
  LwAround around = lw_boundary_at (&boundary, 0);
  LwState rate;

  lw_rates (&boundary, &around, &state, &rate);

  return rate;
}

static double
d_value_s (double temp_c)
{
  return -LN10 / rates_at (temp_c, 3, 0.01).enzyme;
}

void
check_enzyme (void)
{
  const struct { double temp_c, s; const char *conditions; double stated; } broccoli[] = {
    { 70, 390, "wet leaf, 70 °C", 262 },
    { 80, 97, "wet leaf, 80 °C", 36 },
    { 90, 24, "wet leaf, 90 °C", 5.5 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (broccoli); i++)
    claim ((Claim) {
      .what = "time to lose nine tenths of the enzyme", .unit = "s", .digits = 1,
      .conditions = broccoli[i].conditions,
      .model = d_value_s (broccoli[i].temp_c),
      .low = broccoli[i].s, .high = broccoli[i].s, .stated = broccoli[i].stated,
      .source = "broccoli peroxidase, Goncalves and others, J. Agric. Food Chem. 57:5370, 2009",
      .seen = i == 1 ? SEEN_CALCULATED : SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "z, warming that kills ten times faster", .unit = "K", .digits = 1,
    .conditions = "wet leaf, 75 to 85 °C",
    .model = 10 / log10 (d_value_s (75) / d_value_s (85)),
    .low = 7.1, .high = 16.5,
    .source = "apple, bayberry and broccoli enzymes (7 to 10, 13 to 14, 16.5)",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "z, warming that kills ten times faster", .unit = "K", .digits = 1,
    .conditions = "the same",
    .model = 10 / log10 (d_value_s (75) / d_value_s (85)),
    .low = 39.7, .high = 39.7, .stated = 11.9,
    .source = "tea polyphenol oxidase, an extract: Unal, Yabaci and Sener, GIDA 36:137, 2011",
    .seen = SEEN_ABSTRACT });
}

void
check_fixing (void)
{
  g_autoptr (LwTrack) steam = TRIAL (77, 10, STEP (FIX_STEAM, 2));
  g_autoptr (LwTrack) oven = TRIAL (60, 10, STEP (DRY_AIR, 2, SET (AIR_C, 255), SET (AIR_M_S, 1),
                                             SET (SPREAD_KG_M2, 0.5)));
  g_autoptr (LwTrack) drum = TRIAL (77, 10, STEP (WITHER, 300),
                                    STEP (FIX_DRUM, 2, SET (WALL_C, 270), SET (LOAD_KG, 2.3)));
  g_autoptr (LwTrack) usual = TRIAL (77, 10, STEP (WITHER, 300), STEP (FIX_DRUM, 5.5));
  g_autoptr (LwTrack) pan = TRIAL (77, 10, STEP (WITHER, 300), STEP (FIX_PAN, 25));

  claim ((Claim) {
    .what = "steam until nine tenths of the enzyme are gone", .unit = "s", .digits = 1,
    .conditions = "the starting steamer",
    .model = 60 * trial_minutes_until (steam, LW_ENZYME, 10),
    .low = 30, .high = 30, .stated = 2.6,
    .source = "taro leaf peroxidase",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "steam until one per cent is left", .unit = "s", .digits = 1,
    .conditions = "the starting steamer",
    .model = 60 * trial_minutes_until (steam, LW_ENZYME, 1),
    .low = 30, .high = 40, .stated = 4.2,
    .source = "usual steaming of Japanese green tea, a trade page",
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "hot oven until one per cent is left", .unit = "s", .digits = 1,
    .conditions = "255 °C, 1 m/s, 0.5 kg/m², 60 % water (assumed)",
    .model = 60 * trial_minutes_until (oven, LW_ENZYME, 1),
    .low = 0, .high = 20, .scatter = 5, .stated = 33.5,
    .source = "mate leaf peroxidase, J. Food Sci. 79(2):C163, 2014",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "enzyme left by a lightly filled drum", .unit = "%", .digits = 1,
    .conditions = "wall at 270 °C, 65 s, 125 kg/h (2.3 kg held; wall of 1.6 m² assumed)",
    .model = trial_at (drum, 65 / 60.0).enzyme_left_pct,
    .low = 0, .high = 5,
    .source = "Chen and others, 2016 (best for needle green tea)",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "water left by that drum", .unit = "%", .digits = 1,
    .conditions = "the same, from 75 %",
    .model = trial_at (drum, 65 / 60.0).moisture_wb_pct,
    .low = 58, .high = 64, .scatter = 1, .stated = 74.5,
    .source = "textbooks for green tea; a trade page says 60",
    .seen = SEEN_MEMORY });
  claim ((Claim) {
    .what = "water left by the pan", .unit = "%", .digits = 1,
    .conditions = "260 °C, 25 min",
    .model = trial_end (pan).moisture_wb_pct,
    .low = 58, .high = 64, .scatter = 1,
    .source = "textbooks for green tea; a trade page says 60",
    .seen = SEEN_MEMORY });
  claim ((Claim) {
    .what = "water left by the drum", .unit = "%", .digits = 1,
    .conditions = "350 °C, 5.5 min",
    .model = trial_end (usual).moisture_wb_pct,
    .low = 58, .high = 64, .scatter = 1, .stated = 71.8,
    .source = "textbooks for green tea; a trade page says 60",
    .seen = SEEN_MEMORY });
}

void
check_oxidation (void)
{
  g_autoptr (LwTrack) black = TRIAL (76, 18, STEP (WITHER, 15 * 60), STEP (ROLL, 60, SET (PRESS_KPA, 9)),
                                     STEP (REST, 12 * 60, SET (AIR_C, 26.5)));
  g_autoptr (LwTrack) white = TRIAL (76, 8, STEP (WITHER, 35 * 60, SET (AIR_C, 25), SET (HUMIDITY_PCT, 60),
                                                  SET (SPREAD_KG_M2, 0.4)));
  double k15 = rates_at (15, 1.5, 0.8).oxidation, k25 = rates_at (25, 1.5, 0.8).oxidation;
  double k35 = rates_at (35, 1.5, 0.8).oxidation;

  claim ((Claim) {
    .what = "rolled leaf from the start of rolling to 70 % oxidised", .unit = "h", .digits = 1,
    .conditions = "15 h wither, 60 min at 9 kPa, heap at 26.5 °C",
    .model = 1 + trial_minutes_until (black, LW_OXIDATION, 70) / 60,
    .low = 2, .high = 4, .scatter = 0.5,
    .source = "Jolvis Pou, J. Biosyst. Eng. 41:85, 2016 (hours); 70 to 80 % of a black tea: trade pages",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "oxidation after 3 h", .unit = "%", .digits = 1,
    .conditions = "the same",
    .model = trial_at (black, 120).oxidation_pct,
    .low = 50, .high = 90,
    .source = "loss of the chief catechin in 2 to 4 h",
    .seen = SEEN_MEMORY });
  claim ((Claim) {
    .what = "oxidation at 25 °C over that at 15 °C", .unit = "times", .digits = 2,
    .conditions = "rolled leaf",
    .model = k25 / k15,
    .low = 1.75, .high = 2.32,
    .source = "40 to 60 kJ/mol, a placeholder",
    .seen = SEEN_MEMORY });
  claim ((Claim) {
    .what = "oxidation at 35 °C over that at 25 °C", .unit = "times", .digits = 2,
    .conditions = "rolled leaf",
    .model = k35 / k25,
    .low = 1, .high = INFINITY,
    .source = "Cloughley, J. Sci. Food Agric. 31, 1980 (faster; by how much not seen)",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "oxidation of white tea", .unit = "%", .digits = 1,
    .conditions = "35 h wither at 25 °C, not rolled",
    .model = trial_end (white).oxidation_pct,
    .low = 5, .high = 30,
    .source = "four pages that disagree",
    .seen = SEEN_SECOND_HAND });
}

void
check_rupture (void)
{
  g_autoptr (LwTrack) congou = TRIAL (76, 18, STEP (WITHER, 15 * 60), STEP (ROLL, 25, SET (PRESS_KPA, 3)),
                                      STEP (ROLL, 45, SET (PRESS_KPA, 8)), STEP (ROLL, 25, SET (PRESS_KPA, 3)));
  g_autoptr (LwTrack) green = TRIAL (77, 10, STEP (WITHER, 300), STEP (FIX_DRUM, 5.5),
                                     STEP (ROLL, 12, SET (PRESS_KPA, 1)),
                                     STEP (ROLL, 18, SET (PRESS_KPA, 3)), STEP (ROLL, 18, SET (PRESS_KPA, 1)));
  double fastest = 0, at_pct = 0;

  for (double pct = 10; pct <= 77; pct += 0.25)
    {
      double wilt = rates_at (22, lw_dry_basis (pct), 0.01).wilt;

      if (wilt > fastest)
        fastest = wilt, at_pct = pct;
    }

  claim ((Claim) {
    .what = "cells ruptured, black tea", .unit = "%", .digits = 1,
    .conditions = "95 min of rolling, light, firm, light (3, 8, 3 kPa)",
    .model = trial_end (congou).rupture_pct,
    .low = 70, .high = 80, .scatter = 5,
    .source = "trade page cy260.com",
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "cells ruptured, green tea", .unit = "%", .digits = 1,
    .conditions = "drum, then 48 min of rolling: no weight, light, none (1, 3, 1 kPa)",
    .model = trial_end (green).rupture_pct,
    .low = 40, .high = 65, .scatter = 5,
    .source = "trade pages 25820.com (40 to 50) and 368tea.com (minutes); textbooks from memory (45 to 65)",
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "moisture at which wilting breaks most cells", .unit = "%", .digits = 0,
    .conditions = "22 °C",
    .model = at_pct,
    .low = 55, .high = 55, .scatter = 3, .stated = 24,
    .source = "Sanderson, J. Sci. Food Agric. 19:637, 1968 (membranes leak most)",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "cells ruptured by half an hour of heat", .unit = "%", .digits = 1,
    .conditions = "wet leaf held at 60 °C",
    .model = 100 * (1 - exp (-1800 * rates_at (60, 3, 0.01).heat)),
    .low = 40, .high = 100, .stated = 10.7,
    .source = "elodea above 52 °C: cells dead at once",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "cells ruptured by half an hour of heat", .unit = "%", .digits = 1,
    .conditions = "wet leaf held at 40 °C",
    .model = 100 * (1 - exp (-1800 * rates_at (40, 3, 0.01).heat)),
    .low = 10, .high = 100, .stated = 0.01,
    .source = "Sanderson, 1968 (killed at 40 °C, membranes leak much more; 10 is our reading of it)",
    .seen = SEEN_ABSTRACT });
}

void
check_laws (void)
{
  const LwLaw law = lw_law_start ();

  claim ((Claim) {
    .what = "z of roasting", .unit = "K", .digits = 0,
    .conditions = "near 120 °C",
    .model = law.roast_z_k,
    .low = 19, .high = 47,
    .source = "dry sugar and amino acid 19, peas 29, pyrazines 47; none of tea",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "z of rupture by heat", .unit = "K", .digits = 0,
    .conditions = "near 90 °C",
    .model = law.heat_z_k,
    .low = 25, .high = 75,
    .source = "softening of asparagus 25 to 33, of cabbage leaf 75",
    .seen = SEEN_CALCULATED });
}

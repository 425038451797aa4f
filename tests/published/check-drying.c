/* Drying in hot air and in the sun beside published figures. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "checks.h"

#include "claim.h"
#include "leaf/air.h"
#include "leaf/rates.h"
#include "trial.h"

/* Withered to about 69 % and rolled hard, as black tea goes to the dryer. */
#define ROLLED STEP (WITHER, 480, SET (HUMIDITY_PCT, 60), SET (SPREAD_KG_M2, 0.6)), STEP (ROLL, 60, SET (PRESS_KPA, 9))

/* Activation energy from two rates at two temperatures, kJ/mol. */
static double
energy_kj_mol (double low_rate,
               double low_c,
               double high_rate,
               double high_c)
{
  return 1e-3 * LW_GAS * log (high_rate / low_rate) / (1 / (low_c + LW_ZERO_C) - 1 / (high_c + LW_ZERO_C));
}

static LwTrack *
hot_air (double temp_c,
         double air_m_s,
         double spread_kg_m2)
{
  return TRIAL (76, 8, ROLLED, STEP (DRY_AIR, 120, SET (AIR_C, temp_c), SET (AIR_M_S, air_m_s),
                                     SET (SPREAD_KG_M2, spread_kg_m2)));
}

/* Where leaf with so many cells ruptured and so much water neither warms nor cools, in outside air warmed. */
static double
steady_c (double ruptured,
          double water,
          double air_c)
{
  const LwPart part = { .share = 1, .exposure = 1, .area = 1, .cuticle = 1, .ruptured = ruptured };
  const LwLeaf leaf = { .law = lw_law_start (), .fresh_water = 3.35, .n_parts = 1, .parts = &part };
  const LwConditions at = { .duration_s = 1, .pressure_pa = 101325, .air_temp_c = air_c, .air_m_s = 0.5,
                            .vapour_pa = 0.60 * lw_air_saturation_pa (25), .spread_kg_m2 = 0.2 };
  LwBoundary boundary = lw_boundary_new (&at, &leaf, &part);
  LwAround around = lw_boundary_at (&boundary, 0);
  double low = 0, high = air_c;

  for (int i = 0; i < 50; i++)
    {
      LwState state = { .water = water, .temp_c = 0.5 * (low + high) };

      if (lw_rates_flows (&boundary, &around, &state).stored_w > 0)
        low = state.temp_c;
      else
        high = state.temp_c;
    }

  return low;
}

/* Moisture of the blades alone, without stems (the last part of the starting leaf). */
static double
blades_pct (const LwTrack *track,
            double         minutes)
{
  double water = 0, share = 0;

  for (guint part = 0; part + 1 < track->n_parts; part++)
    {
      share += track->parts[part].share;
      water += track->parts[part].share * lw_track_state_at (track, track->n_steps - 1, part, 60 * minutes).water;
    }

  return lw_wet_basis_pct (water / share);
}

void
check_drying (void)
{
  g_autoptr (LwTrack) fluid = hot_air (130, 1, 0.2);
  g_autoptr (LwTrack) cool = hot_air (80, 0.5, 0.2);
  g_autoptr (LwTrack) hot = hot_air (120, 0.5, 0.2);
  g_autoptr (LwTrack) green = TRIAL (77, 8, STEP (WITHER, 300), STEP (FIX_PAN, 25), STEP (ROLL, 20, SET (PRESS_KPA, 3)),
                                     STEP (DRY_AIR, 240, SET (AIR_C, 80), SET (AIR_M_S, 1.09),
                                           SET (SPREAD_KG_M2, 0.2)));
  double k80_h = trial_lewis_h (cool, 0.01), k120_h = trial_lewis_h (hot, 0.01);

  claim ((Claim) {
    .what = "black tea after 20 min", .unit = "%", .digits = 1,
    .conditions = "130 °C, 1 m/s, every leaf in the air, from 69 %",
    .model = trial_at (fluid, 20).moisture_wb_pct,
    .low = 2.8, .high = 2.8, .scatter = 2, .stated = 5.5,
    .source = "fluid-bed trial in Bangladesh, 2013, AgEcon Search 209765",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "its blades after 20 min, stems left out", .unit = "%", .digits = 1,
    .conditions = "the same",
    .model = blades_pct (fluid, 20),
    .low = 2.8, .high = 2.8, .scatter = 2, .stated = 0.4,
    .source = "the same trial",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "Lewis constant of drying to a tenth", .unit = "1/h", .digits = 1,
    .conditions = "the same",
    .model = trial_lewis_h (fluid, 0.01),
    .low = 13.1, .high = 31.05, .scatter = 2,
    .source = "the same trial: 13.1 from its ends, 31 as printed",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "activation energy of drying", .unit = "kJ/mol", .digits = 1,
    .conditions = "rolled leaf, thin, 80 and 120 °C, 0.5 m/s",
    .model = energy_kj_mol (k80_h, 80, k120_h, 120),
    .low = 27.7, .high = 27.7, .scatter = 8, .stated = 19.2,
    .source = "Panchariya and others, J. Food Eng. 52:349, 2002, from its diffusivities (it prints 406)",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "steady temperature of wet rolled leaf", .unit = "°C", .digits = 1,
    .conditions = "100 °C, 0.5 m/s, air of 25 °C and 60 % warmed",
    .model = steady_c (0.9, 1.9, 100),
    .low = 36.1, .high = 36.1, .scatter = 2, .stated = 49.2,
    .source = "its wet bulb, ASHRAE Fundamentals 2017",
    .seen = SEEN_CALCULATED });
  claim ((Claim) {
    .what = "green tea until 5 % water", .unit = "min", .digits = 0,
    .conditions = "80 °C, 1.09 m/s, every leaf in the air",
    .model = trial_minutes_until (green, LW_MOISTURE, 5),
    .low = -INFINITY, .high = 85,
    .source = "vibrated fluid bed, 500 g to constant mass; authors not seen",
    .seen = SEEN_ABSTRACT });
}

void
check_sun (void)
{
  g_autoptr (LwTrack) mat = TRIAL (77, 4, STEP (WITHER, 60), STEP (FIX_PAN, 25), STEP (ROLL, 12, SET (PRESS_KPA, 5)),
                                   STEP (REST, 200, SET (AIR_C, 22)), STEP (DRY_SUN, 360));
  double hottest_c = 0;

  for (guint minute = 0; minute <= 360 && trial_at (mat, minute).moisture_wb_pct > 10; minute++)
    hottest_c = MAX (hottest_c, trial_at (mat, minute).leaf_temp_c);

  claim ((Claim) {
    .what = "pan-fixed leaf on the mat until 10 % water", .unit = "h", .digits = 1,
    .conditions = "clear sun from 9 h, 0.6 kg/m²",
    .model = trial_minutes_until (mat, LW_MOISTURE, 10) / 60,
    .low = 5, .high = 6, .scatter = 1, .stated = 0.8,
    .source = "sun-dried raw tea, trade pages puer10000.com, blog.teadrops.net",
    .seen = SEEN_SECOND_HAND });
  claim ((Claim) {
    .what = "warmest it gets until then", .unit = "°C", .digits = 1,
    .conditions = "the same",
    .model = hottest_c,
    .low = 30, .high = 40, .scatter = 5,
    .source = "the same",
    .seen = SEEN_SECOND_HAND });
}

void
check_speeds (void)
{
  g_autoptr (LwTrack) whole = TRIAL (76, 8, STEP (WITHER, 600),
                                     STEP (DRY_AIR, 1440, SET (AIR_C, 60), SET (SPREAD_KG_M2, 0.2)));
  g_autoptr (LwTrack) rolled = hot_air (60, 0.5, 0.2);
  g_autoptr (LwTrack) cool = TRIAL (76, 8, STEP (WITHER, 4320, SET (AIR_C, 20), SET (HUMIDITY_PCT, 60),
                                                 SET (AIR_M_S, 1.2), SET (SPREAD_KG_M2, 0.2)));
  g_autoptr (LwTrack) warm = TRIAL (76, 8, STEP (WITHER, 4320, SET (AIR_C, 35), SET (HUMIDITY_PCT, 60),
                                                 SET (AIR_M_S, 1.2), SET (SPREAD_KG_M2, 0.2)));

  claim ((Claim) {
    .what = "rolled leaf dries faster than whole leaf", .unit = "times", .digits = 1,
    .conditions = "thin, 60 °C, to a tenth",
    .model = trial_lewis_h (rolled, 0.02) / trial_lewis_h (whole, 0.02),
    .low = 1.5, .high = 4,
    .source = "crimped and crushed alfalfa",
    .seen = SEEN_ABSTRACT });
  claim ((Claim) {
    .what = "activation energy of withering", .unit = "kJ/mol", .digits = 1,
    .conditions = "20 and 35 °C at 60 % humidity, 1.2 m/s, thin",
    .model = energy_kj_mol (1 / trial_minutes_until (cool, LW_MOISTURE, 60), 20, 1
                / trial_minutes_until (warm, LW_MOISTURE, 60), 35),
    .low = 24.7, .high = 26.6, .scatter = 8, .stated = 41.8,
    .source = "Botheju and others, J. Natn. Sci. Found. Sri Lanka 39:61, 2011",
    .seen = SEEN_ABSTRACT });
}

/* A leaf and steps for the tests of this floor, in SI: the starting large leaf on
 * ordinary settings of the trade (common practice, no source). */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/air.h"
#include "leaf/march.h"

static const LwPart sample_parts[] = {
  { .share = 0.55, .exposure = 0.80, .area = 1, .cuticle = 1, .ruptured = 0.005 },
  { .share = 0.25, .exposure = 1.55, .area = 1, .cuticle = 1, .ruptured = 0.006 },
  { .share = 0.08, .exposure = 1.05, .area = 1, .cuticle = 1.8, .ruptured = 0.05 },
  { .share = 0.12, .exposure = 0.75, .area = 0.40, .cuticle = 1, .ruptured = 0.005 },
};

static inline LwLeaf
sample_leaf (void)
{
  return (LwLeaf) {
    .law = lw_law_start (),
    .fresh_water = lw_dry_basis (77),
    .fresh_green = 0.25,
    .fresh_temp_c = 22,
    .n_parts = G_N_ELEMENTS (sample_parts),
    .parts = sample_parts,
  };
}

#define SAMPLE_STEPS 7
enum { SAMPLE_WITHER, SAMPLE_PAN, SAMPLE_ROLL, SAMPLE_SUN, SAMPLE_STEAM, SAMPLE_HOT_AIR, SAMPLE_COVERED };

static inline void
sample_steps (LwConditions steps[SAMPLE_STEPS])
{
  const LwConditions rows[SAMPLE_STEPS] = {
    [SAMPLE_WITHER] = { .duration_s = 18 * 3600, .air_temp_c = 22, .humidity = 0.68, .air_m_s = 0.15,
                        .spread_kg_m2 = 1.2, .turning_h = 0.1 },
    [SAMPLE_PAN] = { .duration_s = 25 * 60, .air_temp_c = 22, .humidity = 0.68, .air_m_s = 0.4, .toss = 0.12,
                     .wall_c = 260, .wall_w_m2k = 82, .wall_m2 = 0.25, .load_kg = 4, .touch_s = 1.2,
                     .touch_share = 0.15, .hot_air = 0.10 },
    [SAMPLE_ROLL] = { .duration_s = 180, .air_temp_c = 25, .humidity = 0.70, .air_m_s = 0.2,
                      .spread_kg_m2 = 1.5, .mixed = 0.95, .press_kpa = 3 },
    [SAMPLE_SUN] = { .duration_s = 8 * 3600, .air_temp_c = 29, .humidity = 0.45, .air_m_s = 0.8,
                     .spread_kg_m2 = 0.6, .turning_h = 0.5, .sun_w_m2 = 600, .sun_share = 1 },
    [SAMPLE_STEAM] = { .duration_s = 45, .humidity = 1, .air_m_s = 0.3, .spread_kg_m2 = 1,
                       .steam_w_m2k = 3000 },
    [SAMPLE_HOT_AIR] = { .duration_s = 3600, .air_temp_c = 90, .vapour_pa = 1800, .air_m_s = 0.5,
                         .spread_kg_m2 = 3 },
    [SAMPLE_COVERED] = { .duration_s = 19 * 3600, .air_temp_c = 22, .humidity = 0.45, .air_m_s = 0.3,
                         .spread_kg_m2 = 1, .cover = 0.7 },
  };

  for (guint i = 0; i < SAMPLE_STEPS; i++)
    {
      steps[i] = rows[i];
      steps[i].pressure_pa = lw_air_pressure_pa (1250);
    }
  steps[SAMPLE_STEAM].air_temp_c = lw_air_boiling_c (steps[SAMPLE_STEAM].pressure_pa);
}

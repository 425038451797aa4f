/* The leaf model's equations; docs/model.md derives them. Water and heat first,
 * then what they do to enzymes, oxidation, cells, roast, green note and shape. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/rates.h"

#include "leaf/air.h"
#include "leaf/film.h"
#include "leaf/soft.h"
#include "leaf/sorption.h"

#define LN10 2.302585092994046
#define LEWIS_2_3 0.90        /* Le^(2/3) of water vapour in air */
#define TOUCH_W_M2K 300.0     /* film between wall and leaf skin, assumed */
#define MILD_J_MOL 40e3       /* activation energy of wilting and of yellowing, assumed */
#define LEAST_WATER 1e-6
#define SHARED_J_KG 2.43e6    /* latent heat near 30 C; one value, so that what parts give and take is the same */

static double
arrhenius (double energy_j_mol,
           double kelvin,
           double reference_c)
{
  return exp (energy_j_mol / LW_GAS * (1 / (reference_c + LW_ZERO_C) - 1 / kelvin));
}

static double
logistic (double x)
{
  return 1 / (1 + exp (-x));
}

static double
rupture (const LwBoundary *b,
         const LwState    *s)
{
  return 1 - b->intact * exp (-(s->wilt + s->heat + s->roll));
}

static LwFlows
flows (const LwBoundary *b,
       const LwAround   *air,
       const LwState    *s,
       double            water,
       double            ruptured)
{
  const LwLaw *law = b->law;
  double pressure = b->at.pressure_pa;
  double area = b->area_m2_kg * (1 - law->shrink * s->twist);
  double activity = lw_sorption_activity (law, water, s->temp_c);
  double skin = lw_air_below_boiling_pa (activity * lw_air_saturation_pa (s->temp_c), pressure);
  double held = air->vapour_pa;
  double film = air->film_w_m2k / (LEWIS_2_3 * lw_film_air_j_m3k (air->temp_c, pressure));
  double leaf = law->cut_m_s * b->cuticle * (1 + law->cut_rupture * pow (ruptured, 1.2))
                * water / (water + law->falling_water) * (1 + law->falling_water / b->fresh_water);
  double mean_k = 0.5 * (s->temp_c + air->temp_c) + LW_ZERO_C;
  LwFlows f = { 0 };

  if (b->at.cover > 0)
    held += 0.85 * b->at.cover * lw_soft_positive (skin - held, 1.0);

  f.evaporated_kg_s = film * leaf / (film + leaf) * area * pressure * LW_WATER_KG_MOL
                      / (LW_GAS * mean_k) * log ((pressure - held) / (pressure - skin));
  f.latent_w = lw_air_latent_j_kg (s->temp_c) * f.evaporated_kg_s;
  f.from_air_w = air->film_w_m2k * area * (air->temp_c - s->temp_c);
  f.from_sun_w = b->sun_m2_kg * air->sun_w_m2;
  f.from_wall_w = b->wall_w_kgk * (water + 0.6) / (water + 0.9) * (b->at.wall_c - s->temp_c);

  if (b->at.steam_w_m2k > 0)
    {
      f.from_steam_w = b->at.steam_w_m2k * area * lw_soft_positive (b->boiling_c - s->temp_c, 0.01);
      f.condensed_kg_s = f.from_steam_w / lw_air_latent_j_kg (b->boiling_c);
    }

  if (air->activity > 0)
    {
      f.shared_kg_s = law->even_s * b->at.cover * (air->activity - activity);
      f.from_shared_w = SHARED_J_KG * f.shared_kg_s;
    }

  f.stored_w = f.from_air_w + f.from_sun_w + f.from_wall_w + f.from_steam_w + f.from_shared_w - f.latent_w;

  return f;
}

/* Minutes at 120 C equivalent, per second; the share of time on the wall counts by the skin. */
static double
roasting (const LwBoundary *b,
          const LwState    *s,
          double            water)
{
  double z = LN10 / b->law->roast_z_k;
  double rate = exp (z * (s->temp_c - 120));
  double dryness = 0.05 + 0.95 * exp (-water / 0.25);

  if (b->at.touch_share > 0)
    {
      double wet = lw_soft_min (water / 2, 1, 0.02);
      double taken = lw_film_skin (TOUCH_W_M2K, b->at.touch_s, 0.12 + 0.38 * wet, 1.2e6 + 2.3e6 * wet);
      double skin_c = lw_soft_min (s->temp_c + (b->at.wall_c - s->temp_c) * taken, 260, 1.0);

      rate += b->at.touch_share * (exp (z * (skin_c - 120)) - rate);
    }

  return rate * dryness / 60;
}

void
lw_rates_meet (const LwBoundary *boundaries,
               const LwState    *states,
               guint             n,
               LwAround         *around)
{
  double activity = 0;

  for (guint i = 0; i < n && n > 1 && boundaries->at.cover > 0; i++)
    activity += boundaries[i].share * lw_sorption_activity (boundaries[i].law, fmax (states[i].water, LEAST_WATER),
                                                            states[i].temp_c);
  around->activity = activity;
}

LwFlows
lw_rates_flows (const LwBoundary *b,
                const LwAround   *air,
                const LwState    *s)
{
  return flows (b, air, s, fmax (s->water, LEAST_WATER), rupture (b, s));
}

void
lw_rates (const LwBoundary *b,
          const LwAround   *air,
          const LwState    *s,
          LwState          *rate)
{
  const LwLaw *law = b->law;
  double water = fmax (s->water, LEAST_WATER);
  double kelvin = s->temp_c + LW_ZERO_C;
  double ruptured = rupture (b, s);
  double press = b->at.press_kpa;
  double stress = lw_soft_positive (law->wilt_water - water, 0.02) / law->wilt_water;
  double mild = arrhenius (MILD_J_MOL, kelvin, 25);
  double wetness = water / (water + law->oxidise_water);
  double thermal = exp (LN10 * (s->temp_c - 90) / law->heat_z_k);
  LwFlows f = flows (b, air, s, water, ruptured);

  rate->water = f.condensed_kg_s + f.shared_kg_s - f.evaporated_kg_s;
  rate->temp_c = f.stored_w / (law->c_dry_j_kgk + water * law->c_water_j_kgk);

  rate->enzyme = -s->enzyme * (law->age_s * stress
                               + law->inactivate_s * arrhenius (law->inactivate_j_mol, kelvin, 80)
                                   * (1 - 0.5 * exp (-water / 0.4)));
  rate->oxidation = (law->oxidise_s * arrhenius (law->oxidise_j_mol, kelvin, 27) * s->enzyme
                     + law->yellow_s * arrhenius (MILD_J_MOL, kelvin, 45))
                    * ruptured * wetness * (1 - s->oxidation);

  rate->wilt = law->wilt_s * stress * lw_soft_min (water / 0.3, 1, 0.02) * mild
               * logistic ((50 - s->temp_c) / 3);
  rate->heat = law->heat_s * thermal * lw_soft_min (water / 0.5, 1, 0.02)
               * logistic ((s->temp_c - 55) / 3);
  rate->roll = 0;
  rate->twist = 0;
  rate->broken = 0;

  if (press > 0)
    {
      double softened = 1 + law->soft * (1 - exp (-s->heat));
      double wet = lw_soft_max (lw_soft_min ((water - 0.25) / 0.65, 1, 0.02), 0.05, 0.02);

      rate->roll = law->roll_s_kpa * press * softened * wet;
      rate->twist = law->twist_s * sqrt (press * softened) * wet * (1 - s->twist);
      rate->broken = law->break_s_kpa * press
                     * lw_soft_positive (law->break_water - water, 0.01) / law->break_water
                     * (1 - s->broken);
    }

  rate->roast_min = roasting (b, s, water);
  rate->green = -law->green_s * exp (LN10 * (s->temp_c - 80) / law->green_z_k) * s->green
                + law->green_form * (rate->roll + rate->wilt) * s->enzyme * (1 - ruptured);
}

/* The leaf model's rates: the terms (terms.h; docs/model.md derives them) multiplied up and added. Water
 * and heat first, then what they do to enzymes, oxidation, cells, roast, green note and shape. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/rates.h"

#include "leaf/terms.h"

#define GREEN_FASTEST 0.1     /* per second; faster would be gone as soon, and stiff for nothing */
#define SHARED_J_KG 2.43e6    /* latent heat near 30 C; one value, so that what parts give and take is the same */

static LwFlows
flows (const LwNow *now)
{
  const LwBoundary *b = now->b;
  const LwAround *air = now->air;
  double water = now->water, temp_c = now->s->temp_c;
  double evaporated[LW_N_EVAPORATED], condensed[LW_N_CONDENSED], shared[LW_N_SHARED];
  LwFlows f = { 0 };

  lw_term_evaporated (now, evaporated);
  f.evaporated_kg_s = lw_term_product (evaporated, LW_N_EVAPORATED);
  f.latent_w = lw_air_latent_j_kg (temp_c) * f.evaporated_kg_s;
  f.from_air_w = air->film_w_m2k * now->area_m2_kg * (air->temp_c - temp_c);
  f.from_sun_w = b->sun_m2_kg * air->sun_w_m2;
  f.from_wall_w = b->wall_w_kgk * (water + 0.6) / (water + 0.9) * (air->wall_c - temp_c);

  if (b->at.steam_w_m2k > 0)
    {
      lw_term_condensed (now, condensed);
      f.condensed_kg_s = lw_term_product (condensed, LW_N_CONDENSED);
      f.from_steam_w = lw_air_latent_j_kg (b->boiling_c) * f.condensed_kg_s;
    }

  if (air->activity > 0)
    {
      lw_term_shared (now, shared);
      f.shared_kg_s = lw_term_product (shared, LW_N_SHARED);
      f.from_shared_w = SHARED_J_KG * f.shared_kg_s;
    }

  f.stored_w = f.from_air_w + f.from_sun_w + f.from_wall_w + f.from_steam_w + f.from_shared_w - f.latent_w;

  return f;
}

static double
roasting (const LwNow *now)
{
  double leaf[LW_N_ROASTED], wall[LW_N_TOUCHED];

  lw_term_roasted (now, leaf);
  if (now->b->at.touch_share <= 0)
    return lw_term_product (leaf, LW_N_ROASTED);

  lw_term_touched (now, leaf[LW_N_ROASTED - 1], wall);

  return lw_term_product (leaf, LW_N_ROASTED) + lw_term_product (wall, LW_N_TOUCHED);
}

void
lw_rates_meet (const LwBoundary *boundaries,
               const LwState    *states,
               guint             n,
               LwAround         *around)
{
  double activity = 0, met = 0;

  for (guint i = 0; i < n && n > 1 && boundaries->at.cover > 0; i++)
    {
      double meets = boundaries[i].share * boundaries[i].meets;

      activity += meets * lw_sorption_activity (boundaries[i].law, fmax (states[i].water, LW_LEAST_WATER),
                                                states[i].temp_c);
      met += meets;
    }
  around->activity = met > 0 ? activity / met : 0;
}

LwFlows
lw_rates_flows (const LwBoundary *b,
                const LwAround   *air,
                const LwState    *s)
{
  LwNow now = lw_now (b, air, s);

  return flows (&now);
}

static void
cells (const LwNow *now,
       LwState     *rate)
{
  double stress = lw_term_stress (now), mild = lw_term_mild (now), wetness = lw_term_wetness (now);
  double aged[LW_N_AGED], denatured[LW_N_DENATURED], oxidised[LW_N_OXIDISED], yellowed[LW_N_YELLOWED];
  double wilted[LW_N_WILTED], heated[LW_N_HEATED];

  lw_term_aged (now, stress, aged);
  lw_term_denatured (now, denatured);
  rate->enzyme = -(lw_term_product (aged, LW_N_AGED) + lw_term_product (denatured, LW_N_DENATURED));

  lw_term_oxidised (now, wetness, oxidised);
  lw_term_yellowed (now, wetness, mild, yellowed);
  rate->oxidation = lw_term_product (oxidised, LW_N_OXIDISED) + lw_term_product (yellowed, LW_N_YELLOWED);

  lw_term_wilted (now, stress, mild, wilted);
  lw_term_heated (now, heated);
  rate->wilt = lw_term_product (wilted, LW_N_WILTED);
  rate->heat = lw_term_product (heated, LW_N_HEATED);
}

/* What rolling does: rupture, twist, broken leaf. */
static void
pressing (const LwNow *now,
          LwState     *rate)
{
  const LwLaw *law = now->b->law;
  double press = now->b->at.press_kpa, rolled[LW_N_ROLLED], softened, wet;

  rate->roll = rate->twist = rate->broken = 0;
  if (press <= 0)
    return;

  lw_term_rolled (now, rolled);
  softened = rolled[2];
  wet = rolled[3];
  rate->roll = lw_term_product (rolled, LW_N_ROLLED);
  rate->twist = law->twist_s * sqrt (press * softened) * wet * (1 - now->s->twist);
  rate->broken = law->break_s_kpa * press
                 * lw_soft_positive (law->break_water - now->water, 0.01) / law->break_water
                 * (1 - now->s->broken);
}

void
lw_rates (const LwBoundary *b,
          const LwAround   *air,
          const LwState    *s,
          LwState          *rate)
{
  const LwLaw *law = b->law;
  LwNow now = lw_now (b, air, s);
  LwFlows f = flows (&now);

  rate->water = f.condensed_kg_s + f.shared_kg_s - f.evaporated_kg_s;
  rate->temp_c = f.stored_w / (law->c_dry_j_kgk + now.water * law->c_water_j_kgk);

  cells (&now, rate);
  pressing (&now, rate);
  rate->roast_min = roasting (&now);
  rate->green = -lw_soft_min (law->green_s * exp (LW_LN10 * (s->temp_c - 80) / law->green_z_k), GREEN_FASTEST, 1e-5)
                * s->green
                + law->green_form * (rate->roll + rate->wilt) * s->enzyme * (1 - now.ruptured);
}

/* Each way in which the leaf changes, as factors whose product is its rate: the equations, written
 * once. rates.c multiplies them up, factors.c shows them. Inline, for rates.c is the hot path. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/air.h"
#include "leaf/film.h"
#include "leaf/rates.h"
#include "leaf/soft.h"
#include "leaf/sorption.h"

#define LW_LN10 2.302585092994046
#define LW_LEWIS_2_3 0.90       /* Le^(2/3) of water vapour in air */
#define LW_TOUCH_W_M2K 300.0    /* film between wall and leaf skin, assumed */
#define LW_MILD_J_MOL 40e3      /* activation energy of wilting and of yellowing, assumed */
#define LW_LEAST_WATER 1e-6

/* One part at one moment, and what several terms need of it. */
typedef struct
{
  const LwBoundary *b;
  const LwAround *air;
  const LwState *s;
  double water;
  double kelvin;
  double ruptured;
  double area_m2_kg;  /* what meets the air */
  double activity;
} LwNow;

static inline double
lw_term_product (const double *factors,
                 guint         n)
{
  double product = factors[0];

  for (guint i = 1; i < n; i++)
    product *= factors[i];

  return product;
}

static inline double
lw_term_arrhenius (double energy_j_mol,
                   double kelvin,
                   double reference_c)
{
  return exp (energy_j_mol / LW_GAS * (1 / (reference_c + LW_ZERO_C) - 1 / kelvin));
}

static inline double
lw_term_logistic (double x)
{
  return 1 / (1 + exp (-x));
}

static inline LwNow
lw_now (const LwBoundary *b,
        const LwAround   *air,
        const LwState    *s)
{
  double water = fmax (s->water, LW_LEAST_WATER);

  return (LwNow) {
    .b = b, .air = air, .s = s,
    .water = water,
    .kelvin = s->temp_c + LW_ZERO_C,
    .ruptured = 1 - b->intact * exp (-(s->wilt + s->heat + s->roll)),
    .area_m2_kg = b->area_m2_kg * (1 - b->law->shrink * s->twist),
    .activity = lw_sorption_activity (b->law, water, s->temp_c),
  };
}

/* Water, kg per kg dry and s. */

#define LW_N_EVAPORATED 7
#define LW_N_CONDENSED 3
#define LW_N_SHARED 3

/* Skin of a fresh leaf, the part's own, opened by rupture, water left, film of air, surface, pull. */
static inline void
lw_term_evaporated (const LwNow *now,
                    double       f[LW_N_EVAPORATED])
{
  const LwLaw *law = now->b->law;
  const LwAround *air = now->air;
  double pressure = now->b->at.pressure_pa, held = air->vapour_pa;
  double skin = lw_air_below_boiling_pa (now->activity * lw_air_saturation_pa (now->s->temp_c), pressure);
  double film = air->film_w_m2k / (LW_LEWIS_2_3 * lw_film_air_j_m3k (air->temp_c, pressure));
  double mean_k = 0.5 * (now->s->temp_c + air->temp_c) + LW_ZERO_C;

  if (now->b->at.cover > 0)
    held += 0.85 * now->b->at.cover * lw_soft_positive (skin - held, 1.0);

  f[0] = law->cut_m_s;
  f[1] = now->b->cuticle;
  f[2] = 1 + law->cut_rupture * pow (now->ruptured, 1.2);
  f[3] = now->water / (now->water + law->falling_water) * (1 + law->falling_water / now->b->fresh_water);
  f[4] = film / (film + f[0] * f[1] * f[2] * f[3]);
  f[5] = now->area_m2_kg;
  f[6] = pressure * LW_WATER_KG_MOL / (LW_GAS * mean_k) * log ((pressure - held) / (pressure - skin));
}

/* Steam's film over its latent heat, surface, how much colder the leaf is. */
static inline void
lw_term_condensed (const LwNow *now,
                   double       f[LW_N_CONDENSED])
{
  f[0] = now->b->at.steam_w_m2k / lw_air_latent_j_kg (now->b->boiling_c);
  f[1] = now->area_m2_kg;
  f[2] = lw_soft_positive (now->b->boiling_c - now->s->temp_c, 0.01);
}

/* Pace, cover over what meets its air, how much damper that is. */
static inline void
lw_term_shared (const LwNow *now,
                double       f[LW_N_SHARED])
{
  f[0] = now->b->law->even_s;
  f[1] = now->b->at.cover * now->b->meets;
  f[2] = now->air->activity > 0 ? now->air->activity - now->activity : 0;
}

/* Enzyme, loss per s. */

#define LW_N_AGED 3
#define LW_N_DENATURED 4

static inline double
lw_term_stress (const LwNow *now)
{
  return lw_soft_positive (now->b->law->wilt_water - now->water, 0.02) / now->b->law->wilt_water;
}

/* Pace, stress, enzyme. */
static inline void
lw_term_aged (const LwNow *now,
              double       stress,
              double       f[LW_N_AGED])
{
  f[0] = now->b->law->age_s;
  f[1] = stress;
  f[2] = now->s->enzyme;
}

/* Pace at 80 C, warmth, water, enzyme. */
static inline void
lw_term_denatured (const LwNow *now,
                   double       f[LW_N_DENATURED])
{
  f[0] = now->b->law->inactivate_s;
  f[1] = lw_term_arrhenius (now->b->law->inactivate_j_mol, now->kelvin, 80);
  f[2] = 1 - 0.5 * exp (-now->water / 0.4);
  f[3] = now->s->enzyme;
}

/* Oxidation, per s. */

#define LW_N_OXIDISED 6
#define LW_N_YELLOWED 5

static inline double
lw_term_mild (const LwNow *now)
{
  return lw_term_arrhenius (LW_MILD_J_MOL, now->kelvin, 25);
}

static inline double
lw_term_wetness (const LwNow *now)
{
  return now->water / (now->water + now->b->law->oxidise_water);
}

/* Pace at 27 C, warmth, enzyme, mixing, water, what is left to oxidise. */
static inline void
lw_term_oxidised (const LwNow *now,
                  double       wetness,
                  double       f[LW_N_OXIDISED])
{
  f[0] = now->b->law->oxidise_s;
  f[1] = lw_term_arrhenius (now->b->law->oxidise_j_mol, now->kelvin, 27);
  f[2] = now->s->enzyme;
  f[3] = now->ruptured;
  f[4] = wetness;
  f[5] = 1 - now->s->oxidation;
}

/* Pace at 45 C, warmth, mixing, water, what is left to oxidise. */
static inline void
lw_term_yellowed (const LwNow *now,
                  double       wetness,
                  double       mild,
                  double       f[LW_N_YELLOWED])
{
  f[0] = now->b->law->yellow_s;
  f[1] = mild * lw_term_arrhenius (LW_MILD_J_MOL, 25 + LW_ZERO_C, 45);
  f[2] = now->ruptured;
  f[3] = wetness;
  f[4] = 1 - now->s->oxidation;
}

/* Exposure to rupture, per s. */

#define LW_N_WILTED 5
#define LW_N_HEATED 4
#define LW_N_ROLLED 4

/* Pace at 25 C, stress, water, warmth, not yet too hot for it. */
static inline void
lw_term_wilted (const LwNow *now,
                double       stress,
                double       mild,
                double       f[LW_N_WILTED])
{
  f[0] = now->b->law->wilt_s;
  f[1] = stress;
  f[2] = lw_soft_min (now->water / 0.3, 1, 0.02);
  f[3] = mild;
  f[4] = lw_term_logistic ((50 - now->s->temp_c) / 3);
}

/* Pace at 90 C, warmth, water, hot enough for it. */
static inline void
lw_term_heated (const LwNow *now,
                double       f[LW_N_HEATED])
{
  f[0] = now->b->law->heat_s;
  f[1] = exp (LW_LN10 * (now->s->temp_c - 90) / now->b->law->heat_z_k);
  f[2] = lw_soft_min (now->water / 0.5, 1, 0.02);
  f[3] = lw_term_logistic ((now->s->temp_c - 55) / 3);
}

/* Pace of 1 kPa, pressure, softened by heat, water. */
static inline void
lw_term_rolled (const LwNow *now,
                double       f[LW_N_ROLLED])
{
  f[0] = now->b->law->roll_s_kpa;
  f[1] = now->b->at.press_kpa;
  f[2] = 1 + now->b->law->soft * (1 - exp (-now->s->heat));
  f[3] = lw_soft_max (lw_soft_min ((now->water - 0.25) / 0.65, 1, 0.02), 0.05, 0.02);
}

/* Roast, minutes at 120 C equivalent, per s. The share of time on the wall counts by the skin. */

#define LW_N_ROASTED 4
#define LW_N_TOUCHED 4

/* Pace at 120 C, warmth, share of the time off the wall, dryness. */
static inline void
lw_term_roasted (const LwNow *now,
                 double       f[LW_N_ROASTED])
{
  f[0] = 1.0 / 60;
  f[1] = exp (LW_LN10 / now->b->law->roast_z_k * (now->s->temp_c - 120));
  f[2] = 1 - now->b->at.touch_share;
  f[3] = 0.05 + 0.95 * exp (-now->water / 0.25);
}

/* Pace at 120 C, warmth of the skin, share of the time on the wall, dryness. */
static inline void
lw_term_touched (const LwNow *now,
                 double       dryness,
                 double       f[LW_N_TOUCHED])
{
  double wet = lw_soft_min (now->water / 2, 1, 0.02);
  double taken = lw_film_skin (LW_TOUCH_W_M2K, now->b->at.touch_s, 0.12 + 0.38 * wet, 1.2e6 + 2.3e6 * wet);
  double skin_c = lw_soft_min (now->s->temp_c + (now->air->wall_c - now->s->temp_c) * taken, 260, 1.0);

  f[0] = 1.0 / 60;
  f[1] = exp (LW_LN10 / now->b->law->roast_z_k * (skin_c - 120));
  f[2] = now->b->at.touch_share;
  f[3] = dryness;
}

/* The ways and their factors, in the order of terms.h; only units are turned into references here. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/factors.h"

#include "leaf/terms.h"

#define COLDER_K 10.0
#define TERMS_MOST 7

/* `n` of a term's factors after its first, then, for rupture, the cells still whole. */
static const struct
{
  LwRate rate;
  guint n;
  LwFactorName names[LW_FACTORS_MOST];
} ways[LW_N_WAYS] = {
  [LW_WAY_OXIDISED] = { LW_RATE_OXIDATION, 5, { LW_FACTOR_WARMTH, LW_FACTOR_ENZYME, LW_FACTOR_MIXED, LW_FACTOR_WATER,
                                                LW_FACTOR_LEFT } },
  [LW_WAY_YELLOWED] = { LW_RATE_OXIDATION, 4, { LW_FACTOR_WARMTH, LW_FACTOR_MIXED, LW_FACTOR_WATER, LW_FACTOR_LEFT } },
  [LW_WAY_EVAPORATED] = { LW_RATE_WATER, 6, { LW_FACTOR_SKIN, LW_FACTOR_OPENED, LW_FACTOR_WATER, LW_FACTOR_FILM,
                                              LW_FACTOR_SURFACE, LW_FACTOR_PULL } },
  [LW_WAY_CONDENSED] = { LW_RATE_WATER, 2, { LW_FACTOR_SURFACE, LW_FACTOR_COLDER } },
  [LW_WAY_SHARED] = { LW_RATE_WATER, 2, { LW_FACTOR_COVER, LW_FACTOR_DAMPER } },
  [LW_WAY_WILTED] = { LW_RATE_RUPTURE, 5, { LW_FACTOR_STRESS, LW_FACTOR_WATER, LW_FACTOR_WARMTH, LW_FACTOR_COOL,
                                            LW_FACTOR_WHOLE } },
  [LW_WAY_HEATED] = { LW_RATE_RUPTURE, 4, { LW_FACTOR_WARMTH, LW_FACTOR_WATER, LW_FACTOR_HOT, LW_FACTOR_WHOLE } },
  [LW_WAY_ROLLED] = { LW_RATE_RUPTURE, 4, { LW_FACTOR_PRESS, LW_FACTOR_SOFT, LW_FACTOR_WATER, LW_FACTOR_WHOLE } },
  [LW_WAY_AGED] = { LW_RATE_ENZYME, 2, { LW_FACTOR_STRESS, LW_FACTOR_ENZYME } },
  [LW_WAY_DENATURED] = { LW_RATE_ENZYME, 3, { LW_FACTOR_WARMTH, LW_FACTOR_WATER, LW_FACTOR_ENZYME } },
  [LW_WAY_ROASTED] = { LW_RATE_ROAST, 3, { LW_FACTOR_WARMTH, LW_FACTOR_TIME, LW_FACTOR_DRY } },
  [LW_WAY_TOUCHED] = { LW_RATE_ROAST, 3, { LW_FACTOR_WARMTH, LW_FACTOR_TIME, LW_FACTOR_DRY } },
};

gboolean
lw_factor_is_times (LwFactorName name)
{
  static const gboolean times[LW_N_FACTORS] = {
    [LW_FACTOR_WARMTH] = TRUE, [LW_FACTOR_SKIN] = TRUE, [LW_FACTOR_OPENED] = TRUE, [LW_FACTOR_PULL] = TRUE,
    [LW_FACTOR_COLDER] = TRUE, [LW_FACTOR_PRESS] = TRUE, [LW_FACTOR_SOFT] = TRUE,
  };

  return times[name];
}

LwRate
lw_way_rate (LwWay way)
{
  return ways[way].rate;
}

static void
evaporated (const LwNow *now,
            double      *f)
{
  lw_term_evaporated (now, f);
}

static void
condensed (const LwNow *now,
           double      *f)
{
  lw_term_condensed (now, f);
  f[0] = -f[0];
}

static void
shared (const LwNow *now,
        double      *f)
{
  lw_term_shared (now, f);
  f[0] = -f[0];
}

static void
oxidised (const LwNow *now,
          double      *f)
{
  lw_term_oxidised (now, lw_term_wetness (now), f);
}

static void
yellowed (const LwNow *now,
          double      *f)
{
  lw_term_yellowed (now, lw_term_wetness (now), lw_term_mild (now), f);
}

static void
wilted (const LwNow *now,
        double      *f)
{
  lw_term_wilted (now, lw_term_stress (now), lw_term_mild (now), f);
  f[LW_N_WILTED] = 1 - now->ruptured;
}

static void
heated (const LwNow *now,
        double      *f)
{
  lw_term_heated (now, f);
  f[LW_N_HEATED] = 1 - now->ruptured;
}

static void
rolled (const LwNow *now,
        double      *f)
{
  lw_term_rolled (now, f);
  f[LW_N_ROLLED] = 1 - now->ruptured;
}

static void
aged (const LwNow *now,
      double      *f)
{
  lw_term_aged (now, lw_term_stress (now), f);
}

static void
denatured (const LwNow *now,
           double      *f)
{
  lw_term_denatured (now, f);
}

static void
roasted (const LwNow *now,
         double      *f)
{
  lw_term_roasted (now, f);
}

static void
touched (const LwNow *now,
         double      *f)
{
  double leaf[LW_N_ROASTED];

  lw_term_roasted (now, leaf);
  lw_term_touched (now, leaf[LW_N_ROASTED - 1], f);
}

/* What a factor is measured in where it is not a plain share. */
static double
reference (const LwNow *now,
           LwFactorName name)
{
  switch ((int) name)
    {
    case LW_FACTOR_SURFACE:
      return 2 * now->b->law->sla_m2_kg;
    case LW_FACTOR_PULL:
      return LW_PULL_KG_M3;
    case LW_FACTOR_COLDER:
      return COLDER_K;
    default:
      return 1;
    }
}

LwFactors
lw_rates_factors (const LwBoundary *boundary,
                  const LwAround   *around,
                  const LwState    *state,
                  LwWay             way)
{
  static void (*const terms[LW_N_WAYS]) (const LwNow *now, double *f) = {
    oxidised, yellowed, evaporated, condensed, shared, wilted, heated, rolled, aged, denatured, roasted, touched,
  };
  LwNow now = lw_now (boundary, around, state);
  LwFactors told = { .way = way, .n = ways[way].n };
  double f[TERMS_MOST];

  terms[way] (&now, f);
  told.base = f[0];
  for (guint i = 0; i < told.n; i++)
    {
      double one = reference (&now, ways[way].names[i]);

      told.base *= one;
      told.factors[i] = (LwFactor) { ways[way].names[i], f[i + 1] / one };
    }

  return told;
}

double
lw_factors_product (const LwFactors *factors)
{
  double product = factors->base;

  for (guint i = 0; i < factors->n; i++)
    product *= factors->factors[i].value;

  return product;
}

/* Why a rate is what it is: each way in which a leaf changes as a product of named factors, from the
 * same terms as the rates. SI; what factors are called stands in src/study. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/rates.h"

/* What can be asked for. Each counts in its own direction: loss of water and of enzyme are positive. */
typedef enum
{
  LW_RATE_OXIDATION,  /* 1/s */
  LW_RATE_WATER,      /* lost, kg per kg dry and s */
  LW_RATE_RUPTURE,    /* of all cells, 1/s */
  LW_RATE_ENZYME,     /* lost, of the fresh leaf's, 1/s */
  LW_RATE_ROAST,      /* minutes at 120 C per s */
} LwRate;

#define LW_N_RATES (LW_RATE_ROAST + 1)

/* The ways; a rate is the sum of its own. */
typedef enum
{
  LW_WAY_OXIDISED,    /* by enzyme */
  LW_WAY_YELLOWED,    /* without */
  LW_WAY_EVAPORATED,
  LW_WAY_CONDENSED,   /* steam on the leaf: a negative loss */
  LW_WAY_SHARED,      /* from damper parts: a negative loss */
  LW_WAY_WILTED,
  LW_WAY_HEATED,
  LW_WAY_ROLLED,
  LW_WAY_AGED,        /* enzyme, by wilting */
  LW_WAY_DENATURED,   /* enzyme, by heat */
  LW_WAY_ROASTED,     /* by the leaf's own temperature */
  LW_WAY_TOUCHED,     /* by its skin on the wall */
} LwWay;

#define LW_N_WAYS (LW_WAY_TOUCHED + 1)
#define LW_WAYS_MOST 3

/* Some are shares of what is possible, 0..1; some are times a reference, any number above 0, and only
 * LW_FACTOR_PULL and LW_FACTOR_DAMPER can be negative (lw_factor_is_times). */
typedef enum
{
  LW_FACTOR_WARMTH,   /* times the way's reference temperature: 27 C enzyme, 45 without, 25 wilting, 90 heat,
                       * 80 loss of enzyme, 120 roast */
  LW_FACTOR_ENZYME,
  LW_FACTOR_MIXED,    /* ruptured cells */
  LW_FACTOR_WATER,
  LW_FACTOR_LEFT,     /* not yet oxidised */
  LW_FACTOR_SKIN,     /* times an ordinary part's */
  LW_FACTOR_OPENED,   /* times a whole skin */
  LW_FACTOR_FILM,     /* share that the film of air lets by */
  LW_FACTOR_SURFACE,  /* share of both faces that meets the air */
  LW_FACTOR_PULL,     /* times LW_PULL_KG_M3 */
  LW_FACTOR_COLDER,   /* times 10 K colder than steam */
  LW_FACTOR_COVER,
  LW_FACTOR_DAMPER,   /* difference of water activity */
  LW_FACTOR_STRESS,   /* wilting stress */
  LW_FACTOR_COOL,     /* not too hot to wilt */
  LW_FACTOR_HOT,      /* hot enough to rupture */
  LW_FACTOR_WHOLE,    /* cells not yet ruptured */
  LW_FACTOR_PRESS,    /* times 1 kPa */
  LW_FACTOR_SOFT,     /* times cold leaf */
  LW_FACTOR_TIME,     /* share of the time that it goes on */
  LW_FACTOR_DRY,      /* no water left to keep it cool */
} LwFactorName;

#define LW_N_FACTORS (LW_FACTOR_DRY + 1)
#define LW_FACTORS_MOST 6

/* The pull of air at 25 C and 60 % humidity on a wet leaf at 25 C. */
#define LW_PULL_KG_M3 0.0092

typedef struct
{
  LwFactorName name;
  double value;
} LwFactor;

/* The way's rate is `base` times all factors; `base` is that with every factor 1. */
typedef struct
{
  LwWay way;
  double base;
  guint n;
  LwFactor factors[LW_FACTORS_MOST];
} LwFactors;

gboolean  lw_factor_is_times (LwFactorName      name);

/* The rate that the way is a part of. */
LwRate    lw_way_rate        (LwWay             way);

/* `around` as for lw_rates. */
LwFactors lw_rates_factors   (const LwBoundary *boundary,
                              const LwAround   *around,
                              const LwState    *state,
                              LwWay             way);
double    lw_factors_product (const LwFactors  *factors);

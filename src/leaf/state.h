/* What is known of one part of the leaf at one moment, and what a maker
 * would call it. All per kg of dry leaf, SI, shares 0..1. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "leaf/law.h"

/* The integrated state; only doubles, so that the solver sees an array. First the core: states that act
 * on each other. Then what follows from it: each depends on the core and on those before it, and
 * acts on none of the core; the solver uses that (blocks.c). */
typedef struct
{
  double water;     /* X, kg water per kg dry leaf */
  double temp_c;    /* T, C */
  double wilt;      /* Uw, rupture exposure by wilting */
  double heat;      /* Uh, rupture exposure by heat */
  double roll;      /* Um, rupture exposure by rolling */
  double twist;     /* W, 0..1 */

  double enzyme;    /* E, share still active, 0..1 */
  double oxidation; /* O, 0..1 */
  double roast_min; /* M, minutes at 120 C equivalent */
  double green;     /* G, green note */
  double broken;    /* B, broken leaf, 0..1 */
} LwState;

#define LW_N_STATE (sizeof (LwState) / sizeof (double))
#define LW_N_CORE (offsetof (LwState, enzyme) / sizeof (double))

/* A part of the batch: `share` of its dry mass, and how it differs. */
typedef struct
{
  double share;     /* of the dry mass, the parts of a leaf add up to 1 */
  double exposure;  /* to the air, relative to the mean of the batch */
  double area;      /* factor on the leaf's area */
  double cuticle;   /* factor on the skin's conductance */
  double ruptured;  /* R0, cells ruptured when plucked, 0..1 */
} LwPart;

/* A leaf: the law it follows, its water when plucked, its parts. Does not own `parts`. */
typedef struct
{
  LwLaw law;
  double fresh_water; /* X0, kg/kg */
  double fresh_green; /* G0 */
  double fresh_temp_c;
  guint n_parts;
  const LwPart *parts;
} LwLeaf;

/* What of the leaf counts as nearly dry, and as roasted; assumed, no source. Each part counts by a logistic
 * curve around the bound, so that the shares move smoothly with every setting: at the bound half of it counts,
 * two widths past it 88 %. The width of roast is one of its natural logarithm. */
#define LW_NEARLY_DRY_WB_PCT 20.0
#define LW_NEARLY_DRY_WIDTH 1.0   /* percent points */
#define LW_ROASTED_MIN 10.0       /* minutes at 120 C */
#define LW_ROASTED_WIDTH 0.15

/* What a maker would say of a state. Percentages are 0..100. */
typedef struct
{
  double moisture_wb_pct;
  double leaf_temp_c;
  double enzyme_left_pct;
  double oxidation_pct;
  double rupture_pct;
  double rupture_wilt_pct; /* of rupture_pct, shared by exposure; the rest was ruptured when plucked */
  double rupture_heat_pct;
  double rupture_roll_pct;
  double roast_min;
  double green_note;
  double broken_pct;
  double twist_pct;
  double kg_per_kg_fresh;
  double uneven_pct;       /* standard deviation between parts of moisture, wet basis; 0 for one part */
  double nearly_dry_pct;   /* share of the dry leaf that is under LW_NEARLY_DRY_WB_PCT */
  double roasted_pct;      /* share of the dry leaf roasted more than LW_ROASTED_MIN */
} LwOutcome;

/* The state of a freshly plucked leaf. */
LwState   lw_state_fresh   (const LwLeaf  *leaf);

/* Takes back what interpolation left beyond the bounds of shares and sums. */
void      lw_state_bound   (LwState       *state);

/* Ruptured cells R, 0..1. */
double    lw_state_rupture (const LwState *state,
                            const LwPart  *part);

/* What one part is like. */
LwOutcome lw_outcome_part  (const LwState *state,
                            const LwPart  *part,
                            double         fresh_water);

/* What the batch is like: `states` holds one state for each part of the leaf. */
LwOutcome lw_outcome_mean  (const LwLeaf  *leaf,
                            const LwState *states);

/* The same, which also says in `parts` (nullable), one for each, what the parts are like. */
LwOutcome lw_outcome_all   (const LwLeaf  *leaf,
                            const LwState *states,
                            LwOutcome     *parts);

/* Wet basis percent from kg/kg dry basis, and back. */
double    lw_wet_basis_pct (double         water);
double    lw_dry_basis     (double         wet_basis_pct);

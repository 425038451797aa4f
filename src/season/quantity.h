/* What a maker speaks of: the outcomes that can be shown or aimed at, and the
 * measurements that can be taken. Names, units and how to read an LwOutcome. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/state.h"

typedef enum
{
  LW_MOISTURE,
  LW_OXIDATION,
  LW_RUPTURE,
  LW_LEAF_TEMP,
  LW_ENZYME,
  LW_ROAST,
  LW_GREEN,
  LW_BROKEN,
  LW_TWIST,
  LW_WEIGHT,
  LW_UNEVEN,  /* from here on, of a whole batch only: parts have none */
  LW_NEARLY_DRY,
  LW_ROASTED,
} LwQuantity;

#define LW_N_QUANTITIES (LW_ROASTED + 1)

typedef struct
{
  const char *id;    /* in the document: "moisture" */
  const char *label; /* N_() */
  const char *unit;  /* N_(): "% wet basis" */
  int digits;
  double low;        /* what can be aimed at */
  double high;
  gsize offset;      /* of the double in LwOutcome */
} LwQuantityRow;

typedef enum
{
  LW_WEIGHED_KG,
  LW_LEAF_C,
  LW_WALL_C,
  LW_METER_PCT,      /* moisture meter, wet basis */
  LW_JUDGED_OXIDATION_PCT,
  LW_JUDGED_BROKEN_PCT,
  LW_NOTED,          /* a moment's note alone: neither value nor uncertainty */
} LwMeasure;

#define LW_N_MEASURES (LW_NOTED + 1)

typedef struct
{
  const char *id;    /* in the document: "weight-kg" */
  const char *label; /* N_() */
  const char *unit;  /* N_() */
  int quantity;      /* the LwQuantity it tells of, -1: none */
  double sd;         /* usual uncertainty, in its unit */
  double low;
  double high;
} LwMeasureRow;

/* Nothing can be known better than this, in any unit. */
#define LW_LEAST_SD 1e-6

const LwQuantityRow *lw_quantity_row  (LwQuantity       quantity);
const LwMeasureRow  *lw_measure_row   (LwMeasure        measure);
int                  lw_quantity_find (const char      *id);
int                  lw_measure_find  (const char      *id);
double               lw_quantity_of   (LwQuantity       quantity,
                                       const LwOutcome *outcome);

/* Turning points: moments at which something in the leaf changes over. The solver finds them as roots of
 * these functions, so that their times do not hang on when states are kept. SI. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/conditions.h"

typedef enum
{
  LW_TURN_WATER_HALF,        /* half of the fresh leaf's water is gone */
  LW_TURN_MOISTURE_REACHED,  /* the batch dries to the upper bound of what is aimed at */
  LW_TURN_MOISTURE_PASSED,   /* and under the lower one */
  LW_TURN_SURFACE_DRY,       /* the most exposed part is under LW_NEARLY_DRY_WB_PCT */
  LW_TURN_HOT,               /* the leaf passes LW_HOT_C */
  LW_TURN_ENZYME_HALF,
  LW_TURN_ENZYME_GONE,       /* under 1 % */
  LW_TURN_OXIDATION_HALF,
  LW_TURN_RUPTURE_HALF,
  LW_TURN_HEAT_LEADS,        /* heat becomes what has ruptured most cells, and at least 1 % of them */
  LW_TURN_ROLLING_LEADS,     /* rolling does */
  LW_TURN_ROASTED,           /* over LW_ROASTED_MIN */
} LwTurnKind;

#define LW_N_TURNS (LW_TURN_ROASTED + 1)
#define LW_HOT_C 80.0

typedef struct
{
  LwTurnKind kind;
  double time_s;  /* from the step's start */
} LwTurn;

/* Water, kg per kg dry, that is aimed at; NAN where nothing is. */
typedef struct
{
  double high;
  double low;
} LwAimed;

/* Which way the function of `kind` goes through 0: 1 up, -1 down. */
int  lw_turning_way    (LwTurnKind        kind);

/* The functions at one moment of a whole batch; one that does not apply stays above 0. */
void lw_turning_values (const LwBoundary *boundaries,
                        const LwState    *states,
                        guint             n,
                        const LwAimed    *aimed,
                        double            values[LW_N_TURNS]);

/* Adds to `turns` (LwTurn) what turns at `t_s` by a jump from states `before` to `after`. */
void lw_turning_jumped (const LwBoundary *boundaries,
                        const LwState    *before,
                        const LwState    *after,
                        guint             n,
                        const LwAimed    *aimed,
                        double            t_s,
                        GArray           *turns);

/* What a step does to the leaf, in numbers only: the air, the layer or vessel,
 * the wall, steam and pressure. The leaf knows no kinds of step; src/season
 * turns a maker's step into these. SI, plain data. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/course.h"
#include "leaf/jump.h"
#include "leaf/sky.h"

/* What changes as time goes on: read from the sky (the sun, without one, from a clear day), or from a log. */
typedef enum
{
  LW_FOLLOW_TEMP = 1 << 0,
  LW_FOLLOW_VAPOUR = 1 << 1,
  LW_FOLLOW_SUN = 1 << 2,
  LW_FOLLOW_WIND = 1 << 3,
  LW_FOLLOW_WALL = 1 << 4, /* from `wall` */
  LW_FOLLOW_AIR = 1 << 5,  /* from `air`; goes before TEMP */
} LwFollow;

typedef struct
{
  double duration_s;      /* > 0 */
  double clock_s;         /* the place's clock when the step begins */
  double pressure_pa;     /* of the place */
  double latitude_deg;    /* where SUN is followed */
  double altitude_m;      /* where SUN is followed */

  LwFollow follow;
  const LwSky *sky;       /* not owned; needed for TEMP, VAPOUR and WIND */
  const LwCourse *wall;   /* not owned; needed for WALL */
  const LwCourse *air;    /* not owned; needed for AIR */
  double wall_from_s;     /* in the course's own time, when the step begins */
  double air_from_s;
  double air_temp_c;      /* of the room, where neither TEMP nor AIR is followed */
  double vapour_pa;       /* where VAPOUR is not followed and `humidity` is 0 */
  double humidity;        /* relative, 0..1; if > 0 it sets the vapour at the room's temperature */
  double air_m_s;         /* where WIND is not followed */
  double sun_w_m2;        /* where SUN is not followed */
  double sun_share;       /* of that sun which reaches the leaf, 0..1 */

  double toss;            /* > 0: tossed in a vessel, the share of leaf area in the air */
  double spread_kg_m2;    /* else: fresh leaf per m2 of layer */
  double cover;           /* 0..1 */
  double turning_h;       /* turns per hour */
  double mixed;           /* 0..1; the least evening-out, whatever cover and turning do */

  double wall_c;          /* where WALL is not followed */
  double wall_w_m2k;      /* 0: no wall */
  double wall_m2;
  double load_kg;         /* fresh leaf in the vessel */
  double touch_s;         /* a leaf rests on the wall for this long at a time */
  double touch_share;     /* share of its time on the wall, 0..1 */
  double hot_air;         /* air in the vessel: room + hot_air (wall - room) */

  double steam_w_m2k;     /* condensation, 0: none */
  double press_kpa;       /* rolling, or its equivalent in tumbling */

  const LwJump *jump;     /* not owned, (nullable) what a measurement corrected on the way */
} LwConditions;

/* The boundary of one part in one step, made once before the step is integrated. */
typedef struct
{
  LwConditions at;
  const LwLaw *law;
  double fresh_water;
  double cuticle;
  double exposure;
  double share;           /* of the batch's dry mass */
  double meets;           /* the shared air under a cover, at most 1 */
  double intact;          /* 1 - R0 */
  double area_m2_kg;      /* both faces, exposed, untwisted */
  double sun_m2_kg;       /* absorbed W per kg dry for each W/m2 */
  double wall_w_kgk;      /* W per kg dry and K, before the water factor */
  double film_w_m2k;      /* where WIND is not followed */
  double air_c;           /* where neither it nor the wall is followed */
  double air_vapour_pa;   /* where neither the air nor VAPOUR is followed */
  double boiling_c;
} LwBoundary;

/* `conditions` as `part` of `leaf` meets them. Borrows leaf->law and the sky. */
LwBoundary lw_boundary_new (const LwConditions *conditions,
                            const LwLeaf       *leaf,
                            const LwPart       *part);

/* Temperature, vapour, sun, film and wall around the leaf, `t_s` into the step. */
typedef struct
{
  double temp_c;
  double vapour_pa;
  double sun_w_m2;
  double film_w_m2k;
  double wall_c;
  double activity;  /* water activity of the air that parts share under a cover; else 0 */
} LwAround;

LwAround   lw_boundary_at  (const LwBoundary   *boundary,
                            double              t_s);

/* When a log that is followed bends next, more than a moment after `t_s`; at most the step's end. */
double     lw_conditions_bend_s (const LwConditions *conditions,
                                 double              t_s);

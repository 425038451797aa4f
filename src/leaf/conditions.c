/* From a step's conditions to what one part of the leaf meets. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/conditions.h"

#include <math.h>

#include "leaf/air.h"
#include "leaf/film.h"
#include "leaf/soft.h"
#include "leaf/sun.h"

/* Tossed leaf is nearly even: this much of a part's own exposure remains. */
#define TOSSED_MIXED 0.95

/* Bends nearer than this are one: no leaf could tell them apart. */
#define MOMENT_S 0.01

static double
mixing (const LwConditions *at)
{
  double turned = at->turning_h / (at->turning_h + 0.5);
  double m = lw_soft_max (0.85 * at->cover, turned, 0.01);

  return lw_soft_min (lw_soft_max (m, at->mixed, 0.01), 1, 0.01);
}

LwBoundary
lw_boundary_new (const LwConditions *conditions,
                 const LwLeaf       *leaf,
                 const LwPart       *part)
{
  const LwLaw *law = &leaf->law;
  double fresh = 1 + leaf->fresh_water;
  double both_faces = 2 * law->sla_m2_kg;
  double m = conditions->toss > 0 ? TOSSED_MIXED : mixing (conditions);
  double own = 1 + (part->exposure - 1) * (1 - m);
  double mean = conditions->toss > 0
                  ? conditions->toss
                  : lw_film_exposure (conditions->spread_kg_m2 / fresh * law->sla_m2_kg);
  LwBoundary b = {
    .at = *conditions,
    .law = law,
    .fresh_water = leaf->fresh_water,
    .cuticle = part->cuticle,
    .exposure = part->exposure,
    .share = part->share,
    .meets = lw_soft_min (part->area * own, 1, 0.01),
    .intact = 1 - part->ruptured,
    .area_m2_kg = both_faces * part->area * mean * own,
    .film_w_m2k = lw_film_w_m2k (conditions->air_m_s, law->leaf_length_m, law->film_floor_w_m2k),
    .air_c = conditions->air_temp_c + conditions->hot_air * (conditions->wall_c - conditions->air_temp_c),
    .boiling_c = lw_air_boiling_c (conditions->pressure_pa),
  };

  if (conditions->spread_kg_m2 > 0)
    {
      b.sun_m2_kg = law->sun_absorbed * (1 - 0.8 * conditions->cover)
                    * lw_soft_min (fresh / conditions->spread_kg_m2, both_faces, 0.5)
                    * lw_soft_min (own, 2, 0.01);
      /* No more sun than on all the area that gives it off again, or a part with little area would glow. */
      b.sun_m2_kg = lw_soft_min (b.sun_m2_kg, law->sun_absorbed * b.area_m2_kg, 0.001 * b.area_m2_kg);
    }

  if (conditions->wall_w_m2k > 0)
    b.wall_w_kgk = conditions->wall_w_m2k * conditions->wall_m2 / (conditions->load_kg / fresh)
                   * sqrt (part->area);

  b.air_vapour_pa = conditions->humidity > 0
                      ? conditions->humidity * lw_air_saturation_pa (conditions->air_temp_c)
                      : conditions->vapour_pa;
  b.air_vapour_pa = lw_air_below_boiling_pa (b.air_vapour_pa, conditions->pressure_pa);

  return b;
}

/* On the level: what was measured, and the share of a clear day's where nothing was. */
static double
sun_w_m2 (const LwConditions *at,
          double              clock_s,
          double              measured_w_m2,
          double              clear)
{
  if (clear > 0)
    measured_w_m2 += clear * lw_sun_clear_w_m2 (lw_sun_height (clock_s, at->latitude_deg),
                                                at->altitude_m);

  return at->sun_share * measured_w_m2;
}

/* The room's temperature and the wall's, where a log or the sky gives them. */
static double
room_c (const LwConditions *at,
        const LwAirNow     *now,
        double              t_s)
{
  if (at->follow & LW_FOLLOW_AIR)
    return lw_course_at (at->air, at->air_from_s + t_s);

  return at->follow & LW_FOLLOW_TEMP ? now->temp_c : at->air_temp_c;
}

static double
wall_c (const LwConditions *at,
        double              t_s)
{
  return at->follow & LW_FOLLOW_WALL ? lw_course_at (at->wall, at->wall_from_s + t_s) : at->wall_c;
}

LwAround
lw_boundary_at (const LwBoundary *b,
                double            t_s)
{
  const LwConditions *at = &b->at;
  LwAround around = {
    .temp_c = b->air_c,
    .vapour_pa = b->air_vapour_pa,
    .sun_w_m2 = at->sun_w_m2 * at->sun_share,
    .film_w_m2k = b->film_w_m2k,
    .wall_c = at->wall_c,
  };
  double clock_s = at->clock_s + t_s, room;
  LwAirNow now = { .clear = 1 };

  if (at->follow == 0)
    return around;

  if (at->sky != NULL)
    now = lw_sky_at (at->sky, clock_s);

  if (at->follow & (LW_FOLLOW_TEMP | LW_FOLLOW_AIR | LW_FOLLOW_WALL))
    {
      room = room_c (at, &now, t_s);
      around.wall_c = wall_c (at, t_s);
      around.temp_c = room + at->hot_air * (around.wall_c - room);
      if (at->humidity > 0)
        around.vapour_pa = lw_air_below_boiling_pa (at->humidity * lw_air_saturation_pa (room), at->pressure_pa);
    }
  if (at->follow & LW_FOLLOW_VAPOUR)
    around.vapour_pa = lw_air_below_boiling_pa (now.vapour_pa, at->pressure_pa);
  if (at->follow & LW_FOLLOW_SUN)
    around.sun_w_m2 = sun_w_m2 (at, clock_s, now.sun_w_m2, now.clear);
  if (at->follow & LW_FOLLOW_WIND)
    around.film_w_m2k = lw_film_w_m2k (now.wind_m_s, b->law->leaf_length_m, b->law->film_floor_w_m2k);

  return around;
}

double
lw_conditions_bend_s (const LwConditions *at,
                      double              t_s)
{
  double next = INFINITY;

  if (at->follow & LW_FOLLOW_WALL)
    next = lw_course_bend (at->wall, at->wall_from_s + t_s + MOMENT_S) - at->wall_from_s;
  if (at->follow & LW_FOLLOW_AIR)
    next = fmin (next, lw_course_bend (at->air, at->air_from_s + t_s + MOMENT_S) - at->air_from_s);

  return next < at->duration_s - MOMENT_S ? next : at->duration_s;
}

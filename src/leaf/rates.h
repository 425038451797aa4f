/* The right-hand side of the leaf model: how fast each state changes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/conditions.h"

/* Heat and water flows of one part, per kg of dry leaf. What comes in is positive. */
typedef struct
{
  double evaporated_kg_s; /* leaves the leaf as vapour; negative when it takes vapour up */
  double condensed_kg_s;  /* joins the leaf from steam */
  double shared_kg_s;     /* comes from the batch's other parts, which lose it; with it goes its latent heat */
  double from_air_w;
  double from_sun_w;
  double from_wall_w;
  double from_steam_w;
  double from_shared_w;
  double latent_w;        /* carried off by evaporation */
  double stored_w;        /* heats the leaf; the others' sum */
} LwFlows;

/* Lets the parts meet: `around` then knows what they share. Where a cover holds their vapour, water goes from
 * damper to drier leaf; over the batch nothing is gained or lost. */
void    lw_rates_meet  (const LwBoundary *boundaries,
                        const LwState    *states,
                        guint             n,
                        LwAround         *around);

/* Heat and water flows at `state`; `around` is the boundary's at this moment. */
LwFlows lw_rates_flows (const LwBoundary *boundary,
                        const LwAround   *around,
                        const LwState    *state);

/* Time derivative of `state`, per second, into `rate`. */
void    lw_rates       (const LwBoundary *boundary,
                        const LwAround   *around,
                        const LwState    *state,
                        LwState          *rate);

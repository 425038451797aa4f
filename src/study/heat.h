/* What a batch costs: heat and fuel, water driven off, hands, and how much tea it makes. Read off a track
 * that was already computed. SI; hours and kilowatt hours only where a name says so. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/surround.h"

#define LW_J_PER_KWH 3.6e6

/* How a kind of step is heated and who stands by it. */
typedef struct
{
  gboolean heats_air;     /* the air around the leaf is heated, not the room's or the open's */
  double efficiency;      /* heat into the leaf for each J of fuel; 0: nothing is burnt */
  double hands;           /* share of a load's time that one person is bound by it */
  const char *source;     /* of the efficiency and of the hands */
} LwHearth;

/* Of one step, for the whole batch. Heat is positive into the leaf. */
typedef struct
{
  double minutes;         /* of one load */
  double loads;           /* fresh leaf over the vessel's load, at least 1; 1 without a vessel */
  double wall_j;
  double steam_j;
  double air_j;
  double sun_j;
  double latent_j;        /* carried off by what evaporated */
  double carried_j;       /* of the water itself, counted from 0 C, as it comes and goes */
  double stored_j;        /* change of the leaf's heat, from its first and last state, without what a correction shifted */
  double gross_j;         /* all flows without their signs: what the balance is measured by */
  double heat_j;          /* into the leaf from wall, steam and heated air */
  double free_j;          /* from sun and room air; negative where the leaf warms the room */
  double fuel_j;          /* heat_j over the hearth's efficiency */
  double water_kg;        /* driven off, less what condensed */
  double hands_h;
} LwHeatStep;

typedef struct
{
  guint n_steps;          /* those the track holds */
  LwHeatStep *steps;
  LwHeatStep batch;       /* the sums; its loads are the most of any step */
  double made_kg;         /* the batch at its end */
  double made_per_fresh;  /* kg of it per kg of fresh leaf */
} LwHeat;

const LwHearth *lw_hearth     (LwKind         kind);

/* `track` is `plan` marched, with any sampling; `batch` is the one the plan was made from. */
LwHeat         *lw_heat_new   (const LwPlan  *plan,
                               const LwBatch *batch,
                               const LwTrack *track);
void            lw_heat_free  (LwHeat        *heat);

/* How far the flows miss the change of the leaf's heat, as a share of all that flowed. */
double          lw_heat_miss  (const LwHeatStep *step);

/* NAN where nothing was made. */
double          lw_heat_fuel_kwh_per_kg (const LwHeat *heat);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwHeat, lw_heat_free)

/* A batch as it may turn out: which numbers of chance it takes, and what it meets at given ones. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/surround.h"
#include "study/vary.h"

/* Holds on to the season. */
typedef struct
{
  LwSeason *season;
  guint batch;
  LwVary varies[LW_N_VARY];
  guint first[LW_N_VARY];  /* the source's first number */
  guint dims[LW_N_VARY];   /* how many it takes: 0 where it has no part in this batch, or does not stray */
  guint n_dims;
} LwChance;

void     lw_chance_init  (LwChance       *chance,
                          LwSeason       *season,
                          guint           batch,
                          const LwVary    varies[LW_N_VARY]);
void     lw_chance_clear (LwChance       *chance);

/* Whether the batch has anything that the source acts on; in the step `only`, counted from 1, if that is not 0. */
gboolean lw_chance_has   (const LwSeason *season,
                          guint           batch,
                          LwVarySource    source,
                          guint           only);

/* (transfer full) (nullable) the batch at `luck`, n_dims numbers in (0, 1). Every value is drawn from a normal
 * distribution around the maker's, cut off at the ends of its range in the document. NULL as lw_plan_new. */
LwPlan  *lw_chance_plan  (const LwChance *chance,
                          const double   *luck);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LwChance, lw_chance_clear)

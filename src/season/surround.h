/* From a maker's batch to what the leaf meets: steps become conditions, the
 * profile becomes a leaf, percent and minutes become SI. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/march.h"
#include "season/season.h"

/* A batch ready to be marched. Holds on to the season it was made from. */
typedef struct
{
  LwSeason *season;
  LwLeaf leaf;
  LwPart *parts;
  guint n_steps;
  LwConditions *steps;
  LwAimed aimed;  /* moisture of the finished tea */
} LwPlan;

/* NULL only if the batch names a leaf or weather the season has not. */
LwPlan  *lw_plan_new   (LwSeason  *season,
                        guint      batch);
void     lw_plan_free  (LwPlan    *plan);

/* Whether something of the step, its air or its sun, is the `weather`'s (nullable) or a clear day's. */
gboolean lw_step_follows (const LwSeason  *season,
                          const LwStep    *step,
                          const LwWeather *weather);

/* (transfer full) the plan's track. */
LwTrack *lw_plan_march (LwPlan    *plan,
                        LwMarch   *march,
                        LwSampling sampling);

/* (transfer full) "step 2 (fix in pan) could not be computed ..." for a failed track. */
char    *lw_plan_failure_text (const LwPlan  *plan,
                               const LwBatch *batch,
                               const LwTrack *track);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwPlan, lw_plan_free)

/* Integrates a leaf through a chain of steps. Remembers the end of each step,
 * so that a change in step k computes only k and what follows. One march serves
 * one thread; marches share nothing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/track.h"

typedef struct _LwMarch LwMarch;

/* What is kept, besides the states at a step's start and end. */
typedef struct
{
  guint samples;   /* equal intervals per step, at least 1 */
  double every_s;  /* if > 0: instead, every so many seconds of the whole batch's time */
  gboolean turns;  /* turning points too; looking for them takes a tenth more time */
} LwSampling;

/* What the last run cost. */
typedef struct
{
  guint steps_run;     /* steps integrated, not taken from the last run */
  gulong solver_steps;
  gulong rate_calls;   /* of one part each */
} LwMarchCost;

/* NULL only if memory or the solver cannot be had. */
LwMarch           *lw_march_new  (void);
void               lw_march_free (LwMarch            *march);

/* Relative tolerance, 1e-10 to 1e-2; each state's absolute one goes with it. Default 3e-6. */
void               lw_march_set_tolerance (LwMarch   *march,
                                           double     relative);

/* Where moisture turns because it is what is aimed at (LW_TURN_MOISTURE_REACHED, _PASSED). Default: nowhere. */
void               lw_march_set_aimed (LwMarch       *march,
                                       LwAimed        aimed);

/* The track of `leaf` through `steps`. Returns (transfer full) a track always: a failed
 * solve is told in its `failure`. */
LwTrack           *lw_march_run  (LwMarch            *march,
                                  const LwLeaf       *leaf,
                                  const LwConditions *steps,
                                  guint               n_steps,
                                  LwSampling          sampling);

/* The same from other states than those of fresh leaf: `first` holds one for each part. Looks for nothing in the
 * march's memory and leaves it empty. */
LwTrack           *lw_march_run_from (LwMarch            *march,
                                      const LwLeaf       *leaf,
                                      const LwState      *first,
                                      const LwConditions *steps,
                                      guint               n_steps,
                                      LwSampling          sampling);

const LwMarchCost *lw_march_cost (const LwMarch      *march);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwMarch, lw_march_free)

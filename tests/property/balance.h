/* Water of one step by Simpson's rule, over the steps that the solver takes at a tight tolerance. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/surround.h"

/* By how much the flows of a step of `track` miss the change of water of the part they miss most, as a share
 * of all that flowed. The step is marched anew, finely, from where the track has it begin. */
double balance_of_water (const LwPlan  *plan,
                         const LwTrack *track,
                         guint          step);

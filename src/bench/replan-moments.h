/* The moments of a batch from which its rest may be planned anew, and their names. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/replan.h"

/* (transfer full) names, ended by NULL; `moments` (of LwInstant) gets what they name: `now` (nullable), each moment at which
 * something was weighed, and the beginning of the next step where that was a step's end. `chosen`: the place of `now`,
 * or of the last weigh-in. */
GPtrArray *lw_replan_moments (const LwBatch  *batch,
                              const LwInstant *now,
                              GArray         *moments,
                              guint          *chosen);

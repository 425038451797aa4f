/* A spread as tables to read, or as one table for programs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/spread.h"

/* What varies, the outcomes, the aims, and which source matters. */
void lw_spread_tell  (GString           *to,
                      const LwBatch     *batch,
                      const LwSpread    *spread,
                      const LwSpreadAsk *ask);

/* A row for each figure: step,outcome,source,figure,value. */
void lw_spread_csv   (GString           *to,
                      const LwSpread    *spread);

/* A row for each moment and outcome: step,share,outcome,low,middle,high. */
void lw_spread_bands (GString           *to,
                      const LwSpread    *spread);

/* The amounts as in the notation, with where they come from; for a command's help too. */
void lw_spread_tell_amounts (GString           *to,
                             const LwVary       varies[LW_N_VARY],
                             const LwVarySource *sources,
                             guint              n);

/* What screen readers and edit labels say of a batch, made from its numbers. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/track.h"
#include "draw/outcome.h"
#include "study/reach.h"

/* (transfer full) "Step 2 of 4: fix in pan, 25 min, 260 °C wall. Then moisture 61.0 %, ...". */
char *lw_tell_step   (const LwSeason *season,
                      const LwBatch  *batch,
                      guint           step,
                      const LwTrack  *track);

/* (transfer full) "Moisture: 77.0 % wet basis fresh; 76.1 % after wither; ...". */
char *lw_tell_panel  (const LwBatch  *batch,
                      LwQuantity      quantity,
                      const LwTrack  *track);

/* (transfer full) the value and unit: "61.0 % wet basis". */
char *lw_tell_value  (LwQuantity      quantity,
                      double          value);

/* (transfer full) "Moisture 7.1 % wet basis, aim 3 to 7: above. Changed by +0.4." */
char *lw_tell_outcome (const LwOutcomeLook *look);

/* (transfer full) how `wants` (LwWant) came out; `reached` NULL: nothing could be computed. `aims`: they are the
 * batch's aims, not what was locked. */
char *lw_tell_reached (const GArray    *wants,
                       const LwReached *reached,
                       gboolean         aims);

/* (transfer full) what setting an aim is called: "Aim at Moisture". */
char *lw_tell_aim    (LwQuantity      quantity);

/* (transfer full) what an edit does: "Set time of fix in pan". */
char *lw_tell_set    (const LwStep   *step,
                      LwSetting       setting);

/* (transfer full) "25 → 35 min": a setting before and now, by name if it is neither time nor the kind's leading one;
 * NULL if it is the same. */
char *lw_tell_change (const LwStep   *before,
                      const LwStep   *now,
                      LwSetting       setting);

/* What is said of how a batch spreads, made from its numbers. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/edit.h"
#include "study/steadier.h"

/* (transfer full) "43.2 ± 1.1 %". */
char *lw_steady_say_share   (double             share,
                             double             error);

/* (transfer full) an amount in its unit: "5 °C, in each step anew". */
char *lw_steady_say_amount  (LwVarySource       source,
                             LwVary             vary);

/* (transfer full) "Moisture 3.0 to 5.0". */
char *lw_steady_say_aim     (const LwWant      *want);
/* (transfer full) "After step 2, roll. Ppk 0.43". */
char *lw_steady_say_ppk     (const LwBatch     *batch,
                             const LwSpreadAim *aim);

/* The places of the spread's aims in the result's order: by step, then by outcome. `order` has room for all. */
void  lw_steady_order_aims  (const LwSpread    *spread,
                             guint             *order);
/* The places of the spread's sources, that with most influence on the outcome first; how many have any. */
guint lw_steady_order_sources (const LwSpread  *spread,
                               guint            end,
                               LwQuantity       of,
                               guint           *order);

/* (transfer full) which source matters most, as a sentence. */
char *lw_steady_say_sources (const LwSpread    *spread,
                             guint              end,
                             LwQuantity         of);

/* (transfer full) what the bands are at the batch's end, as a sentence. */
char *lw_steady_say_bands   (const LwSpread    *spread,
                             LwQuantity         of);

/* (transfer full) "Step 2, fix in pan: wall 260 → 250 °C", a line for each of `changes` (LwChange) to `batch`. */
char *lw_steady_say_changes (const LwBatch     *batch,
                             const GArray      *changes);

/* (transfer full) what the search for steadier settings came to. */
char *lw_steady_say_found   (const LwSteadier  *steadier);

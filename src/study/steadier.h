/* Make it steadier: settings by which more of the batches meet every aim, when leaf, weather and
 * hand vary as they do. A search by notches, judged by samples it has not seen. Thread-safe; cancellable. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/spread.h"

#define LW_STEADIER_SAMPLES 128   /* to choose by: the same luck for every choice */
#define LW_STEADIER_FRESH 1024    /* to judge by: luck that the search has not met */
#define LW_STEADIER_MOST 120      /* choices that are looked at */

typedef struct
{
  LwSeason *season;   /* the batch with the settings found; the given one where nothing better was found */
  gboolean better;    /* by the fresh samples, beyond 2 standard errors of the difference */
  guint looked;       /* choices looked at */
  guint samples;      /* fresh ones */
  double before;      /* share of them inside every aim */
  double after;       /* with the settings found, taken or not; as `before` where none were */
  double gain_se;     /* standard error of after - before: both meet the same luck */
} LwSteadier;

/* Turns the `free` handles (LwHandle) by notches within their ranges. Of `ask` the amounts, the seed, the threads and
 * the progress are used; that counts choices, and jumps to its end where the search ends early. NULL if cancelled, if
 * the batch cannot be computed, or if it has no aim. */
LwSteadier *lw_steadier_new  (LwSeason          *season,
                              guint              batch,
                              const LwSpreadAsk *ask,
                              const GArray      *free,
                              GCancellable      *cancellable);
void        lw_steadier_free (LwSteadier        *steadier);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSteadier, lw_steadier_free)

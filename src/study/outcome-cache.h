/* What finished teas came to, kept on the disk from one start of the program to the next, so that a folder once computed
 * is known at once. A cache: what is damaged or of another model counts as nothing, and may be deleted at any time. Any
 * thread may call; those that touch the disk say so. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/state.h"

/* Most that the file holds; those not asked for in this run of the program go first. Of 160 bytes each. */
#define LW_OUTCOME_CACHE_MOST 50000

typedef struct _LwOutcomeCache LwOutcomeCache;

/* (transfer full) the file in the user's folder for caches. */
char           *lw_outcome_cache_path  (void);

/* Empty; knows nothing of the file before it is read. */
LwOutcomeCache *lw_outcome_cache_new   (const char      *path);
LwOutcomeCache *lw_outcome_cache_ref   (LwOutcomeCache  *self);
void            lw_outcome_cache_unref (LwOutcomeCache  *self);

/* Reads the file, if it is there and sound. */
void            lw_outcome_cache_load  (LwOutcomeCache  *self);
/* Writes what was added since, and what the file holds besides, unless there is nothing new. FALSE if it should and could
 * not: the outcomes are then computed again another time. */
gboolean        lw_outcome_cache_save  (LwOutcomeCache  *self);

/* `digest` as of lw_head_digest. FALSE if it is not known. */
gboolean        lw_outcome_cache_find  (LwOutcomeCache  *self,
                                        const char      *digest,
                                        LwOutcome       *outcome);
void            lw_outcome_cache_add   (LwOutcomeCache  *self,
                                        const char      *digest,
                                        const LwOutcome *outcome);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwOutcomeCache, lw_outcome_cache_unref)

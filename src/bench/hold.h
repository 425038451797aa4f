/* The search, in a thread of its own, for settings that keep what is locked while a batch is edited, or that reach its
 * aims. Belongs to one batch; knows no widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/locks.h"

typedef struct _LwHold LwHold;

/* `reached` answers what was asked of `edited` with these wants (LwWant); NULL: that could not be computed. */
typedef void (*LwHoldFound) (LwSeason        *edited,
                             const GArray    *wants,
                             const LwReached *reached,
                             gpointer         data);

LwHold    *lw_hold_new     (LwHoldFound      found,
                            gpointer         data);
void       lw_hold_free    (LwHold          *hold);

/* (transfer none) what is locked and pinned. After a change of it: lw_hold_forget. */
LwLocks   *lw_hold_locks   (LwHold          *hold);

/* Forgets the settings found last. */
void       lw_hold_forget  (LwHold          *hold);

/* Starts to search: `edited` came from `base` by an edit of the batch; what the edit did not touch, from its step on,
 * may move. Answers by `found`, in the main loop, unless asked anew or stopped before. Searches for one season at a
 * time: a newer question waits, and the one before it is dropped. FALSE, and nothing asked, where nothing is locked
 * or the edit changed the order of the steps. */
gboolean   lw_hold_seek    (LwHold          *hold,
                            LwSeason        *base,
                            LwSeason        *edited,
                            guint            batch);
/* The same for the batch's aims, with the locks: every step may move that has not passed. FALSE if it has neither. */
gboolean   lw_hold_reach   (LwHold          *hold,
                            LwSeason        *season,
                            guint            batch);
/* Drops the question under way, the one that waits, and the settings found last. */
void       lw_hold_stop    (LwHold          *hold);

/* Whether an answer is still to come. */
gboolean   lw_hold_seeks   (const LwHold    *hold);

/* (transfer full) `edited` with the settings found last, as a first guess until its own are found. */
LwSeason  *lw_hold_follow  (LwHold          *hold,
                            LwSeason        *base,
                            LwSeason        *edited,
                            guint            batch);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwHold, lw_hold_free)

/* What is to stay: outcomes that are locked, settings that are pinned, and the search, in a thread of its own,
 * for later settings that keep the locked ones. Belongs to one batch; knows no widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/reach.h"

typedef struct _LwHold LwHold;

/* `reached` answers what was asked of `edited` with these wants (LwWant); NULL: that could not be computed. */
typedef void (*LwHoldFound) (LwSeason        *edited,
                             const GArray    *wants,
                             const LwReached *reached,
                             gpointer         data);

LwHold    *lw_hold_new     (LwHoldFound      found,
                            gpointer         data);
void       lw_hold_free    (LwHold          *hold);

/* Forgets all locks and pins, and what is being searched. */
void       lw_hold_clear   (LwHold          *hold);

/* Lets go what hangs on places among the steps, where the batch's steps are not those of the last check. */
void       lw_hold_check   (LwHold          *hold,
                            const LwBatch   *batch);

/* Keeps `of` at `value` at the end of `step` (-1: the finished tea). */
void       lw_hold_lock    (LwHold          *hold,
                            int              step,
                            LwQuantity       of,
                            double           value);
void       lw_hold_unlock  (LwHold          *hold,
                            int              step,
                            LwQuantity       of);
void       lw_hold_unlock_all (LwHold       *hold);
/* FALSE if it is not locked. `value` (nullable). */
gboolean   lw_hold_locked  (const LwHold    *hold,
                            int              step,
                            LwQuantity       of,
                            double          *value);
guint      lw_hold_n_locks (const LwHold    *hold);

void       lw_hold_pin     (LwHold          *hold,
                            LwHandle         handle,
                            gboolean         pinned);
gboolean   lw_hold_pinned  (const LwHold    *hold,
                            LwHandle         handle);

/* Starts to search: `edited` came from `base` by an edit of the batch; what the edit did not touch, from its step on,
 * may move. Answers by `found`, in the main loop, unless asked anew or stopped before. Searches for one season at a
 * time: a newer question waits, and the one before it is dropped. FALSE, and nothing asked, where nothing is locked
 * or the edit changed the order of the steps. */
gboolean   lw_hold_seek    (LwHold          *hold,
                            LwSeason        *base,
                            LwSeason        *edited,
                            guint            batch);
/* The same for the batch's aims, with the locks: every step may move. FALSE if it has neither. */
gboolean   lw_hold_reach   (LwHold          *hold,
                            LwSeason        *season,
                            guint            batch);
void       lw_hold_stop    (LwHold          *hold);

/* Whether an answer is still to come. */
gboolean   lw_hold_seeks   (const LwHold    *hold);

/* (transfer full) `edited` with the settings found last, as a first guess until its own are found. */
LwSeason  *lw_hold_follow  (LwHold          *hold,
                            LwSeason        *base,
                            LwSeason        *edited,
                            guint            batch);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwHold, lw_hold_free)

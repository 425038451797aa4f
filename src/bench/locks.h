/* What is to stay in a batch: outcomes that are locked, settings that are pinned, steps that have passed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/reach.h"

typedef struct _LwLocks LwLocks;

LwLocks  *lw_locks_new     (void);
void      lw_locks_free    (LwLocks       *self);

/* Lets go all locks and pins. */
void      lw_locks_clear   (LwLocks       *self);

/* Lets go what hangs on places among the steps, where the batch's steps are not those of the last check. */
void      lw_locks_check   (LwLocks       *self,
                            const LwBatch *batch);

/* Keeps `of` at `value` at the end of `step` (-1: the finished tea). */
void      lw_locks_lock    (LwLocks       *self,
                            int            step,
                            LwQuantity     of,
                            double         value);
void      lw_locks_unlock  (LwLocks       *self,
                            int            step,
                            LwQuantity     of);
/* Lets go all locks, not the pins. */
void      lw_locks_open    (LwLocks       *self);
/* FALSE if it is not locked. `value` (nullable). */
gboolean  lw_locks_locked  (const LwLocks *self,
                            int            step,
                            LwQuantity     of,
                            double        *value);
guint     lw_locks_n       (const LwLocks *self);

void      lw_locks_pin     (LwLocks       *self,
                            LwHandle       handle,
                            gboolean       pinned);
gboolean  lw_locks_pinned  (const LwLocks *self,
                            LwHandle       handle);

/* The first so many steps have passed or are under way in a run: no search moves anything of them. */
void      lw_locks_pass    (LwLocks       *self,
                            guint          n_steps);
/* Whether a search must leave it alone: it is pinned, or of a step that has passed. */
gboolean  lw_locks_stays   (const LwLocks *self,
                            LwHandle       handle);

/* Appends what is locked to `wants` (LwWant). */
void      lw_locks_add_wants (const LwLocks *self,
                              const LwBatch *batch,
                              GArray        *wants);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwLocks, lw_locks_free)

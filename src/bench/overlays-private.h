/* What the overlays' files share: overlays.c is the object, overlays-follow.c takes it through the edits of the season in
 * hand. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/overlays.h"

struct _LwOverlays
{
  GObject parent_instance;

  LwSession *session;  /* weak: it owns this; NULL when it is gone and a thread still holds on */
  char *path;          /* (nullable) of the season that is followed */
  guint n_batches;     /* it had */
  GPtrArray *chosen;   /* LwLaid */
  GPtrArray *shown;    /* LwLaid */
  GPtrArray *gone;     /* LwLaid of batches that an edit removed; undo brings them back */
  GArray *kinds;       /* LwKind of the batch in hand, to which they are matched */
  gint64 when_s;       /* its begin */
  guint stamp;
  gboolean due;        /* a change is to be told when the session's track is that of its season again */
};

/* Computes it; it is told of then. */
void  lw_overlays_start     (LwOverlays *self,
                             LwLaid     *laid);

/* `number`, or the least from 0 that none has. */
guint lw_overlays_number    (LwOverlays *self,
                             guint       number);

/* For sorting. */
int   lw_overlays_by_number (const void *a,
                             const void *b);

/* overlays-follow.c: another season is in hand, or this one was edited. */
void  lw_overlays_follow    (LwOverlays *self);

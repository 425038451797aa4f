/* What the finder's files share: finder.c finds among what is known, finder-read.c gets to know it from the disk,
 * finder-compute.c from the model, and finder-keep.c from an earlier run of the program. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bench/finder.h"
#include "study/outcome-cache.h"

struct _LwFinder
{
  GObject parent_instance;

  GCancellable *cancel;  /* of all that is under way for this place */
  LwSeason *season;      /* (nullable) the open season, where that is searched */
  char *folder;          /* (nullable) else */
  GPtrArray *files;      /* LwShelved in the folder */
  GHashTable *kept;      /* path to LwShelved, read before */
  LwOutcomeCache *outcomes;
  gboolean remembering;  /* what an earlier run has kept of them is read, or being read */
  gboolean remembers;    /* it is read */
  guint keep;            /* source, 0: nothing is to be kept */
  gboolean listing;
  guint next_file;       /* of `files`: those before it are read or being read */
  guint n_read;
  guint n_broken;

  GPtrArray *all;        /* LwFound */
  GListStore *shown;
  LwFind find;
  LwSort sort;
  guint later;
  guint refill;          /* source, 0: none */
  guint refill_ms;       /* what the last one took */

  GHashTable *wanted;    /* LwFound that are looked at */
  guint computing;       /* jobs under way */
  guint cursor;          /* of `all`: what is before it has been asked for */
  gboolean stopped;
};

/* A little later finds anew. */
void     lw_finder_turned    (LwFinder        *self);
/* Ends what is under way for the place. */
void     lw_finder_leave     (LwFinder        *self);
void     lw_finder_clear     (LwFinder        *self);
void     lw_finder_add_heads (LwFinder        *self,
                              const GPtrArray *heads,
                              const char      *path);

/* Whether the outcome of this one is still to be computed. */
gboolean lw_finder_wants     (LwFinder        *self,
                              LwFound         *found);
/* Starts to compute what is wanted and not known. */
void     lw_finder_compute   (LwFinder        *self);

/* Reads what an earlier run has kept. */
void     lw_finder_remember  (LwFinder        *self);
/* Has what is known now written down a little later; or at once, when the finder goes. */
void     lw_finder_keep      (LwFinder        *self);
void     lw_finder_keep_now  (LwFinder        *self);
/* Tells of the batch what is known of it. */
void     lw_finder_recall    (LwFinder        *self,
                              LwFound         *found);

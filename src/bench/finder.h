/* Searches the batches of the open season or of a folder of season files. Reads and computes in threads, keeps what it
 * has read as long as a file stays the same, and what a batch comes to as long as the batch does. Knows no widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "bench/found.h"
#include "season/find.h"

#define LW_TYPE_FINDER (lw_finder_get_type ())
G_DECLARE_FINAL_TYPE (LwFinder, lw_finder, LW, FINDER, GObject)

/* How far it is. */
typedef struct
{
  gboolean listing; /* the folder is being looked through */
  guint files;
  guint read;       /* of these */
  guint broken;     /* of these, that could not be read */
  guint batches;
  guint later;      /* batches that may belong to what is found when their outcome is known */
  guint asked;      /* outcomes that are wanted and not known yet */
} LwFinderState;

/* Signal "changed": what is found or how far it is. */
LwFinder   *lw_finder_new      (void);

/* Where to search: in this season, as it is now ... */
void        lw_finder_season   (LwFinder       *self,
                                LwSeason       *season);
/* ... or in the folder, as it is now; what was read before and is the same is not read again. */
void        lw_finder_folder   (LwFinder       *self,
                                const char     *folder);

/* (nullable) the folder that is searched; NULL: the season. */
const char *lw_finder_where    (LwFinder       *self);

/* What for; takes over what `find` holds and leaves it empty. */
void        lw_finder_ask      (LwFinder       *self,
                                LwFind         *find,
                                const LwSort   *sort);
/* (transfer none) LwFound in their order. */
GListModel *lw_finder_found    (LwFinder       *self);
/* Outcomes that are looked at are computed first. */
void        lw_finder_want     (LwFinder       *self,
                                LwFound        *found,
                                gboolean        wanted);
LwFinderState lw_finder_state  (LwFinder       *self);
/* (transfer full) strings that tell of what could not be read: file, line, reason. */
GStrv       lw_finder_problems (LwFinder       *self);
/* Computes no outcomes but those that are looked at, until asked anew. */
void        lw_finder_stop     (LwFinder       *self);

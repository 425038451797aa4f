/* Last year's batch of the same kind, looked for in the season in hand and in the files beside it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "season/season.h"
#include "study/same-kind.h"

typedef struct
{
  LwSeason *season;  /* (nullable) that of the batch found; NULL: there is none */
  char *path;        /* (nullable) its file; NULL: the season in hand */
  LwSameKind found;
  guint n_files;     /* other seasons looked through */
  guint n_unsound;   /* files that could not be read */
} LwLastYear;

void        lw_last_year_free  (LwLastYear          *last);

/* Looks in a thread. `path` (nullable) is the file of `season`; without one, seasons that ship with the program are
 * looked through if they are of the same place. `done` gets `source`, a reference on which is held until then. */
void        lw_last_year_find  (LwSeason            *season,
                                guint                batch,
                                const char          *path,
                                GObject             *source,
                                GAsyncReadyCallback  done,
                                gpointer             data);
/* (transfer full) what came of it. */
LwLastYear *lw_last_year_finish (GAsyncResult       *result);

/* (transfer full) which batch it is and why, or that there is none, in a sentence. */
char       *lw_last_year_say   (const LwLastYear    *last,
                                const LwBatch       *batch);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwLastYear, lw_last_year_free)

/* What the session's two files share: session.c holds the season and its edits,
 * session-result.c the computed track, the ghost and the reading line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/session.h"
#include "leaf/march.h"

struct _LwSession
{
  GObject parent_instance;

  char *path;
  LwHistory *history;
  char *last_key;      /* of the last edit by key */

  LwSeason *preview;   /* while dragging */
  gboolean dragging;

  int batch;
  int step;

  LwMarch *march;
  LwTrack *track;
  LwTrack *ghost;
  GArray *track_minutes;
  GArray *ghost_minutes;
  char *trouble;
  gboolean stale;

  gboolean reading;
  guint reading_step;
  double reading_minute;

  LwScale scale;
};

enum
{
  LW_SESSION_SEASON,
  LW_SESSION_TRACK,
  LW_SESSION_STALE,
  LW_SESSION_READING,
  LW_SESSION_STEP,
  LW_SESSION_N_SIGNALS
};

void lw_session_emit       (LwSession *self,
                            int        signal);

/* What is shown now becomes the ghost of what comes. */
void lw_session_take_ghost (LwSession *self);
void lw_session_drop_ghost (LwSession *self);

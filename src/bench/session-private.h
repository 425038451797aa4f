/* What the session's files share: session.c holds the season and its edits, session-hold.c what stays while they
 * are made, session-result.c the computed track, the ghost and the reading line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/hold.h"
#include "bench/session.h"
#include "leaf/march.h"

struct _LwSession
{
  GObject parent_instance;

  char *path;
  LwSeason *filed;     /* (nullable) as last read from it or written to it */
  LwHistory *history;
  char *last_key;      /* of the last edit by key */

  LwSeason *preview;   /* while dragging */
  gboolean dragging;

  LwHold *hold;
  LwSeason *wanted;    /* (nullable) the edit itself, for which settings that hold are searched */
  gboolean reaching;   /* that search is for the aims */
  LwSeason *before;    /* (nullable) that of the ghost */
  char *said;          /* (nullable) what the last search came to */

  int batch;
  int step;
  gboolean at_step;    /* the result is looked at there */

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
  LW_SESSION_SAID,
  LW_SESSION_LOCKS,
  LW_SESSION_OPENED,
  LW_SESSION_N_SIGNALS
};

void lw_session_emit       (LwSession *self,
                            int        signal);

/* An edit of `base` has become `season`, both of the batch in hand: starts to search for what holds, where anything
 * is locked. */
void lw_session_seek       (LwSession *self,
                            LwSeason  *base,
                            LwSeason  *season);
/* (transfer full) what is shown of a dragged `season` until that is found. */
LwSeason *lw_session_follow (LwSession *self,
                             LwSeason  *season);
/* Makes `season` (transfer full) the present. */
void lw_session_push       (LwSession *self,
                            LwSeason  *season,
                            const char *label);
void lw_session_changed    (LwSession *self);
void lw_session_mark_stale (LwSession *self);
void lw_session_stop_seeking (LwSession *self);
void lw_session_init_hold  (LwSession *self);

/* What is shown now becomes the ghost of what comes. */
void lw_session_take_ghost (LwSession *self);
void lw_session_drop_ghost (LwSession *self);

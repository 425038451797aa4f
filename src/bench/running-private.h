/* What the running batch's files share: running.c moves it, running-journal.c writes it down and takes it up again. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/run-left.h"
#include "season/journal-file.h"
#include "season/journal.h"

/* The run as it was when a season was the present. */
typedef struct
{
  LwSeason *season;
  LwRun run;
} LwRunMark;

/* What a journal tells, until it is said what is to become of it. The journal itself is `file`. */
typedef struct
{
  LwRunLeft told;
  LwJournalEntry entry;
  guint damaged;   /* lines at its end */
  gboolean moved;  /* it is not where that of the season in hand would be */
} LwRunningLeft;

struct _LwRunning
{
  GObject parent_instance;

  LwSession *session;
  LwRun run;
  LwSeason *seen;        /* (nullable) the season that was last looked at */
  LwBatch *batch;        /* (nullable) as it was last written */
  char *name;            /* (nullable) its own; NULL: none runs, and none ended since the last save */
  char *file_name;       /* in the season's file */
  char *path;            /* (nullable) the season's file */
  LwSeason *filed;       /* (nullable) what that held when the journal was last written to */
  LwJournalFile *file;   /* (nullable) */
  gboolean fresh;        /* it is not opened yet, and what it then holds is of another run */
  LwRunningLeft *left;   /* (nullable) */
  char *trouble;         /* (nullable) */
  GArray *marks;         /* LwRunMark */
  guint tick;
  guint again;           /* tries to write once more */
  guint clock_look;
  double clock_s;        /* lw_clock_offset_s when it was last looked at */
};

void     lw_running_moved   (LwRunning  *self);
void     lw_running_tell    (LwRunning  *self,
                             const char *words);

void     lw_running_ask     (LwRunning  *self);

/* The present season and run belong together, also for undo and redo. */
void     lw_running_mark    (LwRunning  *self);

/* Writes down all that there is to know now. FALSE if that failed; then it is said in `trouble` and tried again. */
gboolean lw_running_keep    (LwRunning  *self);

/* Nothing runs, and nothing is left to be saved. */
void     lw_running_forget  (LwRunning  *self);

/* Whether another window holds the journal of the session's season; then `error` says so. */
gboolean lw_running_is_elsewhere (LwRunning *self,
                                  GError   **error);

/* The season is in its file now, and with it what the journal holds. */
void     lw_running_saved   (LwRunning  *self);

/* running-left.c. Another season was opened: lets go of the last one's run, and takes up the one that its journal tells of. */
void     lw_running_take_up (LwRunning  *self);
void     lw_running_drop_left (LwRunning *self);

/* running-clock.c. Looks after the computer's clock while a batch runs. */
void     lw_running_watch_clock (LwRunning *self);

/* The run is taken up that was last heard of at `written_s`. TRUE if that is yet to come: then the clock was set back, and
 * the run goes on from there. */
gboolean lw_running_catch_clock (LwRunning *self,
                                 double     written_s);

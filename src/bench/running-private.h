/* What the running batch's files share: running.c moves it, running-journal.c writes it down,
 * running-left.c takes it up again. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/run-left.h"
#include "season/journal-file.h"
#include "season/journal.h"

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
  gboolean put_off;      /* the journal stays as it is until the season is opened again */
  char *trouble;         /* (nullable) */
  GArray *marks;         /* of running-marks.c */
  guint tick;
  guint again;           /* tries to write once more */
  double clock_s;        /* lw_clock_offset_s when it was last looked at; NAN: not yet */
};

void     lw_running_moved   (LwRunning  *self);
void     lw_running_tell    (LwRunning  *self,
                             const char *words);

void     lw_running_ask     (LwRunning  *self);

/* running-marks.c. A season and a run belong together, also for undo and redo; the second marks the present ones. */
GArray  *lw_running_marks_new      (void);
void     lw_running_add_mark       (LwRunning *self,
                                    LwSeason  *season,
                                    LwRun      run);
void     lw_running_mark           (LwRunning *self);

/* Whatever was marked in the step under way has the present run: an undo that stays in the step must not undo a pause. */
void     lw_running_mark_step      (LwRunning *self);

/* The run, and those marked, are so much later by the clock. */
void     lw_running_shift          (LwRunning *self,
                                    double     by_s);

/* By undo or redo to a season that is marked: the run goes there, too. FALSE if it is not. */
gboolean lw_running_follow_history (LwRunning *self);

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

/* running-clock.c. A computer's clock that was set since it was last looked at is told, and the run goes on as if it had
 * not been. */
void     lw_running_follow_clock (LwRunning *self);

/* The run is taken up that was last heard of at `written_s`. TRUE if that is yet to come: then the clock was set back, and
 * the run goes on from there. */
gboolean lw_running_catch_clock (LwRunning *self,
                                 double     written_s);

/* Re-plan the rest: a batch under way is corrected by what was weighed, and what has not been done yet is set anew so
 * that the aims ahead are met. Told as was, now and why. Pure; thread-safe; can be cancelled. The method: docs/study.md */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/correct.h"
#include "study/reach.h"

/* One setting that may still be turned. */
typedef struct
{
  LwHandle handle;
  double was;
  double now;
  char *why;               /* (nullable) translated; NULL where it stays as it was */
} LwReplanRow;

/* One aim still ahead. */
typedef struct
{
  LwWant want;
  gboolean of_tea;         /* of the finished tea, else of its step */
  LwMet planned;           /* as was foretold before anything was weighed */
  LwMet before;            /* with what was weighed, were nothing changed */
  LwMet after;
} LwReplanAim;

typedef struct
{
  LwSeason *season;        /* with the correction and the new settings */
  LwInstant now;            /* from which the rest counts */
  LwCorrect *correct;
  char *finding;           /* translated sentence: what the weigh-ins say of the batch */
  guint n_rows;
  LwReplanRow *rows;
  guint n_changed;         /* of the rows */
  guint n_aims;
  LwReplanAim *aims;
  gboolean all_met;        /* every aim ahead */
} LwReplan;

typedef struct
{
  LwInstant now;            /* weigh-ins up to here count, and nothing before it is touched. Where `now` is earlier than the
                            * end of its step, only that step's time may change, and not below what has passed */
  const GArray *pinned;    /* (nullable) of LwHandle: settings that stay as they are */
  guint threads;           /* 0: one for each processor */
  LwProgress progress;     /* (nullable) counts marches of the correction; the search that follows is not counted */
  gpointer progress_data;
} LwReplanAsk;

/* The moment of the batch's last weigh-in that tells of leaf. FALSE if there is none. */
gboolean  lw_replan_last  (const LwBatch     *batch,
                           LwInstant          *moment);

/* NULL with `error`, as lw_correct_new. Where no aim is ahead the batch is corrected and no setting changed. */
LwReplan *lw_replan_new   (LwSeason          *season,
                           guint              batch,
                           const LwReplanAsk *ask,
                           GCancellable      *cancellable,
                           GError           **error);
void      lw_replan_free  (LwReplan          *replan);

/* (transfer full, translated) "weighed 22.72 kg where 21.20 ± 0.30 kg was expected". */
char     *lw_replan_say_point (const LwCorrectPoint *point);

/* (transfer full, translated) (nullable) for a weigh-in that is far off: what to look at before it is believed. */
char     *lw_replan_say_far   (const LwCorrectPoint *point);

/* (transfer full, translated) (nullable) what escapes after all, and by how much; NULL where all aims are met. */
char     *lw_replan_say_missed (const LwReplanAim   *aim);

/* (transfer none, translated) the caution that belongs beside every new plan. */
const char *lw_replan_caution (void);
/* The same in a line, for beside settings that move by themselves. */
const char *lw_replan_caution_short (void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwReplan, lw_replan_free)

/* A lesson on its way: where it stops, and where each batch is when the first one is at a moment. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/lesson.h"
#include "study/compare.h"
#include "study/turning.h"

/* One of the batches, computed. Borrows all. */
typedef struct
{
  const LwBatch *batch;
  const LwTrack *track;
  const int *columns;   /* the step of the first batch that each of its steps matches, -1: none; NULL: in order */
} LwShown;

/* A moment of the first batch. */
typedef struct
{
  guint step;
  double minute;
} LwHead;

typedef enum
{
  LW_STOP_BEGIN,
  LW_STOP_TURN,
  LW_STOP_MOMENT,
  LW_STOP_END,
} LwStopKind;

typedef struct
{
  LwStopKind kind;
  LwHead head;
  guint shown;      /* of a turn: which batch turns */
  LwTurnAt turn;    /* and at which of its own moments */
  guint moment;     /* of the lesson */
} LwStop;

/* (transfer full) array of LwStop in the order of time, at one time as they are numbered: the begin, the turning points
 * of all `n` batches that come about while the first runs, the moments of the lesson (nullable), the end. */
GArray  *lw_lesson_stops    (const LwShown  *shown,
                             guint           n,
                             gboolean        by_clock,
                             const LwLesson *lesson);

/* -1, 0 or 1: whether `a` is before `b`. */
int      lw_head_compare    (LwHead          a,
                             LwHead          b);

/* The last stop that is not after `head`. */
guint    lw_lesson_stop_at  (const GArray   *stops,
                             LwHead          head);

/* Whether what comes after `head` is not to be seen: a question there or later is still open. `answered` has one for each
 * stop. */
gboolean lw_lesson_hides    (const GArray   *stops,
                             const LwLesson *lesson,
                             const gboolean *answered,
                             LwHead          head);

/* Step and minute of batch `i` when the first is at `head`: by clock as long after its own start, or at its end if that
 * is over; else in the matching step at the same share of it. FALSE if it has none. */
gboolean lw_lesson_where    (const LwShown  *shown,
                             guint           i,
                             gboolean        by_clock,
                             LwHead          head,
                             guint          *step,
                             double         *minute);

/* What batch `i` is like then; FALSE as above. */
gboolean lw_lesson_is       (const LwShown  *shown,
                             guint           i,
                             gboolean        by_clock,
                             LwHead          head,
                             LwOutcome      *outcome);

/* Two batches side by side: which of their moments belong together. Pure. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/surround.h"

/* One of the two batches, computed. Borrows both. */
typedef struct
{
  const LwBatch *batch;
  const LwTrack *track;  /* whole or not */
} LwSide;

/* A moment of one batch, where it has one. */
typedef struct
{
  gboolean there;
  guint step;
  double minute;   /* of the step */
  LwOutcome is;
} LwMoment;

typedef struct
{
  double clock_s;  /* by the clock: since the midnight before the first start; else NAN */
  LwMoment of[2];
} LwCompareRow;

/* (transfer full) the track that comparisons are made of, finely sampled; NULL, and `failure` (transfer full) says why,
 * where it cannot be computed to its end. */
LwTrack *lw_compare_track (LwSeason *season,
                           guint     batch,
                           char    **failure);

/* Steps of two batches that belong together, -1 where one has none. */
typedef struct
{
  int of[2];
} LwPair;

/* (transfer full) array of LwPair. Steps of the same kind are matched in their order, as many as can be (the longest
 * common subsequence, earlier steps first); what has no match stands alone. */
GArray *lw_compare_pairs (const LwBatch *one,
                          const LwBatch *other);

/* Fills in, for each step of `other`, the step of `one` that is its match, -1 where there is none. */
void lw_compare_columns (const LwBatch *one,
                         const LwBatch *other,
                         int           *columns);

/* (transfer full) array of LwCompareRow, one for each step end, matched so. Where the last steps of the two are no
 * match, one more row has the finished tea of each. */
GArray *lw_compare_steps (const LwSide sides[2]);

/* Seconds from the start of `one` to that of `other` by the time of day alone: the day is the one that brings them
 * nearest, so that 23:30 and 0:30 are an hour apart. Within half a day. */
double lw_compare_begins (const LwBatch *one,
                          const LwBatch *other);

/* (transfer full) array of LwCompareRow, one for each time of day at which a step of either batch ends, counted from
 * the midnight before the first of the two starts. A batch that has not begun then, or is over, is not there. */
GArray *lw_compare_clock (const LwSide sides[2]);

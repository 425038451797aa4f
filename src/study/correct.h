/* Correct: what a batch is really like after it was weighed, from what the model foretold and what was measured, each
 * weighed by its uncertainty. Pure; thread-safe; can be cancelled; the same on any number of threads. The method:
 * docs/study.md */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/correction.h"
#include "study/many.h"

#define LW_CORRECT_SAMPLES 256
#define LW_CORRECT_FAR 4.0     /* standard deviations of a miss; beyond it something else is wrong. A choice */

/* One weigh-in, in its measure's unit; a weight with its tare. */
typedef struct
{
  LwWeighed weighed;
  double expected;     /* by the model */
  double expected_sd;
  double combined;
  double combined_sd;
  double off;          /* measured less what was foretold, in standard deviations of that difference: by the model alone */
  double off_from;     /* or with the weigh-ins before it, whichever is further off; the value foretold so */
} LwCorrectPoint;

/* An outcome of the whole batch at the moment of the last weigh-in. */
typedef struct
{
  double expected;
  double expected_sd;
  double combined;     /* of the corrected state */
  double combined_sd;
} LwCorrectOutcome;

typedef struct
{
  LwSeason *season;    /* with the correction, the only one of the batch */
  guint step;          /* of the last weigh-in that counts */
  double minute;
  guint n;
  LwCorrectPoint *points;
  LwCorrectOutcome of[LW_N_QUANTITIES];
} LwCorrect;

typedef struct
{
  guint step;          /* only weigh-ins up to here count, */
  double minute;       /* and in it up to here */
  guint threads;       /* 0: one for each processor */
  LwProgress progress; /* (nullable) counts marches */
  gpointer progress_data;
} LwCorrectAsk;

/* NULL with `error`: G_IO_ERROR_NOT_FOUND, nothing that tells of the leaf was weighed up to there; G_IO_ERROR_CANCELLED;
 * or G_IO_ERROR_FAILED, the batch cannot be computed so far. */
LwCorrect *lw_correct_new  (LwSeason           *season,
                            guint               batch,
                            const LwCorrectAsk *ask,
                            GCancellable       *cancellable,
                            GError            **error);
void       lw_correct_free (LwCorrect          *correct);

/* Whether the weigh-in is further off than chance and the usual variations explain. */
gboolean   lw_correct_is_far (const LwCorrectPoint *point);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwCorrect, lw_correct_free)

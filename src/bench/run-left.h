/* What a journal tells of a run that ended with its program, where it does not fit what the season's file has by now: then
 * nothing is put back before people have said what is to count. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/running.h"

typedef enum
{
  LW_LEFT_APART,    /* the batch was changed in the file, too */
  LW_LEFT_NO_BATCH, /* the file has no such batch */
  LW_LEFT_MOVED,    /* the run was of a file that is no longer there, and this may be that file */
} LwLeftWhy;

typedef struct
{
  LwLeftWhy why;
  char *batch;
  char *season;    /* the name that it had */
  char *file;      /* where it was */
  guint n_entries; /* that the season in hand does not have */
  gboolean joins;  /* whether what was done in the run has a place in the file's batch */
} LwRunLeft;

typedef enum
{
  LW_TAKE_NOTHING, /* it is asked again when the season, or another that may be the one, is opened */
  LW_TAKE_RUN,     /* the batch is as the run had it; of a file that was moved: this is that file */
  LW_TAKE_BOTH,    /* as the file has it, but for what was done and measured in the run; needs `joins` */
  LW_TAKE_FILE,    /* as the file has it; the journal is set aside */
} LwTake;

/* (transfer none) (nullable) what is to be asked. */
const LwRunLeft *lw_running_left      (LwRunning *self);
void             lw_running_take_left (LwRunning *self,
                                       LwTake     take);

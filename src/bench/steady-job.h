/* One computation of a batch's steadiness in a thread: its spread, or steadier settings. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/asked.h"
#include "bench/steady.h"

typedef struct _LwSteadyJob LwSteadyJob;

/* Called in the main loop when it has come to its end, unless it was cancelled. */
typedef void (*LwSteadyDone) (LwSteadyJob *job,
                              gpointer     data);

/* (transfer full) `free`: LwHandle, the settings that may be turned; copied. */
LwSteadyJob       *lw_steady_job_start         (LwSteadyWork       work,
                                                LwSeason          *season,
                                                guint              batch,
                                                const LwSpreadAsk *ask,
                                                const GArray      *free,
                                                LwSteadyDone       done,
                                                gpointer           data);
void               lw_steady_job_cancel        (LwSteadyJob       *job);
void               lw_steady_job_unref         (LwSteadyJob       *job);

LwSteadyWork       lw_steady_job_work          (const LwSteadyJob *job);
const LwAsked     *lw_steady_job_of            (const LwSteadyJob *job);
const LwSpreadAsk *lw_steady_job_ask           (const LwSteadyJob *job);
/* 0 to 1. */
double             lw_steady_job_done          (LwSteadyJob       *job);

/* (transfer full) (nullable) NULL: it could not be computed. */
LwSpread          *lw_steady_job_take_spread   (LwSteadyJob       *job);
LwSteadier        *lw_steady_job_take_steadier (LwSteadyJob       *job);

/* A fit on its way in a thread of its own. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/fit.h"

typedef struct _LwFitJob LwFitJob;

/* In the main loop, once, and then the job is gone. `fit` (transfer full) is NULL with `error`. */
typedef void (*LwFitDone) (LwFit        *fit,
                           const GError *error,
                           gpointer      data);

/* `batches` of guint. */
LwFitJob *lw_fit_job_start  (LwSeason     *season,
                             GArray       *batches,
                             guint         free,
                             gboolean      leave_one_out,
                             LwFitDone     done,
                             gpointer      data);

/* The share of the work that is done, 0 to 1. */
double    lw_fit_job_share  (LwFitJob     *job);

/* Calls it off at once: `done` is not called, and the job is gone. */
void      lw_fit_job_cancel (LwFitJob     *job);

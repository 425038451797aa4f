/* The thread owns a copy of all it reads. The job lives until both who asked and the thread are done with it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fit-job.h"

#define WHOLE 10000 /* a share as a whole number, which threads can pass on */

struct _LwFitJob
{
  LwSeason *season;
  GArray *batches;
  guint free;
  gboolean leave_one_out;
  int share;             /* atomic; of WHOLE */
  GCancellable *cancellable;
  LwFitDone done;        /* NULL once it is called off */
  gpointer data;
};

static void
job_free (LwFitJob *job)
{
  lw_season_unref (job->season);
  g_array_unref (job->batches);
  g_object_unref (job->cancellable);
  g_free (job);
}

static void
progress_cb (double   share,
             gpointer data)
{
  LwFitJob *job = data;

  g_atomic_int_set (&job->share, (int) (share * WHOLE));
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  LwFitJob *job = data;
  LwFitAsk ask = {
    .batches = job->batches, .free = job->free, .leave_one_out = job->leave_one_out,
    .progress = progress_cb, .progress_data = job,
  };
  g_autoptr (GError) error = NULL;
  LwFit *fit = lw_fit_new (job->season, &ask, cancellable, &error);

  if (fit != NULL)
    g_task_return_pointer (task, fit, (GDestroyNotify) lw_fit_free);
  else
    g_task_return_error (task, g_steal_pointer (&error));
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  LwFitJob *job = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (LwFit) fit = g_task_propagate_pointer (G_TASK (result), &error);

  if (job->done != NULL)
    job->done (g_steal_pointer (&fit), error, job->data);
}

LwFitJob *
lw_fit_job_start (LwSeason *season,
                  GArray   *batches,
                  guint     free,
                  gboolean  leave_one_out,
                  LwFitDone done,
                  gpointer  data)
{
  LwFitJob *job = g_new0 (LwFitJob, 1);
  g_autoptr (GTask) task = NULL;

  *job = (LwFitJob) {
    .season = lw_season_ref (season), .batches = g_array_ref (batches), .free = free, .leave_one_out = leave_one_out,
    .cancellable = g_cancellable_new (), .done = done, .data = data,
  };
  task = g_task_new (NULL, job->cancellable, done_cb, job);
  g_task_set_task_data (task, job, (GDestroyNotify) job_free);
  /* A fit that is there is taken, even if it was called off at its end. */
  g_task_set_check_cancellable (task, FALSE);
  g_task_run_in_thread (task, work);

  return job;
}

double
lw_fit_job_share (LwFitJob *job)
{
  return g_atomic_int_get (&job->share) / (double) WHOLE;
}

void
lw_fit_job_cancel (LwFitJob *job)
{
  job->done = NULL;
  g_cancellable_cancel (job->cancellable);
}

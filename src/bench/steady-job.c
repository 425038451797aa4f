/* The thread of a job. Only `permille` is shared while it runs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/steady-job.h"

struct _LwSteadyJob
{
  LwSteadyWork work;
  LwAsked of;
  LwSpreadAsk ask;
  GArray *free;
  GCancellable *cancellable;
  LwSteadyDone done;
  gpointer data;
  int permille;           /* atomic */
  LwSpread *spread;       /* (nullable) */
  LwSteadier *steadier;   /* (nullable) */
};

static void
job_clear (LwSteadyJob *job)
{
  lw_asked_clear (&job->of);
  g_array_unref (job->free);
  g_object_unref (job->cancellable);
  g_clear_pointer (&job->spread, lw_spread_free);
  g_clear_pointer (&job->steadier, lw_steadier_free);
}

void
lw_steady_job_unref (LwSteadyJob *job)
{
  g_atomic_rc_box_release_full (job, (GDestroyNotify) job_clear);
}

static void
progress (guint    done,
          guint    total,
          gpointer data)
{
  LwSteadyJob *job = data;

  g_atomic_int_set (&job->permille, (int) (1000.0 * done / MAX (total, 1)));
}

static void
work (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  LwSteadyJob *job = data;
  LwSpreadAsk ask = job->ask;

  ask.progress = progress;
  ask.progress_data = job;
  if (job->work == LW_STEADY_SPREADS)
    job->spread = lw_spread_new (job->of.season, job->of.batch, &ask, cancellable);
  else
    job->steadier = lw_steadier_new (job->of.season, job->of.batch, &ask, job->free, cancellable);
  g_task_return_boolean (task, TRUE);
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  LwSteadyJob *job = g_task_get_task_data (G_TASK (result));

  if (!g_cancellable_is_cancelled (job->cancellable))
    job->done (job, job->data);
}

LwSteadyJob *
lw_steady_job_start (LwSteadyWork       what,
                     LwSeason          *season,
                     guint              batch,
                     const LwSpreadAsk *ask,
                     const GArray      *free,
                     LwSteadyDone       done,
                     gpointer           data)
{
  LwSteadyJob *job = g_atomic_rc_box_new0 (LwSteadyJob);
  g_autoptr (GTask) task = NULL;

  job->work = what;
  lw_asked_take (&job->of, &(LwAsked) { season, batch });
  job->ask = *ask;
  job->free = g_array_copy ((GArray *) free);
  job->cancellable = g_cancellable_new ();
  job->done = done;
  job->data = data;

  task = g_task_new (NULL, job->cancellable, done_cb, NULL);
  g_task_set_task_data (task, g_atomic_rc_box_acquire (job), (GDestroyNotify) lw_steady_job_unref);
  g_task_run_in_thread (task, work);

  return job;
}

void
lw_steady_job_cancel (LwSteadyJob *job)
{
  g_cancellable_cancel (job->cancellable);
}

LwSteadyWork
lw_steady_job_work (const LwSteadyJob *job)
{
  return job->work;
}

const LwAsked *
lw_steady_job_of (const LwSteadyJob *job)
{
  return &job->of;
}

const LwSpreadAsk *
lw_steady_job_ask (const LwSteadyJob *job)
{
  return &job->ask;
}

double
lw_steady_job_done (LwSteadyJob *job)
{
  return g_atomic_int_get (&job->permille) / 1000.0;
}

LwSpread *
lw_steady_job_take_spread (LwSteadyJob *job)
{
  return g_steal_pointer (&job->spread);
}

LwSteadier *
lw_steady_job_take_steadier (LwSteadyJob *job)
{
  return g_steal_pointer (&job->steadier);
}

/* Knock-on by computing each neighbour. The march remembers the steps before the one
 * that was turned, so later settings cost less. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/knock.h"

#include <math.h>

#include "season/edit.h"

#define SHARES 2

/* Every SHARES-th handle, for one thread. */
typedef struct
{
  LwSeason *season;
  guint batch;
  guint at;                  /* whose end is asked for */
  guint first;
  const GArray *handles;
  LwKnock *knocks;           /* as many as handles; each share writes its own */
  GCancellable *cancellable;
  gboolean done;
} Share;

static gboolean
is_followed (const LwBatch       *batch,
             const LwStep        *step,
             const LwKindSetting *row)
{
  return lw_step_log (step, row->setting) != NULL
         || (batch->weather != NULL && row->weather && !lw_step_is_given (step, row->setting));
}

GArray *
lw_handles_of (const LwSeason *season,
               guint           batch)
{
  const LwBatch *here = season->batches[batch];
  GArray *handles = g_array_new (FALSE, FALSE, sizeof (LwHandle));

  for (guint i = 0; i < here->n_steps; i++)
    {
      const LwKindRow *kind = lw_kind_row (here->steps[i].kind);

      for (guint k = 0; k < kind->n_settings; k++)
        {
          LwHandle handle = { i, kind->settings[k].setting };

          if (!is_followed (here, &here->steps[i], &kind->settings[k]) && lw_handle_notch (here, &handle) != 0)
            g_array_append_val (handles, handle);
        }
    }

  return handles;
}

gboolean
lw_handles_hold (const GArray *handles,
                 LwHandle      handle)
{
  for (guint i = 0; i < handles->len; i++)
    {
      const LwHandle *one = &g_array_index (handles, LwHandle, i);

      if (one->step == handle.step && one->setting == handle.setting)
        return TRUE;
    }

  return FALSE;
}

double
lw_handle_notch (const LwBatch  *batch,
                 const LwHandle *handle)
{
  const LwStep *step = &batch->steps[handle->step];
  const LwKindSetting *range = lw_kind_setting (step->kind, handle->setting);
  double value = lw_step_get (step, handle->setting);
  double notch = handle->setting == LW_SET_MINUTES ? lw_minutes_notch (value, FALSE)
                                                   : lw_setting_row (handle->setting)->notch;

  if (value + notch <= range->high)
    return notch;

  return value - notch >= range->low ? -notch : 0;
}

/* The outcome at the end of `step`; FALSE if it could not be computed. */
static gboolean
outcome_of (LwSeason  *season,
            guint      batch,
            guint      step,
            LwMarch   *march,
            LwOutcome *outcome)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwTrack) track = NULL;

  if (plan == NULL || step >= plan->n_steps)
    return FALSE;

  plan->n_steps = step + 1;
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });
  if (track->n_steps <= step)
    return FALSE;

  *outcome = lw_track_end (track, step, -1);

  return TRUE;
}

/* Turns the handle by its notch. A later step has no effect on what was before it. */
static void
knock_one (const Share     *share,
           const LwOutcome *base,
           LwMarch         *march,
           const LwHandle  *handle,
           LwKnock         *knock)
{
  const LwBatch *here = share->season->batches[share->batch];
  double value = lw_step_get (&here->steps[handle->step], handle->setting);
  g_autoptr (LwSeason) next = NULL;
  gboolean known;
  LwOutcome moved;

  *knock = (LwKnock) { *handle, lw_handle_notch (here, handle), { 0 } };
  if (handle->step > share->at)
    return;

  next = lw_edit_set (share->season, share->batch, handle->step, handle->setting, value + knock->notch);
  known = outcome_of (next, share->batch, share->at, march, &moved);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    knock->effect[q] = known ? lw_quantity_of (q, &moved) - lw_quantity_of (q, base) : NAN;
}

static gpointer
share_run (gpointer data)
{
  Share *share = data;
  g_autoptr (LwMarch) march = lw_march_new ();
  LwOutcome base;

  if (march == NULL)
    return NULL;

  lw_march_set_tolerance (march, LW_KNOCK_TOLERANCE);
  if (!outcome_of (share->season, share->batch, share->at, march, &base))
    return NULL;

  /* From the last step backwards: what was remembered of the earlier ones then still holds. */
  for (guint i = share->handles->len; i-- > 0;)
    {
      if (i % SHARES != share->first)
        continue;
      if (g_cancellable_is_cancelled (share->cancellable))
        return NULL;

      knock_one (share, &base, march, &g_array_index (share->handles, LwHandle, i), &share->knocks[i]);
    }
  share->done = TRUE;

  return NULL;
}

GArray *
lw_knock_on (LwSeason     *season,
             guint         batch,
             int           step,
             GCancellable *cancellable)
{
  guint n_steps = season->batches[batch]->n_steps;
  g_autoptr (GArray) handles = lw_handles_of (season, batch);
  g_autoptr (GArray) knocks = g_array_sized_new (FALSE, TRUE, sizeof (LwKnock), handles->len);
  Share shares[SHARES];
  GThread *threads[SHARES];
  gboolean done = TRUE;

  g_return_val_if_fail (step < (int) n_steps, NULL);

  if (n_steps == 0)
    return NULL;

  g_array_set_size (knocks, handles->len);
  for (guint i = 0; i < SHARES; i++)
    shares[i] = (Share) {
      .season = season, .batch = batch, .at = step < 0 ? n_steps - 1 : (guint) step, .first = i,
      .handles = handles, .knocks = (LwKnock *) (gpointer) knocks->data, .cancellable = cancellable,
    };

  for (guint i = 1; i < SHARES; i++)
    threads[i] = g_thread_new ("knock", share_run, &shares[i]);
  share_run (&shares[0]);
  for (guint i = 1; i < SHARES; i++)
    g_thread_join (threads[i]);

  for (guint i = 0; i < SHARES; i++)
    done &= shares[i].done;

  return done ? g_steal_pointer (&knocks) : NULL;
}

/* The logs of a batch: where they begin, which steps follow them, and that no edit of the
 * steps loses one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "season/season.h"

const char *
lw_step_log (const LwStep *step,
             LwSetting     setting)
{
  LwLogOf of;

  return lw_log_of_setting (setting, &of) ? step->log[of] : NULL;
}

void
lw_step_set_log (LwStep     *step,
                 LwSetting   setting,
                 const char *id)
{
  LwLogOf of;

  g_return_if_fail (lw_log_of_setting (setting, &of) && lw_kind_setting (step->kind, setting) != NULL);

  if (g_strcmp0 (step->log[of], id) == 0)
    return;

  g_free (step->log[of]);
  step->log[of] = g_strdup (id);
}

double
lw_batch_begin_minute (const LwBatch *batch,
                       guint          step)
{
  double minute = 0;

  for (guint i = 0; i < step; i++)
    minute += lw_step_get (&batch->steps[i], LW_SET_MINUTES);

  return minute;
}

const LwBatchLog *
lw_batch_log (const LwBatch *batch,
              const char    *id)
{
  for (guint i = 0; id != NULL && i < batch->n_logs; i++)
    if (strcmp (batch->logs[i].log->id, id) == 0)
      return &batch->logs[i];

  return NULL;
}

double
lw_batch_log_minute (const LwBatch    *batch,
                     const LwBatchLog *at)
{
  return at->minute + (at->step >= 0 ? lw_batch_begin_minute (batch, (guint) at->step) : 0);
}

const LwFollowed *
lw_batch_would_follow (const LwBatch *batch,
                       guint          step,
                       LwSetting      setting,
                       const char    *id,
                       double        *from_s)
{
  const LwBatchLog *at = lw_batch_log (batch, id);
  const LwLogCurve *curve;
  LwLogOf of;

  if (at == NULL || !lw_log_of_setting (setting, &of) || (curve = lw_log_curve (at->log, of)) == NULL)
    return NULL;

  /* A log that begins with a step goes with it to the second: what comes before must not shift it by rounding. */
  *from_s = at->step == (int) step
              ? -60 * at->minute
              : 60 * (lw_batch_begin_minute (batch, step) - lw_batch_log_minute (batch, at));

  return lw_log_followed (curve, *from_s, 60 * lw_step_get (&batch->steps[step], LW_SET_MINUTES));
}

const LwFollowed *
lw_batch_followed (const LwBatch *batch,
                   guint          step,
                   LwSetting      setting,
                   double        *from_s)
{
  return lw_batch_would_follow (batch, step, setting, lw_step_log (&batch->steps[step], setting), from_s);
}

gboolean
lw_batch_follows (const LwBatch *batch,
                  const char    *id)
{
  for (guint i = 0; i < batch->n_steps; i++)
    for (guint of = 0; of < LW_N_LOG_OF; of++)
      if (g_strcmp0 (batch->steps[i].log[of], id) == 0)
        return TRUE;

  return FALSE;
}

void
lw_batch_add_log (LwBatch   *batch,
                  LwBatchLog log)
{
  batch->logs = g_renew (LwBatchLog, batch->logs, batch->n_logs + 1);
  batch->logs[batch->n_logs++] = log;
}

void
lw_batch_remove_log (LwBatch    *batch,
                     const char *id)
{
  const LwBatchLog *at = lw_batch_log (batch, id);
  guint place;

  g_return_if_fail (at != NULL);

  for (guint i = 0; i < batch->n_steps; i++)
    for (guint of = 0; of < LW_N_LOG_OF; of++)
      if (g_strcmp0 (batch->steps[i].log[of], id) == 0)
        g_clear_pointer (&batch->steps[i].log[of], g_free);

  place = (guint) (at - batch->logs);
  lw_log_unref (batch->logs[place].log);
  batch->n_logs--;
  memmove (&batch->logs[place], &batch->logs[place + 1], (batch->n_logs - place) * sizeof *batch->logs);
}

void
lw_batch_logs_inserted (LwBatch *batch,
                        guint    at)
{
  for (guint i = 0; i < batch->n_logs; i++)
    if (batch->logs[i].step >= (int) at)
      batch->logs[i].step++;
}

void
lw_batch_logs_removing (LwBatch *batch,
                        guint    at)
{
  for (guint i = 0; i < batch->n_logs; i++)
    {
      LwBatchLog *log = &batch->logs[i];

      if (log->step == (int) at)
        *log = (LwBatchLog) { log->log, -1, lw_batch_log_minute (batch, log) };
      else if (log->step > (int) at)
        log->step--;
    }
}

void
lw_batch_logs_moved (LwBatch *batch,
                     guint    from,
                     guint    to)
{
  for (guint i = 0; i < batch->n_logs; i++)
    {
      int *step = &batch->logs[i].step;

      if (*step == (int) from)
        *step = (int) to;
      else if (*step > (int) from && *step <= (int) to)
        --*step;
      else if (*step < (int) from && *step >= (int) to)
        ++*step;
    }
}

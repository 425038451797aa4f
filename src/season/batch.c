/* A batch: its memory and its chain of steps. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/correction.h"

#include <math.h>
#include <string.h>

LwBatch *
lw_batch_new (const char *name)
{
  LwBatch *batch = g_atomic_rc_box_new0 (LwBatch);

  batch->name = g_strdup (name);
  batch->leaf = g_strdup ("");
  batch->fresh_kg = 10;
  batch->fresh_moisture_pct = NAN;

  return batch;
}

LwBatch *
lw_batch_copy (const LwBatch *batch)
{
  LwBatch *copy = g_atomic_rc_box_dup (sizeof *batch, (LwBatch *) batch);

  copy->name = g_strdup (batch->name);
  copy->tea = g_strdup (batch->tea);
  copy->leaf = g_strdup (batch->leaf);
  copy->weather = g_strdup (batch->weather);
  copy->note = g_strdup (batch->note);
  copy->steps = g_new0 (LwStep, batch->n_steps);
  for (guint i = 0; i < batch->n_steps; i++)
    copy->steps[i] = lw_step_copy (&batch->steps[i]);
  copy->aims = lw_aims_copy (batch->aims, batch->n_aims);
  copy->logs = g_memdup2 (batch->logs, batch->n_logs * sizeof *batch->logs);
  for (guint i = 0; i < copy->n_logs; i++)
    lw_log_ref (copy->logs[i].log);
  if (batch->plan != NULL)
    lw_batch_ref (copy->plan);

  return copy;
}

LwBatch *
lw_batch_ref (LwBatch *batch)
{
  return g_atomic_rc_box_acquire (batch);
}

static void
batch_clear (LwBatch *batch)
{
  for (guint i = 0; i < batch->n_steps; i++)
    lw_step_clear (&batch->steps[i]);

  for (guint i = 0; i < batch->n_logs; i++)
    lw_log_unref (batch->logs[i].log);

  g_clear_pointer (&batch->plan, lw_batch_unref);
  g_free (batch->steps);
  g_free (batch->logs);
  lw_aims_clear (&batch->aims, &batch->n_aims);
  g_free (batch->name);
  g_free (batch->tea);
  g_free (batch->leaf);
  g_free (batch->weather);
  g_free (batch->note);
}

void
lw_batch_unref (LwBatch *batch)
{
  g_atomic_rc_box_release_full (batch, (GDestroyNotify) batch_clear);
}

void
lw_batch_forget_made (LwBatch *batch)
{
  batch->made = FALSE;
  g_clear_pointer (&batch->plan, lw_batch_unref);
  lw_batch_drop_corrections (batch);

  for (guint i = 0; i < batch->n_steps; i++)
    {
      LwStep *step = &batch->steps[i];

      for (guint k = 0; k < step->n_weigh_ins; k++)
        g_free (step->weigh_ins[k].note);
      g_clear_pointer (&step->weigh_ins, g_free);
      step->n_weigh_ins = 0;
    }

  /* What was measured belongs to the batch that was made; but what a step follows is how it is to be made. */
  for (guint i = batch->n_logs; i-- > 0;)
    if (!lw_batch_follows (batch, batch->logs[i].log->id))
      lw_batch_remove_log (batch, batch->logs[i].log->id);
}

static void
say_again (char      **into,
           const char *text)
{
  g_free (*into);
  *into = g_strdup (text);
}

LwBatch *
lw_batch_as_planned (const LwBatch *batch)
{
  LwBatch *planned;

  if (batch->plan == NULL)
    return NULL;

  planned = lw_batch_copy (batch->plan);
  lw_batch_forget_made (planned);
  say_again (&planned->name, batch->name);
  say_again (&planned->tea, batch->tea);
  say_again (&planned->leaf, batch->leaf);
  say_again (&planned->weather, batch->weather);
  /* The note is of what was made. */
  g_clear_pointer (&planned->note, g_free);

  return planned;
}

void
lw_batch_insert_step (LwBatch *batch,
                      guint    at,
                      LwStep   step)
{
  g_return_if_fail (at <= batch->n_steps);

  batch->steps = g_renew (LwStep, batch->steps, batch->n_steps + 1);
  memmove (&batch->steps[at + 1], &batch->steps[at], (batch->n_steps - at) * sizeof step);
  batch->steps[at] = step;
  batch->n_steps++;
  lw_batch_logs_inserted (batch, at);
}

void
lw_batch_remove_step (LwBatch *batch,
                      guint    at)
{
  g_return_if_fail (at < batch->n_steps);

  lw_batch_logs_removing (batch, at);
  lw_step_clear (&batch->steps[at]);
  batch->n_steps--;
  memmove (&batch->steps[at], &batch->steps[at + 1], (batch->n_steps - at) * sizeof *batch->steps);
}

void
lw_batch_move_step (LwBatch *batch,
                    guint    from,
                    guint    to)
{
  LwStep *steps = batch->steps;
  LwStep step;

  g_return_if_fail (from < batch->n_steps && to < batch->n_steps);

  step = steps[from];
  if (from < to)
    memmove (&steps[from], &steps[from + 1], (to - from) * sizeof step);
  else
    memmove (&steps[to + 1], &steps[to], (from - to) * sizeof step);
  steps[to] = step;
  lw_batch_logs_moved (batch, from, to);
}

void
lw_batch_add_weigh_in (LwBatch  *batch,
                       guint     step,
                       LwWeighIn weigh_in)
{
  LwStep *at;

  g_return_if_fail (step < batch->n_steps);

  at = &batch->steps[step];
  at->weigh_ins = g_renew (LwWeighIn, at->weigh_ins, at->n_weigh_ins + 1);
  at->weigh_ins[at->n_weigh_ins++] = weigh_in;
}

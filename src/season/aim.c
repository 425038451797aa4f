/* Aims of a batch: those at a step's end and those of the finished tea. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/season.h"

LwAim *
lw_aims_copy (const LwAim *aims,
              guint        n)
{
  LwAim *copy = g_memdup2 (aims, n * sizeof *aims);

  for (guint i = 0; i < n; i++)
    copy[i].note = g_strdup (aims[i].note);

  return copy;
}

void
lw_aims_clear (LwAim **aims,
               guint  *n)
{
  for (guint i = 0; i < *n; i++)
    g_free ((*aims)[i].note);

  *n = 0;
  g_clear_pointer (aims, g_free);
}

gboolean
lw_aims_same (const LwAim *a,
              guint        n_a,
              const LwAim *b,
              guint        n_b)
{
  if (n_a != n_b)
    return FALSE;

  for (guint i = 0; i < n_a; i++)
    if (a[i].of != b[i].of || a[i].low != b[i].low || a[i].high != b[i].high || a[i].weight != b[i].weight
        || g_strcmp0 (a[i].note, b[i].note) != 0)
      return FALSE;

  return TRUE;
}

static LwAim **
aims_at (const LwBatch *batch,
         int            step,
         guint        **n)
{
  *n = (guint *) (step < 0 ? &batch->n_aims : &batch->steps[step].n_aims);

  return (LwAim **) (step < 0 ? &batch->aims : &batch->steps[step].aims);
}

void
lw_batch_add_aim (LwBatch *batch,
                  int      step,
                  LwAim    aim)
{
  LwAim **aims;
  guint *n;

  g_return_if_fail (step < (int) batch->n_steps);

  aims = aims_at (batch, step, &n);
  *aims = g_renew (LwAim, *aims, *n + 1);
  (*aims)[(*n)++] = aim;
}

const LwAim *
lw_batch_aim (const LwBatch *batch,
              int            step,
              LwQuantity     of)
{
  guint *n;
  LwAim **aims = aims_at (batch, step, &n);

  for (guint i = *n; i-- > 0;)
    if ((*aims)[i].of == of)
      return &(*aims)[i];

  return NULL;
}

void
lw_batch_remove_aim (LwBatch   *batch,
                     int        step,
                     LwQuantity of)
{
  guint *n, kept = 0;
  LwAim **aims = aims_at (batch, step, &n);

  for (guint i = 0; i < *n; i++)
    if ((*aims)[i].of == of)
      g_free ((*aims)[i].note);
    else
      (*aims)[kept++] = (*aims)[i];

  *n = kept;
}

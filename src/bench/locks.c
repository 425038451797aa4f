/* Locks and pins in plain lists: there are never many. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/locks.h"

typedef struct
{
  int step;       /* -1: the finished tea */
  LwQuantity of;
  double value;
} Lock;

struct _LwLocks
{
  GArray *locks;
  GArray *pins;   /* LwHandle */
  guint n_passed; /* steps */
  GArray *kinds;  /* LwKind, of the steps at the last check */
};

LwLocks *
lw_locks_new (void)
{
  LwLocks *self = g_new0 (LwLocks, 1);

  self->locks = g_array_new (FALSE, FALSE, sizeof (Lock));
  self->pins = g_array_new (FALSE, FALSE, sizeof (LwHandle));
  self->kinds = g_array_new (FALSE, FALSE, sizeof (LwKind));

  return self;
}

void
lw_locks_free (LwLocks *self)
{
  g_array_unref (self->locks);
  g_array_unref (self->pins);
  g_array_unref (self->kinds);
  g_free (self);
}

void
lw_locks_clear (LwLocks *self)
{
  g_array_set_size (self->locks, 0);
  g_array_set_size (self->pins, 0);
  self->n_passed = 0;
}

static gboolean
same_kinds (const LwLocks *self,
            const LwBatch *batch)
{
  if (self->kinds->len != batch->n_steps)
    return FALSE;
  for (guint i = 0; i < batch->n_steps; i++)
    if (g_array_index (self->kinds, LwKind, i) != batch->steps[i].kind)
      return FALSE;

  return TRUE;
}

void
lw_locks_check (LwLocks       *self,
               const LwBatch *batch)
{
  if (same_kinds (self, batch))
    return;

  for (guint i = self->locks->len; i-- > 0;)
    if (g_array_index (self->locks, Lock, i).step >= 0)
      g_array_remove_index (self->locks, i);
  g_array_set_size (self->pins, 0);
  g_array_set_size (self->kinds, 0);
  for (guint i = 0; i < batch->n_steps; i++)
    g_array_append_val (self->kinds, batch->steps[i].kind);
}

static Lock *
lock_at (const LwLocks *self,
         int           step,
         LwQuantity    of,
         guint        *at)
{
  for (guint i = 0; i < self->locks->len; i++)
    {
      Lock *lock = &g_array_index (self->locks, Lock, i);

      if (lock->step == step && lock->of == of)
        {
          if (at != NULL)
            *at = i;
          return lock;
        }
    }

  return NULL;
}

void
lw_locks_lock (LwLocks   *self,
              int        step,
              LwQuantity of,
              double     value)
{
  Lock lock = { step, of, value };

  lw_locks_unlock (self, step, of);
  g_array_append_val (self->locks, lock);
}

void
lw_locks_unlock (LwLocks   *self,
                int        step,
                LwQuantity of)
{
  guint at;

  if (lock_at (self, step, of, &at) != NULL)
    g_array_remove_index (self->locks, at);
}

void
lw_locks_open (LwLocks *self)
{
  g_array_set_size (self->locks, 0);
}

gboolean
lw_locks_locked (const LwLocks *self,
                int           step,
                LwQuantity    of,
                double       *value)
{
  const Lock *lock = lock_at (self, step, of, NULL);

  if (lock != NULL && value != NULL)
    *value = lock->value;

  return lock != NULL;
}

guint
lw_locks_n (const LwLocks *self)
{
  return self->locks->len;
}

void
lw_locks_pin (LwLocks *self,
             LwHandle handle,
             gboolean pinned)
{
  for (guint i = self->pins->len; i-- > 0;)
    {
      const LwHandle *pin = &g_array_index (self->pins, LwHandle, i);

      if (pin->step == handle.step && pin->setting == handle.setting)
        g_array_remove_index (self->pins, i);
    }
  if (pinned)
    g_array_append_val (self->pins, handle);
}

gboolean
lw_locks_pinned (const LwLocks *self,
                LwHandle      handle)
{
  return lw_handles_hold (self->pins, handle);
}

void
lw_locks_pass (LwLocks *self,
               guint    n_steps)
{
  self->n_passed = n_steps;
}

gboolean
lw_locks_stays (const LwLocks *self,
                LwHandle       handle)
{
  return handle.step < self->n_passed || lw_locks_pinned (self, handle);
}

void
lw_locks_add_wants (const LwLocks *self,
                    const LwBatch *batch,
                    GArray        *wants)
{
  for (guint i = 0; i < self->locks->len; i++)
    {
      const Lock *lock = &g_array_index (self->locks, Lock, i);
      guint step = lock->step >= 0 ? (guint) lock->step : batch->n_steps - 1;
      LwWant want = { step, lock->of, lock->value, lock->value, 1 };

      if (step < batch->n_steps)
        g_array_append_val (wants, want);
    }
}

/* What batches come to, from one run of the program to the next. Read in a thread before anything is computed, written in
 * one while the search goes on; a cache that cannot be had is done without. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/finder-private.h"

#define KEEP_S 5 /* of computing that may be lost */

void
lw_finder_recall (LwFinder *self,
                  LwFound  *found)
{
  LwOutcome outcome;

  if (lw_outcome_cache_find (self->outcomes, lw_found_head (found)->digest, &outcome))
    lw_found_tell (found, LW_FOUND_KNOWN, &outcome);
}

static void
load_work (GTask        *task,
           gpointer      source,
           gpointer      outcomes,
           GCancellable *cancel)
{
  lw_outcome_cache_load (outcomes);
  g_task_return_boolean (task, TRUE);
}

static void
load_cb (GObject      *object,
         GAsyncResult *result,
         gpointer      data)
{
  LwFinder *self = LW_FINDER (object);

  if (self->outcomes == NULL)
    return;

  self->remembers = TRUE;
  for (guint i = 0; i < self->all->len; i++)
    if (lw_found_state (g_ptr_array_index (self->all, i)) == LW_FOUND_LATER)
      lw_finder_recall (self, g_ptr_array_index (self->all, i));
  lw_finder_turned (self);
}

static void
run_in_thread (LwFinder           *self,
               GTaskThreadFunc     work,
               GAsyncReadyCallback done)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, done, NULL);

  g_task_set_task_data (task, lw_outcome_cache_ref (self->outcomes), (GDestroyNotify) lw_outcome_cache_unref);
  g_task_run_in_thread (task, work);
}

void
lw_finder_remember (LwFinder *self)
{
  if (!self->remembering)
    run_in_thread (self, load_work, load_cb);
  self->remembering = TRUE;
}

static void
save_work (GTask        *task,
           gpointer      source,
           gpointer      outcomes,
           GCancellable *cancel)
{
  g_task_return_boolean (task, lw_outcome_cache_save (outcomes));
}

static gboolean
keep_cb (gpointer data)
{
  LwFinder *self = data;

  self->keep = 0;
  run_in_thread (self, save_work, NULL);

  return G_SOURCE_REMOVE;
}

void
lw_finder_keep (LwFinder *self)
{
  if (self->keep == 0)
    self->keep = g_timeout_add_seconds (KEEP_S, keep_cb, self);
}

void
lw_finder_keep_now (LwFinder *self)
{
  g_clear_handle_id (&self->keep, g_source_remove);
  lw_outcome_cache_save (self->outcomes);
}

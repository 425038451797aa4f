/* Computes what batches come to, some of a file at a time: first those that are looked at, then all that the search or
 * the order asks for. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/finder-private.h"

#include "season/document.h"
#include "study/finished.h"

#define WORKERS 2
#define BATCHES_A_JOB 16

typedef struct
{
  LwSeason *season;  /* (nullable) else it is in the file of the first */
  GPtrArray *founds; /* LwFound, all of one file */
  LwOutcome outcomes[BATCHES_A_JOB];
  gboolean known[BATCHES_A_JOB];
} Job;

static void
job_free (Job *job)
{
  g_clear_pointer (&job->season, lw_season_unref);
  g_ptr_array_unref (job->founds);
  g_free (job);
}

/* Whether the outcome decides on what is shown, or in what order. */
static gboolean
is_asked_for (LwFinder *self,
              LwFound  *found)
{
  LwFindAnswer answer = lw_find_match (&self->find, lw_found_head (found), lw_found_outcome (found));

  return answer == LW_FIND_LATER || (answer == LW_FIND_YES && self->sort.by == LW_SORT_OUTCOME);
}

gboolean
lw_finder_wants (LwFinder *self,
                 LwFound  *found)
{
  LwFoundState state = lw_found_state (found);

  return state == LW_FOUND_ASKED
         || (state == LW_FOUND_LATER
             && (g_hash_table_contains (self->wanted, found) || (!self->stopped && is_asked_for (self, found))));
}

/* In the thread. A batch that is no longer what it was when it was listed is left for the next look. */
static void
compute_work (GTask        *task,
              gpointer      source,
              gpointer      data,
              GCancellable *cancel)
{
  Job *job = data;
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwMarch) march = lw_march_new ();
  const char *path = lw_found_path (g_ptr_array_index (job->founds, 0));

  if (job->season == NULL)
    job->season = lw_document_load (path, problems);
  for (guint i = 0; i < job->founds->len && job->season != NULL && !g_cancellable_is_cancelled (cancel); i++)
    {
      const LwHead *head = lw_found_head (g_ptr_array_index (job->founds, i));
      g_autofree char *digest = head->index < job->season->n_batches ? lw_head_digest (job->season, head->index) : NULL;

      job->known[i] = g_strcmp0 (digest, head->digest) == 0
                      && lw_finished (job->season, head->index, march, &job->outcomes[i]);
    }
  g_task_return_boolean (task, TRUE);
}

static void
compute_cb (GObject      *object,
            GAsyncResult *result,
            gpointer      data)
{
  LwFinder *self = LW_FINDER (object);
  Job *job = g_task_get_task_data (G_TASK (result));

  if (!g_task_propagate_boolean (G_TASK (result), NULL))
    return;

  self->computing--;
  for (guint i = 0; i < job->founds->len; i++)
    {
      LwFound *found = g_ptr_array_index (job->founds, i);
      const LwOutcome *outcome = job->known[i] ? &job->outcomes[i] : NULL;

      if (outcome != NULL)
        lw_outcome_cache_add (self->outcomes, lw_found_head (found)->digest, outcome);
      lw_found_tell (found, outcome != NULL ? LW_FOUND_KNOWN : LW_FOUND_FAILED, outcome);
    }
  /* Those of the open season change with every edit, and are few: they can wait until the finder goes. */
  if (lw_found_path (g_ptr_array_index (job->founds, 0)) != NULL)
    lw_finder_keep (self);
  lw_finder_turned (self);
  lw_finder_compute (self);
}

/* The next batch whose outcome is wanted, (nullable). */
static LwFound *
next_wanted (LwFinder *self)
{
  GHashTableIter iter;
  gpointer found;

  g_hash_table_iter_init (&iter, self->wanted);
  while (g_hash_table_iter_next (&iter, &found, NULL))
    if (lw_found_state (found) == LW_FOUND_LATER)
      return found;

  for (; self->cursor < self->all->len && !self->stopped; self->cursor++)
    {
      found = g_ptr_array_index (self->all, self->cursor);
      if (lw_found_state (found) == LW_FOUND_LATER && is_asked_for (self, found))
        return found;
    }

  return NULL;
}

/* With others of its file: the file is read once for all of them. */
static Job *
job_new (LwFinder *self,
         LwFound  *first)
{
  Job *job = g_new0 (Job, 1);
  guint at = 0;

  job->founds = g_ptr_array_new_with_free_func (g_object_unref);
  job->season = lw_found_path (first) == NULL ? lw_season_ref (self->season) : NULL;
  g_ptr_array_add (job->founds, g_object_ref (first));
  lw_found_tell (first, LW_FOUND_ASKED, NULL);

  /* The batches of a file lie together. */
  g_ptr_array_find (self->all, first, &at);
  at = at > lw_found_head (first)->index ? at - lw_found_head (first)->index : 0;
  for (; at < self->all->len && job->founds->len < BATCHES_A_JOB; at++)
    {
      LwFound *other = g_ptr_array_index (self->all, at);

      if (g_strcmp0 (lw_found_path (other), lw_found_path (first)) != 0)
        break;
      if (lw_found_state (other) != LW_FOUND_LATER || !lw_finder_wants (self, other))
        continue;
      g_ptr_array_add (job->founds, g_object_ref (other));
      lw_found_tell (other, LW_FOUND_ASKED, NULL);
    }

  return job;
}

void
lw_finder_compute (LwFinder *self)
{
  while (self->remembers && self->computing < WORKERS)
    {
      LwFound *next = next_wanted (self);
      g_autoptr (GTask) task = NULL;

      if (next == NULL)
        return;

      task = g_task_new (self, self->cancel, compute_cb, NULL);
      g_task_set_task_data (task, job_new (self, next), (GDestroyNotify) job_free);
      g_task_run_in_thread (task, compute_work);
      self->computing++;
    }
}

void
lw_finder_want (LwFinder *self,
                LwFound  *found,
                gboolean  wanted)
{
  if (wanted)
    g_hash_table_add (self->wanted, found);
  else
    g_hash_table_remove (self->wanted, found);
  if (wanted && lw_found_state (found) == LW_FOUND_LATER)
    lw_finder_turned (self);
}

/* The search. A question is a value; the thread reads it, and the main loop takes the answer. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/hold.h"

#include <math.h>

#include "season/edit.h"

/* What is asked. */
typedef struct
{
  LwSeason *edited;
  LwSeason *near;   /* (nullable) to start from */
  guint batch;
  GArray *wants;    /* LwWant */
  GArray *free;     /* LwHandle */
} Question;

struct _LwHold
{
  LwHoldFound found;
  gpointer data;
  LwLocks *locks;
  LwSeason *last;         /* (nullable) the season found last; its settings are the first guess of the next */
  GArray *last_free;      /* (nullable) the settings that were free in it */
  Question *next;         /* (nullable) waits for the search under way */
  GCancellable *running;  /* (nullable) */
};

static void
question_free (Question *question)
{
  lw_season_unref (question->edited);
  g_clear_pointer (&question->near, lw_season_unref);
  g_array_unref (question->wants);
  g_array_unref (question->free);
  g_free (question);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Question, question_free)

LwHold *
lw_hold_new (LwHoldFound found,
             gpointer    data)
{
  LwHold *hold = g_new0 (LwHold, 1);

  hold->found = found;
  hold->data = data;
  hold->locks = lw_locks_new ();

  return hold;
}

void
lw_hold_forget (LwHold *hold)
{
  g_clear_pointer (&hold->last, lw_season_unref);
  g_clear_pointer (&hold->last_free, g_array_unref);
}

void
lw_hold_stop (LwHold *hold)
{
  if (hold->running != NULL)
    g_cancellable_cancel (hold->running);
  g_clear_object (&hold->running);
  g_clear_pointer (&hold->next, question_free);
  lw_hold_forget (hold);
}

void
lw_hold_free (LwHold *hold)
{
  lw_hold_stop (hold);
  lw_locks_free (hold->locks);
  g_free (hold);
}

/* Asking */

static gboolean
differs (const LwStep *a,
         const LwStep *b,
         LwSetting     setting)
{
  return lw_step_is_given (a, setting) != lw_step_is_given (b, setting)
         || lw_step_get (a, setting) != lw_step_get (b, setting);
}

/* Whether the leaf and what surrounds it are the same in both. */
static gboolean
same_start (const LwSeason *base,
            const LwSeason *edited,
            guint           batch)
{
  const LwBatch *was = base->batches[batch], *is = edited->batches[batch];
  gboolean same_fresh = was->fresh_moisture_pct == is->fresh_moisture_pct
                        || (isnan (was->fresh_moisture_pct) && isnan (is->fresh_moisture_pct));

  return same_fresh && was->when_s == is->when_s
         && lw_season_profile (base, was->leaf) == lw_season_profile (edited, is->leaf)
         && (was->weather != NULL ? lw_season_weather (base, was->weather) : NULL)
            == (is->weather != NULL ? lw_season_weather (edited, is->weather) : NULL)
         && base->altitude_m == edited->altitude_m && base->latitude_deg == edited->latitude_deg;
}

/* (transfer full) the settings from step `first` on that need not stay and are the same in both. */
static GArray *
free_from (const LwHold   *hold,
           const LwSeason *base,
           const LwSeason *edited,
           guint           batch,
           guint           first)
{
  g_autoptr (GArray) all = lw_reach_free (edited, batch, first);
  GArray *free = g_array_new (FALSE, FALSE, sizeof (LwHandle));

  for (guint i = 0; i < all->len; i++)
    {
      LwHandle handle = g_array_index (all, LwHandle, i);

      if (!lw_locks_stays (hold->locks, handle)
          && !differs (&base->batches[batch]->steps[handle.step], &edited->batches[batch]->steps[handle.step],
                       handle.setting))
        g_array_append_val (free, handle);
    }

  return free;
}

/* (transfer full) (nullable) what may move after an edit: all that it left alone, from the first step that it changed,
 * or all where the leaf or its surroundings are others; NULL where nothing was changed that the leaf would feel, or the
 * steps are not the same ones. */
static GArray *
free_after (const LwHold   *hold,
            const LwSeason *base,
            const LwSeason *edited,
            guint           batch)
{
  const LwBatch *was = base->batches[batch], *is = edited->batches[batch];
  guint first = G_MAXUINT;

  if (was->n_steps != is->n_steps)
    return NULL;
  for (guint i = is->n_steps; i-- > 0;)
    {
      const LwKindRow *kind = lw_kind_row (is->steps[i].kind);

      if (was->steps[i].kind != is->steps[i].kind)
        return NULL;
      for (guint k = 0; k < kind->n_settings; k++)
        if (differs (&was->steps[i], &is->steps[i], kind->settings[k].setting))
          first = i;
    }

  if (!same_start (base, edited, batch))
    first = 0;

  return first != G_MAXUINT ? free_from (hold, base, edited, batch, first) : NULL;
}

LwLocks *
lw_hold_locks (LwHold *hold)
{
  return hold->locks;
}

static void ask (LwHold *hold);

static void
search_cb (GTask        *task,
           gpointer      source,
           gpointer      data,
           GCancellable *cancellable)
{
  const Question *question = data;

  g_task_return_pointer (task,
                         lw_reach (question->edited, question->batch, question->wants, question->free,
                                   question->near, cancellable),
                         (GDestroyNotify) lw_reached_free);
}

static void
answered_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  GTask *task = G_TASK (result);
  const Question *question = g_task_get_task_data (task);
  g_autoptr (GError) error = NULL;
  LwReached *reached = g_task_propagate_pointer (task, &error);
  LwHold *hold = data;

  /* Stopped meanwhile: the hold may be gone. */
  if (g_cancellable_is_cancelled (g_task_get_cancellable (task)))
    {
      g_clear_pointer (&reached, lw_reached_free);
      return;
    }

  g_clear_object (&hold->running);
  if (reached != NULL)
    {
      lw_hold_forget (hold);
      hold->last = lw_season_ref (reached->season);
      hold->last_free = g_array_ref (question->free);
    }

  if (hold->next != NULL)
    {
      /* A first guess all the same. */
      if (hold->next->near == NULL && reached != NULL)
        hold->next->near = lw_season_ref (reached->season);
      ask (hold);
    }
  hold->found (question->edited, question->wants, reached, hold->data);
  g_clear_pointer (&reached, lw_reached_free);
}

static void
ask (LwHold *hold)
{
  g_autoptr (GTask) task = NULL;

  hold->running = g_cancellable_new ();
  task = g_task_new (NULL, hold->running, answered_cb, hold);
  g_task_set_check_cancellable (task, FALSE);
  g_task_set_task_data (task, g_steal_pointer (&hold->next), (GDestroyNotify) question_free);
  g_task_run_in_thread (task, search_cb);
}

static gboolean
question_put (LwHold   *hold,
              LwSeason *edited,
              guint     batch,
              GArray   *free,
              GArray   *wants)
{
  Question *question = g_new0 (Question, 1);

  question->edited = lw_season_ref (edited);
  question->batch = batch;
  question->free = free;
  question->wants = wants;
  if (hold->last != NULL && hold->last->batches[batch]->n_steps == edited->batches[batch]->n_steps)
    question->near = lw_season_ref (hold->last);

  g_clear_pointer (&hold->next, question_free);
  hold->next = question;
  if (hold->running == NULL)
    ask (hold);

  return TRUE;
}

gboolean
lw_hold_seek (LwHold   *hold,
              LwSeason *base,
              LwSeason *edited,
              guint     batch)
{
  GArray *free = lw_locks_n (hold->locks) > 0 ? free_after (hold, base, edited, batch) : NULL;
  GArray *wants;

  if (free == NULL)
    return FALSE;

  wants = g_array_new (FALSE, FALSE, sizeof (LwWant));
  lw_locks_add_wants (hold->locks, edited->batches[batch], wants);

  return question_put (hold, edited, batch, free, wants);
}

gboolean
lw_hold_reach (LwHold   *hold,
               LwSeason *season,
               guint     batch)
{
  GArray *wants = lw_wants_of_aims (season->batches[batch]);

  lw_locks_add_wants (hold->locks, season->batches[batch], wants);
  if (wants->len == 0)
    {
      g_array_unref (wants);
      return FALSE;
    }

  lw_hold_stop (hold);

  return question_put (hold, season, batch, free_from (hold, season, season, batch, 0), wants);
}

gboolean
lw_hold_seeks (const LwHold *hold)
{
  return hold->running != NULL;
}

LwSeason *
lw_hold_follow (LwHold   *hold,
                LwSeason *base,
                LwSeason *edited,
                guint     batch)
{
  gboolean guess = hold->last != NULL && lw_locks_n (hold->locks) > 0;
  g_autoptr (GArray) free = guess ? free_after (hold, base, edited, batch) : NULL;
  const LwBatch *is = edited->batches[batch];
  LwChange changes[LW_REACH_FREE];
  guint n = 0;

  for (guint i = 0; free != NULL && i < free->len; i++)
    {
      LwHandle handle = g_array_index (free, LwHandle, i);
      double value;

      if (!lw_handles_hold (hold->last_free, handle))
        continue;
      value = lw_step_get (&hold->last->batches[batch]->steps[handle.step], handle.setting);
      if (value != lw_step_get (&is->steps[handle.step], handle.setting))
        changes[n++] = (LwChange) { handle.step, handle.setting, value };
    }

  return n > 0 ? lw_edit_set_all (edited, batch, changes, n) : lw_season_ref (edited);
}

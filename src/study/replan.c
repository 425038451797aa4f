/* First the correction, then the search over what lies ahead, then a full run for each change taken back by itself:
 * that says what it is for. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/replan.h"

#include <math.h>

#include "season/edit.h"
#include "season/text.h"
#include "study/replan-private.h"

#define LATE 1e-9      /* minutes */
#define NEEDLESS 0.05  /* tolerances: a change that gains no more is not worth a turn of the hand */

gboolean
lw_replan_last (const LwBatch *batch,
                LwInstant      *moment)
{
  g_autoptr (GArray) weighed = lw_weighed_until (batch, batch->n_steps, INFINITY);
  gboolean any = FALSE;

  for (guint i = 0; i < weighed->len; i++)
    {
      const LwWeighed *one = &g_array_index (weighed, LwWeighed, i);

      if (one->weigh_in.minute > lw_step_get (&batch->steps[one->step], LW_SET_MINUTES) + LATE)
        continue;
      if (!any || one->step > moment->step || one->weigh_in.minute > moment->minute)
        *moment = (LwInstant) { one->step, one->weigh_in.minute };
      any = TRUE;
    }

  return any;
}

/* The wants of aims from the step under way on; (transfer full) array of LwWant. */
static GArray *
wants_ahead (const LwBatch *batch,
             LwInstant       now,
             LwReplan      *replan)
{
  GArray *wants = lw_wants_of_aims (batch);

  replan->aims = g_new0 (LwReplanAim, wants->len);
  for (guint i = 0, n = wants->len; i < n; i++)
    {
      LwWant want = g_array_index (wants, LwWant, i);

      if (want.step >= now.step)
        replan->aims[replan->n_aims++] = (LwReplanAim) { .want = want, .of_tea = i + batch->n_aims >= n };
    }

  g_array_set_size (wants, 0);
  for (guint i = 0; i < replan->n_aims; i++)
    g_array_append_val (wants, replan->aims[i].want);

  return wants;
}

/* What may be turned: all that reach turns and nobody pinned, but of the step under way only its time. */
static GArray *
free_ahead (const LwSeason *season,
            guint           batch,
            LwInstant       now,
            const GArray   *pinned)
{
  GArray *free = lw_reach_free (season, batch, now.step);

  for (guint i = free->len; i-- > 0;)
    {
      const LwHandle *handle = &g_array_index (free, LwHandle, i);

      if ((pinned != NULL && lw_handles_hold (pinned, *handle))
          || (handle->step == now.step && handle->setting != LW_SET_MINUTES && now.minute > 0))
        g_array_remove_index (free, i);
    }

  return free;
}

/* Whether all that is within its aim stays so, and nothing else is missed by so many tolerances more. */
static gboolean
no_worse (const LwReached *a,
          const LwReached *b,
          const GArray    *wants,
          double           tolerances)
{
  for (guint i = 0; i < wants->len; i++)
    {
      double allowed = tolerances * lw_want_tolerance (g_array_index (wants, LwWant, i).of);
      double was = fabs (b->wants[i].missed), is = fabs (a->wants[i].missed);

      if (was > 0 ? is > was + allowed : is > 0)
        return FALSE;
    }

  return TRUE;
}

/* Where something is missed reach gives the settings as it found them; in the shed only notches can be set. Moves by
 * less than half a notch are left out. (transfer full) NULL if an aim then comes out noticeably worse. */
static LwReached *
on_notches (const LwReached *reached,
            LwSeason        *before,
            guint            batch,
            const GArray    *wants,
            const GArray    *free,
            LwInstant         now,
            gboolean         fine)
{
  const LwBatch *was = before->batches[batch];
  g_autoptr (GArray) changes = g_array_new (FALSE, FALSE, sizeof (LwChange));
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (LwReached) rounded = NULL;

  for (guint i = 0; i < free->len; i++)
    {
      const LwHandle *handle = &g_array_index (free, LwHandle, i);
      double from = lw_step_get (&was->steps[handle->step], handle->setting);
      double to = lw_step_get (&reached->season->batches[batch]->steps[handle->step], handle->setting);
      LwChange change = { handle->step, handle->setting, to };

      if (to == from)
        continue;
      change.value = lw_kind_snap (was->steps[handle->step].kind, handle->setting, to, fine);
      if (fabs (to - from) < fabs (lw_handle_notch (was, handle)) / 2)
        change.value = from;
      if (handle->step == now.step && handle->setting == LW_SET_MINUTES)
        change.value = fmax (change.value, now.minute);
      if (change.value != from)
        g_array_append_val (changes, change);
    }

  season = lw_edit_set_all (before, batch, (const LwChange *) (gpointer) changes->data, changes->len);
  rounded = lw_reach_judge (season, batch, wants);

  return rounded != NULL && no_worse (rounded, reached, wants, 1) ? g_steal_pointer (&rounded) : NULL;
}

/* Changes without which no aim comes out noticeably worse are taken back, the last first. */
static LwReached *
without_needless (LwReached    *found,
                  LwSeason     *before,
                  guint         batch,
                  const GArray *wants,
                  const GArray *free)
{
  LwReached *reached = found;

  for (guint i = free->len; i-- > 0;)
    {
      const LwHandle *handle = &g_array_index (free, LwHandle, i);
      double from = lw_step_get (&before->batches[batch]->steps[handle->step], handle->setting);
      g_autoptr (LwSeason) season = NULL;
      g_autoptr (LwReached) without = NULL;

      if (lw_step_get (&reached->season->batches[batch]->steps[handle->step], handle->setting) == from)
        continue;
      season = lw_edit_set (reached->season, batch, handle->step, handle->setting, from);
      without = lw_reach_judge (season, batch, wants);
      if (without == NULL || !no_worse (without, found, wants, NEEDLESS))
        continue;
      if (reached != found)
        lw_reached_free (reached);
      reached = g_steal_pointer (&without);
    }
  if (reached != found)
    lw_reached_free (found);

  return reached;
}

static void
take_rows (LwReplan       *replan,
           const GArray   *free,
           const LwBatch  *before,
           const LwBatch  *after)
{
  replan->n_rows = free->len;
  replan->rows = g_new0 (LwReplanRow, free->len);
  for (guint i = 0; i < free->len; i++)
    {
      LwReplanRow *row = &replan->rows[i];

      row->handle = g_array_index (free, LwHandle, i);
      row->was = lw_step_get (&before->steps[row->handle.step], row->handle.setting);
      row->now = lw_step_get (&after->steps[row->handle.step], row->handle.setting);
      replan->n_changed += row->was != row->now;
    }
}

/* The aim that a change taken back would hurt most, in tolerances; where it hurts none, the one it would move most. */
static guint
served (const LwReplan  *replan,
        const LwReached *without)
{
  double most = -INFINITY;
  guint found = 0;

  for (guint i = 0; i < replan->n_aims; i++)
    {
      const LwReplanAim *aim = &replan->aims[i];
      double tolerance = lw_want_tolerance (aim->want.of);
      double hurt = (fabs (without->wants[i].missed) - fabs (aim->after.missed)) / tolerance;
      double moved = fabs (without->wants[i].value - aim->after.value) / tolerance;
      double score = aim->want.weight * (hurt > NEEDLESS ? 1e6 + hurt : moved);

      if (score > most)
        {
          most = score;
          found = i;
        }
    }

  return found;
}

/* FALSE if cancelled or if a run fails. */
static gboolean
tell_why (LwReplan     *replan,
          guint         batch,
          const GArray *wants,
          GCancellable *cancellable)
{
  for (guint i = 0; i < replan->n_rows; i++)
    {
      LwReplanRow *row = &replan->rows[i];
      g_autoptr (LwSeason) season = NULL;
      g_autoptr (LwReached) without = NULL;
      guint at;

      if (row->was == row->now)
        continue;
      if (g_cancellable_is_cancelled (cancellable))
        return FALSE;

      season = lw_edit_set (replan->season, batch, row->handle.step, row->handle.setting, row->was);
      without = lw_reach_judge (season, batch, wants);
      if (without == NULL)
        return FALSE;
      at = served (replan, without);
      row->why = lw_replan_say_why (row, &replan->aims[at], &without->wants[at]);
    }

  return TRUE;
}

/* FALSE if cancelled or if a batch on the way cannot be computed. `here`: the batch as it was. */
static gboolean
search (LwReplan      *replan,
        const LwBatch *here,
        LwSeason      *season,
        guint          batch,
        const GArray  *pinned,
        GCancellable  *cancellable)
{
  LwSeason *fixed = replan->correct->season;
  g_autoptr (GArray) wants = wants_ahead (here, replan->now, replan);
  g_autoptr (GArray) free = free_ahead (season, batch, replan->now, pinned);
  g_autoptr (LwSeason) plain = lw_edit_uncorrect (season, batch);
  g_autoptr (LwReached) planned = lw_reach_judge (plain, batch, wants), before = NULL, after = NULL;

  before = planned != NULL ? lw_reach_judge (fixed, batch, wants) : NULL;
  after = before != NULL ? lw_reach_from (fixed, batch, wants, free, replan->now, cancellable) : NULL;
  if (after == NULL)
    return FALSE;
  if (!after->all_met)
    {
      LwReached *rounded = on_notches (after, fixed, batch, wants, free, replan->now, FALSE);

      if (rounded == NULL)
        rounded = on_notches (after, fixed, batch, wants, free, replan->now, TRUE);
      if (rounded != NULL)
        {
          lw_reached_free (after);
          after = rounded;
        }
    }
  after = without_needless (g_steal_pointer (&after), fixed, batch, wants, free);

  replan->season = lw_season_ref (after->season);
  replan->all_met = after->all_met;
  for (guint i = 0; i < replan->n_aims; i++)
    {
      replan->aims[i].planned = planned->wants[i];
      replan->aims[i].before = before->wants[i];
      replan->aims[i].after = after->wants[i];
    }
  take_rows (replan, free, here, after->season->batches[batch]);

  return tell_why (replan, batch, wants, cancellable);
}

LwReplan *
lw_replan_new (LwSeason          *season,
               guint              batch,
               const LwReplanAsk *ask,
               GCancellable      *cancellable,
               GError           **error)
{
  const LwBatch *here = season->batches[batch];
  g_autoptr (LwReplan) replan = g_new0 (LwReplan, 1);
  LwCorrectAsk correct = {
    .step = ask->now.step, .minute = ask->now.minute, .threads = ask->threads,
    .progress = ask->progress, .progress_data = ask->progress_data,
  };

  g_autoptr (LwSeason) begun = NULL;

  g_return_val_if_fail (ask->now.step < here->n_steps, NULL);

  /* A step that goes on longer than planned has lasted so long. */
  begun = lw_season_ref (season);
  if (ask->now.minute > lw_step_get (&here->steps[ask->now.step], LW_SET_MINUTES))
    {
      lw_season_unref (begun);
      begun = lw_edit_set (season, batch, ask->now.step, LW_SET_MINUTES, ask->now.minute);
    }

  replan->now = ask->now;
  replan->correct = lw_correct_new (begun, batch, &correct, cancellable, error);
  if (replan->correct == NULL)
    return NULL;

  replan->finding = lw_replan_say_finding (replan->correct);
  if (search (replan, here, begun, batch, ask->pinned, cancellable))
    return g_steal_pointer (&replan);

  if (g_cancellable_is_cancelled (cancellable))
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CANCELLED, _ ("Cancelled."));
  else
    g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("%s: the rest of the batch cannot be computed"), here->name);

  return NULL;
}

void
lw_replan_free (LwReplan *replan)
{
  for (guint i = 0; i < replan->n_rows; i++)
    g_free (replan->rows[i].why);
  g_clear_pointer (&replan->season, lw_season_unref);
  g_clear_pointer (&replan->correct, lw_correct_free);
  g_free (replan->finding);
  g_free (replan->rows);
  g_free (replan->aims);
  g_free (replan);
}

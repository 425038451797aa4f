/* What the session computed and what is looked at in it: the track, the ghost of the
 * one before, the step in hand and the reading line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/session-private.h"

#include "season/surround.h"

/* Of the curves of a step: about a pixel or two each on a usual screen, however many steps share it. */
#define SAMPLES_MOST 160
#define SAMPLES_LEAST 64
#define SAMPLES_ALL 896

void
lw_session_drop_ghost (LwSession *self)
{
  g_clear_pointer (&self->ghost, lw_track_unref);
  g_clear_pointer (&self->before, lw_season_unref);
  g_array_set_size (self->ghost_minutes, 0);
}

void
lw_session_take_ghost (LwSession *self)
{
  lw_session_drop_ghost (self);
  if (self->track == NULL)
    return;

  self->ghost = lw_track_ref (self->track);
  self->before = lw_season_ref (lw_session_base (self));
  g_array_append_vals (self->ghost_minutes, self->track_minutes->data, self->track_minutes->len);
}

static void
note_minutes (LwSession     *self,
              const LwBatch *batch)
{
  g_array_set_size (self->track_minutes, 0);
  for (guint i = 0; i < batch->n_steps; i++)
    {
      double minutes = lw_step_get (&batch->steps[i], LW_SET_MINUTES);

      g_array_append_val (self->track_minutes, minutes);
    }
}

static guint
samples (const LwBatch *batch)
{
  return CLAMP (SAMPLES_ALL / MAX (batch->n_steps, 1), SAMPLES_LEAST, SAMPLES_MOST);
}

void
lw_session_compute (LwSession *self)
{
  const LwBatch *batch = self->history != NULL ? lw_session_batch (self) : NULL;
  g_autoptr (LwPlan) plan = NULL;

  if (!self->stale)
    return;

  self->stale = FALSE;
  g_clear_pointer (&self->track, lw_track_unref);
  g_clear_pointer (&self->trouble, g_free);

  if (batch != NULL)
    plan = lw_plan_new (lw_session_season (self), (guint) self->batch);
  if (plan != NULL)
    {
      self->track = lw_plan_march (plan, self->march, (LwSampling) { .samples = samples (batch), .turns = TRUE });
      note_minutes (self, batch);
      if (self->track->failure.failed)
        self->trouble = lw_plan_failure_text (plan, batch, self->track);
    }

  lw_session_emit (self, LW_SESSION_TRACK);
}

const LwTrack *
lw_session_track (LwSession *self)
{
  return self->track;
}

const LwTrack *
lw_session_ghost (LwSession *self)
{
  return self->ghost;
}

const double *
lw_session_ghost_minutes (LwSession *self,
                          guint     *n)
{
  *n = self->ghost_minutes->len;

  return (const double *) (gpointer) self->ghost_minutes->data;
}

const char *
lw_session_trouble (LwSession *self)
{
  return self->trouble;
}

int
lw_session_step (LwSession *self)
{
  return self->step;
}

void
lw_session_choose_step (LwSession *self,
                        int        step)
{
  if (self->step == step)
    return;

  self->step = step;
  lw_session_emit (self, LW_SESSION_STEP);
}

int
lw_session_place (LwSession *self)
{
  const LwBatch *batch = lw_session_batch (self);

  return batch != NULL && self->at_step && self->step + 1 < (int) batch->n_steps ? self->step : -1;
}

gboolean
lw_session_outcome (LwSession     *self,
                    const LwTrack *track,
                    int            place,
                    LwOutcome     *outcome)
{
  const LwBatch *batch = lw_session_batch (self);
  guint step;

  if (track == NULL || batch == NULL || batch->n_steps == 0)
    return FALSE;

  step = place >= 0 ? (guint) place : batch->n_steps - 1;
  if (step >= track->n_steps)
    return FALSE;

  *outcome = lw_track_end (track, step, -1);

  return TRUE;
}

gboolean
lw_session_looks_at_step (LwSession *self)
{
  return self->at_step;
}

void
lw_session_look_at_step (LwSession *self,
                         gboolean   at_step)
{
  if (self->at_step == at_step)
    return;

  self->at_step = at_step;
  lw_session_emit (self, LW_SESSION_STEP);
}

gboolean
lw_session_reading (LwSession *self,
                    guint     *step,
                    double    *minute)
{
  if (self->reading)
    {
      *step = self->reading_step;
      *minute = self->reading_minute;
    }

  return self->reading;
}

void
lw_session_read_at (LwSession *self,
                    guint      step,
                    double     minute)
{
  if (self->reading && self->reading_step == step && self->reading_minute == minute)
    return;

  self->reading = TRUE;
  self->reading_step = step;
  self->reading_minute = minute;
  lw_session_emit (self, LW_SESSION_READING);
}

void
lw_session_read_off (LwSession *self)
{
  if (!self->reading)
    return;

  self->reading = FALSE;
  lw_session_emit (self, LW_SESSION_READING);
}

LwScale *
lw_session_scale (LwSession *self)
{
  return &self->scale;
}

/* The computer's clock is set while a batch runs: the batch's own clock goes on as before. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/running-private.h"

#include <math.h>

#include "bench/clock.h"
#include "season/text.h"

#define LOOK_MS 1000
#define LEAST_SET_S 2 /* what is less is only regulated, a little at a time */

static gboolean
look_cb (gpointer data)
{
  LwRunning *self = data;
  double offset_s = lw_clock_offset_s (), by_s = offset_s - self->clock_s;

  self->clock_s = offset_s;
  if (fabs (by_s) < LEAST_SET_S * lw_clock_pace ())
    return G_SOURCE_CONTINUE;

  lw_run_shift (&self->run, by_s);
  for (guint i = 0; i < self->marks->len; i++)
    lw_run_shift (&g_array_index (self->marks, LwRunMark, i).run, by_s);
  lw_running_keep (self);
  lw_running_tell (self, _ ("The computer's clock was set. The batch's own clock goes on as before."));
  lw_running_moved (self);

  return G_SOURCE_CONTINUE;
}

void
lw_running_watch_clock (LwRunning *self)
{
  if (self->run.on && self->clock_look == 0)
    {
      self->clock_s = lw_clock_offset_s ();
      self->clock_look = g_timeout_add (LOOK_MS, look_cb, self);
    }
  if (!self->run.on)
    g_clear_handle_id (&self->clock_look, g_source_remove);
}

gboolean
lw_running_catch_clock (LwRunning *self,
                        double     written_s)
{
  double now_s = lw_clock_now_s ();

  if (!self->run.on || written_s - now_s < LEAST_SET_S)
    return FALSE;

  lw_run_shift (&self->run, now_s - written_s);

  return TRUE;
}

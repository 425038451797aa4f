/* The computer's clock is set while a batch runs: the batch's own clock goes on as before. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/running-private.h"

#include <math.h>

#include "bench/clock.h"
#include "season/text.h"

#define LEAST_SET_S 2 /* what is less is only regulated, a little at a time */

void
lw_running_follow_clock (LwRunning *self)
{
  double offset_s = lw_clock_offset_s (), by_s = offset_s - self->clock_s;

  self->clock_s = offset_s;
  if (!self->run.on || !(fabs (by_s) >= LEAST_SET_S * lw_clock_pace ()))
    return;

  lw_running_shift (self, by_s);
  lw_running_keep (self);
  lw_running_tell (self, _ ("The computer's clock was set. The batch's own clock goes on as before."));
}

gboolean
lw_running_catch_clock (LwRunning *self,
                        double     written_s)
{
  double now_s = lw_clock_now_s ();

  if (!self->run.on || written_s - now_s < LEAST_SET_S)
    return FALSE;

  lw_running_shift (self, now_s - written_s);

  return TRUE;
}

/* The clock of a batch. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/run.h"

#include <math.h>

#include "season/edit.h"

#define NOTICE_SHARE 0.1
#define NOTICE_LEAST (20.0 / 60)
#define NOTICE_MOST 5.0

LwRun
lw_run_start (double now_s)
{
  return (LwRun) { .on = TRUE, .start_s = now_s, .step_s = now_s, .paused_s = NAN, .planned = NAN };
}

gboolean
lw_run_is_paused (const LwRun *run)
{
  return !isnan (run->paused_s);
}

void
lw_run_pause (LwRun *run,
              double now_s)
{
  if (!lw_run_is_paused (run))
    run->paused_s = now_s;
}

void
lw_run_go_on (LwRun *run,
              double now_s)
{
  if (lw_run_is_paused (run))
    run->waited_s += MAX (now_s - run->paused_s, 0);
  run->paused_s = NAN;
}

void
lw_run_next (LwRun *run,
             double now_s)
{
  run->step++;
  run->step_s = now_s;
  run->waited_s = 0;
  run->paused_s = NAN;
  run->planned = NAN;
}

void
lw_run_shift (LwRun *run,
              double by_s)
{
  run->start_s += by_s;
  run->step_s += by_s;
  run->paused_s += by_s;
}

void
lw_run_plan (LwRun *run,
             double minutes,
             double now_s)
{
  if (!(minutes > run->planned && minutes <= lw_run_minute (run, now_s)))
    run->planned = minutes;
}

double
lw_run_minute (const LwRun *run,
               double       now_s)
{
  double until_s = lw_run_is_paused (run) ? run->paused_s : now_s;

  return MAX (until_s - run->step_s - run->waited_s, 0) / 60;
}

double
lw_run_notice (double minutes)
{
  return CLAMP (minutes * NOTICE_SHARE, NOTICE_LEAST, NOTICE_MOST);
}

gboolean
lw_run_same (const LwRun *a,
             const LwRun *b)
{
  gboolean paused = lw_run_is_paused (a), planned = !isnan (a->planned);

  return a->on == b->on && a->step == b->step && a->start_s == b->start_s && a->step_s == b->step_s
         && a->waited_s == b->waited_s && paused == lw_run_is_paused (b) && (!paused || a->paused_s == b->paused_s)
         && planned == !isnan (b->planned) && (!planned || a->planned == b->planned);
}

LwSeason *
lw_edit_begin_batch (const LwSeason *season,
                     guint           batch,
                     gint64          when_s)
{
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (season, batch, &own);

  g_clear_pointer (&own->plan, lw_batch_unref);
  own->plan = lw_batch_copy (season->batches[batch]);
  lw_batch_forget_made (own->plan);
  own->when_s = when_s;

  return next;
}

LwSeason *
lw_edit_end_step (const LwSeason *season,
                  guint           batch,
                  guint           step,
                  double          minutes)
{
  const LwKindSetting *range = lw_kind_setting (season->batches[batch]->steps[step].kind, LW_SET_MINUTES);

  return lw_edit_set (season, batch, step, LW_SET_MINUTES, CLAMP (round (minutes * 60) / 60, range->low, range->high));
}

LwSeason *
lw_edit_end_batch (const LwSeason *season,
                   guint           batch,
                   guint           step,
                   double          minutes)
{
  g_autoptr (LwSeason) ended = lw_edit_end_step (season, batch, step, minutes);
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (ended, batch, &own);

  own->made = TRUE;
  while (own->n_steps > step + 1)
    lw_batch_remove_step (own, own->n_steps - 1);

  return next;
}

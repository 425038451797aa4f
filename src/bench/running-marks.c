/* Seasons that begin or end a step of the running batch, each with the run as it was then: undo and redo take the run along. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/running-private.h"

typedef struct
{
  LwSeason *season;
  LwRun run;
} Mark;

static void
mark_clear (Mark *mark)
{
  lw_season_unref (mark->season);
}

GArray *
lw_running_marks_new (void)
{
  GArray *marks = g_array_new (FALSE, FALSE, sizeof (Mark));

  g_array_set_clear_func (marks, (GDestroyNotify) mark_clear);

  return marks;
}

void
lw_running_add_mark (LwRunning *self,
                     LwSeason  *season,
                     LwRun      run)
{
  Mark mark = { lw_season_ref (season), run };

  g_array_append_val (self->marks, mark);
}

void
lw_running_mark (LwRunning *self)
{
  lw_running_add_mark (self, lw_session_base (self->session), self->run);
}

void
lw_running_mark_step (LwRunning *self)
{
  for (guint i = 0; i < self->marks->len; i++)
    {
      Mark *mark = &g_array_index (self->marks, Mark, i);

      if (mark->run.on && mark->run.step == self->run.step && mark->run.step_s == self->run.step_s)
        mark->run = self->run;
    }
}

void
lw_running_shift (LwRunning *self,
                  double     by_s)
{
  lw_run_shift (&self->run, by_s);
  for (guint i = 0; i < self->marks->len; i++)
    lw_run_shift (&g_array_index (self->marks, Mark, i).run, by_s);
}

gboolean
lw_running_follow_history (LwRunning *self)
{
  const LwSeason *base = lw_session_base (self->session);

  for (guint i = self->marks->len; i > 0; i--)
    {
      const Mark *mark = &g_array_index (self->marks, Mark, i - 1);

      if (mark->season == base)
        {
          self->run = mark->run;
          return TRUE;
        }
    }

  return FALSE;
}

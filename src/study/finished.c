/* The finished tea, and nothing on the way to it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/finished.h"

gboolean
lw_finished (LwSeason  *season,
             guint      batch,
             LwMarch   *march,
             LwOutcome *outcome)
{
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwTrack) track = NULL;

  if (plan == NULL || plan->n_steps == 0)
    return FALSE;

  track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });
  if (track->n_steps < plan->n_steps)
    return FALSE;

  *outcome = lw_track_end (track, plan->n_steps - 1, -1);

  return TRUE;
}

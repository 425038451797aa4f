/* From weigh-ins to moments. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/replan-moments.h"

#include <math.h>

#include "season/text.h"
#include "season/wording.h"

static void
add_moment (GArray    *moments,
            GPtrArray *names,
            LwInstant   moment)
{
  g_autofree char *time = lw_say_minutes (moment.minute);
  char *name = moment.minute > 0
                 /* Translators: a time in a step and the step's number */
                 ? g_strdup_printf (_ ("After %s of step %u"), time, moment.step + 1)
                 : g_strdup_printf (_ ("Before step %u begins"), moment.step + 1);

  g_array_append_val (moments, moment);
  g_ptr_array_add (names, name);
}

GPtrArray *
lw_replan_moments (const LwBatch  *batch,
                   const LwInstant *now,
                   GArray         *moments,
                   guint          *chosen)
{
  g_autoptr (GArray) weighed = lw_weighed_until (batch, batch->n_steps, INFINITY);
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  LwInstant last = { G_MAXUINT, 0 };

  if (now != NULL)
    add_moment (moments, names, *now);
  for (guint i = 0; i < weighed->len; i++)
    {
      const LwWeighed *one = &g_array_index (weighed, LwWeighed, i);
      LwInstant moment = { one->step, one->weigh_in.minute };
      double minutes = lw_step_get (&batch->steps[one->step], LW_SET_MINUTES);

      if (moment.minute > minutes || (moment.step == last.step && moment.minute == last.minute))
        continue;
      last = moment;
      add_moment (moments, names, moment);
      *chosen = moments->len - 1;
      if (moment.minute >= minutes && one->step + 1 < batch->n_steps)
        add_moment (moments, names, (LwInstant) { one->step + 1, 0 });
    }
  if (now != NULL)
    *chosen = 0;
  g_ptr_array_add (names, NULL);

  return names;
}

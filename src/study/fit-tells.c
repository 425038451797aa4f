/* Which weigh-ins count, and that in words. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/fit-tells.h"

#include "season/text.h"

#define LATE 1e-9 /* minutes */

typedef struct
{
  guint of[LW_N_MEASURES]; /* that tell of the leaf */
  guint all[LW_TELLS_NOTHING + 1];
} Count;

LwTells
lw_fit_tells (const LwStep    *step,
              const LwWeighIn *weigh_in)
{
  if (lw_measure_row (weigh_in->of)->quantity < 0)
    return LW_TELLS_NOTHING;

  return weigh_in->minute > lw_step_get (step, LW_SET_MINUTES) + LATE ? LW_TELLS_LATE : LW_TELLS_LEAF;
}

static Count
count (const LwBatch *batch)
{
  Count n = { 0 };

  for (guint s = 0; s < batch->n_steps; s++)
    for (guint i = 0; i < batch->steps[s].n_weigh_ins; i++)
      {
        const LwWeighIn *seen = &batch->steps[s].weigh_ins[i];
        LwTells tells = lw_fit_tells (&batch->steps[s], seen);

        n.all[tells]++;
        n.of[seen->of] += tells == LW_TELLS_LEAF ? 1 : 0;
      }

  return n;
}

gboolean
lw_fit_can_use (const LwBatch *batch)
{
  return batch->made && count (batch).all[LW_TELLS_LEAF] > 0;
}

/* A weight tells of moisture, too, as lw_measured has it. */
guint
lw_fit_quantities (const LwBatch *batch)
{
  Count n = count (batch);
  guint bits = n.of[LW_WEIGHED_KG] > 0 ? 1u << LW_MOISTURE : 0;

  for (guint i = 0; i < LW_N_MEASURES; i++)
    if (n.of[i] > 0)
      bits |= 1u << lw_measure_row (i)->quantity;

  return bits;
}

char *
lw_fit_say_told (const LwBatch *batch)
{
  g_autoptr (GString) said = g_string_new (NULL);
  Count n = count (batch);

  for (guint i = 0; i < LW_N_MEASURES; i++)
    if (n.of[i] > 0)
      {
        if (said->len > 0)
          g_string_append (said, ", ");
        /* Translators: what was measured, and how often */
        g_string_append_printf (said, _ ("%s × %u"), _ (lw_measure_row (i)->label), n.of[i]);
      }
  if (n.all[LW_TELLS_LATE] > 0)
    {
      g_string_append (said, said->len > 0 ? "; " : "");
      g_string_append_printf (said, ngettext ("%u after its step's end", "%u after their step's end", n.all[LW_TELLS_LATE]),
                              n.all[LW_TELLS_LATE]);
    }

  return g_string_free (g_steal_pointer (&said), FALSE);
}

char *
lw_fit_say_useless (const LwBatch *batch)
{
  Count n = count (batch);

  if (!batch->made)
    return g_strdup (_ ("only planned"));
  if (n.all[LW_TELLS_LEAF] > 0)
    return NULL;
  if (n.all[LW_TELLS_LATE] > 0)
    return g_strdup (_ ("all that was weighed was weighed after its step's end"));
  if (n.all[LW_TELLS_NOTHING] > 0)
    return g_strdup (_ ("only walls were measured, which say nothing of the leaf"));

  return g_strdup (_ ("nothing was weighed"));
}

/* A step as a plain value: copying, clearing, and its settings, given or not. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/correction.h"

G_STATIC_ASSERT (LW_N_SETTINGS <= 32);

/* The time is always given: no surroundings could say it. */
LwStep
lw_step_new (LwKind kind)
{
  LwStep step = { .kind = kind };

  lw_step_set (&step, LW_SET_MINUTES, lw_kind_setting (kind, LW_SET_MINUTES)->start);

  return step;
}

LwStep
lw_step_copy (const LwStep *step)
{
  LwStep copy = *step;

  copy.note = g_strdup (step->note);
  for (guint i = 0; i < LW_N_LOG_OF; i++)
    copy.log[i] = g_strdup (step->log[i]);
  copy.sign = g_strdup (step->sign);
  copy.aims = lw_aims_copy (step->aims, step->n_aims);
  copy.weigh_ins = g_memdup2 (step->weigh_ins, step->n_weigh_ins * sizeof *step->weigh_ins);
  for (guint i = 0; i < copy.n_weigh_ins; i++)
    copy.weigh_ins[i].note = g_strdup (step->weigh_ins[i].note);
  if (step->correction != NULL)
    lw_correction_ref (copy.correction);

  return copy;
}

void
lw_step_clear (LwStep *step)
{
  for (guint i = 0; i < step->n_weigh_ins; i++)
    g_free (step->weigh_ins[i].note);

  step->n_weigh_ins = 0;
  g_clear_pointer (&step->weigh_ins, g_free);
  g_clear_pointer (&step->correction, lw_correction_unref);
  lw_aims_clear (&step->aims, &step->n_aims);
  g_clear_pointer (&step->note, g_free);
  for (guint i = 0; i < LW_N_LOG_OF; i++)
    g_clear_pointer (&step->log[i], g_free);
  g_clear_pointer (&step->sign, g_free);
}

double
lw_step_get (const LwStep *step,
             LwSetting     setting)
{
  const LwKindSetting *range = lw_kind_setting (step->kind, setting);

  g_return_val_if_fail (range != NULL, 0);

  return lw_step_is_given (step, setting) ? step->value[setting] : range->start;
}

gboolean
lw_step_is_given (const LwStep *step,
                  LwSetting     setting)
{
  return (step->given & (1u << setting)) != 0;
}

void
lw_step_set (LwStep   *step,
             LwSetting setting,
             double    value)
{
  g_return_if_fail (lw_kind_setting (step->kind, setting) != NULL);

  step->given |= 1u << setting;
  step->value[setting] = value;
}

void
lw_step_unset (LwStep   *step,
               LwSetting setting)
{
  step->given &= ~(1u << setting);
  step->value[setting] = 0;
}

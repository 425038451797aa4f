/* Advice as sentences. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "season/text.h"
#include "season/wording.h"
#include "study/advice.h"

#define LEAST_TOLD_KG 0.01

static char *
say_points (double points)
{
  /* Translators: a difference between two percentages */
  return g_strdup_printf (_ ("%.1f %% points"), fabs (points));
}

/* (transfer full) what to do, after "If it weighs 0.2 kg more: ". */
static char *
say_what (const LwBatch  *batch,
          const LwAdvice *advice)
{
  g_autofree char *from = NULL, *to = NULL, *points = say_points (advice->missed);
  const char *step = _ (lw_kind_row (batch->steps[advice->handle.step].kind)->label);

  switch (advice->kind)
    {
    case LW_ADVICE_FINE:
      return g_strdup (_ ("go on as planned, it evens out."));
    case LW_ADVICE_LONGER:
      to = lw_say_minutes (advice->to);
      /* Translators: %s is a time */
      return g_strdup_printf (_ ("go on for another %s."), to);
    case LW_ADVICE_CHANGE:
      from = lw_say_setting (advice->handle.setting, advice->from);
      to = lw_say_setting (advice->handle.setting, advice->to);
      if (advice->handle.setting == LW_SET_MINUTES)
        /* Translators: a step, its new and its old time: "fix in pan for 27 min, not 25 min." */
        return g_strdup_printf (_ ("%s for %s, not %s."), step, to, from);
      /* Translators: a step, a setting of it, its new and its old value: "fix in pan with wall 265 °C, not 260 °C." */
      return g_strdup_printf (_ ("%s with %s %s, not %s."), step, _ (lw_setting_row (advice->handle.setting)->label), to,
                              from);
    case LW_ADVICE_NONE:
    default:
      if (isnan (advice->missed))
        return g_strdup (_ ("that cannot be computed."));
      if (advice->handle.step + 1 >= batch->n_steps)
        return g_strdup_printf (advice->missed > 0
                                  /* Translators: %s is "1.2 % points" */
                                  ? _ ("nothing follows that helps; the tea ends %s too wet.")
                                  : _ ("nothing follows that helps; the tea ends %s too dry."),
                                points);
      return g_strdup_printf (advice->missed > 0
                                /* Translators: %s is "1.2 % points" */
                                ? _ ("no setting of this or the next step helps; the tea ends %s too wet.")
                                : _ ("no setting of this or the next step helps; the tea ends %s too dry."),
                              points);
    }
}

char *
lw_advice_say (const LwBatch      *batch,
               const LwCheckpoint *checkpoint,
               double              load_kg)
{
  double over = checkpoint->more.off * load_kg, under = -checkpoint->less.off * load_kg;
  gboolean tells_over = over >= LEAST_TOLD_KG - 1e-9, tells_under = under >= LEAST_TOLD_KG - 1e-9;
  g_autofree char *kg = lw_say_kg (over), *less_kg = lw_say_kg (under);
  g_autofree char *more = say_what (batch, &checkpoint->more), *less = say_what (batch, &checkpoint->less);

  if (!tells_over)
    return g_strdup ("");
  if (!tells_under)
    /* Translators: a weight, and what then to do */
    return g_strdup_printf (_ ("If it weighs %s more: %s"), kg, more);
  if (checkpoint->more.kind == LW_ADVICE_FINE && checkpoint->less.kind == LW_ADVICE_FINE && g_str_equal (kg, less_kg))
    /* Translators: a weight, and what then to do */
    return g_strdup_printf (_ ("If it weighs %s more or less: %s"), kg, more);

  /* Translators: twice a weight, and what then to do */
  return g_strdup_printf (_ ("If it weighs %s more: %s If %s less: %s"), kg, more, less_kg, less);
}

/* Sentences of a new plan: whole ones, numbers set in. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/replan-private.h"

#include <math.h>

#include "season/text.h"
#include "season/wording.h"

static char *
say_value (LwQuantity of,
           double     value)
{
  const LwQuantityRow *row = lw_quantity_row (of);

  if (row->unit[0] == '\0')
    return g_strdup_printf ("%.*f", row->digits, value);

  /* Translators: a number and its unit */
  return g_strdup_printf (_ ("%.*f %s"), row->digits, value, lw_unit_words (row->unit));
}

/* By how much, without the unit that stands beside it already. */
static char *
say_missed (LwQuantity of,
            double     missed)
{
  return g_strdup_printf ("%.*f", lw_quantity_row (of)->digits, fabs (missed));
}

/* A reading in its measure's unit. */
static char *
say_reading (LwMeasure of,
             double    value)
{
  /* Translators: a number and its unit */
  return g_strdup_printf (_ ("%.*f %s"), of == LW_WEIGHED_KG ? 2 : 1, value, lw_unit_words (lw_measure_row (of)->unit));
}

char *
lw_replan_say_point (const LwCorrectPoint *point)
{
  const LwWeighIn *seen = &point->weighed.weigh_in;
  int digits = seen->of == LW_WEIGHED_KG ? 2 : 1;
  g_autofree char *measured = say_reading (seen->of, seen->value), *expected = say_reading (seen->of, point->expected);
  g_autofree char *time = lw_say_minutes (seen->minute);

  /* Translators: step, time in it, what was measured, value with unit, expected value with unit, its uncertainty, combined */
  return g_strdup_printf (_ ("Step %u, %s, %s: %s measured, %s ± %.*f expected, together %.*f ± %.*f."),
                          point->weighed.step + 1, time, _ (lw_measure_row (seen->of)->label), measured, expected, digits,
                          point->expected_sd, digits, point->combined, digits, point->combined_sd);
}

char *
lw_replan_say_far (const LwCorrectPoint *point)
{
  /* Translators: {measured} and {expected} stay as they are; values with units take their place. */
  static const char *const words[LW_N_MEASURES] = {
    [LW_WEIGHED_KG] = N_ ("Weighed {measured} where {expected} was expected: check scale and tare."),
    [LW_LEAF_C] = N_ ("{measured} measured where {expected} was expected: check the thermometer and where it was held."),
    [LW_METER_PCT] = N_ ("The meter showed {measured} where {expected} was expected: check the meter and the sample."),
    [LW_JUDGED_OXIDATION_PCT] = N_ ("Oxidation was judged {measured} where {expected} was expected: judge once more."),
    [LW_JUDGED_BROKEN_PCT] = N_ ("Breakage was judged {measured} where {expected} was expected: judge once more."),
  };
  const LwWeighIn *seen = &point->weighed.weigh_in;
  g_autofree char *measured = say_reading (seen->of, seen->value), *expected = say_reading (seen->of, point->off_from);
  GString *said;

  if (!lw_correct_is_far (point) || words[seen->of] == NULL)
    return NULL;

  said = g_string_new (_ (words[seen->of]));
  g_string_replace (said, "{measured}", measured, 1);
  g_string_replace (said, "{expected}", expected, 1);

  return g_string_free (said, FALSE);
}

char *
lw_replan_say_finding (const LwCorrect *correct)
{
  static const LwQuantity told[] = { LW_MOISTURE, LW_OXIDATION, LW_LEAF_TEMP, LW_BROKEN };
  g_autofree char *time = lw_say_minutes (correct->minute), *is = NULL, *was = NULL;
  double most = 0;
  LwQuantity of = LW_MOISTURE;

  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const LwCorrectOutcome *outcome = &correct->of[told[i]];
      double off = fabs (outcome->combined - outcome->expected) / lw_want_tolerance (told[i]);

      if (off >= fmax (most, 1))
        {
          most = off;
          of = told[i];
        }
    }

  is = say_value (of, correct->of[of].combined);
  was = say_value (of, correct->of[of].expected);
  if (most <= 0)
    /* Translators: time, step number, outcome, value */
    return g_strdup_printf (_ ("After %s of step %u the leaf is as it was expected: %s %s."), time, correct->step + 1,
                            _ (lw_quantity_row (of)->label), is);

  /* Translators: time, step number, outcome, value, expected value */
  return g_strdup_printf (_ ("After %s of step %u: %s is %s where %s was expected."), time, correct->step + 1,
                          _ (lw_quantity_row (of)->label), is, was);
}

/* "Moisture of the tea", "Moisture after step 3". */
static char *
say_outcome (const LwReplanAim *aim)
{
  const char *label = _ (lw_quantity_row (aim->want.of)->label);

  if (aim->of_tea)
    /* Translators: an outcome: "Moisture of the tea" */
    return g_strdup_printf (_ ("%s of the tea"), label);

  /* Translators: an outcome and a step number: "Moisture after step 3" */
  return g_strdup_printf (_ ("%s after step %u"), label, aim->want.step + 1);
}

char *
lw_replan_say_why (const LwReplanRow *row,
                   const LwReplanAim *aim,
                   const LwMet       *met)
{
  g_autofree char *was = lw_say_setting (row->handle.setting, row->was), *outcome = say_outcome (aim);
  g_autofree char *value = say_value (aim->want.of, met->value), *missed = say_missed (aim->want.of, met->missed);
  g_autofree char *after = say_value (aim->want.of, aim->after.value);
  double seen = 0.5 * pow (10, -lw_quantity_row (aim->want.of)->digits);

  if (met->missed > seen)
    /* Translators: a setting's value, an outcome, its value, by how much it is above */
    return g_strdup_printf (_ ("With %s, %s would be %s, %s above its aim."), was, outcome, value, missed);
  if (met->missed < -seen)
    return g_strdup_printf (_ ("With %s, %s would be %s, %s below its aim."), was, outcome, value, missed);

  /* Translators: a setting's value, an outcome, its value with that, its value in the new plan */
  return g_strdup_printf (_ ("With %s, %s would be %s and not %s."), was, outcome, value, after);
}

char *
lw_replan_say_missed (const LwReplanAim *aim)
{
  g_autofree char *outcome = say_outcome (aim), *value = say_value (aim->want.of, aim->after.value);
  g_autofree char *missed = say_missed (aim->want.of, aim->after.missed);

  if (aim->after.met)
    return NULL;

  /* Translators: an outcome, its value, by how much it is outside */
  return aim->after.missed > 0 ? g_strdup_printf (_ ("%s escapes: %s, %s above its aim."), outcome, value, missed)
                               : g_strdup_printf (_ ("%s escapes: %s, %s below its aim."), outcome, value, missed);
}

const char *
lw_replan_caution (void)
{
  return _ ("These are a model's estimates. Longer or hotter heating can burn leaf, hands and the place: watch the leaf, trust "
            "scale and thermometer, keep the machine within its limits, and follow local codes and licensed practice.");
}

const char *
lw_replan_caution_short (void)
{
  return _ ("A model's estimate. Heat can burn leaf, hands and the place: follow local codes and licensed practice.");
}

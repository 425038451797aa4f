/* The sentences of a fit. Numbers in the user's format. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/fit-words.h"

#include <math.h>
#include <string.h>

#include "season/text.h"
#include "season/wording.h"

#define LEAST_CHANCE 1e-6
#define MOST_NAMES 12 /* in a note, which must not grow without end */

char *
lw_fit_param_label (const LwFit      *fit,
                    const LwFitParam *param)
{
  const char *label = _ (lw_fit_row (param->what)->label);

  /* Translators: what may differ, then the leaf or batch in which it does */
  if (param->leaf != NULL)
    return g_strdup_printf (_ ("%s, %s"), label, lw_season_profile (fit->season, param->leaf)->name);
  if (param->batch >= 0)
    return g_strdup_printf (_ ("%s, %s"), label, fit->season->batches[param->batch]->name);

  return g_strdup (label);
}

char *
lw_fit_param_say (const LwFitParam *param)
{
  const LwFitRow *row = lw_fit_row (param->what);
  double factor = exp (param->change);

  if (row->factor && isnan (param->error))
    return g_strdup_printf (_ ("× %.3f"), factor);
  if (row->factor)
    return g_strdup_printf (_ ("× %.3f ± %.3f"), factor, factor * param->error);
  if (isnan (param->error))
    return g_strdup_printf ("%+.2f %s", param->change, lw_unit_words (row->unit));

  return g_strdup_printf (_ ("%+.2f ± %.2f %s"), param->change, param->error, lw_unit_words (row->unit));
}

char *
lw_fit_param_say_value (const LwFitParam *param,
                        const LwProfile  *leaf)
{
  const char *unit = lw_fit_unit (param->what);
  double start, value, error;
  g_autofree char *numbers = NULL;

  lw_fit_param_value (param, leaf, &start, &value, &error);
  if (isnan (start))
    return g_strdup ("");

  numbers = isnan (error) ? g_strdup_printf ("%.4g → %.4g", start, value)
                          : g_strdup_printf ("%.4g → %.4g ± %.2g", start, value, error);

  return *unit != '\0' ? g_strdup_printf ("%s %s", numbers, _ (unit)) : g_steal_pointer (&numbers);
}

char *
lw_fit_number_say (double value,
                   int    digits)
{
  static const char *const raised[] = { "⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹" };
  g_autofree char *plain = g_strdup_printf ("%.*g", digits, value);
  char *power = strstr (plain, "e-0");

  if (power == NULL)
    return g_steal_pointer (&plain);
  *power = '\0';

  return g_strconcat (plain, "×10⁻", raised[g_ascii_digit_value (power[3])], NULL);
}

static char *
say_of_param (const LwFit        *fit,
              const LwFitWarning *warning)
{
  g_autofree char *a = lw_fit_param_label (fit, &fit->params[warning->a]);
  g_autofree char *b = lw_fit_param_label (fit, &fit->params[warning->b]);

  if (warning->kind == LW_FIT_TWINS)
    return g_strdup_printf (_ ("The weigh-ins cannot tell “%s” and “%s” apart (correlation %s%.2f): keep one of them fixed, "
                               "or weigh where only one of them acts."), a, b, warning->number < 0 ? "−" : "+",
                            fabs (warning->number));
  if (warning->kind == LW_FIT_AT_BOUND)
    return g_strdup_printf (_ ("“%s” went as far as it may: look for a wrong weigh-in or setting."), a);

  return g_strdup_printf (_ ("The weigh-ins say little of “%s”: its value is mostly what was expected before."), a);
}

static char *
say_of_batch (const LwFit        *fit,
              const LwFitWarning *warning)
{
  const char *name = fit->season->batches[warning->a]->name;
  guint n = (guint) fmax (warning->number, 0);

  if (warning->kind == LW_FIT_LATE)
    return g_strdup_printf (ngettext ("“%s”: %u weigh-in was taken after its step's end and is left out.",
                                      "“%s”: %u weigh-ins were taken after their step's end and are left out.", n),
                            name, n);
  if (warning->kind == LW_FIT_PLANNED)
    return g_strdup_printf (_ ("“%s” was only planned and is left out."), name);

  return g_strdup_printf (_ ("“%s” has no weigh-in that tells of its leaf and is left out."), name);
}

static char *
say_misfit (const LwFit        *fit,
            const LwFitWarning *warning)
{
  g_autofree char *number = lw_fit_number_say (fmax (warning->number, LEAST_CHANCE), 1);
  /* Translators: a chance; it is that small or smaller */
  g_autofree char *chance = g_strdup_printf (warning->number < LEAST_CHANCE ? _ ("under %s") : "%s", number);
  const char *name = fit->season->batches[fit->batches[warning->a].batch]->name;

  if (fit->n_batches == 1)
    return g_strdup_printf (_ ("The weigh-ins lie further from the model than their errors allow (chance %s): something else "
                               "differs, and the standard errors here are too small."), chance);

  return g_strdup_printf (_ ("The weigh-ins lie further from the model than their errors allow (chance %s), those of “%s” the "
                             "most: something else differs, and the standard errors here are too small."), chance, name);
}

char *
lw_fit_warning_say (const LwFit        *fit,
                    const LwFitWarning *warning)
{
  switch (warning->kind)
    {
    case LW_FIT_FEW_POINTS:
      return g_strdup_printf (ngettext ("Not enough data: %u weigh-in cannot decide all that may differ. Weigh more, or let "
                                        "less differ.",
                                        "Not enough data: %u weigh-ins cannot decide all that may differ. Weigh more, or "
                                        "let less differ.", fit->n_points), fit->n_points);

    case LW_FIT_NOTHING_TOLD:
      return g_strdup (_ ("Not enough data: the weigh-ins say little of anything that may differ."));

    case LW_FIT_UNFINISHED:
      return g_strdup (_ ("The search did not come to an end: no errors are known."));

    case LW_FIT_MISFIT:
      return say_misfit (fit, warning);

    case LW_FIT_AT_BOUND:
    case LW_FIT_NOT_TOLD:
    case LW_FIT_TWINS:
      return say_of_param (fit, warning);

    case LW_FIT_LATE:
    case LW_FIT_PLANNED:
    case LW_FIT_BARE:
      return say_of_batch (fit, warning);

    default:
      g_return_val_if_reached (NULL);
    }
}

char *
lw_fit_prior_say (LwFitWhat        what,
                  const LwProfile *leaf)
{
  const LwFitRow *row = lw_fit_row (what);
  double value = leaf != NULL ? lw_fit_value (what, leaf) : NAN;
  const char *unit = isnan (value) ? "" : lw_unit_words (lw_fit_unit (what));
  g_autofree char *number = isnan (value) ? g_strdup ("") : lw_fit_number_say (value, 4);
  g_autofree char *start = g_strdup_printf ("%s %s", number, unit);
  g_autofree char *width = row->factor ? g_strdup_printf (_ ("± %.0f %%"), 100 * row->spread)
                                       : g_strdup_printf (_ ("± %.2g %s"), row->spread, lw_unit_words (row->unit));

  return isnan (value) ? g_steal_pointer (&width) : g_strdup_printf ("%s %s", g_strchomp (start), width);
}

char *
lw_fit_miss_say (const LwFit      *fit,
                 const LwFitBatch *batch)
{
  guint n = batch != NULL ? batch->n_points : fit->n_points;
  double before = sqrt ((batch != NULL ? batch->before : fit->before) / n);
  double after = sqrt ((batch != NULL ? batch->after : fit->after) / n);

  return g_strdup_printf (ngettext ("%u weigh-in: the model missed it by %.1f times the instruments' errors, with the fitted "
                                    "leaf by %.1f times.",
                                    "%u weigh-ins: the model missed them by %.1f times the instruments' errors, with the "
                                    "fitted leaf by %.1f times.", n), n, before, after);
}

char *
lw_fit_points_say (const LwFit      *fit,
                   const LwFitBatch *batch)
{
  g_autoptr (GString) said = g_string_new (NULL);

  for (guint i = 0; i < fit->n_points; i++)
    {
      const LwFitPoint *point = &fit->points[i];
      const LwWeighIn *seen = &fit->season->batches[point->batch]->steps[point->step].weigh_ins[point->weigh_in];
      const LwMeasureRow *row = lw_measure_row (seen->of);
      g_autofree char *when = lw_say_minutes (seen->minute);

      if (point->batch != batch->batch)
        continue;
      if (said->len > 0)
        g_string_append_c (said, ' ');
      /* Translators: step, time in it, what was measured, its value with error and unit, what the model says */
      g_string_append_printf (said, _ ("Step %u, %s: %s %.4g ± %.2g %s, before %.4g, after %.4g."), point->step + 1, when,
                              _ (row->label), seen->value, seen->sd, lw_unit_words (row->unit), point->before,
                              point->after);
    }

  return g_string_free (g_steal_pointer (&said), FALSE);
}

char *
lw_fit_unseen_say (const LwFit      *fit,
                   const LwFitBatch *batch)
{
  if (isnan (batch != NULL ? batch->unseen_rms : fit->unseen_rms) || (batch != NULL && fit->n_batches == 1))
    return NULL;
  if (batch != NULL)
    return g_strdup_printf (_ ("The others foretell it to within %.1f times the instruments' errors."), batch->unseen_rms);
  if (fit->n_batches == 1)
    return g_strdup (_ ("There is no other batch to foretell this one from."));

  return g_strdup_printf (_ ("It foretells an unseen batch to within %.1f times the instruments' errors."), fit->unseen_rms);
}

static void
append_batches (GString     *to,
                const LwFit *fit)
{
  guint shown = MIN (fit->n_batches, MOST_NAMES);

  for (guint i = 0; i < shown; i++)
    {
      const LwBatch *batch = fit->season->batches[fit->batches[i].batch];
      g_autofree char *date = lw_say_date (batch->when_s);

      g_string_append_printf (to, i > 0 ? "; %s (%s)" : "%s (%s)", batch->name, date);
    }
  if (fit->n_batches > shown)
    g_string_append_printf (to, ngettext ("; and %u more", "; and %u more", fit->n_batches - shown),
                            fit->n_batches - shown);
}

/* What the leaf cannot keep is told all the same: it belongs to its history. */
static void
append_value (GString          *to,
              const LwFitParam *param,
              const LwProfile  *from)
{
  const LwFitRow *row = lw_fit_row (param->what);
  g_autofree char *change = lw_fit_param_say (param), *value = lw_fit_param_say_value (param, from);

  g_string_append_printf (to, "\n%s (%s): ", _ (row->label), row->id);
  if (*value == '\0')
    g_string_append_printf (to, _ ("%s; no part of the leaf"), change);
  else
    g_string_append (to, value);
}

char *
lw_fit_history_say (const LwFit     *fit,
                    const LwProfile *from)
{
  g_autoptr (GString) note = g_string_new (NULL);

  g_string_append_printf (note, ngettext ("Fitted from “%s” (%s) to %u weigh-in of: ",
                                          "Fitted from “%s” (%s) to %u weigh-ins of: ", fit->n_points),
                          from->name, from->id, fit->n_points);
  append_batches (note, fit);
  for (guint i = 0; i < fit->n_params; i++)
    if (lw_fit_param_is_of (&fit->params[i], from->id))
      append_value (note, &fit->params[i], from);

  return g_string_free (g_steal_pointer (&note), FALSE);
}

/* Sentences and labels. Whole sentences per language, numbers set in. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/telling.h"

#include <math.h>
#include <string.h>

#include "draw/block.h"
#include "season/correction.h"
#include "season/spell.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/turning.h"

static const LwQuantity told[] = { LW_MOISTURE, LW_OXIDATION, LW_RUPTURE, LW_ENZYME };

char *
lw_tell_value (LwQuantity quantity,
               double     value)
{
  const LwQuantityRow *row = lw_quantity_row (quantity);

  if (row->unit[0] == '\0')
    return g_strdup_printf ("%.*f", row->digits, value);

  /* Translators: a number and its unit */
  return g_strdup_printf (_ ("%.*f %s"), row->digits, value, lw_unit_words (row->unit));
}

/* Night and rain, where the step feels them. */
static void
tell_spells (GString        *words,
             const LwSeason *season,
             const LwBatch  *batch,
             guint           step)
{
  g_autoptr (GArray) spells = lw_spells_new (season, batch);
  double minutes = lw_step_get (&batch->steps[step], LW_SET_MINUTES) - 0.5;
  double night = lw_spells_minutes (spells, step, LW_SPELL_NIGHT);
  double rain = lw_spells_minutes (spells, step, LW_SPELL_RAIN);
  g_autofree char *night_time = lw_say_minutes (round (night)), *rain_time = lw_say_minutes (round (rain));

  if (night >= minutes)
    g_string_append_printf (words, " %s", _ ("All of it is at night."));
  else if (night >= 0.5)
    g_string_append_printf (words, _ (" At night: %s of it."), night_time);

  if (rain >= minutes)
    g_string_append_printf (words, " %s", _ ("It rains all the time."));
  else if (rain >= 0.5)
    g_string_append_printf (words, _ (" In rain: %s of it."), rain_time);
}

char *
lw_tell_step (const LwSeason *season,
              const LwBatch  *batch,
              guint           step,
              const LwTrack  *track)
{
  const LwStep *here = &batch->steps[step];
  const LwKindRow *kind = lw_kind_row (here->kind);
  g_autofree char *time = lw_say_minutes (lw_step_get (here, LW_SET_MINUTES));
  gboolean on_weather = FALSE;
  double leading = lw_block_leading (season, batch, step, &on_weather);
  g_autofree char *value = lw_say_setting (kind->leading, leading);
  /* Translators: step number, of how many, kind, time, value of its main setting, that setting's name */
  g_autoptr (GString) words = g_string_new (NULL);

  g_string_append_printf (words, _ ("Step %u of %u: %s, %s, %s %s."), step + 1, batch->n_steps, _ (kind->label), time,
                          value, _ (lw_setting_row (kind->leading)->label));
  if (on_weather)
    g_string_append_printf (words, " %s", _ ("It follows the weather."));
  if (lw_step_log (here, kind->leading) != NULL)
    g_string_append_printf (words, " %s", _ ("It follows a temperature log."));
  tell_spells (words, season, batch, step);
  if (lw_correction_of (batch, step) != NULL)
    g_string_append_printf (words, " %s", _ ("Corrected by its weigh-ins."));

  if (track == NULL || step >= track->n_steps)
    return g_string_free (g_steal_pointer (&words), FALSE);

  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      LwOutcome outcome = lw_track_end (track, step, -1);
      g_autofree char *result = lw_tell_value (told[i], lw_quantity_of (told[i], &outcome));

      /* Translators: a quantity's name and its value, one of several after a step */
      g_string_append_printf (words, _ (" %s then %s."), _ (lw_quantity_row (told[i])->label), result);
    }

  return g_string_free (g_steal_pointer (&words), FALSE);
}

/* The turning points that concern the quantity, a sentence each. */
static void
tell_turns (GString       *words,
            LwQuantity     quantity,
            const LwTrack *track)
{
  g_autoptr (GArray) turns = lw_turns_of (track);

  for (guint i = 0; i < turns->len; i++)
    {
      const LwTurnAt *turn = &g_array_index (turns, LwTurnAt, i);
      g_autofree char *sentence = NULL;

      if (!lw_turn_concerns (turn->kind, quantity))
        continue;

      sentence = lw_turn_sentence (turn);
      g_string_append_printf (words, "%s ", sentence);
    }
}

char *
lw_tell_panel (const LwBatch *batch,
               LwQuantity     quantity,
               const LwTrack *track)
{
  g_autoptr (GString) words = g_string_new (NULL);

  if (track == NULL || track->n_steps == 0)
    return g_strdup (_ ("Nothing is computed."));

  for (guint step = 0; step < track->n_steps; step++)
    {
      LwOutcome from = lw_track_outcome (track, step, -1, 0);
      LwOutcome to = lw_track_end (track, step, -1);
      g_autofree char *first = lw_tell_value (quantity, lw_quantity_of (quantity, &from));
      g_autofree char *last = lw_tell_value (quantity, lw_quantity_of (quantity, &to));

      /* Translators: kind of step, value at its start, value at its end */
      g_string_append_printf (words, _ ("%s: from %s to %s. "), _ (lw_kind_row (batch->steps[step].kind)->label),
                              first, last);
    }
  tell_turns (words, quantity, track);

  return g_string_free (g_steal_pointer (&words), FALSE);
}

char *
lw_tell_aim (LwQuantity quantity)
{
  /* Translators: an outcome */
  return g_strdup_printf (_ ("Aim at %s"), _ (lw_quantity_row (quantity)->label));
}

char *
lw_tell_set (const LwStep *step,
             LwSetting     setting)
{
  if (lw_step_log (step, setting) != NULL)
    /* Translators: a setting, a kind of step: "Set wall of fix in pan, by its log no longer" */
    return g_strdup_printf (_ ("Set %s of %s, by its log no longer"), _ (lw_setting_row (setting)->label),
                            _ (lw_kind_row (step->kind)->label));

  /* Translators: a setting, a kind of step: "Set time of fix in pan" */
  return g_strdup_printf (_ ("Set %s of %s"), _ (lw_setting_row (setting)->label),
                          _ (lw_kind_row (step->kind)->label));
}

/* How much of `first` to say where `last` says the unit too: "32" of "32 min" before "35 min". */
static int
without_unit (const char *first,
              const char *last)
{
  const char *unit = strchr (first, ' '), *other = strchr (last, ' ');

  return (int) (unit != NULL && other != NULL && strcmp (unit, other) == 0 && strchr (unit + 1, ' ') == NULL
                ? (gsize) (unit - first) : strlen (first));
}

char *
lw_tell_change (const LwStep *before,
                const LwStep *now,
                LwSetting     setting)
{
  double from = lw_step_get (before, setting), to = lw_step_get (now, setting);
  g_autofree char *last = lw_say_setting (setting, to);

  if (before->kind != now->kind || from == to)
    return NULL;

  if (setting == LW_SET_MINUTES)
    {
      g_autofree char *first = lw_say_setting (setting, from);

      return g_strdup_printf ("%.*s → %s", without_unit (first, last), first, last);
    }

  if (setting == lw_kind_row (now->kind)->leading)
    return g_strdup_printf ("%.*f → %s", lw_setting_row (setting)->digits, from, last);

  /* Translators: a setting's name, its value before, and now with its unit: "cover 20 → 25 %" */
  return g_strdup_printf (_ ("%s %.*f → %s"), _ (lw_setting_row (setting)->label), lw_setting_row (setting)->digits,
                          from, last);
}

char *
lw_tell_outcome (const LwOutcomeLook *look)
{
  g_autofree char *value = lw_tell_value (look->quantity, look->value);
  g_autofree char *verdict = lw_outcome_verdict (look), *change = lw_outcome_change (look->quantity, look->change);
  g_autoptr (GString) words = g_string_new (NULL);

  /* Translators: an outcome and its value */
  g_string_append_printf (words, _ ("%s %s."), _ (lw_quantity_row (look->quantity)->label), value);
  if (look->more != NULL)
    g_string_append_printf (words, " %s.", look->more);
  if (look->aimed)
    {
      g_autofree char *window = lw_outcome_window (look->quantity, look->low, look->high);

      /* Translators: a window: "Aim: 3.0 to 7.0." */
      g_string_append_printf (words, _ (" Aim: %s."), window);
    }
  if (verdict != NULL)
    g_string_append_printf (words, " %s.", verdict);
  if (*change != '\0')
    /* Translators: by how much, with sign */
    g_string_append_printf (words, _ (" Changed by %s."), change);
  if (look->aimed && look->why != NULL)
    /* Translators: where an aim comes from */
    g_string_append_printf (words, _ (" Why: %s"), look->why);

  return g_string_free (g_steal_pointer (&words), FALSE);
}

/* What a want missed, one of a list. */
static void
tell_missed (GString      *words,
             const LwWant *want,
             const LwMet  *met)
{
  const LwQuantityRow *row = lw_quantity_row (want->of);
  g_autofree char *by = lw_tell_value (want->of, fabs (met->missed));

  if (words->len > 0)
    g_string_append (words, _ (", "));
  /* Translators: an outcome, by how much it misses, after which step; one of a list */
  g_string_append_printf (words, met->missed > 0 ? _ ("%s ends %s above (step %u)") : _ ("%s ends %s below (step %u)"),
                          _ (row->label), by, want->step + 1);
}

char *
lw_tell_reached (const GArray    *wants,
                 const LwReached *reached,
                 gboolean         aims)
{
  g_autoptr (GString) missed = g_string_new (NULL);

  if (reached == NULL)
    return g_strdup (_ ("No settings were found: the batch cannot be computed."));
  if (reached->all_met)
    return g_strdup (aims ? _ ("All aims are met.") : _ ("All that is locked is held."));

  for (guint i = 0; i < reached->n; i++)
    if (!reached->wants[i].met)
      tell_missed (missed, &g_array_index (wants, LwWant, i), &reached->wants[i]);

  /* Translators: then a list of what is missed */
  return g_strdup_printf (aims ? _ ("Nearest that was found; still missed: %s.") : _ ("This cannot be held: %s."),
                          missed->str);
}

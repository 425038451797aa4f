/* Words of weigh-ins. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/weigh-words.h"

#include <math.h>

#include "draw/words.h"
#include "season/measured.h"
#include "season/text.h"
#include "season/wording.h"

#define MOST 1.1     /* of the fresh weight: steam and rain wet leaf. Assumed, no source */
#define LEAST 0.97   /* of the dry weight: leaf is lost on the way. Assumed, no source */

const char *
lw_weigh_name (LwMeasure of)
{
  /* Translators: the letter after "_" is the key that chooses it; each must have another */
  static const char *const names[LW_N_MEASURES] = {
    [LW_WEIGHED_KG] = N_ ("_Weight"),
    [LW_LEAF_C] = N_ ("_Leaf temperature"),
    [LW_WALL_C] = N_ ("W_all temperature"),
    [LW_METER_PCT] = N_ ("_Moisture meter"),
    [LW_JUDGED_OXIDATION_PCT] = N_ ("_Oxidation by colour"),
    [LW_JUDGED_BROKEN_PCT] = N_ ("_Breakage"),
    [LW_NOTED] = N_ ("_Note"),
  };

  return _ (names[of]);
}

char *
lw_weigh_title (LwMeasure of)
{
  g_auto (GStrv) parts = g_strsplit (lw_weigh_name (of), "_", 2);

  return g_strjoinv ("", parts);
}

char *
lw_weigh_value (const LwWeighIn *weigh_in)
{
  const LwMeasureRow *row = lw_measure_row (weigh_in->of);

  if (weigh_in->of == LW_NOTED)
    return lw_weigh_title (weigh_in->of);
  if (weigh_in->tare_kg > 0)
    /* Translators: a weight in kg, its uncertainty, that of the vessel */
    return g_strdup_printf (_ ("%.6g kg ± %.3g, tare %.6g kg"), weigh_in->value, weigh_in->sd, weigh_in->tare_kg);

  /* Translators: a value, its unit, its uncertainty */
  return g_strdup_printf (_ ("%.6g %s ± %.3g"), weigh_in->value, lw_unit_words (row->unit), weigh_in->sd);
}

char *
lw_weigh_moment (const LwBatch *batch,
                 guint          step,
                 double         minute)
{
  g_autofree char *time = lw_say_minutes (minute);

  /* Translators: a kind of step, and a time from its start */
  return g_strdup_printf (_ ("%s, %s"), _ (lw_kind_row (batch->steps[step].kind)->label), time);
}

static char *
say (int    of,
     double value)
{
  /* Translators: the temperature of a wall */
  return of < 0 ? g_strdup_printf (_ ("%.0f °C"), value) : lw_words_value ((LwQuantity) of, value);
}

char *
lw_weigh_beside (const LwBeside *beside)
{
  g_autofree char *measured = say (beside->of, beside->measured), *model = say (beside->of, beside->model);
  double off = fabs (beside->off_sds);

  if (beside->of < 0)
    /* Translators: the temperature of a wall, and what it was to be */
    return g_strdup_printf (_ ("%s measured, set to %s"), measured, model);
  if (off < 0.05)
    /* Translators: two values */
    return g_strdup_printf (_ ("%s measured, %s by the model"), measured, model);

  return g_strdup_printf (beside->off_sds > 0 ? _ ("%s measured, %s by the model: %.1f standard deviations above")
                                              : _ ("%s measured, %s by the model: %.1f standard deviations below"),
                          measured, model, off);
}

char *
lw_weigh_meaning (const LwWeighIn *weigh_in,
                  double           fresh_kg,
                  double           fresh_moisture_pct)
{
  double moisture, high, low;

  if (weigh_in->of != LW_WEIGHED_KG
      || !lw_measured (weigh_in, LW_MOISTURE, fresh_kg, fresh_moisture_pct, 0, &moisture)
      || !lw_measured (weigh_in, LW_MOISTURE, fresh_kg, fresh_moisture_pct, 1, &high)
      || !lw_measured (weigh_in, LW_MOISTURE, fresh_kg, fresh_moisture_pct, -1, &low))
    return NULL;

  if (weigh_in->tare_kg > 0)
    /* Translators: weight with the vessel, that of the vessel, their difference, the fresh weight and moisture; what
     * that comes to, and how sure it is */
    return g_strdup_printf (_ ("%.6g kg less %.6g kg tare = %.6g kg of %.6g kg fresh at %.1f %%: %.1f %% ± %.1f wet basis"),
                            weigh_in->value, weigh_in->tare_kg, weigh_in->value - weigh_in->tare_kg, fresh_kg,
                            fresh_moisture_pct, moisture, (high - low) / 2);

  /* Translators: weight, the fresh weight and moisture; what that comes to, and how sure it is */
  return g_strdup_printf (_ ("%.6g kg of %.6g kg fresh at %.1f %%: %.1f %% ± %.1f wet basis"), weigh_in->value, fresh_kg,
                          fresh_moisture_pct, moisture, (high - low) / 2);
}

const char *
lw_weigh_doubt (const LwWeighIn *weigh_in,
                double           fresh_kg,
                double           fresh_moisture_pct)
{
  double leaf_kg = weigh_in->value - weigh_in->tare_kg;

  if (weigh_in->of != LW_WEIGHED_KG || isnan (fresh_moisture_pct))
    return NULL;
  if (leaf_kg > MOST * fresh_kg)
    return _ ("That is more than the fresh leaf weighed: check scale and tare.");
  if (leaf_kg < LEAST * fresh_kg * (1 - fresh_moisture_pct / 100))
    return _ ("That is less than the leaf weighs without water: check scale and tare.");

  return NULL;
}

char *
lw_weigh_tell (const LwSeason  *season,
               const LwBatch   *batch,
               guint            step,
               const LwWeighIn *weigh_in,
               const LwTrack   *track)
{
  g_autofree char *moment = lw_weigh_moment (batch, step, weigh_in->minute), *value = lw_weigh_value (weigh_in);
  g_autofree char *name = lw_weigh_title (weigh_in->of);
  GString *words = g_string_new (NULL);
  LwBeside beside;

  if (weigh_in->of == LW_NOTED)
    g_string_append_printf (words, "%s (%s)", name, moment);
  else
    /* Translators: a measure, its value, when */
    g_string_append_printf (words, _ ("%s %s (%s)"), name, value, moment);
  if (lw_beside (batch, step, weigh_in, track, lw_fresh_moisture_pct (season, batch), &beside))
    {
      g_autofree char *said = lw_weigh_beside (&beside);

      g_string_append_printf (words, ". %s", said);
    }
  if (weigh_in->note != NULL)
    g_string_append_printf (words, ". %s", weigh_in->note);

  return g_string_free (words, FALSE);
}

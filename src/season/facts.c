/* Checking and setting what is written down besides the steps. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/facts.h"

#include <gio/gio.h>
#include <string.h>

#include "season/document.h"
#include "season/edit.h"
#include "season/notation.h"
#include "season/shape.h"
#include "season/text.h"

void
lw_fact_range (LwFact  fact,
               double *low,
               double *high)
{
  static const struct { LwElement element; const char *attr; } facts[] = {
    [LW_FACT_FRESH_KG] = { LW_E_BATCH, "fresh-kg" },
    [LW_FACT_ALTITUDE_M] = { LW_E_PLACE, "altitude-m" },
    [LW_FACT_LATITUDE_DEG] = { LW_E_PLACE, "latitude-deg" },
  };
  const LwShape *shape = lw_shape (facts[fact].element);

  for (guint i = 0; i < shape->n_attrs; i++)
    if (strcmp (shape->attrs[i].name, facts[fact].attr) == 0)
      {
        *low = shape->attrs[i].low;
        *high = shape->attrs[i].high;
      }
}

static gboolean
refuse (GError    **error,
        const char *why)
{
  g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_INVALID_ARGUMENT, why);

  return FALSE;
}

static gboolean
check_number (double      value,
              LwFact      fact,
              const char *name,
              GError    **error)
{
  double low, high;
  g_autofree char *why = NULL;

  lw_fact_range (fact, &low, &high);
  if (value >= low && value <= high)
    return TRUE;

  /* Translators: what a number is of, and its range */
  why = g_strdup_printf (_ ("%s must be a number from %g to %g."), name, low, high);

  return refuse (error, why);
}

static gboolean
check_length (const char *text,
              GError    **error)
{
  g_autofree char *why = NULL;

  if (g_utf8_strlen (text, -1) <= LW_MAX_TEXT)
    return TRUE;

  why = g_strdup_printf (_ ("No name or note may be longer than %d characters."), LW_MAX_TEXT);

  return refuse (error, why);
}

gboolean
lw_batch_facts_check (const LwSeason     *season,
                      guint               batch,
                      const LwBatchFacts *facts,
                      GError            **error)
{
  int same = lw_season_batch (season, facts->name);
  g_autofree char *time = lw_time_text (facts->when_s);

  if (facts->name[0] == '\0')
    return refuse (error, _ ("The batch needs a name."));
  if (same >= 0 && same != (int) batch)
    return refuse (error, _ ("Another batch has that name."));
  if (time[0] == '\0')
    return refuse (error, _ ("The year must be from 1 to 9999."));
  if (!check_number (facts->fresh_kg, LW_FACT_FRESH_KG, _ ("Fresh leaf"), error))
    return FALSE;

  for (guint i = 0; i < season->batches[batch]->n_steps; i++)
    if (!check_length (facts->step_notes[i], error))
      return FALSE;

  return check_length (facts->name, error) && check_length (facts->tea, error) && check_length (facts->note, error);
}

gboolean
lw_season_facts_check (const LwSeasonFacts *facts,
                       GError             **error)
{
  if (facts->name[0] == '\0')
    return refuse (error, _ ("The season needs a name."));

  return check_number (facts->altitude_m, LW_FACT_ALTITUDE_M, _ ("Altitude"), error)
         && check_number (facts->latitude_deg, LW_FACT_LATITUDE_DEG, _ ("Latitude"), error)
         && check_length (facts->name, error) && check_length (facts->place, error) && check_length (facts->note, error);
}

static void
write_down (char      **into,
            const char *text)
{
  g_free (*into);
  *into = text[0] != '\0' ? g_strdup (text) : NULL;
}

LwSeason *
lw_edit_set_batch_facts (const LwSeason     *season,
                         guint               batch,
                         const LwBatchFacts *facts)
{
  g_autoptr (LwSeason) named = lw_edit_rename_batch (season, batch, facts->name);
  LwBatch *own;
  LwSeason *next = lw_season_own_batch (named, batch, &own);

  write_down (&own->tea, facts->tea);
  write_down (&own->note, facts->note);
  own->when_s = facts->when_s;
  own->fresh_kg = facts->fresh_kg;
  own->made = facts->made;
  for (guint i = 0; i < own->n_steps; i++)
    write_down (&own->steps[i].note, facts->step_notes[i]);

  return next;
}

LwSeason *
lw_edit_set_season_facts (const LwSeason      *season,
                          const LwSeasonFacts *facts)
{
  LwSeason *next = lw_season_copy (season);

  g_free (next->name);
  next->name = g_strdup (facts->name);
  write_down (&next->place, facts->place);
  write_down (&next->note, facts->note);
  next->altitude_m = facts->altitude_m;
  next->latitude_deg = facts->latitude_deg;

  return next;
}

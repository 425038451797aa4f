/* A fitted leaf becomes a profile of its own, beside the one it came from. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "season/leaf-field.h"
#include "season/text.h"
#include "season/wording.h"
#include "study/fit-words.h"

#define DIGITS "%.4g"        /* of a law's value: finer than any error */
#define MOISTURE_PER_UNIT 100
#define MOST_ID 48           /* characters of the old id in the new one */

static double
rounded (double      value,
         const char *format)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  return g_ascii_strtod (g_ascii_formatd (text, sizeof text, format, value), NULL);
}

/* As a person would write the values down. */
static void
tidy (LwProfile *profile)
{
  g_autofree double *shares = g_new (double, MAX (profile->n_parts, 1));

  for (guint i = 0; i < LW_N_LAW; i++)
    if (profile->given & (G_GUINT64_CONSTANT (1) << i))
      {
        const LwLawField *field = &lw_law_fields ()[i];
        double value = rounded (lw_law_get (&profile->law, i), DIGITS);

        lw_profile_set_law (profile, i, CLAMP (value, field->low, field->high));
      }

  profile->fresh_moisture_pct = round (profile->fresh_moisture_pct * MOISTURE_PER_UNIT) / MOISTURE_PER_UNIT;

  for (guint i = 0; i < profile->n_parts; i++)
    shares[i] = profile->parts[i].share;
  lw_shares_add_up (shares, profile->n_parts);
  for (guint i = 0; i < profile->n_parts; i++)
    profile->parts[i].share = shares[i];
}

/* (transfer full) an id that the season does not have yet; `number` tells the how manieth of its kind. */
static char *
new_id (const LwSeason *season,
        const char     *id,
        guint          *number)
{
  g_autofree char *stem = g_strndup (id, MOST_ID);

  for (*number = 1;; ++*number)
    {
      g_autofree char *next = *number == 1 ? g_strdup_printf ("%s-fitted", stem)
                                           : g_strdup_printf ("%s-fitted-%u", stem, *number);

      if (lw_season_profile (season, next) == NULL)
        return g_steal_pointer (&next);
    }
}

char *
lw_fit_new_name (const LwSeason  *season,
                 const LwProfile *from)
{
  guint number;
  g_autofree char *id = new_id (season, from->id, &number);

  return number == 1 ? g_strdup_printf (_ ("%s, fitted"), from->name)
                     : g_strdup_printf (_ ("%s, fitted %u"), from->name, number);
}

static void
name_anew (LwProfile       *profile,
           const LwSeason  *season,
           const LwProfile *from,
           const char      *name)
{
  guint number;

  g_free (profile->id);
  g_free (profile->name);
  profile->id = new_id (season, from->id, &number);
  profile->name = name != NULL ? g_strdup (name) : lw_fit_new_name (season, from);
}

/* (transfer full) */
static char *
note_of (const LwFit       *fit,
         const LwProfile   *from,
         const LwFitSaveAs *as)
{
  g_autofree char *history = lw_fit_history_say (fit, from), *date = NULL;

  if (as == NULL || as->when_s == 0)
    return g_steal_pointer (&history);

  date = lw_say_date (as->when_s);

  return g_strdup_printf (_ ("%s\nFitted on %s."), history, date);
}

LwSeason *
lw_fit_save (const LwFit       *fit,
             const LwSeason    *season,
             const LwFitSaveAs *as)
{
  g_autoptr (GPtrArray) leaves = NULL;
  LwSeason *next;

  if (!fit->enough)
    return NULL;

  next = lw_season_copy (season);
  leaves = lw_fit_leaves (fit);
  for (guint i = 0; i < leaves->len; i++)
    {
      const LwProfile *from = lw_season_profile (fit->season, leaves->pdata[i]);
      LwProfile *leaf = lw_profile_copy (from);

      for (guint k = 0; k < fit->n_params; k++)
        if (lw_fit_param_is_of (&fit->params[k], from->id))
          lw_fit_apply (fit->params[k].what, fit->params[k].change, leaf, NULL);

      g_free (leaf->note);
      leaf->note = note_of (fit, from, as);
      tidy (leaf);
      name_anew (leaf, next, from, as != NULL && as->names != NULL ? as->names[i] : NULL);
      lw_season_add_profile (next, leaf);
    }

  return next;
}

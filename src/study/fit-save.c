/* A fitted leaf becomes a profile of its own, beside the one it came from. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "season/leaf-field.h"
#include "season/text.h"
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

/* An id and a name that the season does not have yet. */
static void
name_anew (LwProfile      *profile,
           const LwSeason *season)
{
  g_autofree char *id = g_strndup (profile->id, MOST_ID), *name = g_steal_pointer (&profile->name);

  for (guint i = 1;; i++)
    {
      g_free (profile->id);
      profile->id = i == 1 ? g_strdup_printf ("%s-fitted", id) : g_strdup_printf ("%s-fitted-%u", id, i);
      if (lw_season_profile (season, profile->id) != NULL)
        continue;

      profile->name = i == 1 ? g_strdup_printf (_ ("%s, fitted"), name) : g_strdup_printf (_ ("%s, fitted %u"), name, i);
      return;
    }
}

LwSeason *
lw_fit_save (const LwFit    *fit,
             const LwSeason *season)
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
      LwProfile *leaf = lw_fit_copy_leaf (from);

      for (guint k = 0; k < fit->n_params; k++)
        if (lw_fit_param_is_of (&fit->params[k], from->id))
          lw_fit_apply (fit->params[k].what, fit->params[k].change, leaf, NULL);

      g_free (leaf->note);
      leaf->note = lw_fit_history_say (fit, from);
      tidy (leaf);
      name_anew (leaf, next);
      lw_season_add_profile (next, leaf);
    }

  return next;
}

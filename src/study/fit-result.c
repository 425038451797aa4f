/* Reading a fit. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study/fit-model.h"

void
lw_fit_free (LwFit *fit)
{
  for (guint i = 0; i < fit->n_all && fit->params != NULL; i++)
    g_free (fit->params[i].leaf);

  lw_season_unref (fit->season);
  g_free (fit->points);
  g_free (fit->params);
  g_free (fit->correlations);
  g_free (fit->batches);
  g_free (fit->warnings);
  g_free (fit);
}

LwSeason *
lw_fit_season (const LwFit *fit,
               guint        batch)
{
  g_autofree double *changes = g_new (double, fit->n_all);

  for (guint i = 0; i < fit->n_all; i++)
    changes[i] = fit->params[i].change;

  return lw_fit_changed (fit->season, batch, fit->params, changes, fit->n_all);
}

GPtrArray *
lw_fit_leaves (const LwFit *fit)
{
  GPtrArray *leaves = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < fit->season->n_profiles; i++)
    for (guint k = 0; k < fit->n_batches; k++)
      if (g_str_equal (fit->season->batches[fit->batches[k].batch]->leaf, fit->season->profiles[i]->id))
        {
          g_ptr_array_add (leaves, g_strdup (fit->season->profiles[i]->id));
          break;
        }

  return leaves;
}

gboolean
lw_fit_param_is_of (const LwFitParam *param,
                    const char       *leaf)
{
  return param->batch < 0 && (param->leaf == NULL || g_strcmp0 (param->leaf, leaf) == 0);
}

void
lw_fit_param_value (const LwFitParam *param,
                    const LwProfile  *profile,
                    double           *start,
                    double           *value,
                    double           *error)
{
  g_autoptr (LwProfile) changed = lw_profile_copy (profile);

  lw_fit_apply (param->what, param->change, changed, NULL);
  *start = lw_fit_value (param->what, profile);
  *value = lw_fit_value (param->what, changed);
  *error = lw_fit_row (param->what)->factor ? *value * param->error : param->error;
}

static gboolean
has_batch (const LwSeason *season,
           const LwBatch  *batch)
{
  for (guint i = 0; i < season->n_batches; i++)
    if (season->batches[i] == batch)
      return TRUE;

  return FALSE;
}

gboolean
lw_fit_is_of (const LwFit    *fit,
              const LwSeason *season)
{
  const LwSeason *was = fit->season;

  if (season->altitude_m != was->altitude_m || season->latitude_deg != was->latitude_deg)
    return FALSE;

  for (guint k = 0; k < fit->n_batches; k++)
    {
      const LwBatch *batch = was->batches[fit->batches[k].batch];

      if (!has_batch (season, batch)
          || lw_season_profile (season, batch->leaf) != lw_season_profile (was, batch->leaf)
          || (batch->weather != NULL
              && lw_season_weather (season, batch->weather) != lw_season_weather (was, batch->weather)))
        return FALSE;
    }

  return TRUE;
}

static void
append_line (GArray           *lines,
             const LwFitParam *param,
             const LwProfile  *leaf)
{
  LwFitLine line = { param, leaf };

  g_array_append_val (lines, line);
}

GArray *
lw_fit_lines (const LwFit *fit)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (LwFitLine));
  g_autoptr (GPtrArray) leaves = lw_fit_leaves (fit);

  for (guint i = 0; i < fit->n_params; i++)
    {
      const LwFitParam *param = &fit->params[i];

      if (param->batch >= 0 || lw_fit_row (param->what)->scope == LW_FIT_OF_VESSEL)
        append_line (lines, param, NULL);
      else
        for (guint k = 0; k < leaves->len; k++)
          if (lw_fit_param_is_of (param, leaves->pdata[k]))
            append_line (lines, param, lw_season_profile (fit->season, leaves->pdata[k]));
    }

  return lines;
}

/* What a fit goes by: batches that were made, those of their weigh-ins that tell of the leaf, and the changes
 * that may be made to them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "study/fit-model.h"
#include "study/fit-tells.h"

#define FAR 4.0           /* spreads: no change goes further */
#define LEAST_WEIGHT 0.5  /* of the weight that was noted */

static void
warn (GArray          *warnings,
      LwFitWarningKind kind,
      guint            batch,
      double           number)
{
  LwFitWarning warning = { kind, batch, 0, number };

  g_array_append_val (warnings, warning);
}

static void
gather_points (const LwBatch *batch,
               LwFitBatch    *into,
               GArray        *points)
{
  for (guint s = 0; s < batch->n_steps; s++)
    for (guint i = 0; i < batch->steps[s].n_weigh_ins; i++)
      {
        LwTells tells = lw_fit_tells (&batch->steps[s], &batch->steps[s].weigh_ins[i]);
        LwFitPoint point = { into->batch, s, i, NAN, NAN };

        into->n_silent += tells == LW_TELLS_NOTHING ? 1 : 0;
        into->n_late += tells == LW_TELLS_LATE ? 1 : 0;
        if (tells == LW_TELLS_LEAF)
          {
            into->n_points++;
            g_array_append_val (points, point);
          }
      }
}

/* Whether the batch counts; `points` gets what it has to say. */
static gboolean
gather_batch (const LwSeason *season,
              LwFitBatch     *into,
              GArray         *points,
              GArray         *warnings)
{
  const LwBatch *batch = season->batches[into->batch];

  if (!batch->made)
    {
      warn (warnings, LW_FIT_PLANNED, into->batch, NAN);
      return FALSE;
    }

  gather_points (batch, into, points);
  if (into->n_late > 0)
    warn (warnings, LW_FIT_LATE, into->batch, into->n_late);
  if (into->n_points == 0)
    warn (warnings, LW_FIT_BARE, into->batch, NAN);

  return into->n_points > 0;
}

static gboolean
is_asked (const LwFitAsk *ask,
          const LwSeason *season,
          guint           batch)
{
  if (ask->leaf != NULL && g_strcmp0 (season->batches[batch]->leaf, ask->leaf) != 0)
    return FALSE;
  if (ask->batches == NULL)
    return season->batches[batch]->made;

  for (guint i = 0; i < ask->batches->len; i++)
    if (g_array_index (ask->batches, guint, i) == batch)
      return TRUE;

  return FALSE;
}

static void
gather (LwFitModel     *model,
        const LwFitAsk *ask,
        GArray         *warnings)
{
  g_autoptr (GArray) points = g_array_new (FALSE, TRUE, sizeof (LwFitPoint));
  g_autoptr (GArray) batches = g_array_new (FALSE, TRUE, sizeof (LwFitBatch));
  g_autoptr (GArray) first = g_array_new (FALSE, TRUE, sizeof (guint));

  for (guint i = 0; i < model->season->n_batches; i++)
    {
      LwFitBatch batch = { .batch = i, .before = NAN, .after = NAN, .unseen_rms = NAN, .unseen_sd = NAN };
      guint before = points->len;

      if (!is_asked (ask, model->season, i) || !gather_batch (model->season, &batch, points, warnings))
        continue;
      g_array_append_val (batches, batch);
      g_array_append_val (first, before);
    }

  model->n_points = points->len;
  model->n_batches = batches->len;
  g_array_append_val (first, model->n_points);
  model->points = g_array_steal (points, NULL);
  model->batches = g_array_steal (batches, NULL);
  model->first = g_array_steal (first, NULL);
}

/* Nothing may take one of the leaves, or the batch, out of what can stand in a document. */
static void
add_unknown (LwFitModel *model,
             LwFitParam  param)
{
  guint at = model->n_x++;
  const LwFitRow *row = lw_fit_row (param.what);
  double low = -FAR * row->spread, high = FAR * row->spread;

  for (guint k = 0; k < model->n_batches; k++)
    {
      const LwBatch *batch = model->season->batches[model->batches[k].batch];

      if (lw_fit_param_is_of (&param, batch->leaf))
        lw_fit_narrow (param.what, lw_season_profile (model->season, batch->leaf), &low, &high);
      if (param.what == LW_FIT_BATCH_WEIGHT && (guint) param.batch == model->batches[k].batch)
        low = fmax (low, -LEAST_WEIGHT * batch->fresh_kg);
    }

  model->params = g_renew (LwFitParam, model->params, model->n_x);
  model->low = g_renew (double, model->low, model->n_x);
  model->high = g_renew (double, model->high, model->n_x);
  model->params[at] = param;
  model->low[at] = fmin (low, 0) / row->spread;
  model->high[at] = fmax (high, 0) / row->spread;
}

/* Whether a batch before `k` has the same leaf. */
static gboolean
leaf_seen (const LwFitModel *model,
           guint             k)
{
  const char *leaf = model->season->batches[model->batches[k].batch]->leaf;

  for (guint i = 0; i < k; i++)
    if (g_str_equal (model->season->batches[model->batches[i].batch]->leaf, leaf))
      return TRUE;

  return FALSE;
}

static void
add_unknowns (LwFitModel *model,
              LwFitWhat   what)
{
  LwFitScope scope = lw_fit_row (what)->scope;

  if (scope == LW_FIT_OF_ALL || scope == LW_FIT_OF_VESSEL)
    {
      add_unknown (model, (LwFitParam) { .what = what, .batch = -1 });
      return;
    }

  for (guint k = 0; k < model->n_batches; k++)
    {
      guint at = model->batches[k].batch;

      if (scope == LW_FIT_OF_BATCH)
        add_unknown (model, (LwFitParam) { .what = what, .batch = (int) at });
      else if (!leaf_seen (model, k))
        add_unknown (model, (LwFitParam) { .what = what, .batch = -1,
                                           .leaf = g_strdup (model->season->batches[at]->leaf) });
    }
}

LwFitModel *
lw_fit_model_new (LwSeason       *season,
                  const LwFitAsk *ask,
                  GArray         *warnings,
                  GCancellable   *cancellable)
{
  g_autoptr (LwFitModel) model = g_new0 (LwFitModel, 1);
  guint wanted = ask->threads > 0 ? ask->threads : g_get_num_processors ();

  model->season = season;
  model->cancellable = cancellable;
  model->left_out = -1;
  gather (model, ask, warnings);
  for (guint i = 0; i < LW_FIT_BATCH_WEIGHT; i++)
    if (ask->free & LW_FIT_BIT (i))
      add_unknowns (model, i);
  add_unknowns (model, LW_FIT_BATCH_WEIGHT);

  model->n_threads = CLAMP (wanted, 1, MAX (model->n_batches, 1));
  model->marches = g_new0 (LwMarch *, model->n_threads);
  for (guint i = 0; i < model->n_threads; i++)
    {
      model->marches[i] = lw_march_new ();
      if (model->marches[i] == NULL)
        return NULL;
      lw_march_set_tolerance (model->marches[i], LW_FIT_TOLERANCE);
    }

  return g_steal_pointer (&model);
}

void
lw_fit_model_free (LwFitModel *model)
{
  for (guint i = 0; i < model->n_threads; i++)
    g_clear_pointer (&model->marches[i], lw_march_free);
  for (guint i = 0; i < model->n_x; i++)
    g_free (model->params[i].leaf);
  g_free (model->marches);
  g_free (model->batches);
  g_free (model->first);
  g_free (model->points);
  g_free (model->params);
  g_free (model->low);
  g_free (model->high);
  g_free (model);
}

/* Batches into the document: their steps, aims, weigh-ins, corrections, and what was planned. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/write-batch.h"

#include <math.h>

#include "season/correction.h"
#include "season/put.h"
#include "season/write-log.h"

static void
put_aim (GString     *out,
         int          depth,
         const LwAim *aim)
{
  lw_put_start (out, depth, "aim");
  lw_put_attr (out, "of", lw_quantity_row (aim->of)->id);
  if (aim->low != -INFINITY)
    lw_put_number (out, "low", aim->low);
  if (aim->high != INFINITY)
    lw_put_number (out, "high", aim->high);
  if (aim->weight != 1)
    lw_put_number (out, "weight", aim->weight);
  lw_put_said (out, "aim", aim->note);
}

static void
put_weigh_in (GString         *out,
              int              depth,
              const LwWeighIn *weigh_in)
{
  lw_put_start (out, depth, "weigh-in");
  lw_put_number (out, "minute", weigh_in->minute);
  lw_put_attr (out, "of", lw_measure_row (weigh_in->of)->id);
  if (weigh_in->of != LW_NOTED)
    {
      lw_put_number (out, "value", weigh_in->value);
      lw_put_number (out, "sd", weigh_in->sd);
    }
  if (weigh_in->tare_kg != 0)
    lw_put_number (out, "tare-kg", weigh_in->tare_kg);

  lw_put_said (out, "weigh-in", weigh_in->note);
}

static void
put_correction (GString            *out,
                int                 depth,
                const LwCorrection *correction)
{
  lw_put_start (out, depth, "correction");
  lw_put_number (out, "minute", correction->minute);
  if (correction->fresh_points != 0)
    lw_put_number (out, "fresh-moisture-points", correction->fresh_points);
  g_string_append (out, ">\n");

  for (guint i = 0; i < correction->jump->n_parts; i++)
    {
      lw_put_start (out, depth + 1, "shift");
      for (guint k = 0; k < LW_N_STATE; k++)
        {
          const LwShiftRow *row = &lw_shift_rows ()[k];
          double value = *(const double *) ((const char *) &correction->jump->shifts[i] + row->offset);

          if (value != 0)
            lw_put_number (out, row->id, value);
        }
      g_string_append (out, "/>\n");
    }
  lw_put_end (out, depth, "correction");
}

static void
put_settings (GString      *out,
              const LwStep *step)
{
  const LwKindRow *row = lw_kind_row (step->kind);

  for (guint i = 0; i < row->n_settings; i++)
    {
      LwSetting setting = row->settings[i].setting;

      if (setting == LW_SET_MINUTES || lw_step_is_given (step, setting))
        lw_put_number (out, lw_setting_row (setting)->id, lw_step_get (step, setting));
    }
  lw_put_optional (out, "wall-log", step->log[LW_LOG_WALL]);
  lw_put_optional (out, "air-log", step->log[LW_LOG_AIR]);
}

static void
put_step (GString       *out,
          int            depth,
          const LwBatch *batch,
          guint          at)
{
  const LwStep *step = &batch->steps[at];
  const LwCorrection *correction = lw_correction_of (batch, at);

  lw_put_start (out, depth, "step");
  lw_put_attr (out, "kind", lw_kind_row (step->kind)->id);
  put_settings (out, step);
  if (lw_put_is_empty (step->note) && lw_put_is_empty (step->sign) && step->n_aims == 0 && step->n_weigh_ins == 0 && correction == NULL
      && !lw_write_has_logs (batch, (int) at))
    {
      g_string_append (out, "/>\n");
      return;
    }

  g_string_append (out, ">\n");
  lw_put_note (out, depth + 1, "note", step->note);
  lw_put_note (out, depth + 1, "sign", step->sign);
  for (guint i = 0; i < step->n_aims; i++)
    put_aim (out, depth + 1, &step->aims[i]);
  for (guint i = 0; i < step->n_weigh_ins; i++)
    put_weigh_in (out, depth + 1, &step->weigh_ins[i]);
  if (correction != NULL)
    put_correction (out, depth + 1, correction);
  lw_write_logs (out, depth + 1, batch, (int) at);
  lw_put_end (out, depth, "step");
}

static void
put_leaf_of (GString       *out,
             const LwBatch *batch)
{
  lw_put_number (out, "fresh-kg", batch->fresh_kg);
  if (!isnan (batch->fresh_moisture_pct))
    lw_put_number (out, "fresh-moisture-pct", batch->fresh_moisture_pct);
  g_string_append (out, ">\n");
}

static void
put_making (GString       *out,
            int            depth,
            const LwBatch *batch)
{
  for (guint i = 0; i < batch->n_steps; i++)
    put_step (out, depth, batch, i);
  for (guint i = 0; i < batch->n_aims; i++)
    put_aim (out, depth, &batch->aims[i]);
  lw_write_logs (out, depth, batch, -1);
}

static void
put_plan (GString       *out,
          const LwBatch *plan)
{
  lw_put_start (out, 2, "plan");
  lw_put_time (out, "start", plan->when_s);
  put_leaf_of (out, plan);
  put_making (out, 3, plan);
  lw_put_end (out, 2, "plan");
}

void
lw_write_batch (GString       *out,
                const LwBatch *batch)
{
  lw_put_start (out, 1, "batch");
  lw_put_attr (out, "name", batch->name);
  lw_put_optional (out, "tea", batch->tea);
  lw_put_time (out, "start", batch->when_s);
  lw_put_attr (out, "state", batch->made ? "made" : "planned");
  lw_put_attr (out, "leaf", batch->leaf);
  lw_put_optional (out, "weather", batch->weather);
  put_leaf_of (out, batch);

  lw_put_note (out, 2, "note", batch->note);
  put_making (out, 2, batch);
  if (batch->plan != NULL)
    put_plan (out, batch->plan);

  lw_put_end (out, 1, "batch");
}

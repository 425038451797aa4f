/* Corrections: memory, and whether they still hold. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/correction.h"

#include <math.h>

#include "season/leaf-field.h"

#define LATE 1e-9  /* minutes */

/* In the states' order; ranges are wide. */
static const LwShiftRow rows[] = {
  { "water", -25, 25, offsetof (LwState, water) },
  { "temp-c", -300, 300, offsetof (LwState, temp_c) },
  { "wilt", -100, 100, offsetof (LwState, wilt) },
  { "heat", -100, 100, offsetof (LwState, heat) },
  { "roll", -100, 100, offsetof (LwState, roll) },
  { "twist", -1, 1, offsetof (LwState, twist) },
  { "enzyme", -1, 1, offsetof (LwState, enzyme) },
  { "oxidation", -1, 1, offsetof (LwState, oxidation) },
  { "roast-min", -1e6, 1e6, offsetof (LwState, roast_min) },
  { "green", -10, 10, offsetof (LwState, green) },
  { "broken", -1, 1, offsetof (LwState, broken) },
};

G_STATIC_ASSERT (G_N_ELEMENTS (rows) == LW_N_STATE);

const LwShiftRow *
lw_shift_rows (void)
{
  return rows;
}

GArray *
lw_weighed_until (const LwBatch *batch,
                  guint          step,
                  double         minute)
{
  GArray *weighed = g_array_new (FALSE, TRUE, sizeof (LwWeighed));

  for (guint s = 0; s <= step && s < batch->n_steps; s++)
    for (guint i = 0; i < batch->steps[s].n_weigh_ins; i++)
      {
        LwWeighed one = { s, batch->steps[s].weigh_ins[i] };

        one.weigh_in.note = NULL;
        if (lw_measure_row (one.weigh_in.of)->quantity >= 0 && (s < step || one.weigh_in.minute <= minute + LATE))
          g_array_append_val (weighed, one);
      }

  return weighed;
}

LwCorrection *
lw_correction_new (const LwBatch *batch,
                   guint          step,
                   double         minute,
                   double         fresh_points,
                   const LwState *shifts,
                   guint          n_parts)
{
  g_autoptr (GArray) by = lw_weighed_until (batch, step, minute);
  LwCorrection *correction = g_atomic_rc_box_new0 (LwCorrection);

  correction->minute = minute;
  correction->fresh_points = fresh_points;
  correction->jump = lw_jump_new (60 * minute, shifts, n_parts);
  correction->n_by = by->len;
  correction->by = g_memdup2 (by->data, by->len * sizeof *correction->by);

  return correction;
}

LwCorrection *
lw_correction_ref (LwCorrection *correction)
{
  return g_atomic_rc_box_acquire (correction);
}

static void
correction_clear (LwCorrection *correction)
{
  lw_jump_unref (correction->jump);
  g_free (correction->by);
}

void
lw_correction_unref (LwCorrection *correction)
{
  g_atomic_rc_box_release_full (correction, (GDestroyNotify) correction_clear);
}

static gboolean
same_weighed (const LwWeighed *a,
              const LwWeighed *b)
{
  return a->step == b->step && a->weigh_in.minute == b->weigh_in.minute && a->weigh_in.of == b->weigh_in.of
         && a->weigh_in.value == b->weigh_in.value && a->weigh_in.sd == b->weigh_in.sd
         && a->weigh_in.tare_kg == b->weigh_in.tare_kg;
}

const LwCorrection *
lw_correction_of (const LwBatch *batch,
                  guint          step)
{
  const LwCorrection *correction = batch->steps[step].correction;
  g_autoptr (GArray) now = NULL;

  if (correction == NULL)
    return NULL;

  now = lw_weighed_until (batch, step, correction->minute);
  if (now->len != correction->n_by)
    return NULL;
  for (guint i = 0; i < now->len; i++)
    if (!same_weighed (&g_array_index (now, LwWeighed, i), &correction->by[i]))
      return NULL;

  return correction;
}

void
lw_batch_set_correction (LwBatch      *batch,
                         guint         step,
                         LwCorrection *correction)
{
  g_return_if_fail (step < batch->n_steps);

  g_clear_pointer (&batch->steps[step].correction, lw_correction_unref);
  batch->steps[step].correction = correction;
}

void
lw_batch_drop_corrections (LwBatch *batch)
{
  for (guint i = 0; i < batch->n_steps; i++)
    lw_batch_set_correction (batch, i, NULL);
}

double
lw_batch_fresh_moisture (const LwBatch   *batch,
                         const LwProfile *profile)
{
  double moisture = profile == NULL || !isnan (batch->fresh_moisture_pct) ? batch->fresh_moisture_pct
                                                                          : profile->fresh_moisture_pct;
  double points = 0, low, high;

  for (guint i = 0; i < batch->n_steps; i++)
    {
      const LwCorrection *correction = lw_correction_of (batch, i);

      points += correction != NULL ? correction->fresh_points : 0;
    }

  lw_leaf_field_range (LW_LEAF_MOISTURE, &low, &high);

  return points != 0 ? CLAMP (moisture + points, low, high) : moisture;
}

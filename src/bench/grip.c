/* Taking hold and dragging. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/grip.h"

#include <math.h>

#include "draw/block.h"
#include "season/edit.h"

#define EDGE_REACH 7.0
#define LINE_REACH 9.0

LwGrip
lw_grip_at (const LwScale  *scale,
            const LwBatch  *batch,
            const double   *leading,
            double          block_y,
            double          block_height,
            const LwLetter *letter,
            double          x,
            double          y)
{
  LwGrip grip = { .block_y = block_y, .block_height = block_height };

  if (y < block_y || y > block_y + block_height)
    return grip;

  for (guint step = 0; step < scale->n && step < batch->n_steps; step++)
    {
      double left, right, end, line_y;

      lw_scale_block (scale, step, &left, &right);
      end = scale->rtl ? left : right;
      line_y = block_y + lw_block_line_y (batch->steps[step].kind, block_height, letter, leading[step]);
      grip.step = grip.from = step;
      grip.off_x = end - x;
      grip.off_y = line_y - y;

      if (fabs (grip.off_x) <= EDGE_REACH)
        {
          grip.part = LW_GRIP_EDGE;
          /* What the pointer moves is the column's end, which a narrow block stands beside. */
          lw_scale_column (scale, step, &left, &right);
          grip.off_x = (scale->rtl ? left : right) - x;
          return grip;
        }
      if (x < left || x > right)
        continue;

      grip.part = fabs (grip.off_y) <= LINE_REACH ? LW_GRIP_LINE : LW_GRIP_BODY;
      if (grip.part == LW_GRIP_BODY)
        grip.off_x = 0.5 * (left + right) - x;
      return grip;
    }

  grip.part = LW_GRIP_NONE;
  return grip;
}

static LwSeason *
drag_edge (LwGrip         *grip,
           const LwSeason *base,
           guint           batch,
           LwScale        *scale,
           double          x,
           gboolean        fine)
{
  const LwStep *step = &base->batches[batch]->steps[grip->step];
  double minutes = lw_scale_minutes_for (scale, grip->step, x + grip->off_x);

  minutes = lw_kind_snap (step->kind, LW_SET_MINUTES, minutes, fine);
  lw_scale_set_minutes (scale, grip->step, minutes);

  return lw_edit_set (base, batch, grip->step, LW_SET_MINUTES, minutes);
}

static LwSeason *
drag_line (LwGrip         *grip,
           const LwSeason *base,
           guint           batch,
           const LwLetter *letter,
           double          y,
           gboolean        fine)
{
  const LwStep *step = &base->batches[batch]->steps[grip->step];
  LwSetting leading = lw_kind_row (step->kind)->leading;
  double value = lw_block_value (step->kind, grip->block_height, letter, y + grip->off_y - grip->block_y);

  return lw_edit_set (base, batch, grip->step, leading, lw_kind_snap (step->kind, leading, value, fine));
}

static LwSeason *
drag_body (LwGrip         *grip,
           const LwSeason *base,
           guint           batch,
           LwScale        *scale,
           double          x)
{
  guint slot = lw_scale_slot (scale, grip->step, x + grip->off_x);
  double minutes[LW_SCALE_MAX_STEPS];
  LwSeason *next;

  if (slot == grip->step)
    return NULL;

  grip->step = slot;
  next = lw_edit_move_step (base, batch, grip->from, slot);
  for (guint i = 0; i < scale->n; i++)
    minutes[i] = lw_step_get (&next->batches[batch]->steps[i], LW_SET_MINUTES);
  lw_scale_refill (scale, minutes);

  return next;
}

LwSeason *
lw_grip_drag (LwGrip         *grip,
              const LwSeason *base,
              guint           batch,
              LwScale        *scale,
              const LwLetter *letter,
              double          x,
              double          y,
              gboolean        fine)
{
  switch (grip->part)
    {
    case LW_GRIP_EDGE:
      return drag_edge (grip, base, batch, scale, x, fine);
    case LW_GRIP_LINE:
      return drag_line (grip, base, batch, letter, y, fine);
    case LW_GRIP_BODY:
      return drag_body (grip, base, batch, scale, x);
    case LW_GRIP_NONE:
    default:
      return NULL;
    }
}

int
lw_grip_setting (const LwGrip  *grip,
                 const LwBatch *batch)
{
  if (grip->part == LW_GRIP_EDGE)
    return LW_SET_MINUTES;
  if (grip->part == LW_GRIP_LINE)
    return (int) lw_kind_row (batch->steps[grip->step].kind)->leading;

  return -1;
}

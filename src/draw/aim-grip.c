/* Aims under the pointer. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/aim-grip.h"

#include <math.h>

#include "draw/space.h"

#define NEAR 6.0     /* px */
#define EDGE 10.0    /* of a column, where a new aim begins */
#define COARSE 5     /* last digits to a notch */

/* Which part of the aim's bracket is at y; an open side reaches to the plot's edge and cannot be taken. */
static LwAimPart
part_at (const LwSpace *space,
         const LwAim   *aim,
         double         y)
{
  double high = isfinite (aim->high) ? lw_space_y (space, aim->high) : space->top;
  double low = isfinite (aim->low) ? lw_space_y (space, aim->low) : space->bottom;
  double to_high = isfinite (aim->high) ? fabs (y - high) : INFINITY;
  double to_low = isfinite (aim->low) ? fabs (y - low) : INFINITY;

  /* A short bracket is taken by the side that is nearer, from outside it. */
  if (MIN (to_high, to_low) <= NEAR)
    return to_high < to_low || (to_high == to_low && y < high) ? LW_AIM_HIGH : LW_AIM_LOW;

  return y > high && y < low ? LW_AIM_BOTH : LW_AIM_NONE;
}

static gboolean
take_bracket (const LwSpace *space,
              guint          step,
              double         x,
              double         y,
              LwAimGrip     *grip)
{
  const LwBatch *batch = space->look->batch;
  const LwAim *aims[4];
  guint n = lw_space_aims (space, step, aims, G_N_ELEMENTS (aims));

  for (guint i = 0; i < n; i++)
    if (fabs (x - lw_space_bracket_x (space, step, i)) <= NEAR)
      {
        gboolean finished = aims[i] >= batch->aims && aims[i] < batch->aims + batch->n_aims;

        grip->part = part_at (space, aims[i], y);
        grip->step = finished ? -1 : (int) step;
        grip->aim = *aims[i];
      }

  return n > 0;
}

LwAimGrip
lw_aim_grip_at (const LwPanelLook *look,
                const LwAxis      *axis,
                const LwLetter    *letter,
                double             height,
                double             x,
                double             y)
{
  LwSpace space = { .height = height, .look = look, .axis = axis, .letter = letter };
  LwAimGrip grip = { .part = LW_AIM_NONE };

  lw_panel_plot (height, letter, &space.top, &space.bottom);
  if (look->batch == NULL || y < space.top || y > space.bottom)
    return grip;

  grip.from = lw_axis_value (axis, space.top, space.bottom, y);
  for (guint step = 0; step < look->scale->n && grip.part == LW_AIM_NONE; step++)
    {
      double off = (lw_space_end_x (&space, step, 0, 0) - x) * (look->scale->rtl ? -1 : 1);

      if (!take_bracket (&space, step, x, y, &grip) && off >= 0 && off <= EDGE && step < look->batch->n_steps)
        {
          grip.part = LW_AIM_NEW;
          grip.step = step + 1 < look->batch->n_steps ? (int) step : -1;
          grip.aim = (LwAim) { look->quantity, -INFINITY, INFINITY, 1, NULL };
        }
    }

  return grip;
}

LwAim
lw_aim_grip_drag (const LwAimGrip *grip,
                  const LwAxis    *axis,
                  const LwLetter  *letter,
                  double           height,
                  double           y,
                  gboolean         fine)
{
  const LwQuantityRow *row = lw_quantity_row (grip->aim.of);
  double unit = pow (10, -row->digits), notch = fine ? unit : COARSE * unit, top, bottom, value;
  LwAim aim = grip->aim;

  lw_panel_plot (height, letter, &top, &bottom);
  value = CLAMP (lw_axis_value (axis, top, bottom, y), row->low, row->high);

  switch (grip->part)
    {
    case LW_AIM_LOW:
      aim.low = MIN (round (value / notch) * notch, isfinite (aim.high) ? aim.high - unit : row->high);
      break;

    case LW_AIM_HIGH:
      aim.high = MAX (round (value / notch) * notch, isfinite (aim.low) ? aim.low + unit : row->low);
      break;

    case LW_AIM_BOTH:
      {
        double by = round ((value - grip->from) / notch) * notch;

        /* An open side is infinite, and stays so. */
        by = MAX (by, row->low - (isfinite (aim.low) ? aim.low : aim.high));
        by = MIN (by, row->high - (isfinite (aim.high) ? aim.high : aim.low));
        aim.low += by;
        aim.high += by;
      }
      break;

    case LW_AIM_NEW:
      aim.low = MAX (floor (MIN (value, grip->from) / notch) * notch, row->low);
      aim.high = MIN (MAX (ceil (MAX (value, grip->from) / notch) * notch, aim.low + notch), row->high);
      break;

    case LW_AIM_NONE:
      break;
    }

  return aim;
}

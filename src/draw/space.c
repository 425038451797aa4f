/* Places in a panel: finding free ones and clearing them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/space.h"

#include <math.h>

#include "draw/dash.h"

#define CLEAR 3.0      /* between a word and the line it belongs to */
#define SEARCH 1.0     /* how finely places are tried, px */
#define EDGE 9.0        /* what a point at a column's edge takes of it */
#define OVER_PLOT 5.0  /* words may reach a little beyond the plot */

void
lw_space_dash (LwSpace *space,
               guint    dash)
{
  lw_dash_use (space->cr, dash);
}

double
lw_space_y (const LwSpace *space,
            double         value)
{
  return lw_axis_y (space->axis, space->top, space->bottom, value);
}

double
lw_space_end_x (const LwSpace *space,
                guint          step,
                double         in,
                double         width)
{
  double left, right;

  lw_scale_column (space->look->scale, step, &left, &right);

  return space->look->scale->rtl ? left + in : right - in - width;
}

void
lw_space_take (LwSpace *space,
               LwBox    box)
{
  if (space->n_taken < G_N_ELEMENTS (space->taken))
    space->taken[space->n_taken++] = box;
}

static gboolean
is_free (const LwSpace *space,
         const LwBox   *box)
{
  if (box->y < space->top - OVER_PLOT || box->y + box->height > space->bottom + OVER_PLOT)
    return FALSE;

  for (guint i = 0; i < space->n_taken; i++)
    {
      const LwBox *other = &space->taken[i];

      if (box->x < other->x + other->width && other->x < box->x + box->width
          && box->y < other->y + other->height && other->y < box->y + box->height)
        return FALSE;
    }

  return TRUE;
}

gboolean
lw_space_find (const LwSpace *space,
               LwBox         *box,
               double         high_y,
               double         low_y,
               double         far)
{
  for (double away = 0; away <= far; away += SEARCH)
    {
      box->y = high_y - CLEAR - box->height - away;
      if (is_free (space, box))
        return TRUE;

      box->y = low_y + CLEAR + away;
      if (is_free (space, box))
        return TRUE;
    }

  return FALSE;
}

const double *
lw_space_row (const LwCurves *curves,
              guint           step,
              int             row)
{
  if (row == LW_ROW_LOWEST)
    return lw_curves_lowest (curves, step);
  if (row == LW_ROW_HIGHEST)
    return lw_curves_highest (curves, step);

  return lw_curves_values (curves, step, row);
}

void
lw_space_over (const LwSpace *space,
               guint          step,
               int            row,
               const LwBox   *box,
               double        *high_y,
               double        *low_y)
{
  guint n;
  const double *minutes = lw_curves_minutes (space->look->curves, step, &n);
  const double *values = lw_space_row (space->look->curves, step, row);

  *high_y = *low_y = lw_space_y (space, values[n - 1]);
  for (guint i = n - 1; i-- > 0;)
    {
      double x = lw_scale_x (space->look->scale, step, minutes[i]);
      double y = lw_space_y (space, values[i]);

      *high_y = MIN (*high_y, y);
      *low_y = MAX (*low_y, y);
      if (space->look->scale->rtl ? x > box->x + box->width : x < box->x)
        break;
    }
}

/* How much of the band's tint is behind a box: all, none, or half where its edge goes through. */
static double
tint_behind (const LwSpace *space,
             guint          step,
             const LwBox   *box)
{
  const LwCurves *curves = space->look->curves;
  double top_high, top_low, bottom_high, bottom_low;

  if (space->look->spread != NULL || curves == NULL || step >= lw_curves_n_steps (curves) || lw_curves_n_parts (curves) < 2)
    return 0;

  lw_space_over (space, step, LW_ROW_HIGHEST, box, &top_high, &top_low);
  lw_space_over (space, step, LW_ROW_LOWEST, box, &bottom_high, &bottom_low);
  if (box->y + box->height <= top_high || box->y >= bottom_low)
    return 0;

  return box->y >= top_low && box->y + box->height <= bottom_high ? 1 : 0.5;
}

void
lw_space_plate (LwSpace     *space,
                guint        step,
                const LwBox *box)
{
  double tint = tint_behind (space, step, box);
  LwInk ground = lw_ink_mix (space->palette->card, space->ink, tint * LW_BAND_TINT);
  gboolean lines = space->look->parts || space->look->ghost != NULL || space->look->n_overlays > 0;

  lines |= space->look->spread != NULL;

  /* A plate over the band's edge is seen; it is worth that only where lines would cross words. */
  if (tint == 0.5 && !lines)
    return;

  cairo_rectangle (space->cr, box->x - 2, box->y, box->width + 4, box->height);
  lw_ink_use (space->cr, lw_ink_thin (ground, tint == 0.5 ? 0.6 : 0.8));
  cairo_fill (space->cr);
}

static gboolean
measured_near (const LwSpace *space,
               guint          step,
               double         x)
{
  const LwPanelLook *look = space->look;
  double value;

  if (look->batch == NULL || step >= MIN (look->batch->n_steps, look->scale->n))
    return FALSE;

  for (guint i = 0; i < look->batch->steps[step].n_weigh_ins; i++)
    {
      const LwWeighIn *weigh_in = &look->batch->steps[step].weigh_ins[i];

      if (fabs (lw_scale_x (look->scale, step, weigh_in->minute) - x) < EDGE
          && lw_panel_measured (look, weigh_in, 0, &value))
        return TRUE;
    }

  return FALSE;
}

double
lw_space_edge_in (const LwSpace *space,
                  guint          step)
{
  double x = lw_space_end_x (space, step, 0, 0);

  return measured_near (space, step, x) || measured_near (space, step + 1, x) ? EDGE : 0;
}

gboolean
lw_space_tick_told (const LwSpace *space,
                    guint          tick)
{
  static const int steps[] = { 1, 2, 5, 10 };
  const LwAxis *axis = space->axis;
  double apart = axis->gap / (axis->high - axis->low) * (space->bottom - space->top);
  long count = lround (axis->low / axis->gap) + (long) tick, ticks = lround ((axis->high - axis->low) / axis->gap);

  for (guint i = 0; i < G_N_ELEMENTS (steps) && steps[i] <= ticks; i++)
    if (steps[i] * apart >= lw_letter_line (space->letter) * 1.2)
      return count % steps[i] == 0;

  /* An axis without a number tells nothing. */
  return (long) tick == ticks;
}

double
lw_space_end_value (const LwSpace *space,
                    guint          step)
{
  const LwCurves *curves = space->look->curves;
  guint n;

  if (curves == NULL || step >= lw_curves_n_steps (curves))
    return NAN;
  lw_curves_minutes (curves, step, &n);

  return lw_curves_values (curves, step, -1)[n - 1];
}

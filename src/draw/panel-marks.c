/* Marks of the maker's in a panel: aims as brackets at a column's end edge, and
 * what was weighed and measured as points with their error. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/space.h"
#include "draw/verdict.h"
#include "season/measured.h"

#define BRACKET_IN 4.0     /* from the column's edge */
#define BRACKET_HOOK 5.0
#define BRACKET_LEAST 5.0  /* px high, to be seen */
#define BRACKET_STEP 9.0   /* between two at one edge */
#define POINT 3.6

guint
lw_space_aims (const LwSpace *space,
               guint          step,
               const LwAim  **aims,
               guint          most)
{
  const LwBatch *batch = space->look->batch;
  guint n = 0;

  if (batch == NULL || step >= batch->n_steps)
    return 0;

  for (guint i = 0; i < batch->steps[step].n_aims && n < most; i++)
    if (batch->steps[step].aims[i].of == space->look->quantity)
      aims[n++] = &batch->steps[step].aims[i];

  if (step + 1 < batch->n_steps)
    return n;

  for (guint i = 0; i < batch->n_aims && n < most; i++)
    if (batch->aims[i].of == space->look->quantity)
      aims[n++] = &batch->aims[i];

  return n;
}

double
lw_space_bracket_x (const LwSpace *space,
                    guint          step,
                    guint          place)
{
  double in = BRACKET_IN + lw_space_edge_in (space, step) + place * BRACKET_STEP;

  return floor (lw_space_end_x (space, step, in, 0)) + 0.5;
}

/* Hooks point into the column; an open side has none. */
static void
draw_bracket (LwSpace     *space,
              const LwAim *aim,
              guint        step,
              guint        place,
              double       value)
{
  cairo_t *cr = space->cr;
  double inward = space->look->scale->rtl ? 1 : -1;
  double x = lw_space_bracket_x (space, step, place);
  double high = isfinite (aim->high) ? lw_space_y (space, aim->high) : space->top;
  double low = isfinite (aim->low) ? lw_space_y (space, aim->low) : space->bottom;
  double spare = MAX (BRACKET_LEAST - (low - high), 0) / 2;
  int verdict = lw_verdict (aim->low, aim->high, value);

  high = CLAMP (round (high - spare), space->top, space->bottom - BRACKET_LEAST) - 0.5;
  low = CLAMP (round (low + spare), space->top + BRACKET_LEAST, space->bottom) + 0.5;

  lw_ink_use (cr, verdict == 0 ? space->palette->ink : space->palette->warning);
  cairo_move_to (cr, x + (isfinite (aim->high) ? inward * BRACKET_HOOK : 0), high);
  cairo_line_to (cr, x, high);
  cairo_line_to (cr, x, low);
  cairo_line_to (cr, x + (isfinite (aim->low) ? inward * BRACKET_HOOK : 0), low);
  cairo_set_line_width (cr, 1.6);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_stroke (cr);

  if (!isnan (value))
    lw_verdict_mark (cr, x, CLAMP (lw_space_y (space, value), high, low), verdict);
  lw_space_take (space, (LwBox) { MIN (x, x + inward * 6) - 1, high - 2, 8, low - high + 4 });
}

void
lw_space_aim_marks (LwSpace *space)
{
  const LwAim *aims[4];

  for (guint step = 0; step < space->look->scale->n; step++)
    {
      guint n = lw_space_aims (space, step, aims, G_N_ELEMENTS (aims));

      for (guint i = 0; i < n; i++)
        draw_bracket (space, aims[i], step, i, lw_space_end_value (space, step));
    }
}

gboolean
lw_panel_measured (const LwPanelLook *look,
                   const LwWeighIn   *weigh_in,
                   double             off,
                   double            *value)
{
  if (weigh_in->of == LW_WALL_C && look->quantity == LW_LEAF_TEMP && look->scale->view.logs)
    {
      *value = weigh_in->value + off * weigh_in->sd;
      return TRUE;
    }

  return lw_measured (weigh_in, look->quantity, look->batch->fresh_kg, look->fresh_moisture_pct, off, value);
}

/* A ring, for a wall a square. */
static void
draw_point (LwSpace  *space,
            LwMeasure of,
            double    x,
            double    y,
            double    high,
            double    low)
{
  cairo_t *cr = space->cr;
  double radius = POINT * lw_letter_scale (space->letter);

  cairo_move_to (cr, x, high);
  cairo_line_to (cr, x, low);
  for (guint end = 0; end < 2 && low - high > 2 * radius + 3; end++)
    {
      cairo_move_to (cr, x - 3, end ? low : high);
      cairo_line_to (cr, x + 3, end ? low : high);
    }
  cairo_set_line_width (cr, 1.2);
  lw_ink_use (cr, space->palette->ink);
  cairo_stroke (cr);

  if (of == LW_WALL_C)
    cairo_rectangle (cr, x - radius, y - radius, 2 * radius, 2 * radius);
  else
    cairo_arc (cr, x, y, radius, 0, 2 * G_PI);
  lw_ink_use (cr, space->palette->card);
  cairo_fill_preserve (cr);
  cairo_set_line_width (cr, 1.6);
  lw_ink_use (cr, space->palette->ink);
  cairo_stroke (cr);

  high = MIN (high, y - radius) - 1;
  low = MAX (low, y + radius) + 1;
  lw_space_take (space, (LwBox) { x - radius - 2, high, 2 * radius + 4, low - high });
}

void
lw_space_weigh_ins (LwSpace *space)
{
  const LwPanelLook *look = space->look;
  guint n = look->batch != NULL ? MIN (look->batch->n_steps, look->scale->n) : 0;

  cairo_save (space->cr);
  cairo_rectangle (space->cr, 0, space->top - 6, space->width, space->height - space->top + 6);
  cairo_clip (space->cr);
  for (guint step = 0; step < n; step++)
    for (guint i = 0; i < look->batch->steps[step].n_weigh_ins; i++)
      {
        const LwWeighIn *weigh_in = &look->batch->steps[step].weigh_ins[i];
        double minute = CLAMP (weigh_in->minute, 0, look->scale->minutes[step]);
        double in = POINT * lw_letter_scale (space->letter) + 2;
        double x = CLAMP (lw_scale_x (look->scale, step, minute), in, space->width - in);
        double value, high, low;

        /* Taken when the step was longer: kept, but it has no place here. */
        if (weigh_in->minute > look->scale->minutes[step] + 1e-9)
          continue;
        if (lw_panel_measured (look, weigh_in, 0, &value)
            && lw_panel_measured (look, weigh_in, 1, &high)
            && lw_panel_measured (look, weigh_in, -1, &low))
          draw_point (space, weigh_in->of, floor (x) + 0.5, lw_space_y (space, value), lw_space_y (space, high),
                      lw_space_y (space, low));
      }
  cairo_restore (space->cr);
}

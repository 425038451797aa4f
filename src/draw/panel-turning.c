/* Turning points in a panel: a tick across the mean's line, and a word where there is a place for one.
 * They give way to everything else that is written. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/space.h"
#include "study/turning.h"

#define SMALL 0.8
#define TICK 4.5      /* to each side of the line */
#define AWAY 5.0      /* between tick and word */
#define FAR 34.0      /* a word further off would not be seen to belong to its tick */
#define IN 6.0        /* from the panel's edge */

GArray *
lw_panel_turns (const LwTrack *track,
                LwQuantity     quantity)
{
  g_autoptr (GArray) all = lw_turns_of (track);
  GArray *own = g_array_new (FALSE, FALSE, sizeof (LwPanelTurn));

  for (guint i = 0; i < all->len; i++)
    {
      const LwTurnAt *at = &g_array_index (all, LwTurnAt, i);
      LwPanelTurn turn = { at->step, at->minute, lw_turn_word (at->kind) };

      if (lw_turn_concerns (at->kind, quantity))
        g_array_append_val (own, turn);
    }

  return own;
}

/* The mean at a minute of a step; NAN where it is not known. */
static double
mean_at (const LwSpace *space,
         guint          step,
         double         minute)
{
  const LwCurves *curves = space->look->curves;
  const double *minutes, *values;
  guint n, i = 1;

  if (curves == NULL || step >= MIN (lw_curves_n_steps (curves), space->look->scale->n))
    return NAN;

  minutes = lw_curves_minutes (curves, step, &n);
  values = lw_curves_values (curves, step, LW_ROW_MEAN);
  while (i + 1 < n && minutes[i] < minute)
    i++;

  return values[i - 1] + (values[i] - values[i - 1])
                           * CLAMP ((minute - minutes[i - 1]) / (minutes[i] - minutes[i - 1]), 0, 1);
}

/* Highest and lowest y of the mean within the box's width, over all columns it lies in. */
static void
line_behind (const LwSpace *space,
             const LwBox   *box,
             double        *high_y,
             double        *low_y)
{
  const LwScale *scale = space->look->scale;

  for (double x = box->x - 1; x <= box->x + box->width + 1; x += 2)
    {
      guint step;
      double minute, y;

      if (!lw_scale_at (scale, x, &step, &minute))
        continue;

      y = mean_at (space, step, minute);
      if (isnan (y))
        continue;

      y = lw_space_y (space, y);
      *high_y = MIN (*high_y, y);
      *low_y = MAX (*low_y, y);
    }
}

static void
draw_tick (LwSpace *space,
           double   x,
           double   y)
{
  double reach = TICK * lw_letter_scale (space->letter);

  cairo_move_to (space->cr, x, y - reach);
  cairo_line_to (space->cr, x, y + reach);
  cairo_set_line_width (space->cr, 1.6);
  lw_ink_use (space->cr, space->palette->ink);
  cairo_stroke (space->cr);
}

/* Beside the tick, above or below the line: after it in the direction of reading, before it, or across. */
static gboolean
find_place (const LwSpace *space,
            double         x,
            double         y,
            LwBox         *box)
{
  const double begins[] = { x + AWAY, x - AWAY - box->width, x - box->width / 2 };

  for (guint i = 0; i < G_N_ELEMENTS (begins); i++)
    {
      double high_y = y, low_y = y;

      box->x = begins[space->letter->rtl && i < 2 ? 1 - i : i];
      if (box->x < IN || box->x + box->width > space->width - IN)
        continue;

      line_behind (space, box, &high_y, &low_y);
      /* Where the line is steep its other end may be far from the tick. */
      if (i == 2 || high_y < y - FAR || low_y > y + FAR)
        {
          high_y = MIN (high_y, y - TICK);
          low_y = MAX (low_y, y + TICK);
        }
      if (lw_space_find (space, box, high_y, low_y, FAR) && fabs (box->y + box->height / 2 - y) < FAR + box->height)
        return TRUE;
    }

  return FALSE;
}

static void
draw_turn (LwSpace           *space,
           const LwPanelTurn *turn,
           double             value)
{
  double x = floor (lw_scale_x (space->look->scale, turn->step, turn->minute)) + 0.5;
  double y = lw_space_y (space, value), width;
  LwBox box = { .height = ceil (lw_letter_line (space->letter) * SMALL * 0.94) };

  lw_letter_size (space->cr, space->letter, SMALL, FALSE, turn->word, &width, NULL);
  box.width = ceil (width);
  if (!find_place (space, x, y, &box))
    return;

  lw_space_plate (space, turn->step, &box);
  lw_space_take (space, (LwBox) { box.x - 3, box.y, box.width + 6, box.height });
  lw_ink_use (space->cr, space->palette->ink);
  lw_letter_draw (space->cr, space->letter, space->letter->rtl ? box.x + box.width : box.x, box.y, LW_TEXT_START,
                  SMALL, FALSE, 0, turn->word);
}

void
lw_space_turns (LwSpace *space)
{
  const LwPanelLook *look = space->look;

  /* All ticks first, so that no word takes the place of one. */
  for (guint i = 0; i < look->n_turns; i++)
    {
      double value = mean_at (space, look->turns[i].step, look->turns[i].minute);
      double x, y;

      if (isnan (value))
        continue;

      x = floor (lw_scale_x (look->scale, look->turns[i].step, look->turns[i].minute)) + 0.5;
      y = lw_space_y (space, value);
      draw_tick (space, x, y);
      lw_space_take (space, (LwBox) { x - 2, y - TICK, 4, 2 * TICK });
    }

  for (guint i = 0; i < look->n_turns; i++)
    {
      double value = mean_at (space, look->turns[i].step, look->turns[i].minute);

      if (!isnan (value))
        draw_turn (space, &look->turns[i], value);
    }
}

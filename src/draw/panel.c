/* A panel as a whole: its axis, its card and grid, and the order of drawing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/panel.h"

#include <math.h>

#include "draw/frame.h"
#include "draw/space.h"

#define MOST_GAPS 5
#define HEAD_LINES 1.6
#define HEAD 7.0
#define FOOT 10.0

typedef struct
{
  double low, high;
} Range;

static void
widen (Range *range,
       double value)
{
  if (!isfinite (value))
    return;

  range->low = MIN (range->low, value);
  range->high = MAX (range->high, value);
}

static void
widen_by_curves (Range          *range,
                 const LwCurves *curves)
{
  double low, high;

  if (curves == NULL || lw_curves_n_steps (curves) == 0)
    return;

  lw_curves_range (curves, &low, &high);
  widen (range, low);
  widen (range, high);
}

static void
widen_by_aims (Range       *range,
               LwQuantity   quantity,
               const LwAim *aims,
               guint        n)
{
  for (guint i = 0; i < n; i++)
    if (aims[i].of == quantity)
      {
        widen (range, aims[i].low);
        widen (range, aims[i].high);
      }
}

static void
widen_by_batch (Range             *range,
                const LwPanelLook *look)
{
  const LwBatch *batch = look->batch;
  double value;

  if (batch == NULL)
    return;

  widen_by_aims (range, look->quantity, batch->aims, batch->n_aims);
  for (guint i = 0; i < batch->n_steps; i++)
    {
      const LwStep *step = &batch->steps[i];

      widen_by_aims (range, look->quantity, step->aims, step->n_aims);
      for (guint k = 0; k < step->n_weigh_ins; k++)
        for (int off = -1; off <= 1; off += 2)
          if (lw_panel_measured (look, &step->weigh_ins[k], off, &value))
            widen (range, value);
    }
}

LwAxis
lw_panel_axis (const LwPanelLook *look)
{
  const LwQuantityRow *row = lw_quantity_row (look->quantity);
  gboolean percent = g_str_has_prefix (row->unit, "%");
  Range range = { INFINITY, -INFINITY };
  double least = 50 * pow (10, -row->digits), low, high;

  widen_by_curves (&range, look->curves);
  widen_by_curves (&range, look->ghost);
  for (guint i = 0; i < look->n_overlays; i++)
    widen_by_curves (&range, look->overlays[i].curves);
  widen_by_batch (&range, look);
  if (lw_panel_spans (look, &low, &high))
    {
      widen (&range, low);
      widen (&range, high);
    }
  if (lw_panel_logs_range (look, &low, &high))
    {
      widen (&range, low);
      widen (&range, high);
    }

  if (row->low >= 0)
    {
      widen (&range, 0);
      range.low = MAX (range.low, 0);
    }
  if (percent)
    range.high = MIN (range.high, 100);
  if (!(range.low <= range.high))
    range = (Range) { 0, 0 };

  return lw_axis_round (range.low, MAX (range.high, range.low + least), MOST_GAPS);
}

void
lw_panel_plot (double          height,
               const LwLetter *letter,
               double         *top,
               double         *bottom)
{
  *top = round (HEAD + HEAD_LINES * lw_letter_line (letter));
  *bottom = MAX (round (height - FOOT), *top + 1);
}

static void
draw_grid (const LwSpace *space)
{
  const LwAxis *axis = space->axis;
  guint gaps = (guint) lround ((axis->high - axis->low) / axis->gap);

  for (guint i = 0; i <= gaps; i++)
    {
      double y = floor (lw_space_y (space, axis->low + i * axis->gap)) + 0.5;

      if (!lw_space_tick_told (space, i))
        continue;

      cairo_move_to (space->cr, 0, y);
      cairo_line_to (space->cr, space->width, y);
    }
  cairo_set_line_width (space->cr, 1);
  lw_ink_use (space->cr, lw_ink_thin (space->palette->rule, 0.7));
  cairo_stroke (space->cr);

  for (guint step = 1; step < space->look->scale->n; step++)
    {
      double x = floor (lw_scale_x (space->look->scale, step, 0)) + 0.5;

      cairo_move_to (space->cr, x, space->top - 4);
      cairo_line_to (space->cr, x, space->height);
    }
  lw_ink_use (space->cr, lw_ink_thin (space->palette->faint, 0.3));
  cairo_stroke (space->cr);
}

/* Only this reaches into the round corners; to clip the rest by them would cost more than to draw it. */
static void
draw_ground (LwSpace *space)
{
  cairo_save (space->cr);
  lw_frame_path (space->cr, space->width, space->height, 1);
  cairo_clip (space->cr);
  lw_space_spells (space);
  draw_grid (space);
  cairo_restore (space->cr);
}

void
lw_panel_draw (cairo_t           *cr,
               double             width,
               double             height,
               const LwPanelLook *look,
               const LwAxis      *axis,
               const LwLetter    *letter,
               const LwPalette   *palette)
{
  LwLetter own = *letter;
  LwSpace space = {
    .cr = cr, .width = width, .height = height, .look = look, .axis = axis,
    .letter = &own, .palette = palette, .ink = palette->curve[look->quantity],
  };

  own.rtl = look->scale->rtl;
  lw_panel_plot (height, letter, &space.top, &space.bottom);

  lw_frame_fill (cr, width, height, palette->card);
  draw_ground (&space);
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  lw_space_bands (&space);
  lw_space_lines (&space);
  lw_space_axis_words (&space);
  lw_space_aim_marks (&space);
  lw_space_weigh_ins (&space);
  lw_space_end_words (&space);
  lw_space_band_names (&space);
  lw_space_log_names (&space);
  lw_space_turns (&space);
  lw_space_head (&space);
  cairo_restore (cr);

  lw_frame_edge (cr, width, height, 1, palette->rule);
}

/* The panel's lines: the band between parts, the batch before the change, the parts
 * and the mean. One path and one stroke each. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/space.h"
#include "draw/trace.h"

#define MEAN_LINE 2.0
#define THIN_LINE 1.2

/* Curves and how they lie in the present columns. */
typedef struct
{
  const LwCurves *curves;
  const double *minutes; /* (nullable) its own steps' times; NULL: those of the columns */
  guint n;
} Laid;

/* The samples of one step, backwards for the way back round a band. */
static void
trace_step (const LwSpace *space,
            const Laid    *laid,
            guint          step,
            int            row,
            gboolean       back,
            LwTrace       *trace)
{
  const LwScale *scale = space->look->scale;
  guint n;
  const double *minutes = lw_curves_minutes (laid->curves, step, &n);
  const double *values = lw_space_row (laid->curves, step, row);
  double whole = laid->minutes != NULL ? laid->minutes[step] : scale->minutes[step];
  double begin = lw_scale_x (scale, step, 0);
  double end = lw_scale_x (scale, step, scale->minutes[step]);
  double slope = whole > 0 ? (end - begin) / whole : 0;

  for (guint i = 0; i < n; i++)
    {
      guint at = back ? n - 1 - i : i;

      lw_trace_point (trace, begin + slope * MIN (minutes[at], whole),
                      lw_space_y (space, values[at]));
    }
}

/* A fifth of a pixel is not seen at rest. */
double
lw_space_off (const LwSpace *space)
{
  return space->look->quick ? 0.35 : 0.15;
}

static void
trace_row (const LwSpace *space,
           const Laid    *laid,
           int            row)
{
  LwTrace trace;

  lw_trace_begin (&trace, space->cr, lw_space_off (space));
  for (guint step = 0; step < laid->n; step++)
    trace_step (space, laid, step, row, FALSE, &trace);
  lw_trace_end (&trace);
}

static void
fill_band (const LwSpace *space,
           const Laid    *laid)
{
  LwTrace trace;

  lw_trace_begin (&trace, space->cr, lw_space_off (space));
  for (guint step = 0; step < laid->n; step++)
    trace_step (space, laid, step, LW_ROW_HIGHEST, FALSE, &trace);
  lw_trace_end (&trace);

  lw_trace_begin (&trace, space->cr, lw_space_off (space));
  for (guint step = laid->n; step > 0; step--)
    trace_step (space, laid, step - 1, LW_ROW_LOWEST, TRUE, &trace);
  lw_trace_end (&trace);

  cairo_close_path (space->cr);
  lw_ink_use (space->cr, lw_ink_thin (space->ink, LW_BAND_TINT));
  cairo_fill (space->cr);
}

static void
stroke_row (LwSpace    *space,
            const Laid *laid,
            int         row,
            double      line,
            guint       dash,
            LwInk       ink)
{
  if (laid->n == 0)
    return;

  trace_row (space, laid, row);
  cairo_set_line_width (space->cr, line * lw_letter_scale (space->letter));
  lw_space_dash (space, dash);
  lw_ink_use (space->cr, ink);
  cairo_stroke (space->cr);
}

static void
draw_ghost (LwSpace *space)
{
  const LwPanelLook *look = space->look;
  Laid ghost = { .curves = look->ghost, .minutes = look->ghost_minutes };

  if (look->ghost == NULL)
    return;

  ghost.n = MIN (MIN (look->ghost_n, lw_curves_n_steps (look->ghost)), look->scale->n);
  stroke_row (space, &ghost, LW_ROW_MEAN, THIN_LINE, 0, space->palette->ghost);
}

void
lw_space_lines (LwSpace *space)
{
  const LwPanelLook *look = space->look;
  Laid own = { .curves = look->curves };

  if (look->curves != NULL)
    own.n = MIN (lw_curves_n_steps (look->curves), look->scale->n);

  cairo_save (space->cr);
  cairo_rectangle (space->cr, 0, space->top - 4, space->width, space->height - space->top + 4);
  cairo_clip (space->cr);
  cairo_set_antialias (space->cr, look->quick ? CAIRO_ANTIALIAS_FAST : CAIRO_ANTIALIAS_GOOD);
  cairo_set_line_join (space->cr, look->quick ? CAIRO_LINE_JOIN_BEVEL : CAIRO_LINE_JOIN_ROUND);

  if (own.n > 0 && lw_curves_n_parts (look->curves) > 1 && look->spread == NULL)
    fill_band (space, &own);
  draw_ghost (space);
  lw_space_overlays (space);
  if (look->parts && own.n > 0)
    for (guint part = 0; part < lw_curves_n_parts (look->curves); part++)
      stroke_row (space, &own, (int) part, THIN_LINE, part + 1, space->ink);
  lw_space_logs (space);
  stroke_row (space, &own, LW_ROW_MEAN, MEAN_LINE, 0, space->ink);

  cairo_restore (space->cr);
}

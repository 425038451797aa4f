/* The curves of a log, each in the ink and dash that it has in the panel, with its column's heading or what it is of. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/log-picture.h"

#include <math.h>

#include "draw/dash.h"
#include "draw/frame.h"
#include "draw/labels.h"
#include "draw/log-look.h"
#include "draw/ticks.h"
#include "draw/trace.h"

#define PAD 8.0
#define SMALL 0.85
#define MOST_GAPS 3
#define LOG_LINE 1.3
#define NAME_AT 0.15    /* of the time: at an end lines meet more often */
#define NAME_ROOM 0.25  /* of the width */
#define PLATE 0.85

static LwAxis
axis_of (const LwLog *log)
{
  double low = log->curves[0].low_c, high = log->curves[0].high_c;

  for (guint i = 1; i < log->n_curves; i++)
    {
      low = MIN (low, log->curves[i].low_c);
      high = MAX (high, log->curves[i].high_c);
    }

  return lw_axis_round (low, MAX (high, low + 1), MOST_GAPS);
}

static void
draw_curve (cairo_t          *cr,
            const LwLogCurve *curve,
            const LwAxis     *axis,
            double            width,
            double            height,
            double            duration_s,
            gboolean          rtl)
{
  guint n;
  const double *time_s = lw_course_times (curve->course, &n), *temp_c = lw_course_values (curve->course);
  LwTrace trace;

  lw_trace_begin (&trace, cr, 0.15);
  for (guint i = 0; i < n; i++)
    {
      double x = PAD + (width - 2 * PAD) * (duration_s > 0 ? time_s[i] / duration_s : 0);

      lw_trace_point (&trace, rtl ? width - x : x, lw_axis_y (axis, PAD, height - PAD, temp_c[i]));
    }
  lw_trace_end (&trace);
}

/* Near the lines, never on one another. */
static void
name_curves (cairo_t         *cr,
             double           width,
             double           height,
             const LwLog     *log,
             const LwAxis    *axis,
             const LwLetter  *letter,
             const LwPalette *palette)
{
  double line = SMALL * lw_letter_line (letter), room = NAME_ROOM * width;
  LwLabel labels[LW_MAX_CURVES];

  for (guint i = 0; i < log->n_curves; i++)
    {
      double temp_c = lw_course_at (log->curves[i].course, NAME_AT * lw_log_duration_s (log));

      labels[i] = (LwLabel) { .want = lw_axis_y (axis, PAD, height - PAD, temp_c) - 0.8 * line };
    }
  if (lw_labels_place (labels, log->n_curves, 1, height - 1, line) == 0)
    return;

  for (guint i = 0; i < log->n_curves; i++)
    {
      const LwLogCurve *curve = &log->curves[i];
      const char *words = curve->heading != NULL ? curve->heading : lw_log_of_label (curve->of);
      double x = NAME_AT * width + labels[i].lane * room, y = labels[i].y - line / 2, taken;

      lw_letter_size (cr, letter, SMALL, TRUE, words, &taken, NULL);
      taken = MIN (taken, room);
      x = letter->rtl ? width - x : x;
      cairo_rectangle (cr, letter->rtl ? x - taken - 2 : x - 2, y, taken + 4, line);
      lw_ink_use (cr, lw_ink_thin (palette->card, PLATE));
      cairo_fill (cr);
      lw_ink_use (cr, lw_log_ink (curve->of, palette));
      lw_letter_draw (cr, letter, x, y, LW_TEXT_START, SMALL, TRUE, room, words);
    }
}

void
lw_log_picture_draw (cairo_t         *cr,
                     double           width,
                     double           height,
                     const LwLog     *log,
                     const LwLetter  *letter,
                     const LwPalette *palette)
{
  LwAxis axis;
  guint ticks;
  gboolean close;

  lw_frame_fill (cr, width, height, palette->card);
  lw_frame_edge (cr, width, height, 1, palette->rule);
  if (log == NULL)
    return;

  axis = axis_of (log);
  ticks = (guint) lround ((axis.high - axis.low) / axis.gap);
  /* Numbers stand above their lines, the highest below its own: where lines are close, only the two ends have one. */
  close = (height - 2 * PAD) / ticks < 1.9 * SMALL * lw_letter_line (letter);
  for (guint i = 0; i <= ticks; i++)
    {
      double value = axis.low + i * axis.gap, y = lw_axis_y (&axis, PAD, height - PAD, value);
      g_autofree char *text = g_strdup_printf ("%g", value);

      cairo_move_to (cr, PAD, floor (y) + 0.5);
      cairo_line_to (cr, width - PAD, floor (y) + 0.5);
      cairo_set_line_width (cr, 1);
      lw_ink_use (cr, palette->rule);
      cairo_stroke (cr);
      if (close && i > 0 && i < ticks)
        continue;
      lw_ink_use (cr, palette->faint);
      lw_letter_draw (cr, letter, letter->rtl ? PAD : width - PAD, y - lw_letter_line (letter) * (i == ticks ? 0 : 0.9),
                      LW_TEXT_END, SMALL, FALSE, 0, text);
    }

  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  for (guint i = 0; i < log->n_curves; i++)
    {
      draw_curve (cr, &log->curves[i], &axis, width, height, lw_log_duration_s (log), letter->rtl);
      lw_dash_use (cr, lw_log_dash (log->curves[i].of));
      cairo_set_line_width (cr, LOG_LINE * lw_letter_scale (letter));
      lw_ink_use (cr, lw_log_ink (log->curves[i].of, palette));
      cairo_stroke (cr);
      lw_dash_use (cr, 0);
    }
  name_curves (cr, width, height, log, &axis, letter, palette);
}

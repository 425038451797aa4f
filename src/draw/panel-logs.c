/* Logs in the panel of leaf temperature: what the thermocouple in the leaf said beside what was reckoned; wall and air
 * where the view asks for them. Thinned when the log was read; a drag goes by the still fewer points that leaf is
 * reckoned with: to stroke every flicker is what would cost. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/log-look.h"
#include "draw/space.h"
#include "draw/trace.h"
#include "season/text.h"

#define LOG_LINE 1.3
#define SEEN 0.5   /* px */

typedef struct
{
  const LwLogCurve *curve;
  double from_minute;   /* of the batch, where the log begins */
} Shown;

/* Calls `each` for all curves that are shown. */
static void
each_log (const LwPanelLook *look,
          void             (*each) (const Shown *shown, gpointer data),
          gpointer           data)
{
  const LwBatch *batch = look->batch;

  for (guint i = 0; look->quantity == LW_LEAF_TEMP && batch != NULL && i < batch->n_logs; i++)
    for (guint k = 0; k < batch->logs[i].log->n_curves; k++)
      {
        Shown shown = { &batch->logs[i].log->curves[k], lw_batch_log_minute (batch, &batch->logs[i]) };

        if (shown.curve->of == LW_LOG_LEAF || look->scale->view.logs)
          each (&shown, data);
      }
}

static void
widen (const Shown *shown,
       gpointer     data)
{
  double *range = data;

  range[0] = MIN (range[0], shown->curve->low_c);
  range[1] = MAX (range[1], shown->curve->high_c);
}

gboolean
lw_panel_logs_range (const LwPanelLook *look,
                     double            *low,
                     double            *high)
{
  double range[2] = { INFINITY, -INFINITY };

  each_log (look, widen, range);
  *low = range[0];
  *high = range[1];

  return range[0] <= range[1];
}

/* All points, unless fewer look the same; while dragging the few of a step as long as the log. */
static const LwCourse *
course_for (const LwSpace    *space,
            const LwLogCurve *curve)
{
  double px = (space->bottom - space->top) / (space->axis->high - space->axis->low);
  const LwFollowed *few = lw_log_coarsest (curve);

  return space->look->quick || few->off_c * px < SEEN ? few->course : curve->course;
}

/* The points of the course in a step of the batch; FALSE where it has none there. */
static gboolean
trace_step (const LwSpace  *space,
            const LwCourse *course,
            guint           step,
            double          from_s,
            LwTrace        *trace)
{
  const LwScale *scale = space->look->scale;
  double begin = lw_scale_x (scale, step, 0), end = lw_scale_x (scale, step, scale->minutes[step]);
  double slope = scale->minutes[step] > 0 ? (end - begin) / (60 * scale->minutes[step]) : 0;
  guint n, at;
  const double *time_s = lw_course_times (course, &n), *temp_c = lw_course_values (course);
  double first_s = MAX (from_s, time_s[0]), last_s = MIN (from_s + 60 * scale->minutes[step], time_s[n - 1]);

  if (!(first_s <= last_s))
    return FALSE;

  lw_trace_point (trace, begin + slope * (first_s - from_s), lw_space_y (space, lw_course_at (course, first_s)));
  for (at = lw_course_until (course, first_s); at < n && time_s[at] < last_s; at++)
    lw_trace_point (trace, begin + slope * (time_s[at] - from_s), lw_space_y (space, temp_c[at]));
  lw_trace_point (trace, begin + slope * (last_s - from_s), lw_space_y (space, lw_course_at (course, last_s)));

  return TRUE;
}

static void
stroke (const Shown *shown,
        gpointer     data)
{
  LwSpace *space = data;
  const LwCourse *course = course_for (space, shown->curve);
  double minute = -shown->from_minute;
  LwTrace trace;

  cairo_new_path (space->cr);
  lw_trace_begin (&trace, space->cr, lw_space_off (space));
  for (guint step = 0; step < space->look->scale->n; step++)
    {
      trace_step (space, course, step, 60 * minute, &trace);
      minute += space->look->scale->minutes[step];
    }
  lw_trace_end (&trace);

  cairo_set_line_width (space->cr, LOG_LINE * lw_letter_scale (space->letter));
  lw_space_dash (space, lw_log_dash (shown->curve->of));
  lw_ink_use (space->cr, lw_log_ink (shown->curve->of, space->palette));
  cairo_stroke (space->cr);
  lw_space_dash (space, 0);
}

void
lw_space_logs (LwSpace *space)
{
  each_log (space->look, stroke, space);
}

/* At the end of the last step that it reaches into. */
static void
name (const Shown *shown,
      gpointer     data)
{
  LwSpace *space = data;
  const LwScale *scale = space->look->scale;
  double begin = -shown->from_minute, end_s = 0;
  guint n, last = scale->n;
  const double *time_s = lw_course_times (shown->curve->course, &n);
  /* Translators: the temperature log of leaf, wall or air */
  g_autofree char *words = g_strdup_printf (_ ("%s, log"), lw_log_of_label (shown->curve->of));

  for (guint step = 0; step < scale->n; step++, begin += scale->minutes[step - 1])
    if (60 * begin < time_s[n - 1] && 60 * (begin + scale->minutes[step]) > time_s[0])
      {
        last = step;
        end_s = 60 * (begin + scale->minutes[step]);
      }

  if (last < scale->n)
    lw_space_name_line (space, last, lw_space_y (space, lw_course_at (shown->curve->course, MIN (end_s, time_s[n - 1]))),
                        lw_log_dash (shown->curve->of), lw_log_ink (shown->curve->of, space->palette), words);
}

void
lw_space_log_names (LwSpace *space)
{
  each_log (space->look, name, space);
}

/* Batches laid over, in a panel: their means. Traced once into a picture that is kept
 * and moved with the columns, so that many of them cost a drag next to nothing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/space.h"

#define STRONG_LINE 1.7
#define THIN_LINE 1.1
#define OFF 0.15  /* how far off a traced point may lie, px */

struct _LwPanelKept
{
  cairo_surface_t *surface; /* (nullable) */
  guint stamp;
  double width;
  double height;
  double letters;
  double pixels;
  LwScale scale;
  LwAxis axis;
  const LwPalette *palette;
};

LwPanelKept *
lw_panel_kept_new (void)
{
  return g_new0 (LwPanelKept, 1);
}

void
lw_panel_kept_free (LwPanelKept *kept)
{
  if (kept == NULL)
    return;

  g_clear_pointer (&kept->surface, cairo_surface_destroy);
  g_free (kept);
}

static gboolean
by_clock (const LwSpace *space)
{
  return space->look->scale->view.by_clock;
}

static double
all_minutes (const LwScale *scale)
{
  double all = 0;

  for (guint i = 0; i < scale->n; i++)
    all += scale->minutes[i];

  return all;
}

/* The step in which `minute` of the batch is, and the minute in it. */
static guint
step_at (const LwScale *scale,
         double        *minute)
{
  guint step = 0;

  while (step + 1 < scale->n && *minute > scale->minutes[step])
    *minute -= scale->minutes[step++];

  return step;
}

double
lw_panel_clock_x (const LwScale *scale,
                  double         minute)
{
  guint step = step_at (scale, &minute);

  return lw_scale_x (scale, step, minute);
}

static LwSpot
spot_by_clock (const LwSpace *space,
               double         minute,
               double         value)
{
  return (LwSpot) { lw_panel_clock_x (space->look->scale, minute), lw_space_y (space, value) };
}

/* The column of one of its steps; -1: none. */
static int
column_of (const LwSpace        *space,
           const LwPanelOverlay *overlay,
           guint                 step)
{
  int column = overlay->columns != NULL ? overlay->columns[step] : (int) step;

  return column < (int) space->look->scale->n ? column : -1;
}

static guint
steps_of (const LwPanelOverlay *overlay)
{
  return MIN (overlay->n, lw_curves_n_steps (overlay->curves));
}

/* A step of it in a column, its own time stretched to the column's. */
static void
trace_column (const LwSpace        *space,
              const LwPanelOverlay *overlay,
              guint                 step,
              guint                 column,
              LwTrace              *trace)
{
  const LwScale *scale = space->look->scale;
  guint n;
  const double *minutes = lw_curves_minutes (overlay->curves, step, &n);
  const double *values = lw_space_row (overlay->curves, step, LW_ROW_MEAN);
  double whole = overlay->minutes[step], begin = lw_scale_x (scale, column, 0);
  double slope = whole > 0 ? (lw_scale_x (scale, column, scale->minutes[column]) - begin) / whole : 0;

  for (guint i = 0; i < n; i++)
    lw_trace_point (trace, begin + slope * MIN (minutes[i], whole), lw_space_y (space, values[i]));
}

/* What has no column is left out, and so is the line over it. */
static void
trace_by_step (const LwSpace        *space,
               cairo_t              *cr,
               const LwPanelOverlay *overlay)
{
  LwTrace trace;
  int last = -2;

  for (guint step = 0; step < steps_of (overlay); step++)
    {
      int column = column_of (space, overlay, step);

      if (column != last + 1 || column < 0)
        {
          if (last >= 0)
            lw_trace_end (&trace);
          last = -2;
        }
      if (column < 0)
        continue;

      if (last < 0)
        {
          cairo_new_sub_path (cr);
          lw_trace_begin (&trace, cr, OFF);
        }
      trace_column (space, overlay, step, (guint) column, &trace);
      last = column;
    }

  if (last >= 0)
    lw_trace_end (&trace);
}

/* By the time of day: what was before the batch's begin or after its end is not here. */
static void
trace_by_clock (const LwSpace        *space,
                cairo_t              *cr,
                const LwPanelOverlay *overlay)
{
  double begins = overlay->begins, all = all_minutes (space->look->scale);
  LwTrace trace;

  cairo_new_sub_path (cr);
  lw_trace_begin (&trace, cr, OFF);
  for (guint step = 0; step < steps_of (overlay); step++)
    {
      guint n;
      const double *minutes = lw_curves_minutes (overlay->curves, step, &n);
      const double *values = lw_space_row (overlay->curves, step, LW_ROW_MEAN);

      for (guint i = 0; i < n; i++)
        if (begins + minutes[i] >= 0 && begins + minutes[i] <= all)
          {
            LwSpot spot = spot_by_clock (space, begins + minutes[i], values[i]);

            lw_trace_point (&trace, spot.x, spot.y);
          }
      begins += overlay->minutes[step];
    }
  lw_trace_end (&trace);
}

static void
end_by_clock (const LwSpace        *space,
              const LwPanelOverlay *overlay,
              guint                *column,
              LwSpot               *end,
              gboolean             *last)
{
  double begins = overlay->begins, all = all_minutes (space->look->scale), minute = -1, value = 0;

  *last = FALSE;
  for (guint step = 0; step < steps_of (overlay); step++)
    {
      guint n;
      const double *minutes = lw_curves_minutes (overlay->curves, step, &n);
      const double *values = lw_space_row (overlay->curves, step, LW_ROW_MEAN);

      for (guint i = 0; i < n; i++)
        {
          if (begins + minutes[i] > all)
            *last = TRUE;
          else if (begins + minutes[i] >= 0)
            {
              minute = begins + minutes[i];
              value = values[i];
            }
        }
      begins += overlay->minutes[step];
    }
  *end = minute < 0 ? (LwSpot) { NAN, NAN } : spot_by_clock (space, minute, value);
  *column = step_at (space->look->scale, &minute);
}

gboolean
lw_space_overlay_end (const LwSpace        *space,
                      const LwPanelOverlay *overlay,
                      guint                *column,
                      LwSpot               *end,
                      gboolean             *last)
{
  const LwScale *scale = space->look->scale;

  if (by_clock (space) && scale->n > 0)
    {
      end_by_clock (space, overlay, column, end, last);
      return !isnan (end->x);
    }

  for (guint step = steps_of (overlay); step-- > 0;)
    if (column_of (space, overlay, step) >= 0)
      {
        guint n;

        *column = (guint) column_of (space, overlay, step);
        lw_curves_minutes (overlay->curves, step, &n);
        *end = (LwSpot) { lw_scale_x (scale, *column, scale->minutes[*column]),
                          lw_space_y (space, lw_space_row (overlay->curves, step, LW_ROW_MEAN)[n - 1]) };
        *last = *column + 1 == scale->n;
        return TRUE;
      }

  return FALSE;
}

static void
draw_lines (LwSpace *space,
            cairo_t *cr)
{
  for (guint i = 0; i < space->look->n_overlays; i++)
    {
      const LwPanelOverlay *overlay = &space->look->overlays[i];
      LwSpace own = *space;

      own.cr = cr;
      if (by_clock (space))
        trace_by_clock (space, cr, overlay);
      else
        trace_by_step (space, cr, overlay);
      cairo_set_line_width (cr, (overlay->thin ? THIN_LINE : STRONG_LINE) * lw_letter_scale (space->letter));
      lw_space_dash (&own, overlay->dash);
      lw_ink_use (cr, overlay->ink);
      cairo_stroke (cr);
    }
}

/* Whether columns lie as they did. */
static gboolean
same_columns (const LwScale *a,
              const LwScale *b)
{
  for (guint i = 0; i < a->n; i++)
    if (a->start[i] != b->start[i] || a->width[i] != b->width[i])
      return FALSE;

  return TRUE;
}

static double
pixels_of (const LwSpace *space)
{
  return space->look->pixels > 0 ? space->look->pixels : 1;
}

/* While something is dragged, other widths will do; but a clock with one column large is no even scale. */
static gboolean
still_good (const LwPanelKept *kept,
            const LwSpace     *space)
{
  const LwPanelLook *look = space->look;
  const LwScale *now = look->scale, *then = &kept->scale;

  if (kept->surface == NULL || kept->stamp != look->overlays_stamp || kept->width != space->width
      || kept->pixels != pixels_of (space)
      || kept->height != space->height || kept->letters != lw_letter_scale (space->letter)
      || kept->palette != space->palette || kept->axis.low != space->axis->low || kept->axis.high != space->axis->high
      || then->n != now->n || then->rtl != now->rtl || then->view.by_clock != now->view.by_clock
      || then->view.zoomed != now->view.zoomed)
    return FALSE;
  if (same_columns (then, now))
    return TRUE;

  return look->quick && !(now->view.by_clock && now->view.zoomed >= 0);
}

static void
make_kept (LwPanelKept *kept,
           LwSpace     *space)
{
  double pixels = pixels_of (space);
  cairo_t *cr;

  g_clear_pointer (&kept->surface, cairo_surface_destroy);
  kept->surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int) ceil (space->width * pixels),
                                              (int) ceil (space->height * pixels));
  cairo_surface_set_device_scale (kept->surface, pixels, pixels);
  kept->stamp = space->look->overlays_stamp;
  kept->width = space->width;
  kept->height = space->height;
  kept->letters = lw_letter_scale (space->letter);
  kept->pixels = pixels;
  kept->scale = *space->look->scale;
  kept->axis = *space->axis;
  kept->palette = space->palette;

  cr = cairo_create (kept->surface);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  draw_lines (space, cr);
  cairo_destroy (cr);
}

static void
paint_column (const LwSpace     *space,
              const LwPanelKept *kept,
              guint              column)
{
  double left, right, now_left, now_right;
  gboolean same;

  lw_scale_column (&kept->scale, column, &left, &right);
  lw_scale_column (space->look->scale, column, &now_left, &now_right);
  if (now_right <= 0 || now_left >= space->width || right <= left || now_right <= now_left)
    return;

  same = fabs ((now_right - now_left) - (right - left)) < 1e-6;
  cairo_save (space->cr);
  cairo_rectangle (space->cr, now_left, 0, now_right - now_left, space->height);
  cairo_clip (space->cr);
  cairo_translate (space->cr, now_left, 0);
  if (!same)
    cairo_scale (space->cr, (now_right - now_left) / (right - left), 1);
  cairo_set_source_surface (space->cr, kept->surface, -left, 0);
  cairo_pattern_set_filter (cairo_get_source (space->cr), same ? CAIRO_FILTER_NEAREST : CAIRO_FILTER_BILINEAR);
  cairo_paint (space->cr);
  cairo_restore (space->cr);
}

void
lw_space_overlays (LwSpace *space)
{
  LwPanelKept *kept = space->look->kept;

  if (space->look->n_overlays == 0)
    return;
  if (kept == NULL)
    {
      draw_lines (space, space->cr);
      lw_space_dash (space, 0);
      return;
    }

  if (!still_good (kept, space))
    make_kept (kept, space);
  /* On a clock, moments stay where they are while the columns' edges move. */
  if (by_clock (space) || same_columns (&kept->scale, space->look->scale))
    {
      cairo_set_source_surface (space->cr, kept->surface, 0, 0);
      cairo_paint (space->cr);
      return;
    }

  for (guint column = 0; column < kept->scale.n; column++)
    paint_column (space, kept, column);
}

/* How samples of a batch come out, behind the curves: nine in ten of them in a pale band with dotted edges, the middle
 * half in a hatched one, and the median as a dashed line; each is named beside it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/space.h"
#include "season/text.h"

#define SMALL 0.8
#define TINT 0.13
#define HATCH_TINT 0.5
#define HATCH_APART 5.0
#define EDGE_TINT 0.75
#define SAMPLE 18.0      /* length of the piece that is shown before a name */
#define GAP 4.0
#define APART 10.0       /* between names that stand across */
#define IN 22.0          /* from the column's edge, past a bracket */
#define FURTHER 18.0     /* and on, where there is no place */
#define MEDIAN_DASH 1

typedef enum
{
  BAND_MOST,   /* 5 to 95 % */
  BAND_HALF,   /* 25 to 75 % */
  BAND_MIDDLE, /* the median alone */
} Band;

#define N_BANDS (BAND_MIDDLE + 1)

static double
side (const LwSpan *span,
      Band          band,
      gboolean      upper)
{
  switch (band)
    {
    case BAND_MOST:
      return upper ? span->q95 : span->q05;
    case BAND_HALF:
      return upper ? span->q75 : span->q25;
    case BAND_MIDDLE:
    default:
      return span->q50;
    }
}

static gboolean
has_bands (const LwPanelLook *look)
{
  return look->spread != NULL && look->spread->bands != NULL && look->spread->n_steps > 0
         && look->spread->n_steps <= look->scale->n && look->spread->failed < look->spread->samples;
}

gboolean
lw_panel_spans (const LwPanelLook *look,
                double            *low,
                double            *high)
{
  *low = INFINITY;
  *high = -INFINITY;
  for (guint s = 0; has_bands (look) && s < look->spread->n_steps; s++)
    for (guint i = 0; i <= look->spread->points; i++)
      {
        const LwSpan *span = lw_spread_band (look->spread, s, i, look->quantity);

        *low = MIN (*low, span->q05);
        *high = MAX (*high, span->q95);
      }

  return *low <= *high;
}

static void
trace (const LwSpace *space,
       Band           band,
       gboolean       upper,
       gboolean       back)
{
  const LwSpread *spread = space->look->spread;
  const LwScale *scale = space->look->scale;
  guint each = spread->points + 1, n = spread->n_steps * each;

  for (guint k = 0; k < n; k++)
    {
      guint at = back ? n - 1 - k : k, step = at / each, i = at % each;
      const LwSpan *span = lw_spread_band (spread, step, i, space->look->quantity);

      cairo_line_to (space->cr, lw_scale_x (scale, step, scale->minutes[step] * i / spread->points),
                     lw_space_y (space, side (span, band, upper)));
    }
}

static void
path_of (const LwSpace *space,
         Band           band)
{
  cairo_new_path (space->cr);
  trace (space, band, TRUE, FALSE);
  trace (space, band, FALSE, TRUE);
  cairo_close_path (space->cr);
}

static void
stroke_dashed (LwSpace *space,
               guint    dash,
               double   line,
               double   tint)
{
  lw_space_dash (space, dash);
  cairo_set_line_width (space->cr, line * lw_letter_scale (space->letter));
  lw_ink_use (space->cr, lw_ink_thin (space->ink, tint));
  cairo_stroke (space->cr);
  lw_space_dash (space, 0);
}

/* Lines that rise, over the place that is clipped to. */
static void
hatch (LwSpace *space,
       double   left,
       double   right,
       double   top,
       double   bottom)
{
  double rise = bottom - top;

  for (double x = floor (left / HATCH_APART) * HATCH_APART - rise; x < right; x += HATCH_APART)
    {
      cairo_move_to (space->cr, x, bottom);
      cairo_line_to (space->cr, x + rise, top);
    }
  cairo_set_line_width (space->cr, 1);
  lw_ink_use (space->cr, lw_ink_thin (space->ink, HATCH_TINT));
  cairo_stroke (space->cr);
}

static void
fill (LwSpace *space,
      double   left,
      double   right,
      double   top,
      double   bottom,
      gboolean hatched)
{
  lw_ink_use (space->cr, lw_ink_thin (space->ink, TINT));
  cairo_fill_preserve (space->cr);
  if (!hatched)
    return;

  cairo_save (space->cr);
  cairo_clip (space->cr);
  hatch (space, left, right, top, bottom);
  cairo_restore (space->cr);
}

void
lw_space_bands (LwSpace *space)
{
  cairo_t *cr = space->cr;

  if (!has_bands (space->look))
    return;

  cairo_save (cr);
  cairo_rectangle (cr, 0, space->top - 4, space->width, space->height - space->top + 4);
  cairo_clip (cr);
  for (Band band = BAND_MOST; band < BAND_MIDDLE; band++)
    {
      path_of (space, band);
      fill (space, 0, space->width, space->top, space->bottom, band == BAND_HALF);
      cairo_new_path (cr);
    }
  for (int upper = 0; upper < 2; upper++)
    {
      trace (space, BAND_MOST, upper, FALSE);
      stroke_dashed (space, 2, 1, EDGE_TINT);
    }
  trace (space, BAND_MIDDLE, FALSE, FALSE);
  stroke_dashed (space, MEDIAN_DASH, 1.3, 1);
  cairo_restore (cr);
}

/* A piece of what is named, as it is drawn. */
static void
draw_sample (LwSpace *space,
             Band     band,
             double   x,
             double   y,
             double   height)
{
  cairo_t *cr = space->cr;
  double middle = floor (y + height / 2) + 0.5;

  if (band == BAND_MIDDLE)
    {
      cairo_move_to (cr, x, middle);
      cairo_line_to (cr, x + SAMPLE, middle);
      stroke_dashed (space, MEDIAN_DASH, 1.3, 1);
      return;
    }

  cairo_rectangle (cr, x, y + 2, SAMPLE, height - 4);
  fill (space, x, x + SAMPLE, y + 2, y + height - 2, band == BAND_HALF);
  if (band == BAND_MOST)
    stroke_dashed (space, 2, 1, EDGE_TINT);
  cairo_new_path (cr);
}

static const char *
name_of (Band band)
{
  /* Translators: short names in a picture: where nine in ten batches are, where half of them are, the median */
  static const char *const names[N_BANDS] = { N_ ("9 in 10"), N_ ("half"), N_ ("median") };

  return _ (names[band]);
}

/* Which places the band takes in its step, so that no name lies on it. */
static void
take_band (LwSpace *space,
           guint    step)
{
  const LwSpread *spread = space->look->spread;
  const LwScale *scale = space->look->scale;

  for (guint i = 0; i < spread->points; i++)
    {
      const LwSpan *here = lw_spread_band (spread, step, i, space->look->quantity);
      const LwSpan *next = lw_spread_band (spread, step, i + 1, space->look->quantity);
      double x = lw_scale_x (scale, step, scale->minutes[step] * i / spread->points);
      double to = lw_scale_x (scale, step, scale->minutes[step] * (i + 1) / spread->points);
      double top = lw_space_y (space, MAX (here->q95, next->q95));
      double bottom = lw_space_y (space, MIN (here->q05, next->q05));

      lw_space_take (space, (LwBox) { MIN (x, to), top - 2, fabs (to - x), bottom - top + 4 });
    }
}

/* One under the other, or across, each `width` wide. */
static void
draw_names (LwSpace     *space,
            const LwBox *box,
            double       width,
            double       line)
{
  gboolean across = box->height < 2 * line;
  double begin = space->letter->rtl ? box->x + box->width : box->x, way = space->letter->rtl ? -1 : 1;

  for (Band band = 0; band < N_BANDS; band++)
    {
      double x = begin + (across ? way * band * (width + APART) : 0), y = box->y + (across ? 0 : band * line);

      draw_sample (space, band, way < 0 ? x - SAMPLE : x, y, line);
      lw_ink_use (space->cr, space->palette->ink);
      lw_letter_draw (space->cr, space->letter, x + way * (SAMPLE + GAP), y, LW_TEXT_START, SMALL, FALSE, 0,
                      name_of (band));
    }
}

/* A place over or under the band of a step, as near its end as may be. */
static gboolean
find_place (LwSpace *space,
            guint    step,
            LwBox   *box)
{
  const LwSpread *spread = space->look->spread;
  const LwSpan *end = lw_spread_band (spread, step, spread->points, space->look->quantity);
  guint taken = space->n_taken;
  gboolean found = FALSE;

  take_band (space, step);
  for (double in = IN; !found && in + box->width + GAP <= space->look->scale->width[step]; in += FURTHER)
    {
      box->x = lw_space_end_x (space, step, in, box->width);
      found = lw_space_find (space, box, lw_space_y (space, end->q95), lw_space_y (space, end->q05), space->height);
    }
  space->n_taken = taken;

  return found;
}

/* All in one place, in the last step that has one; none where there is no room. */
void
lw_space_band_names (LwSpace *space)
{
  double line = ceil (lw_letter_line (space->letter) * SMALL * 0.94), width = 0;

  if (!has_bands (space->look))
    return;

  for (Band band = 0; band < N_BANDS; band++)
    {
      double words;

      lw_letter_size (space->cr, space->letter, SMALL, FALSE, name_of (band), &words, NULL);
      width = MAX (width, SAMPLE + GAP + ceil (words));
    }

  for (int across = 0; across < 2; across++)
    for (guint step = space->look->spread->n_steps; step-- > 0;)
      {
        LwBox box = {
          .width = across ? N_BANDS * (width + APART) - APART : width, .height = across ? line : N_BANDS * line,
        };

        if (!find_place (space, step, &box))
          continue;

        lw_space_plate (space, step, &box);
        lw_space_take (space, box);
        draw_names (space, &box, width, line);
        return;
      }
}

/* The lesson's picture: title, blocks, ruler, panels, play head and caption, in fixed shares of the height. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/lesson-private.h"

#include <math.h>

#include "draw/block.h"
#include "draw/card.h"
#include "draw/paragraph.h"

#define POINT_MM (25.4 / 72)
#define BLOCK_SMALL 0.7     /* of a block's letters, the smallest words in it */
#define TITLE 1.5           /* of the smallest words */
#define CAPTION 1.7
#define CAPTION_LINES 2.4
#define MARGIN 0.014        /* of the height */
#define RULER_LINES 1.5
#define HEAD_LINE 3.0
#define LINE 1.32           /* of a font's size */
#define NEAR 1.0            /* smallest words' size: so far beyond a plot counts as its edge */

double
lw_lesson_letter (double height,
                  double least)
{
  double figure = lw_card_figure (LW_LESSON_METRES) * POINT_MM / (1000 * LW_LESSON_PICTURE_M) * height;

  return figure / lw_paragraph_figure (FALSE) / least;
}

LwLessonPlaces
lw_lesson_places (double width,
                  double height)
{
  double words = lw_lesson_letter (height, 1);
  LwLessonPlaces places = { .margin = round (MARGIN * height) };

  places.width = MAX (width - 2 * places.margin, 1);
  places.gap = round (places.margin * 0.6);
  places.blocks = round (LINE * TITLE * words) + places.margin;
  places.blocks_height = lw_block_height (&(LwLetter) { .base_px = lw_lesson_letter (height, BLOCK_SMALL) });
  places.ruler = places.blocks + places.blocks_height;
  places.panels = places.ruler + round (RULER_LINES * LINE * words + LW_RULER_LEAD);
  places.caption = height - places.margin - round (CAPTION_LINES * LINE * CAPTION * words);
  places.panel_height = floor ((places.caption - places.panels) / LW_LESSON_CURVES - places.gap);

  return places;
}

void
lw_lesson_scale (const LwLessonLook *look,
                 double              width,
                 double              height,
                 LwScale            *scale)
{
  LwLessonPlaces places = lw_lesson_places (width, height);
  const LwBatch *batch = look->shown[0].batch;
  LwScaleView view = { .by_clock = look->by_clock, .zoomed = -1 };
  double minutes[LW_SCALE_MAX_STEPS];

  for (guint i = 0; i < batch->n_steps; i++)
    minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  lw_scale_fill_view (scale, view, minutes, batch->n_steps, 0, places.width, look->rtl);
}

void
lw_lesson_plot (double  height,
                guint   curve,
                double *top,
                double *bottom)
{
  LwLessonPlaces places = lw_lesson_places (1, height);
  LwLetter letter = { .base_px = lw_lesson_letter (height, LW_LESSON_SMALL) };
  double begin = places.panels + curve * (places.panel_height + places.gap);

  lw_panel_plot (places.panel_height, &letter, top, bottom);
  *top += begin;
  *bottom += begin;
}

gboolean
lw_lesson_value_at (const LwLessonLook *look,
                    double              width,
                    double              height,
                    double              y,
                    double             *value)
{
  LwScale scale;
  LwAxis axis;
  double top, bottom, near = lw_lesson_letter (height, NEAR);

  if (look->ask < 0)
    return FALSE;

  /* Who points a little too high or too low means its edge. */
  lw_lesson_plot (height, (guint) look->ask, &top, &bottom);
  if (y < top - near || y > bottom + near)
    return FALSE;

  lw_lesson_scale (look, width, height, &scale);
  axis = lw_lesson_axis (look, &scale, (guint) look->ask);
  *value = lw_axis_value (&axis, top, bottom, CLAMP (y, top, bottom));

  return TRUE;
}

void
lw_lesson_range (const LwLessonLook *look,
                 guint               curve,
                 double             *low,
                 double             *high)
{
  LwScale scale;
  LwAxis axis;

  lw_lesson_scale (look, 1280, 720, &scale);
  axis = lw_lesson_axis (look, &scale, curve);
  *low = axis.low;
  *high = axis.high;
}

static void
draw_blocks (cairo_t              *cr,
             const LwLessonLook   *look,
             const LwScale        *scale,
             const LwLessonPlaces *places,
             const LwLetter       *letter,
             const LwPalette      *palette)
{
  const LwBatch *batch = look->shown[0].batch;

  for (guint i = 0; i < batch->n_steps; i++)
    {
      LwBlockLook block = {
        .step = &batch->steps[i], .chosen = i == look->head.step, .rtl = look->rtl,
      };
      double left, right;

      block.leading = lw_block_leading (look->season, batch, i, &block.on_weather);
      lw_scale_block (scale, i, &left, &right);
      cairo_save (cr);
      cairo_translate (cr, left + 2, 0);
      lw_block_draw (cr, MAX (right - left - 4, 1), places->blocks_height, &block, letter, palette);
      cairo_restore (cr);
    }
}

static void
draw_head (cairo_t              *cr,
           const LwLessonLook   *look,
           const LwScale        *scale,
           const LwLessonPlaces *places,
           const LwPalette      *palette)
{
  double x = round (lw_scale_x (scale, look->head.step, look->head.minute)), size = places->margin;
  double bottom = places->caption - places->gap;

  lw_ink_use (cr, palette->choice);
  cairo_set_line_width (cr, HEAD_LINE);
  cairo_move_to (cr, x, places->ruler);
  cairo_line_to (cr, x, bottom);
  cairo_stroke (cr);
  cairo_move_to (cr, x - size, places->ruler);
  cairo_line_to (cr, x + size, places->ruler);
  cairo_line_to (cr, x, places->ruler + 1.4 * size);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
draw_words (cairo_t              *cr,
            double                height,
            const LwLessonLook   *look,
            const LwLessonPlaces *places,
            const LwPalette      *palette)
{
  double words = lw_lesson_letter (height, 1), used = 0;
  LwLetter letter = { .base_px = words, .rtl = look->rtl };
  double start = look->rtl ? places->width : 0, end = places->width - start;
  double room = height - places->caption;
  LwParagraph caption = { look->caption, places->width, CAPTION * words, FALSE, FALSE, look->rtl };
  double tall;

  lw_ink_use (cr, palette->faint);
  if (look->where != NULL)
    used = words + lw_letter_draw (cr, &letter, end, places->margin / 2, LW_TEXT_END, 1.2, FALSE, 0, look->where);
  lw_ink_use (cr, palette->ink);
  lw_letter_draw (cr, &letter, start, places->margin / 2, LW_TEXT_START, TITLE, TRUE, places->width - used, look->title);

  /* A long caption gets smaller, but no smaller than what can be read. */
  lw_paragraph_size (&caption, NULL, &tall);
  while (tall > room && caption.size > words)
    {
      caption.size = MAX (caption.size * 0.94, words);
      lw_paragraph_size (&caption, NULL, &tall);
    }
  lw_paragraph_draw (cr, &caption, 0, places->caption);
}

void
lw_lesson_draw (cairo_t            *cr,
                double              width,
                double              height,
                const LwLessonLook *look,
                const LwPalette    *palette)
{
  LwLessonPlaces places = lw_lesson_places (width, height);
  LwLetter letter = { .base_px = lw_lesson_letter (height, LW_LESSON_SMALL), .rtl = look->rtl };
  LwLetter ruler = { .base_px = lw_lesson_letter (height, 0.85), .rtl = look->rtl };
  LwLetter block = { .base_px = lw_lesson_letter (height, BLOCK_SMALL), .rtl = look->rtl };
  LwScale scale;

  lw_lesson_scale (look, width, height, &scale);
  lw_ink_use (cr, palette->desk);
  cairo_paint (cr);
  cairo_translate (cr, places.margin, 0);

  draw_words (cr, height, look, &places, palette);
  cairo_save (cr);
  cairo_translate (cr, 0, places.blocks);
  draw_blocks (cr, look, &scale, &places, &block, palette);
  cairo_translate (cr, 0, places.blocks_height);
  if (look->by_clock)
    lw_ruler_draw_clock (cr, places.width, &scale, look->shown[0].batch->when_s, &ruler, palette);
  else
    lw_ruler_draw (cr, places.width, places.panels - places.ruler, &scale, &ruler, palette);
  cairo_restore (cr);

  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    {
      cairo_save (cr);
      cairo_translate (cr, 0, places.panels + i * (places.panel_height + places.gap));
      lw_lesson_curves (cr, places.width, places.panel_height, look, &scale, i, &letter, palette);
      cairo_restore (cr);
    }
  draw_head (cr, look, &scale, &places, palette);
}

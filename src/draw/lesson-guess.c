/* Guesses in a lesson's panel: flags at the end of the last column, and how far off they are once that is told. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/lesson-private.h"

#include <math.h>

#include "draw/labels.h"
#include "draw/words.h"
#include "season/text.h"

#define FLAG 9.0
#define IN 26.0
#define IN_ANSWERED 0.24 /* of the width: there the batches' own names stand at the end */
#define POINTED 120.0 /* length of the line of a guess not yet named */

static void
draw_flag (cairo_t *cr,
           double   x,
           double   y,
           double   way)
{
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x - 2 * way * FLAG, y - FLAG);
  cairo_line_to (cr, x - 2 * way * FLAG, y + FLAG);
  cairo_close_path (cr);
}

static char *
words_of (const LwLessonLook *look,
          const LwGuess      *guess)
{
  g_autofree char *off = NULL;

  if (!look->answered)
    return g_strdup (guess->name);

  off = lw_words_change (look->of[look->ask], guess->off);

  return g_strdup_printf ("%u. %s  %s", guess->rank, guess->name, off);
}

void
lw_lesson_guesses (cairo_t            *cr,
                   double              width,
                   const LwLessonLook *look,
                   const LwScale      *scale,
                   const LwAxis       *axis,
                   double              top,
                   double              bottom,
                   const LwLetter     *letter,
                   const LwPalette    *palette)
{
  guint last = scale->n - 1;
  double x = lw_scale_x (scale, last, scale->minutes[last]), way = look->rtl ? -1 : 1, line = lw_letter_line (letter);
  LwLabel labels[LW_GUESS_MOST];

  for (guint i = 0; i < look->n_guesses; i++)
    labels[i] = (LwLabel) { .want = lw_axis_y (axis, top, bottom, look->guesses[i].value) };
  lw_labels_place (labels, look->n_guesses, top - line / 2, bottom + line / 3, line);

  /* The axis' own numbers would look out from behind the flags. */
  for (guint i = 0; i < look->n_guesses && !look->answered; i++)
    cairo_rectangle (cr, look->rtl ? x : x - IN, labels[i].want - line / 2, IN, line);
  lw_ink_use (cr, palette->card);
  cairo_fill (cr);

  for (guint i = 0; i < look->n_guesses; i++)
    {
      g_autofree char *words = words_of (look, &look->guesses[i]);
      double in = look->answered ? IN_ANSWERED * width : IN;
      double begin = x - way * (in + labels[i].lane * 0.14 * width), taken;

      lw_ink_use (cr, palette->ink);
      draw_flag (cr, x, labels[i].want, way);
      cairo_fill (cr);
      cairo_set_line_width (cr, 1.2);
      cairo_move_to (cr, x, labels[i].want);
      cairo_line_to (cr, begin, labels[i].y);
      cairo_stroke (cr);
      lw_letter_size (cr, letter, 1, TRUE, words, &taken, NULL);
      cairo_rectangle (cr, way > 0 ? begin - taken - 4 : begin - 4, labels[i].y - line / 2, taken + 8, line);
      lw_ink_use (cr, lw_ink_thin (palette->card, 0.85));
      cairo_fill (cr);
      lw_ink_use (cr, palette->ink);
      lw_letter_draw (cr, letter, begin, labels[i].y - line / 2, LW_TEXT_END, 1, TRUE, 0, words);
    }

  if (!isnan (look->pointed))
    {
      double y = round (lw_axis_y (axis, top, bottom, look->pointed));

      lw_ink_use (cr, palette->choice);
      cairo_set_line_width (cr, 2.5);
      cairo_move_to (cr, x, y);
      cairo_line_to (cr, x - way * POINTED, y);
      cairo_stroke (cr);
      draw_flag (cr, x, y, way);
      cairo_fill (cr);
    }
}

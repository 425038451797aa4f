/* Slim blocks and the mark where a step has no column. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/slim.h"

#include <math.h>

#include "draw/block.h"
#include "draw/frame.h"
#include "season/text.h"
#include "season/wording.h"

#define PAD 3.0
#define MARK 0.65 /* of a line's height: half the width of "+2" */

double
lw_slim_height (const LwLetter *letter)
{
  return round (lw_letter_line (letter) * LW_SLIM_SIZE + 2 * PAD);
}

double
lw_slim_mark (const LwLetter *letter)
{
  return MARK * lw_letter_line (letter);
}

static char *
time_of (const LwSlimLook *look)
{
  return lw_say_minutes (lw_step_get (look->step, LW_SET_MINUTES));
}

static char *
leading_of (const LwSlimLook *look)
{
  return lw_say_setting (lw_kind_row (look->step->kind)->leading, look->leading);
}

char *
lw_slim_words (const LwSlimLook *look)
{
  g_autofree char *time = time_of (look), *leading = leading_of (look);

  /* Translators: a step's time and its leading setting: "35 min · 260 °C" */
  return g_strdup_printf (_ ("%s · %s"), time, leading);
}

/* A number that is cut is another number. */
char *
lw_slim_fit (cairo_t          *cr,
             const LwSlimLook *look,
             const LwLetter   *letter,
             double            room)
{
  char *(*const ways[]) (const LwSlimLook *) = { lw_slim_words, time_of, leading_of };

  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      g_autofree char *words = ways[i] (look);
      double width;

      lw_letter_size (cr, letter, LW_SLIM_SIZE, FALSE, words, &width, NULL);
      if (width <= room)
        return g_steal_pointer (&words);
    }

  return NULL;
}

void
lw_slim_draw (cairo_t          *cr,
              double            width,
              double            height,
              const LwSlimLook *look,
              const LwLetter   *letter,
              const LwPalette  *palette)
{
  LwLetter own = *letter;
  double start = look->after ? lw_slim_mark (letter) : PAD;
  double picture = round (MIN (height - 2 * PAD, width - start + PAD - 2)), used = start + picture + 3;
  double room = width - used - (look->marked ? lw_slim_mark (letter) : PAD);
  g_autofree char *words = NULL;

  own.rtl = look->rtl;
  words = lw_slim_fit (cr, look, &own, room);
  lw_hatch_frame (cr, look->step->kind, width, height, palette);
  if (picture > 4)
    lw_pictogram_draw (cr, look->step->kind, look->rtl ? width - start - picture : start, round ((height - picture) / 2),
                       picture, palette->ink);
  lw_ink_use (cr, palette->ink);
  if (words != NULL)
    lw_letter_draw_on (cr, &own, look->rtl ? width - used : used,
                       round (height / 2 + lw_letter_line (letter) * LW_SLIM_SIZE * 0.28), LW_TEXT_START, LW_SLIM_SIZE,
                       FALSE, 0, words);
  lw_frame_edge (cr, width, height, 1, palette->rule);
}

void
lw_slim_draw_gap (cairo_t         *cr,
                  double           x,
                  double           height,
                  guint            n,
                  const LwLetter  *letter,
                  const LwPalette *palette)
{
  g_autofree char *text = g_strdup_printf ("+%u", n);
  double width, tall;

  lw_letter_size (cr, letter, LW_SLIM_SIZE * 0.92, TRUE, text, &width, &tall);
  cairo_rectangle (cr, x - width / 2 - 2, 2, width + 4, height - 4);
  lw_ink_use (cr, palette->faint);
  cairo_fill (cr);
  lw_ink_use (cr, palette->card);
  lw_letter_draw (cr, letter, x, (height - tall) / 2, LW_TEXT_MIDDLE, LW_SLIM_SIZE * 0.92, TRUE, 0, text);
}

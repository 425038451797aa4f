/* The line: words above, the bar of what is wanted below. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/outcome.h"

#include <math.h>

#include "draw/verdict.h"
#include "draw/words.h"
#include "season/text.h"

#define SMALL 0.86
#define CHANGE_SHARE 0.19   /* of the width, for the change */
#define VERDICT_SHARE 0.3   /* and for the verdict */
#define BAR 8.0
#define GAP 6.0
#define PAST 0.75           /* the bar shows so much of the window's width beyond it, each way */

static gboolean
is_held (const LwOutcomeLook *look)
{
  return !isnan (look->held);
}

static gboolean
is_wanted (const LwOutcomeLook *look)
{
  return look->aimed || is_held (look);
}

double
lw_outcome_height (const LwOutcomeLook *look,
                   const LwLetter      *letter)
{
  double line = lw_letter_line (letter);

  return ceil (line * (1 + 0.85 * (is_wanted (look) + (look->more != NULL))) + 2);
}

char *
lw_outcome_change (LwQuantity quantity,
                   double     change)
{
  if (isnan (change) || lw_words_change_rounds_off (quantity, change))
    return g_strdup ("");

  return lw_words_change (quantity, change);
}

/* What is wanted, as a window; a lock is a narrow one. */
static void
window_of (const LwOutcomeLook *look,
           double              *low,
           double              *high)
{
  *low = is_held (look) ? look->held - look->tolerance : look->low;
  *high = is_held (look) ? look->held + look->tolerance : look->high;
}

static int
verdict_of (const LwOutcomeLook *look)
{
  double low, high;

  window_of (look, &low, &high);

  return lw_verdict (low, high, look->value);
}

char *
lw_outcome_verdict (const LwOutcomeLook *look)
{
  g_autofree char *off = NULL;

  if (!is_wanted (look))
    return NULL;
  if (!is_held (look))
    return g_strdup (lw_verdict_word (verdict_of (look)));
  if (verdict_of (look) == 0)
    return g_strdup (_ ("held"));

  off = lw_words_change (look->quantity, look->value - look->held);
  /* Translators: by how much an outcome is off the value it is locked at */
  return g_strdup_printf (_ ("%s off"), off);
}

char *
lw_outcome_window (LwQuantity quantity,
                   double     low,
                   double     high)
{
  int digits = lw_quantity_row (quantity)->digits;

  if (isinf (low))
    return g_strdup_printf (_ ("at most %.*f"), digits, high);
  if (isinf (high))
    return g_strdup_printf (_ ("at least %.*f"), digits, low);

  return g_strdup_printf (_ ("%.*f to %.*f"), digits, low, digits, high);
}

/* What the bar reaches over: the window with room beside it, and the value. */
static void
reach_of (const LwOutcomeLook *look,
          double              *from,
          double              *to)
{
  const LwQuantityRow *row = lw_quantity_row (look->quantity);
  double low, high, span;

  window_of (look, &low, &high);
  span = isinf (low) ? fabs (high) : isinf (high) ? fabs (low) : high - low;
  span = MAX (span, pow (10, -row->digits));
  *from = MIN (isinf (low) ? high - 2 * span : low - PAST * span, look->value - 0.1 * span);
  *to = MAX (isinf (high) ? low + 2 * span : high + PAST * span, look->value + 0.1 * span);
  *from = MAX (*from, row->low);
}

typedef struct
{
  cairo_t *cr;
  double x, width;   /* of the bar */
  double from, to;   /* values at its begin and end */
  gboolean rtl;
} Bar;

static double
bar_x (const Bar *bar,
       double     value)
{
  double share = CLAMP ((value - bar->from) / (bar->to - bar->from), 0, 1);

  return bar->x + bar->width * (bar->rtl ? 1 - share : share);
}

static void
bar_fill (const Bar *bar,
          LwInk      ink,
          double     y,
          double     height,
          double     from,
          double     to)
{
  double a = bar_x (bar, from), b = bar_x (bar, to);

  lw_ink_use (bar->cr, ink);
  cairo_rectangle (bar->cr, MIN (a, b), y, MAX (fabs (b - a), 1), height);
  cairo_fill (bar->cr);
}

/* A closed side of the window ends in a post. */
static void
bar_post (const Bar *bar,
          double     y,
          double     value)
{
  cairo_rectangle (bar->cr, floor (bar_x (bar, value)) - 0.5, y - 2, 1.5, BAR + 4);
  cairo_fill (bar->cr);
}

static void
draw_bar (cairo_t             *cr,
          double               x,
          double               y,
          double               width,
          const LwOutcomeLook *look,
          const LwLetter      *letter,
          const LwPalette     *palette)
{
  Bar bar = { .cr = cr, .x = x, .width = width, .rtl = letter->rtl };
  double low, high;
  int verdict;

  window_of (look, &low, &high);
  reach_of (look, &bar.from, &bar.to);
  verdict = verdict_of (look);

  bar_fill (&bar, lw_ink_thin (palette->rule, 0.7), y, BAR, bar.from, bar.to);
  bar_fill (&bar, lw_ink_thin (palette->curve[look->quantity], 0.45), y, BAR, isinf (low) ? bar.from : low,
            isinf (high) ? bar.to : high);
  lw_ink_use (cr, palette->ink);
  if (isfinite (low))
    bar_post (&bar, y, low);
  if (isfinite (high))
    bar_post (&bar, y, high);

  lw_ink_use (cr, verdict == 0 ? palette->ink : palette->warning);
  cairo_save (cr);
  cairo_translate (cr, bar_x (&bar, look->value), y + BAR / 2);
  /* Along the bar, more lies onward. */
  if (verdict != 0)
    {
      cairo_rotate (cr, letter->rtl ? -G_PI_2 : G_PI_2);
      cairo_translate (cr, 0, verdict > 0 ? 6 : -6);
    }
  lw_verdict_mark (cr, 0, 0, verdict);
  cairo_restore (cr);
}

void
lw_outcome_draw (cairo_t             *cr,
                 double               width,
                 const LwOutcomeLook *look,
                 const LwLetter      *letter,
                 const LwPalette     *palette)
{
  const LwQuantityRow *row = lw_quantity_row (look->quantity);
  double line = lw_letter_line (letter), base = floor (0.75 * line), y = line;
  double change_room = CHANGE_SHARE * width, side = VERDICT_SHARE * width, value_room;
  double begin = letter->rtl ? width : 0, way = letter->rtl ? -1 : 1;
  double end = begin + way * width;
  g_autofree char *value = lw_words_value (look->quantity, look->value);
  g_autofree char *number = lw_outcome_change (look->quantity, look->change);
  /* The sign stays first where people read from the right. */
  g_autofree char *change = g_strconcat (*number != '\0' ? "\u200e" : "", number, NULL);
  g_autofree char *verdict = lw_outcome_verdict (look);
  gboolean off = verdict != NULL && verdict_of (look) != 0;

  lw_ink_use (cr, palette->faint);
  /* A cut number would be another number. */
  change_room = MAX (change_room, lw_letter_draw_on (cr, letter, end, base, LW_TEXT_END, SMALL, FALSE, 0, change));
  lw_ink_use (cr, palette->ink);
  value_room = lw_letter_draw_on (cr, letter, end - way * (change_room + GAP), base, LW_TEXT_END, 1.05, TRUE, 0, value);
  lw_letter_draw_on (cr, letter, begin, base, LW_TEXT_START, 1, FALSE,
                     MAX (width - change_room - value_room - 2 * GAP, 1), _ (row->label));

  if (look->more != NULL)
    {
      lw_ink_use (cr, palette->faint);
      lw_letter_draw (cr, letter, begin, y, LW_TEXT_START, SMALL, FALSE, width, look->more);
      y += 0.85 * line;
    }
  if (verdict != NULL)
    {
      draw_bar (cr, letter->rtl ? side + GAP : 2, floor (y + 0.3 * line - BAR / 2), width - side - GAP - 2, look, letter,
                palette);
      lw_ink_use (cr, off ? palette->warning : palette->ink);
      lw_letter_draw (cr, letter, end, y, LW_TEXT_END, SMALL, off, side, verdict);
    }
}

/* Verdicts: words and shapes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/verdict.h"

#include <glib.h>

#include "season/text.h"

#define ARROW 4.0
#define DOT 2.6

int
lw_verdict (double low,
            double high,
            double value)
{
  return value > high ? 1 : value < low ? -1 : 0;
}

const char *
lw_verdict_word (int verdict)
{
  /* Translators: above, below or within what was aimed at, beside the value */
  return verdict > 0 ? _ ("above") : verdict < 0 ? _ ("below") : _ ("within");
}

void
lw_verdict_mark (cairo_t *cr,
                 double   x,
                 double   y,
                 int      verdict)
{
  double up = verdict > 0 ? -1 : 1;

  if (verdict == 0)
    {
      cairo_arc (cr, x, y, DOT, 0, 2 * G_PI);
    }
  else
    {
      cairo_move_to (cr, x - ARROW, y + up * 3);
      cairo_line_to (cr, x + ARROW, y + up * 3);
      cairo_line_to (cr, x, y + up * (3 + 1.6 * ARROW));
      cairo_close_path (cr);
    }
  cairo_fill (cr);
}

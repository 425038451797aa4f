/* Night and rain behind a panel's curves, for the steps that feel them: night as a quiet
 * ground under a bar along the plot's top, rain as slanted strokes below that bar. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/space.h"

#define ABOVE 4.0        /* the bar stands so far above the plot, */
#define BAR 3.0          /* and is so high */
#define RAIN_HIGH 7.0
#define RAIN_APART 6.0

/* How much black lies on the card: night is darker than day in the dark, too. */
#define NIGHT_ON_PAPER 0.055
#define NIGHT_IN_DARK 0.3

static void
draw_night (LwSpace *space,
            double   left,
            double   right)
{
  cairo_t *cr = space->cr;
  LwInk shade = { 0, 0, 0, space->palette->card.g > 0.5 ? NIGHT_ON_PAPER : NIGHT_IN_DARK };

  cairo_rectangle (cr, left, space->top - ABOVE, right - left, space->height - space->top + ABOVE);
  lw_ink_use (cr, shade);
  cairo_fill (cr);
  cairo_rectangle (cr, left, space->top - ABOVE, right - left, BAR);
  lw_ink_use (cr, lw_ink_thin (space->palette->faint, 0.5));
  cairo_fill (cr);
}

/* At least one stroke, however short the rain. */
static void
draw_rain (LwSpace *space,
           double   left,
           double   right)
{
  cairo_t *cr = space->cr;
  double top = space->top - ABOVE + BAR + 1.5;
  guint n = (guint) MAX (floor ((right - left) / RAIN_APART), 1);
  double gap = (right - left) / n;

  for (guint i = 0; i < n; i++)
    {
      double x = left + (i + 0.5) * gap;

      cairo_move_to (cr, x + RAIN_HIGH / 4, top);
      cairo_line_to (cr, x - RAIN_HIGH / 4, top + RAIN_HIGH);
    }
  cairo_set_line_width (cr, 1.4);
  lw_ink_use (cr, lw_ink_thin (space->palette->faint, 0.85));
  cairo_stroke (cr);
}

void
lw_space_spells (LwSpace *space)
{
  static void (*const draws[]) (LwSpace *, double, double) = {
    [LW_SPELL_NIGHT] = draw_night,
    [LW_SPELL_RAIN] = draw_rain,
  };
  const LwPanelLook *look = space->look;

  for (guint i = 0; i < look->n_spells; i++)
    {
      const LwSpell *spell = &look->spells[i];
      double from, to;

      if (spell->step >= look->scale->n)
        continue;

      /* The columns may be those of a moment ago. */
      from = MIN (spell->from_minute, look->scale->minutes[spell->step]);
      to = MIN (spell->to_minute, look->scale->minutes[spell->step]);
      from = lw_scale_x (look->scale, spell->step, from);
      to = lw_scale_x (look->scale, spell->step, to);
      if (fabs (to - from) > 0.5)
        draws[spell->kind] (space, MIN (from, to), MAX (from, to));
    }
}

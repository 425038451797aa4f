/* The card's small curves with their aims: the window's panels, smaller, in black. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/card-private.h"

#include <math.h>

#include "draw/panel.h"
#include "draw/words.h"

#define BASE_PX 13.0
#define LEAST_SCALE 0.5     /* of the panels: their smallest words are then 5.5 points */
#define USUAL_SCALE 0.72
#define RULER 22.0
#define GAP 6.0
#define LEAST_PANEL 105.0   /* in the panels' own px */

static const LwQuantity quantities[] = { LW_MOISTURE, LW_OXIDATION, LW_RUPTURE };

/* Grey words and thin grey lines would be dots on paper. */
static LwPalette
palette (void)
{
  LwPalette black = *lw_palette_print ();

  black.faint = black.ink;
  black.rule = (LwInk) { 0.6, 0.6, 0.6, 1 };

  return black;
}

static guint
minutes_of (const LwCard *card,
            double       *minutes)
{
  guint n = MIN (card->track->n_steps, LW_SCALE_MAX_STEPS);

  for (guint i = 0; i < n; i++)
    minutes[i] = lw_step_get (&card->batch->steps[i], LW_SET_MINUTES);

  return n;
}

/* Points to a px of the panels. */
static double
scale_of (const LwCard *card)
{
  double minutes[LW_SCALE_MAX_STEPS];
  guint n = minutes_of (card, minutes);

  return MIN (USUAL_SCALE, lw_card_width (card) / ceil (lw_scale_least_width (minutes, n)));
}

gboolean
lw_card_has_curves (const LwCard *card)
{
  return card->track->n_steps > 0 && scale_of (card) >= LEAST_SCALE;
}

double
lw_card_curves_least (const LwCard *card)
{
  return card->curves == 0 ? 0 : scale_of (card) * (RULER + card->curves * (LEAST_PANEL + GAP));
}

static void
draw (cairo_t *cr,
      double   width,
      double   height,
      gpointer data)
{
  const LwCard *card = data;
  LwLetter letter = { .base_px = BASE_PX, .rtl = lw_words_from_right () };
  LwPalette black = palette ();
  double by = scale_of (card), minutes[LW_SCALE_MAX_STEPS], panel;
  LwScale scale;

  width /= by;
  height /= by;
  lw_scale_fill (&scale, minutes, minutes_of (card, minutes), 0, width, letter.rtl);
  panel = (height - RULER) / card->curves - GAP;

  cairo_scale (cr, by, by);
  lw_ruler_draw (cr, width, RULER, &scale, &letter, &black);
  cairo_translate (cr, 0, RULER);
  for (guint i = 0; i < card->curves; i++)
    {
      g_autoptr (LwCurves) curves = lw_curves_new (card->track, quantities[i]);
      LwPanelLook look = {
        .quantity = quantities[i], .scale = &scale, .curves = curves, .batch = card->batch,
        .fresh_moisture_pct = lw_card_moisture (card),
      };
      LwAxis axis = lw_panel_axis (&look);

      lw_panel_draw (cr, width, panel, &look, &axis, &letter, &black);
      cairo_translate (cr, 0, panel + GAP);
    }
}

void
lw_card_curves (LwCard *card,
                LwPlace place)
{
  lw_pages_picture (card->pages, place, draw, card);
}

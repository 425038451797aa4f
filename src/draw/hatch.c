/* The kinds' hatches: rows of lines, dashes or dots at an angle, sometimes two
 * rows crossing. Told apart by direction and texture, faint enough to write on. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/block.h"
#include "draw/frame.h"

#define DOT 0.001

typedef struct
{
  double angle;   /* degrees */
  double apart;   /* between rows, px */
  double on, off; /* of the dashes; on 0: unbroken */
  double line;    /* px */
  gboolean cross; /* the same again, turned by a right angle */
} Hatch;

static const Hatch hatches[LW_N_KINDS] = {
  [LW_KIND_WITHER] = { 60, 9, 0, 0, 1, FALSE },
  [LW_KIND_TUMBLE] = { 45, 8, DOT, 8, 2.4, FALSE },
  [LW_KIND_FIX_PAN] = { -45, 8, 0, 0, 1, FALSE },
  [LW_KIND_FIX_DRUM] = { 45, 12, 0, 0, 1, TRUE },
  [LW_KIND_FIX_STEAM] = { 90, 8, 5, 5, 1.2, FALSE },
  [LW_KIND_ROLL] = { 90, 6, 0, 0, 1, FALSE },
  [LW_KIND_REST] = { 0, 6, 0, 0, 1, FALSE },
  [LW_KIND_DRY_SUN] = { 30, 11, 8, 5, 1.2, FALSE },
  [LW_KIND_DRY_AIR] = { 0, 10, 10, 6, 1.2, FALSE },
  [LW_KIND_ROAST] = { 0, 12, 5, 7, 1.2, TRUE },
};

/* Rows through a square of half side `reach` round 0,0; dashes are centred on it so that
 * crossing rows meet in their middles. */
static void
stroke_rows (cairo_t     *cr,
             const Hatch *hatch,
             double       reach)
{
  double rows = ceil (reach / hatch->apart);
  double period = hatch->on + hatch->off;
  double from = period > 0 ? -ceil (reach / period) * period - hatch->on / 2 : -reach;

  for (double k = -rows; k <= rows; k++)
    {
      double y = k * hatch->apart + (hatch->angle == 0 ? 0.5 : 0);

      cairo_move_to (cr, from, y);
      cairo_line_to (cr, reach, y);
    }
  cairo_stroke (cr);
}

void
lw_hatch_draw (cairo_t *cr,
               LwKind   kind,
               double   x,
               double   y,
               double   width,
               double   height,
               LwInk    ink)
{
  const Hatch *hatch = &hatches[kind];
  double dashes[] = { hatch->on, hatch->off };

  cairo_save (cr);
  cairo_rectangle (cr, x, y, width, height);
  cairo_clip (cr);
  cairo_translate (cr, x + floor (width / 2), y + floor (height / 2));
  cairo_rotate (cr, -hatch->angle * G_PI / 180);
  cairo_set_line_width (cr, hatch->line);
  cairo_set_line_cap (cr, hatch->on <= DOT && hatch->off > 0 ? CAIRO_LINE_CAP_ROUND
                                                             : CAIRO_LINE_CAP_BUTT);
  if (hatch->off > 0)
    cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  lw_ink_use (cr, ink);

  stroke_rows (cr, hatch, hypot (width, height) / 2 + hatch->apart);
  if (hatch->cross)
    {
      cairo_rotate (cr, G_PI_2);
      stroke_rows (cr, hatch, hypot (width, height) / 2 + hatch->apart);
    }
  cairo_restore (cr);
}

/* What stands on the card keeps clear of the corners; to clip it by them, too, would cost more than to draw it. */
void
lw_hatch_frame (cairo_t         *cr,
                LwKind           kind,
                double           width,
                double           height,
                const LwPalette *palette)
{
  lw_frame_fill (cr, width, height, palette->card);
  cairo_save (cr);
  lw_frame_path (cr, width, height, 1);
  cairo_clip (cr);
  lw_hatch_draw (cr, kind, 0, 0, width, height, palette->hatch);
  cairo_restore (cr);
}

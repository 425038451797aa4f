/* The colours themselves. tests/draw/test-palette.c holds them to the contrast
 * that W3C's Web Content Accessibility Guidelines 2.1 ask for (1.4.3 and 1.4.11). */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/palette.h"

#include <math.h>

#define INK(rgb) \
  { (0x##rgb >> 16) / 255.0, (0x##rgb >> 8 & 0xff) / 255.0, (0x##rgb & 0xff) / 255.0, 1 }

static const LwPalette paper = {
  .desk = INK (faf8f3),
  .card = INK (ffffff),
  .ink = INK (1f2328),
  .faint = INK (545b62),
  .rule = INK (e2dfd6),
  .hatch = INK (efece4),
  .ghost = INK (868c92),
  .heat = INK (b34700),
  .press = INK (9c3f73),
  .choice = INK (0069a6),
  .warning = INK (b3261e),
  .less = INK (0072b2),
  .more = INK (d55e00),
  .curve = {
    [LW_MOISTURE] = INK (0072b2),
    [LW_OXIDATION] = INK (b84f00),
    [LW_RUPTURE] = INK (00795a),
    [LW_LEAF_TEMP] = INK (a34a7b),
    [LW_ENZYME] = INK (1f7a99),
    [LW_ROAST] = INK (6b4a2f),
    [LW_GREEN] = INK (6b6500),
    [LW_BROKEN] = INK (8f6000),
    [LW_TWIST] = INK (545b62),
    [LW_WEIGHT] = INK (1f2328),
    [LW_UNEVEN] = INK (7a4f9a),
    [LW_NEARLY_DRY] = INK (9a5a00),
    [LW_ROASTED] = INK (8a3b2a),
  },
  .over = { INK (b84f00), INK (0072b2), INK (00795a), INK (a34a7b), INK (8f6000) },
};

static const LwPalette night = {
  .desk = INK (191b1f),
  .card = INK (22252a),
  .ink = INK (e8e6e1),
  .faint = INK (b0b3b6),
  .rule = INK (3a3e45),
  .hatch = INK (2d3137),
  .ghost = INK (7d8287),
  .heat = INK (ff9a52),
  .press = INK (e39cc4),
  .choice = INK (5cb8f0),
  .warning = INK (ff8a80),
  .less = INK (0072b2),
  .more = INK (d55e00),
  .curve = {
    [LW_MOISTURE] = INK (56b4e9),
    [LW_OXIDATION] = INK (f08a45),
    [LW_RUPTURE] = INK (35c49a),
    [LW_LEAF_TEMP] = INK (dd93bb),
    [LW_ENZYME] = INK (7fd0e0),
    [LW_ROAST] = INK (c9a27e),
    [LW_GREEN] = INK (d6cb45),
    [LW_BROKEN] = INK (e6a832),
    [LW_TWIST] = INK (b0b3b6),
    [LW_WEIGHT] = INK (e8e6e1),
    [LW_UNEVEN] = INK (b99be0),
    [LW_NEARLY_DRY] = INK (e0b070),
    [LW_ROASTED] = INK (e09080),
  },
  .over = { INK (f08a45), INK (56b4e9), INK (35c49a), INK (dd93bb), INK (d6cb45) },
};

static const LwPalette print = {
  .desk = INK (ffffff),
  .card = INK (ffffff),
  .ink = INK (000000),
  .faint = INK (404040),
  .rule = INK (c8c8c8),
  .hatch = INK (e6e6e6),
  .ghost = INK (808080),
  .heat = INK (000000),
  .press = INK (000000),
  .choice = INK (000000),
  .warning = INK (000000),
  .less = INK (404040),
  .more = INK (404040),
  .curve = { [LW_MOISTURE ... LW_ROASTED] = INK (000000) },
  .over = { INK (000000), INK (404040), INK (000000), INK (404040), INK (000000) },
};

const LwPalette *
lw_palette (gboolean dark)
{
  return dark ? &night : &paper;
}

const LwPalette *
lw_palette_print (void)
{
  return &print;
}

void
lw_ink_use (cairo_t *cr,
            LwInk    ink)
{
  cairo_set_source_rgba (cr, ink.r, ink.g, ink.b, ink.a);
}

LwInk
lw_ink_thin (LwInk  ink,
             double alpha)
{
  ink.a *= alpha;

  return ink;
}

LwInk
lw_ink_mix (LwInk  ink,
            LwInk  other,
            double share)
{
  return (LwInk) {
    ink.r + share * (other.r - ink.r),
    ink.g + share * (other.g - ink.g),
    ink.b + share * (other.b - ink.b),
    ink.a + share * (other.a - ink.a),
  };
}

LwInk
lw_ink_of_words (const LwPalette *palette,
                 LwQuantity       quantity)
{
  return lw_ink_mix (palette->curve[quantity], palette->ink, 0.3);
}

LwInk
lw_ink_of_change (const LwPalette *palette,
                  double           share)
{
  return lw_ink_mix (palette->card, share < 0 ? palette->less : palette->more, LW_CHANGE_TINT * fmin (fabs (share), 1));
}

/* Colours by role, for paper and for the dark. Curve colours are those of
 * M. Okabe and K. Ito, "Color Universal Design" (2008), lightened or darkened for contrast. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

#include "season/quantity.h"

typedef struct
{
  double r, g, b, a;
} LwInk;

/* Batches laid over in strong colours; more of them are thin and told apart by dash and word. */
#define LW_N_OVER 5

typedef struct
{
  LwInk desk;      /* behind everything */
  LwInk card;      /* a panel's or block's ground */
  LwInk ink;       /* text */
  LwInk faint;     /* second text, units, ticks */
  LwInk rule;      /* grid, column edges, card borders */
  LwInk hatch;
  LwInk ghost;     /* the curve before the change */
  LwInk heat;      /* the line of a temperature */
  LwInk press;     /* the line of a pressure or steam */
  LwInk choice;    /* the chosen block, the reading line's tag */
  LwInk warning;
  LwInk less;      /* the two ends of a scale of changes: blue and vermilion of Okabe and Ito */
  LwInk more;
  LwInk curve[LW_N_QUANTITIES];
  LwInk over[LW_N_OVER];
} LwPalette;

const LwPalette *lw_palette     (gboolean     dark);
/* For one-colour printing: black on white. */
const LwPalette *lw_palette_print (void);

void             lw_ink_use     (cairo_t     *cr,
                                 LwInk        ink);
LwInk            lw_ink_thin    (LwInk        ink,
                                 double       alpha);
/* `share` of `other` in `ink`. */
LwInk            lw_ink_mix     (LwInk        ink,
                                 LwInk        other,
                                 double       share);
/* Words in a curve's colour, deep enough to be read on its band, too. */
LwInk            lw_ink_of_words (const LwPalette *palette,
                                  LwQuantity       quantity);

/* How strongly the band between parts is tinted by its curve's colour. */
#define LW_BAND_TINT 0.16

/* The ground of a number that is a change, from -1 to 1: a scale that parts blue from vermilion, which all kinds of
 * sight tell apart; at its ends still pale (or dark) enough for words in `ink`. */
#define LW_CHANGE_TINT 0.6
LwInk            lw_ink_of_change  (const LwPalette *palette,
                                    double           share);

/* Lettering: text through Pango at a size in points of the picture, one place for
 * fonts. Sizes scale with the reader's own font size. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <pango/pangocairo.h>

#include "draw/palette.h"

/* How text looks in one picture. `base_px` is the body size; 13 by default. */
typedef struct
{
  const char *family; /* NULL: the sans default */
  double base_px;
  gboolean rtl;       /* reading begins at the right; pictures set it from what they draw */
} LwLetter;

typedef enum
{
  LW_TEXT_START,  /* x is where reading begins */
  LW_TEXT_MIDDLE,
  LW_TEXT_END,
} LwTextAnchor;

/* Draws one line; `size` is relative to the base (1 = body), `bold` or not. `y` is the top. If
 * `room` > 0 the text is ellipsised to it. Returns the width drawn, px. */
double lw_letter_draw  (cairo_t        *cr,
                        const LwLetter *letter,
                        double          x,
                        double          y,
                        LwTextAnchor    anchor,
                        double          size,
                        gboolean        bold,
                        double          room,
                        const char     *text);

/* The same with the baseline at `baseline`, for words of several sizes in one line. */
double lw_letter_draw_on (cairo_t        *cr,
                          const LwLetter *letter,
                          double          x,
                          double          baseline,
                          LwTextAnchor    anchor,
                          double          size,
                          gboolean        bold,
                          double          room,
                          const char     *text);

/* How much larger than usual the lettering is: lines and marks grow with it. */
double lw_letter_scale (const LwLetter *letter);

/* Height to allow for a line of body text, without a font at hand. */
double lw_letter_line  (const LwLetter *letter);

/* Width and height that text would take. NULL where not wanted. */
void   lw_letter_size  (cairo_t        *cr,
                        const LwLetter *letter,
                        double          size,
                        gboolean        bold,
                        const char     *text,
                        double         *width,
                        double         *height);

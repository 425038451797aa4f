/* Words that wrap, the same on paper and screen: measured without hinting, so that a line breaks at the same word
 * whatever they are drawn on. Points. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <cairo.h>
#include <glib.h>

typedef struct
{
  const char *text;
  double width;     /* to wrap in, between words, within a word where it is longer; 0: one line */
  double size;      /* of the font */
  gboolean bold;
  gboolean at_end;  /* each line ends where reading does, else it begins where reading begins */
  gboolean rtl;     /* reading begins at the right */
} LwParagraph;

/* What it takes; `width` is the longest line's. */
void   lw_paragraph_size   (const LwParagraph *paragraph,
                            double            *width,
                            double            *height);

/* Draws in the present ink, its top left corner at x, y; with `width` 0 the line begins at x. */
void   lw_paragraph_draw   (cairo_t           *cr,
                            const LwParagraph *paragraph,
                            double             x,
                            double             y);

/* How high a figure of such a font is for each point of its size, as it is drawn. */
double lw_paragraph_figure (gboolean           bold);

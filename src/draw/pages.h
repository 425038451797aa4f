/* Pages made of pieces, each in a place of its own: words, rules, frames, pictograms, pictures. First laid out, by
 * measuring, then drawn on whatever there is; a test can look at the places. Points. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/palette.h"
#include "season/kind.h"

/* A space at which no line breaks; lw_pages_text tells it as a usual one. */
#define LW_PAGES_NO_BREAK "\u00a0"
/* Joins what stands before it to what follows: no break in "kg/m²". Not told by lw_pages_text. */
#define LW_PAGES_JOINED "\u2060"

typedef struct
{
  double x, y, width, height;
} LwPlace;

typedef enum
{
  LW_PIECE_WORDS,
  LW_PIECE_RULE,      /* a line along the top of its place */
  LW_PIECE_FRAME,
  LW_PIECE_PICTOGRAM,
  LW_PIECE_PICTURE,
} LwPieceKind;

/* Draws into 0,0..width,height. */
typedef void (*LwPieceDraw) (cairo_t *cr,
                             double   width,
                             double   height,
                             gpointer data);

typedef struct
{
  LwPieceKind kind;
  guint page;
  LwPlace place;
  char *text;         /* of words */
  double size;
  gboolean bold;
  gboolean at_end;
  double line;        /* of a rule or frame, how wide */
  LwKind of;          /* of a pictogram */
  LwPieceDraw draw;   /* of a picture */
  gpointer data;
} LwPiece;

typedef struct
{
  double width, height;
  gboolean rtl;       /* places are then counted from the right until lw_pages_turn */
  guint n;            /* pages */
  GArray *pieces;     /* of LwPiece */
} LwPages;

/* Lines are no thinner than this: what a laser printer draws without gaps. Common practice, no source. */
#define LW_HAIRLINE 0.5

LwPages *lw_pages_new       (double       width,
                             double       height,
                             gboolean     rtl);
void     lw_pages_free      (LwPages     *pages);

/* Words on the last page, wrapped in `width`; returns their height. `pages` NULL: only measures. "" takes no room. */
double   lw_pages_words     (LwPages     *pages,
                             double       x,
                             double       y,
                             double       width,
                             double       size,
                             gboolean     bold,
                             const char  *text);
/* The same where each line ends at the end of `width`. */
double   lw_pages_words_end (LwPages     *pages,
                             double       x,
                             double       y,
                             double       width,
                             double       size,
                             gboolean     bold,
                             const char  *text);
void     lw_pages_rule      (LwPages     *pages,
                             double       x,
                             double       y,
                             double       width,
                             double       line);
void     lw_pages_frame     (LwPages     *pages,
                             LwPlace      place,
                             double       line);
void     lw_pages_pictogram (LwPages     *pages,
                             double       x,
                             double       y,
                             double       size,
                             LwKind       of);
void     lw_pages_picture   (LwPages     *pages,
                             LwPlace      place,
                             LwPieceDraw  draw,
                             gpointer     data);

/* Turns the places to the left-to-right x of the paper, once, when all is laid out. */
void     lw_pages_turn      (LwPages     *pages);

/* Black on white, on page `page` < n. */
void     lw_pages_draw      (cairo_t       *cr,
                             const LwPages *pages,
                             guint          page);

/* (transfer full) all words of the pages, a line for each piece. */
char    *lw_pages_text      (const LwPages *pages);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwPages, lw_pages_free)

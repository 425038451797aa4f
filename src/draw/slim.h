/* A slim block: a step of a batch laid over, with its kind, time and leading setting in one small line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/letter.h"
#include "season/season.h"

#define LW_SLIM_SIZE 0.78 /* of its words */

typedef struct
{
  const LwStep *step;
  double leading;   /* as it is in force */
  gboolean rtl;
  gboolean marked;  /* the mark of steps without a column stands over its end */
  gboolean after;   /* such a mark stands over its start */
} LwSlimLook;

/* What that mark takes of it. */
double lw_slim_mark   (const LwLetter   *letter);

/* Height for this lettering. */
double lw_slim_height (const LwLetter   *letter);

/* (transfer full) "19 h · 30 °C". */
char  *lw_slim_words  (const LwSlimLook *look);

/* (transfer full) (nullable) what of that fits whole into `room` px: all, else the time, else the leading setting. */
char  *lw_slim_fit    (cairo_t          *cr,
                       const LwSlimLook *look,
                       const LwLetter   *letter,
                       double            room);

/* Draws into 0,0..width,height, with the words that fit. */
void   lw_slim_draw   (cairo_t          *cr,
                       double            width,
                       double            height,
                       const LwSlimLook *look,
                       const LwLetter   *letter,
                       const LwPalette  *palette);

/* The mark of `n` steps that have no column, its middle at x. */
void   lw_slim_draw_gap (cairo_t         *cr,
                         double           x,
                         double           height,
                         guint            n,
                         const LwLetter  *letter,
                         const LwPalette *palette);

/* A step's block: pictogram, name, time and the line of its leading setting. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/letter.h"
#include "season/season.h"

typedef struct
{
  const LwStep *step;
  gboolean chosen;      /* the block in hand: drawn with the choice colour's edge */
  gboolean on_weather;  /* the leading setting follows the weather */
  double leading;       /* value to draw the line at, as it is in force */
  const char *before;   /* (nullable) what the change was: "25 → 35 min" */
  const char *led;      /* (nullable) and that of the leading setting, beside its line: "200 → 230 °C" */
  gboolean rtl;
} LwBlockLook;

/* Whether a block is too narrow for words: it shows its pictogram and its line alone. */
gboolean lw_block_is_slim (double             width);

/* Draws into 0,0..width,height. Narrow blocks put the time under the name. */
void   lw_block_draw    (cairo_t           *cr,
                         double             width,
                         double             height,
                         const LwBlockLook *look,
                         const LwLetter    *letter,
                         const LwPalette   *palette);

/* What `leading` is in a step of a batch: as given, where the kind starts, the mean over the step of the log
 * that it follows, or, `on_weather`, that of the weather. */
double lw_block_leading (const LwSeason    *season,
                         const LwBatch     *batch,
                         guint              step,
                         gboolean          *on_weather);

/* Height a block needs for this lettering. */
double lw_block_height  (const LwLetter    *letter);

/* y of the line for a value of the kind's leading setting, and back; clamped to its range. */
double lw_block_line_y  (LwKind             kind,
                         double             height,
                         const LwLetter    *letter,
                         double             value);
double lw_block_value   (LwKind             kind,
                         double             height,
                         const LwLetter    *letter,
                         double             y);

/* A kind's pictogram, our own, in a square of `size`; and its hatch over a rectangle. */
void   lw_pictogram_draw (cairo_t          *cr,
                          LwKind            kind,
                          double            x,
                          double            y,
                          double            size,
                          LwInk             ink);
void   lw_hatch_draw     (cairo_t          *cr,
                          LwKind            kind,
                          double            x,
                          double            y,
                          double            width,
                          double            height,
                          LwInk             ink);

/* The card's ground with the kind's hatch, within its round corners; its edge is drawn last, by lw_frame_edge. */
void   lw_hatch_frame    (cairo_t          *cr,
                          LwKind            kind,
                          double            width,
                          double            height,
                          const LwPalette  *palette);

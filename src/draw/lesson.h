/* A lesson on the wall: big blocks, three big curves, a play head and a caption, to be read from the back of the room. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/curve.h"
#include "draw/letter.h"
#include "study/guess.h"
#include "study/lesson-stops.h"

/* It is to be read from here, on a picture so high. The picture's height is assumed: that of a screen in a small room.
 * A figure must be as high as lw_card_figure says (draw/card.h, by Snellen), 17.5 mm, and no words are smaller. */
#define LW_LESSON_METRES 6.0
#define LW_LESSON_PICTURE_M 1.2

/* The whole batch is played in so long, s; a choice. */
#define LW_LESSON_PLAY_S 45.0

typedef struct
{
  guint n;
  const LwSeason *season;         /* of them all */
  const LwShown *shown;           /* n, the first is the one that the head is in */
  const LwCurves *const *curves;  /* LW_LESSON_CURVES of each, batch by batch */
  LwQuantity of[LW_LESSON_CURVES];
  gboolean by_clock;
  gboolean rtl;
  LwHead head;
  gboolean hides;                 /* what comes after the head is not to be seen, else it is faint */
  const char *title;
  const char *caption;
  const char *where;              /* (nullable) beside the title: the step and its time */
  int ask;                        /* the curve that is asked for, -1: none */
  gboolean answered;
  double pointed;                 /* a guess not yet named; NAN: none */
  const LwGuess *guesses;
  guint n_guesses;
} LwLessonLook;

/* Size of a font whose figures, at `least` of it, are high enough in a picture `height` px high. */
double   lw_lesson_letter   (double              height,
                             double              least);

/* Top and bottom of the plot of a curve. */
void     lw_lesson_plot     (double              height,
                             guint               curve,
                             double             *top,
                             double             *bottom);

/* The columns, as they lie in a picture of that size. */
void     lw_lesson_scale    (const LwLessonLook *look,
                             double              width,
                             double              height,
                             LwScale            *scale);

/* The value of the asked curve's panel at y; FALSE if it is not near its plot or nothing is asked. */
gboolean lw_lesson_value_at (const LwLessonLook *look,
                             double              width,
                             double              height,
                             double              y,
                             double             *value);

/* Lowest and highest value of a curve's panel. */
void     lw_lesson_range    (const LwLessonLook *look,
                             guint               curve,
                             double             *low,
                             double             *high);

void     lw_lesson_draw     (cairo_t            *cr,
                             double              width,
                             double              height,
                             const LwLessonLook *look,
                             const LwPalette    *palette);

/* The head after another `share` of the whole, as wide as it is drawn, FALSE at the end. Minutes are the first batch's. */
gboolean lw_head_advance    (LwHead             *head,
                             const LwBatch      *batch,
                             gboolean            by_clock,
                             double              share);

/* (transfer full) what is said at a stop, made from the numbers: `of` are the curves. */
char    *lw_lesson_says     (const LwShown      *shown,
                             guint               n,
                             const LwStop       *stop,
                             const LwLesson     *lesson,
                             const LwQuantity   *of);

/* (transfer full) the end of a curve's first batch, and how near the ranked guesses came. */
char    *lw_lesson_tells    (LwQuantity          of,
                             double              truth,
                             const LwGuess      *guesses,
                             guint               n);

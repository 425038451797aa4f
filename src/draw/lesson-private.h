/* What the lesson's files share: the places in its picture. lesson.c lays out and draws, lesson-curves.c the panels,
 * lesson-guess.c the guesses. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/lesson.h"
#include "draw/panel.h"

#define LW_LESSON_SMALL 0.8 /* of a panel's letters, the smallest words in it */

typedef struct
{
  double margin;
  double width;        /* of what stands in the margins */
  double blocks;       /* tops */
  double blocks_height;
  double ruler;
  double panels;
  double panel_height;
  double gap;
  double caption;
} LwLessonPlaces;

LwLessonPlaces lw_lesson_places (double              width,
                                 double              height);

/* The axis of a curve, wide enough for all batches. */
LwAxis         lw_lesson_axis   (const LwLessonLook *look,
                                 const LwScale      *scale,
                                 guint               curve);

/* Draw in a panel at 0,0..width,height. */
void           lw_lesson_curves (cairo_t            *cr,
                                 double              width,
                                 double              height,
                                 const LwLessonLook *look,
                                 const LwScale      *scale,
                                 guint               curve,
                                 const LwLetter     *letter,
                                 const LwPalette    *palette);
void           lw_lesson_guesses (cairo_t           *cr,
                                  double              width,
                                  const LwLessonLook *look,
                                  const LwScale      *scale,
                                  const LwAxis       *axis,
                                  double              top,
                                  double              bottom,
                                  const LwLetter     *letter,
                                  const LwPalette    *palette);

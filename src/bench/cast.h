/* The batches of a lesson, computed: their tracks, how their steps match, and the curves that are shown. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/lesson.h"

typedef struct
{
  LwSeason *season;
  guint n;                                 /* 0: nothing can be shown, and `failure` says why */
  LwShown shown[LW_LESSON_MOST_SHOWN];
  LwTrack *tracks[LW_LESSON_MOST_SHOWN];
  int *columns[LW_LESSON_MOST_SHOWN];
  LwQuantity of[LW_LESSON_CURVES];
  LwCurves *curves[LW_LESSON_MOST_SHOWN * LW_LESSON_CURVES];
  char *failure;                           /* (nullable) */
} LwCast;

/* Computes batches of the season by their places in it. */
LwCast *lw_cast_new    (LwSeason         *season,
                        const guint      *batches,
                        guint             n,
                        const LwQuantity *of);
void    lw_cast_free   (LwCast           *cast);

/* Shows another quantity in a curve's place. */
void    lw_cast_set_of (LwCast           *cast,
                        guint             curve,
                        LwQuantity        of);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwCast, lw_cast_free)

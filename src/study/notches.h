/* From the exact settings of a search to ones that a maker can set: notches that
 * together still do what is wanted. Private to reach.c. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/search.h"

/* What is known near the exact settings, and the choice among the notches there. */
typedef struct
{
  const LwSearch *search;
  const double *exact;              /* n_x, in the search's measure */
  double *stands;                   /* a want each: where it would stand at `exact`, in tolerances */
  double *slopes;                   /* wants * n_x */
  gboolean goal;                    /* whether the exact settings meet all wants */
  double values[LW_REACH_FREE];    /* the choice, in the settings' units */
  gboolean fine[LW_REACH_FREE];    /* whether the setting may stand on a fine notch */
} LwNotches;

/* `stands` and `slopes` are at `exact`; borrowed, and `stands` mended by lw_notches_learn. */
void     lw_notches_init   (LwNotches      *notches,
                            const LwSearch *search,
                            const double   *exact,
                            double         *stands,
                            double         *slopes,
                            gboolean        goal);

/* Chooses the best of the notches allowed. FALSE if that was chosen already. */
gboolean lw_notches_choose (LwNotches      *notches);

/* Allows fine notches to the one setting that gains most by them. FALSE if all have them. */
gboolean lw_notches_refine (LwNotches      *notches);

/* Whether the choice should leave every want about as well as the exact settings do. */
gboolean lw_notches_serve  (const LwNotches *notches);

/* Mends what is known by where the wants truly stand with the choice. */
void     lw_notches_learn  (LwNotches      *notches,
                            const double   *stands);

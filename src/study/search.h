/* One search of lw_reach: what its settings make of the batch, and the settings
 * that come nearest to the wants. Private to reach.c and notches.c. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/reach.h"

#define LW_SEARCH_SHARES 2   /* threads for slopes */

/* A setting in the search's own measure: minutes by their logarithm, all else as it is. */
typedef struct
{
  LwHandle handle;
  double start;   /* where the maker has it */
  double notch;   /* in the measure, > 0 */
  double low;
  double high;
  double least;   /* in the setting's unit: minutes that have passed already, else no bound */
} LwUnknown;

/* A want in tolerances; its window is a little narrower than the want's, so that what is reached is well within. */
typedef struct
{
  double per_unit; /* tolerances to one unit of the outcome, weighed */
  double low;
  double high;
} LwTarget;

typedef struct
{
  LwSeason *season;
  guint batch;
  guint last_step;           /* of all wants */
  const GArray *wants;
  GCancellable *cancellable;
  LwMarch *marches[LW_SEARCH_SHARES];
  LwTarget *targets;         /* one for each want */
  guint n_x;
  LwUnknown x[LW_REACH_FREE];
} LwSearch;

/* NULL if a march cannot be had. Borrows all it is given. */
LwSearch *lw_search_new      (LwSeason       *season,
                              guint           batch,
                              const GArray   *wants,
                              const GArray   *free,
                              GCancellable   *cancellable);
void      lw_search_free     (LwSearch       *search);

/* The time of the step under way is not to become shorter than what has passed. */
void      lw_search_pass     (LwSearch       *search,
                              LwInstant        now);

double    lw_search_measure  (const LwUnknown *unknown,
                              double          value);
double    lw_search_value    (const LwUnknown *unknown,
                              double          x);

/* (transfer full) the season with these values of the settings; those that the maker already has are left alone. */
LwSeason *lw_search_season   (const LwSearch *search,
                              const double   *values);

/* Where the wants stand at `x`, in tolerances. FALSE if that cannot be computed. */
gboolean  lw_search_look     (LwSearch       *search,
                              const double   *x,
                              double         *stands);

/* Their slopes at `x`, a row for each want. */
gboolean  lw_search_slopes   (LwSearch       *search,
                              const double   *x,
                              const double   *stands,
                              double         *slopes);

/* By how much a want at `stands` misses its window. */
double    lw_target_missed   (const LwTarget *target,
                              double          stands);

/* What a setting at `x` adds to the residuals: the pull back to where the maker has it. */
double    lw_unknown_pull    (const LwUnknown *unknown,
                              double          x);

/* Moves `x` to where wants and pull together are least. From `x`, and `tries` times from elsewhere while the wants
 * are not met. FALSE if cancelled or if nothing can be computed. */
gboolean  lw_search_run      (LwSearch       *search,
                              double         *x,
                              guint           tries);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSearch, lw_search_free)

/* Inverse design: which settings make a batch come out as wanted, by the least
 * change. The answer is rounded to usable notches and checked by a full run; what
 * cannot be had is told with its amount, never faked. Thread-safe; cancellable. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/knock.h"

#define LW_REACH_FREE 64  /* most settings that can be turned at once */

/* A moment of a batch under way. */
typedef struct
{
  guint step;
  double minute;   /* of it */
} LwInstant;

/* A window on an outcome at the end of a step; low = high to hold a value. An open side is infinite. */
typedef struct
{
  guint step;
  LwQuantity of;
  double low;
  double high;
  double weight;   /* > 0, usually 1 */
} LwWant;

/* How one want came out. */
typedef struct
{
  double value;
  double missed;   /* above (+) or below (-) the window, in the outcome's unit; 0: met */
  gboolean met;    /* within the window, or off by less than lw_want_tolerance */
} LwMet;

typedef struct
{
  LwSeason *season;  /* the batch with the settings found; the given one where nothing helps */
  LwOutcome end;
  guint n;
  LwMet *wants;      /* in the wants' order */
  gboolean all_met;
} LwReached;

/* The deviation of an outcome that a maker would not notice. */
double     lw_want_tolerance (LwQuantity      of);

/* The wants that a batch's aims state. (transfer full) array of LwWant. */
GArray    *lw_wants_of_aims  (const LwBatch  *batch);

/* Whether a setting of that kind of step is turned when nobody says: its time and leading setting, and cover and
 * pressure. */
gboolean   lw_reach_turns    (LwKind          kind,
                              LwSetting       setting);

/* Those settings of every step from `from` on that have room. (transfer full) array of LwHandle. */
GArray    *lw_reach_free     (const LwSeason *season,
                              guint           batch,
                              guint           from);

/* How the wants come out in `season` as it is. NULL if the batch cannot be computed. */
LwReached *lw_reach_judge    (LwSeason       *season,
                              guint           batch,
                              const GArray   *wants);

/* Turns the `free` handles (LwHandle, at most LW_REACH_FREE) of the batch until the `wants` (LwWant) are met; a
 * batch that meets them all stays as it is. `near` (nullable) is a season whose batch holds settings to start from: the last
 * answer while something is dragged; the least change still counts from `season`, and the search then starts
 * nowhere else. NULL if cancelled or if the batch cannot be computed. */
LwReached *lw_reach          (LwSeason       *season,
                              guint           batch,
                              const GArray   *wants,
                              const GArray   *free,
                              LwSeason       *near,
                              GCancellable   *cancellable);
/* The same from the maker's own settings, where the time of the step under way is not to become shorter than what has passed
 * `now`. `free` holds nothing of steps before it. */
LwReached *lw_reach_from     (LwSeason       *season,
                              guint           batch,
                              const GArray   *wants,
                              const GArray   *free,
                              LwInstant        now,
                              GCancellable   *cancellable);
void       lw_reached_free   (LwReached      *reached);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwReached, lw_reached_free)

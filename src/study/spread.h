/* Steady through the weather: what a batch comes to when leaf, weather and hand vary, how often it
 * meets its aims, and which source of variation matters most. Thread-safe; cancellable;
 * the same seed gives the same bytes on any number of threads. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/chance.h"
#include "study/indices.h"
#include "study/many.h"
#include "study/reach.h"
#include "study/tally.h"

#define LW_SPREAD_MOST 16384       /* samples */
#define LW_SPREAD_MOST_POINTS 64
#define LW_SPREAD_TOLERANCE 1e-5   /* of the marches, relative: far below what varies */

typedef struct
{
  LwVary varies[LW_N_VARY];
  guint samples;        /* 2 to LW_SPREAD_MOST */
  guint rows;           /* samples from which the sources' shares come, at most `samples`; 0: no shares. Each costs
                         * one more march, and another for each source */
  guint points;         /* equal intervals per step for the bands, at most LW_SPREAD_MOST_POINTS; 0: no bands */
  guint32 seed;         /* at least 1 */
  guint threads;        /* 0: one for each processor */
  LwProgress progress;  /* (nullable) counts marches */
  gpointer progress_data;
} LwSpreadAsk;

/* At the end of a step. */
typedef struct
{
  guint step;
  LwSpan of[LW_N_QUANTITIES];
} LwSpreadEnd;

typedef struct
{
  LwWant want;
  guint inside;         /* samples within the window, exactly */
  double share;
  double share_se;
  double ppk;           /* lw_span_ppk of the window's limits */
  double normal;        /* share that would be inside if samples were normally distributed, as Ppk takes them to be;
                         * NAN where there is no Ppk */
} LwSpreadAim;

/* By how much the shares may differ before Ppk is told to mislead: standard errors, and of all; assumed. */
#define LW_NORMAL_ERRORS 3
#define LW_NORMAL_OFF 0.01

typedef struct
{
  guint samples;
  guint failed;         /* samples that could not be computed: outside every aim, in no span */
  guint n_ends;         /* steps with aims, and the last; in order */
  LwSpreadEnd *ends;
  guint n_aims;         /* as lw_wants_of_aims: those of the finished tea last */
  LwSpreadAim *aims;
  guint inside;         /* every aim; all samples computed where there is none */
  double share;
  double share_se;

  guint n_sources;      /* those that act on this batch, in the table's order, straying or not */
  LwVarySource *sources;
  guint rows;
  LwIndex *indices;     /* [end][quantity][source]; NULL without rows. What does not stray has 0 */

  guint n_steps;
  guint points;
  LwSpan *bands;        /* [step][point 0..points][quantity], at equal shares of each step's time; NULL without */
} LwSpread;

/* The usual: all sources at their usual amounts, 2000 samples, 128 rows, no bands, seed 1. */
void           lw_spread_ask_init (LwSpreadAsk  *ask);

/* NULL if cancelled, if the batch has no step, or if it cannot be computed as it stands. */
LwSpread      *lw_spread_new      (LwSeason          *season,
                                   guint              batch,
                                   const LwSpreadAsk *ask,
                                   GCancellable      *cancellable);
void           lw_spread_free     (LwSpread          *spread);

const LwIndex *lw_spread_index    (const LwSpread    *spread,
                                   guint              end,
                                   LwQuantity         of,
                                   guint              source);
const LwSpan  *lw_spread_band     (const LwSpread    *spread,
                                   guint              step,
                                   guint              point,
                                   LwQuantity         of);
/* The place among the ends of a step that is one of them. */
guint          lw_spread_end      (const LwSpread    *spread,
                                   guint              step);

/* The window's limits, +-INFINITY where there is none: an end of what can be aimed at at all, such as 0 % of enzyme, is a
 * bound that nature sets and no limit that could be passed. FALSE where neither side has one. */
gboolean       lw_want_limits     (const LwWant      *want,
                                   double            *low,
                                   double            *high);
/* Whether the samples are so unlike a normal distribution that Ppk says another share than was counted. */
gboolean       lw_spread_misleads (const LwSpreadAim *aim);

/* Whether `value` is within the window, its ends included; NAN is not. */
gboolean       lw_want_holds      (const LwWant      *want,
                                   double             value);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSpread, lw_spread_free)

/* How steadily the batch in hand comes out: what varies and by how much, and the answers to two questions asked in a
 * thread, on all cores: how it spreads, and which settings are steadier. Belongs to a session; knows no widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/session.h"
#include "study/steadier.h"

#define LW_STEADY_POINTS 24 /* intervals of each step in the bands */

typedef enum
{
  LW_STEADY_RESTS,
  LW_STEADY_SPREADS,  /* samples are computed */
  LW_STEADY_SEEKS,    /* steadier settings are looked for */
} LwSteadyWork;

#define LW_TYPE_STEADY (lw_steady_get_type ())
G_DECLARE_FINAL_TYPE (LwSteady, lw_steady, LW, STEADY, GObject)

/* Signals:
 * "asked": an amount, the number of samples, the seed or the wish to go on by itself changed.
 * "work": a computation began, came on or ended.
 * "result": there is another result, or the one there is became outdated or right again. */

/* (transfer none) the one of a session; made when it is asked for first. */
LwSteady         *lw_steady_of       (LwSession   *session);

/* What is asked. Samples and seed are brought into range, an amount is one that lw_vary_parse
 * would take. */
const LwSpreadAsk *lw_steady_ask     (LwSteady    *self);
void              lw_steady_vary     (LwSteady    *self,
                                      LwVarySource source,
                                      LwVary       vary);
void              lw_steady_sample   (LwSteady    *self,
                                      guint        samples,
                                      guint32      seed);
/* Whether it is computed again after each change of the batch, once that has ended. */
gboolean          lw_steady_goes_on  (LwSteady    *self);
void              lw_steady_go_on    (LwSteady    *self,
                                      gboolean     goes_on);

/* Whether the batch in hand has a step that something could vary in. */
gboolean          lw_steady_can      (LwSteady    *self);
/* Starts to compute; what is under way is called off. Nothing if there is no step. */
void              lw_steady_spread   (LwSteady    *self);
/* Looks for steadier settings; those that are pinned stay. Nothing if there is no aim. */
void              lw_steady_seek     (LwSteady    *self);
void              lw_steady_cancel   (LwSteady    *self);
LwSteadyWork      lw_steady_work     (LwSteady    *self);
/* 0 to 1. */
double            lw_steady_done     (LwSteady    *self);

/* (transfer none) (nullable) the last spread of the batch in hand. */
const LwSpread   *lw_steady_result   (LwSteady    *self);
/* Whether it is of the batch as it is shown, and of what is asked. */
gboolean          lw_steady_is_fresh (LwSteady    *self);
/* (transfer none) (nullable) the result, while it is fresh: what the panels' bands show. */
const LwSpread   *lw_steady_bands    (LwSteady    *self);
/* Whether the last question could not be answered, and the batch is still the one it was asked of. */
gboolean          lw_steady_failed   (LwSteady    *self);

/* (transfer none) (nullable) what was found for the batch as it is. */
const LwSteadier *lw_steady_found    (LwSteady    *self);
/* (transfer full) (nullable) array of LwChange: what it would make of the batch's settings. */
GArray           *lw_steady_found_changes (LwSteady *self);
/* Makes its settings the batch's, by one edit, or drops it. */
void              lw_steady_take     (LwSteady    *self);
void              lw_steady_leave    (LwSteady    *self);

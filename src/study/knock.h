/* Knock-on: what one notch of each setting does to each outcome, earlier and later
 * steps alike. Pure; thread-safe; can be cancelled. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "season/surround.h"

/* A setting of a step of a batch. */
typedef struct
{
  guint step;
  LwSetting setting;
} LwHandle;

typedef struct
{
  LwHandle handle;
  double notch;                     /* what was added to the setting, in its unit */
  double effect[LW_N_QUANTITIES];   /* change of the outcome at the asked step's end, in its unit; NAN where the
                                     * batch cannot be computed with the notch */
} LwKnock;

/* Relative tolerance of the marches: small differences of large numbers are wanted. */
#define LW_KNOCK_TOLERANCE 1e-6

/* What may be turned in a batch: every setting of every step that does not follow the weather and has room
 * for a notch. (transfer full) array of LwHandle. */
GArray *lw_handles_of (const LwSeason *season,
                       guint           batch);

/* Whether an array of LwHandle has this one. */
gboolean lw_handles_hold (const GArray *handles,
                          LwHandle      handle);

/* One notch of a setting: for minutes by their size, else the setting's own; negative where the range ends,
 * 0 where it has no room at all. */
double  lw_handle_notch (const LwBatch  *batch,
                         const LwHandle *handle);

/* (transfer full) array of LwKnock for the outcomes at the end of `step` (-1: the last), in the handles'
 * order. The effect is that of the whole notch, computed anew, not a tangent. NULL if cancelled or if
 * the batch itself cannot be computed so far. Two threads share the work; the numbers do not hang on that. */
GArray *lw_knock_on   (LwSeason       *season,
                       guint           batch,
                       int             step,
                       GCancellable   *cancellable);

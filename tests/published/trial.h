/* A trial: the starting leaf through steps that resemble a published experiment. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/surround.h"

#define TRIAL_SETTINGS 8

typedef struct
{
  LwSetting setting;
  double value;
} TrialGiven;

typedef struct
{
  LwKind kind;
  double minutes;
  TrialGiven given[TRIAL_SETTINGS]; /* ends with a zero for minutes */
} TrialStep;

#define SET(setting, value) { LW_SET_##setting, value }
#define STEP(kind, minutes, ...) { LW_KIND_##kind, minutes, { __VA_ARGS__ } }

/* Leaf plucked with `fresh_pct` water, at sea level and 25 degrees north, begun at `hour` of a
 * clear day in mid-April. */
LwTrack *trial_run (double           fresh_pct,
                    double           hour,
                    const TrialStep *steps,
                    guint            n);

#define TRIAL(fresh_pct, hour, ...) \
  trial_run (fresh_pct, hour, (const TrialStep[]) { __VA_ARGS__ }, G_N_ELEMENTS (((const TrialStep[]) { __VA_ARGS__ })))

/* The batch's mean, `minutes` into the last step, or at its end. */
LwOutcome trial_at  (const LwTrack   *track,
                     double           minutes);
LwOutcome trial_end (const LwTrack   *track);

/* Minutes into the last step until the batch's `quantity` passes `value`; INFINITY if never. */
double   trial_minutes_until (const LwTrack *track,
                              LwQuantity     quantity,
                              double         value);

/* Mass lost since plucking, percent. */
double   trial_loss_pct (LwOutcome outcome);

/* Lewis constant of the last step, 1/h: from the start to where the water still to go (over `rest`)
 * has fallen to a tenth. */
double   trial_lewis_h  (const LwTrack *track,
                         double         rest);

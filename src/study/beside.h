/* A weigh-in beside what the model says of that moment. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/track.h"
#include "season/season.h"

typedef struct
{
  int of;          /* the LwQuantity they are told in: of a weight, moisture; -1: the wall, °C */
  double measured; /* in its unit */
  double sd;       /* of `measured` */
  double model;    /* the track's, or the wall as it is set */
  double off_sds;  /* measured less model, in standard deviations */
} LwBeside;

/* FALSE if there is nothing to compare: a note, a moment past the step's end or not computed, or a wall where the step
 * has none. `track` (nullable) is the batch's, `fresh_moisture_pct` its fresh leaf's. */
gboolean lw_beside (const LwBatch   *batch,
                    guint            step,
                    const LwWeighIn *weigh_in,
                    const LwTrack   *track,
                    double           fresh_moisture_pct,
                    LwBeside        *beside);

/* What happened to a batch: the states of every part on a time grid, step by
 * step. Immutable once made, reference-counted; steps are shared between tracks. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/turning.h"

/* One step's states. `states` holds n moments of n_parts states side by side. */
typedef struct
{
  double duration_s;
  guint n;          /* samples, at least 2 */
  guint n_parts;
  double *time_s;   /* from the step's start; the first is 0, the last the duration; twice the same where the states
                     * jump (leaf/jump.h): before, and from there on */
  LwState *states;
  guint n_turns;    /* turning points, in the order of time */
  LwTurn *turns;
} LwSegment;

/* Why and where an integration stopped; `failed` FALSE for a whole track. */
typedef struct
{
  gboolean failed;
  guint step;       /* from 0 */
  double time_s;    /* into the step */
  int code;         /* the solver's own, CV_... */
} LwFailure;

typedef struct
{
  guint n_steps;    /* whole steps held; those before the failed one where failed */
  guint n_parts;
  LwPart *parts;
  LwLeaf leaf;      /* its parts are `parts` */
  LwSegment **steps;
  LwFailure failure;
} LwTrack;

LwTrack       *lw_track_ref        (LwTrack         *track);
void           lw_track_unref      (LwTrack         *track);

/* State of `part` at sample `i` of `step`. */
const LwState *lw_track_state      (const LwTrack   *track,
                                    guint            step,
                                    guint            part,
                                    guint            i);

/* State of `part`, `t_s` into `step`, between the samples. */
LwState        lw_track_state_at   (const LwTrack   *track,
                                    guint            step,
                                    guint            part,
                                    double           t_s);

/* Outcome of the whole batch, or of one part, at a sample; `part` -1 is the mean. */
LwOutcome      lw_track_outcome    (const LwTrack   *track,
                                    guint            step,
                                    int              part,
                                    guint            i);
LwOutcome      lw_track_outcome_at (const LwTrack   *track,
                                    guint            step,
                                    int              part,
                                    double           t_s);

/* At the end of `step`. */
LwOutcome      lw_track_end        (const LwTrack   *track,
                                    guint            step,
                                    int              part);

LwSegment     *lw_segment_new      (double           duration_s,
                                    guint            n,
                                    guint            n_parts);
/* The sample after a jump, 0 if there is none. */
guint          lw_segment_jump     (const LwSegment *segment);
LwSegment     *lw_segment_ref      (LwSegment       *segment);
void           lw_segment_unref    (LwSegment       *segment);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwTrack, lw_track_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwSegment, lw_segment_unref)

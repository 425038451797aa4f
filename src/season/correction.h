/* Corrections: at a moment of a batch that was weighed or judged, what its measurements changed in what is known of the
 * leaf. Values; the curves start anew from there. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "leaf/jump.h"
#include "season/season.h"

/* A weigh-in without its note, and the step it is of. */
typedef struct
{
  guint step;
  LwWeighIn weigh_in;
} LwWeighed;

struct _LwCorrection
{
  double minute;        /* from its step's start; where the step is shorter it comes at its end */
  double fresh_points;  /* of the batch's fresh moisture, % points: of the whole batch, not only from there on */
  LwJump *jump;         /* of every part's state */
  guint n_by;
  LwWeighed *by;        /* what it went by */
};

/* A state in the document: attribute, range of a shift. */
typedef struct
{
  const char *id;
  double low;
  double high;
  gsize offset;         /* of the double in LwState */
} LwShiftRow;

#define LW_MOST_FRESH_POINTS 42.0  /* as wide as the range of fresh moisture */

const LwShiftRow *lw_shift_rows (void);  /* LW_N_STATE */

/* (transfer full) what it goes by is what `batch` has weighed up to that moment. */
LwCorrection *lw_correction_new   (const LwBatch      *batch,
                                   guint               step,
                                   double              minute,
                                   double              fresh_points,
                                   const LwState      *shifts,
                                   guint               n_parts);
LwCorrection *lw_correction_ref   (LwCorrection       *correction);
void          lw_correction_unref (LwCorrection       *correction);

/* (transfer full) array of LwWeighed: what tells of the leaf in steps up to `step`, there up to `minute`. */
GArray       *lw_weighed_until    (const LwBatch      *batch,
                                   guint               step,
                                   double              minute);

/* (nullable) the step's correction, if what it went by is still what was weighed up to its moment; one that is not
 * counts for nothing and is not saved. */
const LwCorrection *lw_correction_of (const LwBatch   *batch,
                                      guint            step);

/* Takes over the correction (nullable) in the place of the step's. */
void          lw_batch_set_correction   (LwBatch      *batch,
                                         guint         step,
                                         LwCorrection *correction);
void          lw_batch_drop_corrections (LwBatch      *batch);

/* Fresh moisture of the batch, wet basis %: its own or its leaf's (`profile`, nullable), and what corrections add. */
double        lw_batch_fresh_moisture   (const LwBatch   *batch,
                                         const LwProfile *profile);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwCorrection, lw_correction_unref)

/* Weigh-ins as a maker enters them: what is refused, and the edits that add, change and remove one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

/* What of a weigh-in is refused, so that it can be told at its field. */
typedef enum
{
  LW_WEIGH_VALUE,
  LW_WEIGH_TARE,
  LW_WEIGH_SD,
  LW_WEIGH_MINUTE,
  LW_WEIGH_NOTE,
} LwWeighField;

/* Whether the document can hold it, in a step that lasts or may last `most_minutes`; NAN is no number. Else `field` is
 * the first that is wrong, and `error` says what it may be. */
gboolean  lw_weigh_in_check       (const LwWeighIn *weigh_in,
                                   double           most_minutes,
                                   LwWeighField    *field,
                                   GError         **error);

/* Whether they say the same, notes included. */
gboolean  lw_weigh_in_same        (const LwWeighIn *a,
                                   const LwWeighIn *b);

/* Copies it to where its minute belongs among the step's others: after those of the same minute. The batch is one's own. */
void      lw_batch_place_weigh_in (LwBatch         *batch,
                                   guint            step,
                                   const LwWeighIn *weigh_in);

/* Each returns (transfer full) a new season; indices must be in range. Notes are copied. A step's weigh-ins stay in the
 * order of time: what is added stands after those of the same minute, what is changed stays where it may. */
LwSeason *lw_edit_add_weigh_in    (const LwSeason  *season,
                                   guint            batch,
                                   guint            step,
                                   LwWeighIn        weigh_in);
LwSeason *lw_edit_change_weigh_in (const LwSeason  *season,
                                   guint            batch,
                                   guint            step,
                                   guint            at,
                                   LwWeighIn        weigh_in);
LwSeason *lw_edit_remove_weigh_in (const LwSeason  *season,
                                   guint            batch,
                                   guint            step,
                                   guint            at);

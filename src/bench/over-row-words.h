/* What a row of a batch laid over says: its steps, and which have no match. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/laid.h"

/* (transfer full) "wither, 19 h · 30 °C". */
char *lw_over_say_step    (const LwLaid  *laid,
                           guint          step);

/* (transfer full) all its steps. */
char *lw_over_say_steps   (const LwLaid  *laid);

/* (transfer full) the steps from `first` that have no match, up to the next that has; "" if there are none. */
char *lw_over_say_gap     (const LwLaid  *laid,
                           guint          first);

/* (transfer full) that it has no step like this one of the batch in hand. */
char *lw_over_say_missing (const LwLaid  *laid,
                           const LwBatch *in_hand,
                           guint          step);

/* (transfer full) by the clock, which of its time is not shown, "" if all is: it begins `begins` minutes after the batch in
 * hand, which lasts `shown`. */
char *lw_over_say_beyond  (const LwLaid  *laid,
                           double         begins,
                           double         shown);

/* (transfer full) all of both that has no match by steps. */
char *lw_over_say_gaps    (const LwLaid  *laid,
                           const LwBatch *in_hand);

/* Whether a step of it has the column. */
gboolean lw_over_has_column (const LwLaid *laid,
                             guint         column);

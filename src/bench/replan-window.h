/* Asks how the rest of the batch in hand is to be planned anew, shows the answer, and takes it or leaves it: one edit. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"
#include "study/replan.h"

/* `now` (nullable): how far the batch has come; NULL: as far as its last weigh-in. FALSE, and nothing opened, where nothing
 * that tells of the leaf was weighed up to there. */
gboolean lw_replan_window_open (GtkWindow      *parent,
                                LwSession      *session,
                                const LwInstant *now);

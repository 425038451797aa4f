/* The windows on what is written down of a batch and of the season besides the steps. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/session.h"

#include <gtk/gtk.h>

/* Opens over `parent`; Apply is one edit. There must be a batch in hand. `running`: its start and state are the run's. */
void lw_batch_facts_open  (GtkWindow *parent,
                           LwSession *session,
                           gboolean   running);
void lw_season_facts_open (GtkWindow *parent,
                           LwSession *session);

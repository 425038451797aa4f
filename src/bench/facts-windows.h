/* The windows on what is written down besides the steps: of a batch, of the season, of a weather. */
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

/* A weather made up for the batch in hand, or `change`: that which it has, for all batches that have it. */
void     lw_weather_facts_open       (GtkWindow *parent,
                                      LwSession *session,
                                      gboolean   change);
/* Whether the batch in hand has one that was made up. */
gboolean lw_weather_facts_can_change (LwSession *session);

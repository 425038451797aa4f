/* The three invented plots of the demo garden, and the leaf that truly grows there:
 * the weigh-ins are drawn from the second, so that a fit has something to find. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

#define DEMO_N_PLOTS 3

/* (transfer full) the profile of plot `i` as the season ships it. */
LwProfile *demo_plot          (guint           i);

/* (transfer full) a season of the same place and weather whose plots bear the hidden leaf; `batch`
 * is its only one. */
LwSeason  *demo_hidden_season (const LwSeason *season,
                               const LwBatch  *batch);

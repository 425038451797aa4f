/* A batch as it was when something was asked of it, so that the answer can be told from an outdated one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/session.h"
#include "study/spread.h"

/* Holds on to the season; NULL: nothing was asked. */
typedef struct
{
  LwSeason *season;
  guint batch;
} LwAsked;

void     lw_asked_take    (LwAsked           *asked,
                           const LwAsked     *other);
void     lw_asked_clear   (LwAsked           *asked);

/* Whether the session's batch in hand still is that one: itself, its leaf, its weather and its place. */
gboolean lw_asked_holds   (const LwAsked     *asked,
                           LwSession         *session);

/* (transfer full) array of LwChange: by which settings the same batch of `season` differs. */
GArray  *lw_asked_changes (const LwAsked     *asked,
                           const LwSeason    *season);

/* Whether both ask for the same amounts, samples and seed. */
gboolean lw_asked_same    (const LwSpreadAsk *a,
                           const LwSpreadAsk *b);

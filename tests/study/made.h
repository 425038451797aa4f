/* Batches of the starting leaf for the tests of this floor. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/knock.h"

/* (transfer full) a season of one batch, "1", of these steps as they start; no weather. */
LwSeason *made_season (const LwKind *kinds,
                       guint         n);

/* Replaces *season by one in which the first batch has the setting so. */
void      made_set    (LwSeason    **season,
                       guint         step,
                       LwSetting     setting,
                       double        value);

double    made_get    (const LwSeason *season,
                       guint         step,
                       LwSetting     setting);

/* The outcome at the end of the step, with a march of its own; `tolerance` 0: the usual one. */
LwOutcome made_end    (LwSeason     *season,
                       guint         step,
                       double        tolerance);

/* Puts an aim, or one in its place; `step` -1: the finished tea. */
void      made_aim    (LwSeason    **season,
                       int           step,
                       LwQuantity    of,
                       double        low,
                       double        high);

/* (transfer full) a pan and a roll, with an aim at moisture after the pan and one at rupture after the roll, which
 * they meet. */
LwSeason *made_aimed  (void);

/* The steps of that. */
extern const LwKind made_two[2];

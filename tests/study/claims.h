/* Whether a sentence of "Why here" is true. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "made.h"
#include "study/why.h"

typedef struct
{
  LwSeason *season;
  LwPlan *plan;
  LwTrack *track;
} Made;

/* Asserts that what is said holds; `per_h` is the rate in trade units an hour. */
void claims_assert (const Made  *made,
                    const LwWhy *why,
                    double       per_h);

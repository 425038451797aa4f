/* The sentence of a LwWhy. Only for why.c. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/why.h"

/* (transfer full) chooses the kind and says it. */
char *lw_why_sentence (const LwWhy   *why,
                       const LwPlan  *plan,
                       const LwTrack *track,
                       LwWhyKind     *kind);

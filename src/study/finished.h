/* What a batch comes to: the outcome of the finished tea. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/surround.h"

/* FALSE if the batch has no steps, or one of them cannot be computed. */
gboolean lw_finished (LwSeason  *season,
                      guint      batch,
                      LwMarch   *march,
                      LwOutcome *outcome);

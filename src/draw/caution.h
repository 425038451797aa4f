/* The cautions that fit the steps of a batch. docs/safety.md has what stands behind them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

/* (transfer full) the cautions for the batch's steps, translated, each a sentence or two; the last is always that local
 * codes and licensed practice are to be followed. Ends with NULL. */
GStrv lw_cautions (const LwBatch *batch);

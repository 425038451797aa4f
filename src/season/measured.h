/* What a weigh-in says of an outcome: the one place where a weight becomes a quantity. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

/* What `weigh_in` of a batch of `fresh_kg` says of `of`, `off` standard deviations up, in the quantity's unit;
 * `fresh_moisture_pct` is that of the batch's leaf. A weight tells of LW_WEIGHT and of LW_MOISTURE, all else of its
 * measure's own quantity. FALSE if it says nothing of it. */
gboolean lw_measured (const LwWeighIn *weigh_in,
                      LwQuantity       of,
                      double           fresh_kg,
                      double           fresh_moisture_pct,
                      double           off,
                      double          *value);

/* Moisture of the batch's fresh leaf, percent wet basis: its own or its leaf's; NAN if the season has no such leaf. */
double   lw_fresh_moisture_pct (const LwSeason *season,
                                const LwBatch  *batch);
/* What its instrument should show, in its unit and with its tare, where the leaf is as `outcome` says. */
double   lw_foretold (const LwWeighIn *weigh_in,
                      const LwOutcome *outcome,
                      double           fresh_kg);

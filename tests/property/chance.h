/* Batches by chance: every setting, leaf and weather that a document can hold. The same seed is the same batch. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

/* (transfer full) a season of one batch. */
LwSeason *chance_season (guint32 seed);

/* A number of the range, by its logarithm where that spans a decade; the ends come up, too. */
double    chance_number (GRand  *dice,
                         double  low,
                         double  high);

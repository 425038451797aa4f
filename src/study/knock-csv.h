/* Knock-on as comma-separated text (RFC 4180), numbers in the C locale. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "study/knock.h"

/* (transfer full) a line of names, then a row for each LwKnock of the batch, in the order given: step (from 1),
 * kind, setting, unit, value, notch and the change of each outcome, empty where it cannot be computed. */
char *lw_knock_csv (const LwBatch *batch,
                    const GArray  *knocks);

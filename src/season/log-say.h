/* Words about logs, for the window and the command line. All are (transfer full), translated. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/log-csv.h"

/* "86400 rows, lines 2 to 86401; 12 rows left out, of 3 a part. It lasts 24 h." */
char *lw_say_taken   (const LwLogTaken *taken);

/* (nullable) how far off it is for a step that follows it, where that is more than can be overlooked. */
char *lw_say_log_off (const LwFollowed *followed);

/* "“Pan (°F)”: wall, 25.1 to 280 °C, turned from °F, 4270 points kept within 0.2 °C." */
char *lw_say_curve   (const LwLogCurve *curve,
                      const LwLogTable *table);

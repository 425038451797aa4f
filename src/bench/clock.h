/* What time it is: the one place where the window asks the wall clock. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Seconds since 1970, UTC, by the wall clock. Tests set its pace: LEAFWEND_CLOCK="1790000000,60" lets it go 60 times as
 * fast since that moment, the same for every program that is told so. */
double lw_clock_now_s   (void);

/* How far it is from one that goes on under a closed lid and that nobody can set: changes when the wall clock is set. Always
 * 0 where the system has no such clock. */
double lw_clock_offset_s (void);

/* How fast it goes; 1 but in tests. */
double lw_clock_pace    (void);

/* The same moment by the clock on the wall here, as LwBatch.when_s counts. */
gint64 lw_clock_place_s (double now_s);

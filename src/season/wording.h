/* How the trade says numbers: times, weights, temperatures, dates. Translated, in
 * the user's number format; nothing here is ever parsed back or put in a document. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/kind.h"

/* (transfer full) "18 h 20 min", "5 min 30 s", "45 s". */
char *lw_say_minutes (double    minutes);

/* (transfer full) the value with its unit: "260 °C". */
char *lw_say_setting (LwSetting setting,
                      double    value);

/* (transfer full) a weight as a scale of the trade tells it: "7.10 kg", "24.1 kg", "850 g". */
char *lw_say_kg      (double    kg);

/* (transfer full) "12 Apr 2026". */
char *lw_say_date    (gint64    when_s);

/* (transfer full) the day without its year, the time of day, both: "12 Apr", "14:30", "12 Apr, 14:30". */
char *lw_say_day     (gint64    when_s);
char *lw_say_clock   (gint64    when_s);
char *lw_say_moment  (gint64    when_s);

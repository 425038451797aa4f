/* A number as a maker types it, and the field for it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "season/kind.h"

/* Reads "18 h 20 min", "5 min 30 s", "90" (minutes) or "1:30" (hours and minutes), with the user's decimal
 * sign. FALSE if it is none of these. */
gboolean   lw_entry_parse_minutes (const char *text,
                                   double     *minutes);

/* Reads one number with the user's decimal sign. FALSE if it is none. */
gboolean   lw_entry_parse_number  (const char *text,
                                   double     *value);

/* A number in a field for text: it is the one that was put there until its text is changed, so that no digit is lost by
 * looking at it. NAN if there is no number; none is shown for NAN. */
void       lw_entry_put_number    (GtkWidget  *entry,
                                   double      value);
double     lw_entry_number_of     (GtkWidget  *entry);

/* A spin button for a setting of a kind. Signal "refused" is not needed: `refused` (transfer none) is a label
 * that says why what was typed cannot be. */
GtkWidget *lw_entry_new           (LwKind      kind,
                                   LwSetting   setting,
                                   double      value,
                                   GtkLabel   *refused);

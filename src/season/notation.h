/* How the document writes a number and a time of the place's clock, the same in
 * every language. Reading takes exactly that notation, without blanks. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* For the schema. */
#define LW_NUMBER_PATTERN "-?[0-9]+(\\.[0-9]+)?([eE][+\\-]?[0-9]+)?"

/* A number too large for a double is read as infinite. */
gboolean lw_number_parse (const char *text,
                          double     *value);

/* (transfer full) the shortest text that reads back to `value`. */
char    *lw_number_text  (double      value);

/* "2026-04-12T10:30", with seconds if there are any; years 1 to 9999. */
gboolean lw_time_parse   (const char *text,
                          gint64     *when_s);

/* (transfer full) "" if `when_s` is out of those years. */
char    *lw_time_text    (gint64      when_s);

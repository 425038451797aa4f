/* Tables in text as spreadsheets write them: lines, cells, numbers, times. Knows nothing
 * of what they mean. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* (transfer full) the bytes as UTF-8, which they may be or else Windows-1252; NULL, and a problem added, if they
 * are no text or more than `most`. */
char      *lw_table_text      (const char *data,
                               gsize       length,
                               gsize       most,
                               GPtrArray  *problems);

/* The line at `*at`, cut off there; `*at` goes on to the next. */
const char *lw_table_line     (char      **at);

/* Whether there is nothing in the line, or it begins with "#", or with "sep=" as spreadsheets name a separator. */
gboolean   lw_table_is_empty  (const char *line);

/* What parts the cells of a line of names: tab, semicolon or comma, the first of these that is there. */
char       lw_table_separator (const char *line);

/* (transfer full) the cells, without blanks and quotes around them. */
GPtrArray *lw_table_cells     (const char *line,
                               char        separator);

/* How many cells the line has. */
guint      lw_table_count     (const char *line,
                               char        separator);

/* Cuts the line into its cells in place, without blanks and quotes around them, the first `most` into `cells`;
 * returns how many these are. */
guint      lw_table_split     (char       *line,
                               char        separator,
                               const char **cells,
                               guint       most);

/* Digits with a point or a comma. */
gboolean   lw_table_number    (const char *cell,
                               double     *value);

/* "2026-04-12T10:00", "2026-04-12 10:00" or "12.4.2026 10:00", with seconds if there are any. */
gboolean   lw_table_time      (const char *cell,
                               gint64     *when_s);

/* The same with parts of a second if there are any: seconds since 1970. */
gboolean   lw_table_moment    (const char *cell,
                               double     *when_s);

/* "10:00", "9:05:30", "9:05:30.25" or "9:05:30 PM": seconds since midnight. */
gboolean   lw_table_clock     (const char *cell,
                               double     *since_s);

/* "90:05" or "90:05.5", minutes and seconds, or "25:00:05", hours too: seconds. */
gboolean   lw_table_stopwatch (const char *cell,
                               double     *since_s);

/* (transfer full) fit to stand in a message: one line, not long. */
char      *lw_table_quote     (const char *cell);

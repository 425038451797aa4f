/* A log's file as a table: rows of cells with their lines, and what each column is taken for.
 * What it may look like: docs/document.md, "Temperature logs". */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/log-columns.h"
#include "season/problem.h"

typedef struct
{
  char *text;             /* cut into the cells */
  guint n_columns;
  LwLogColumn *columns;   /* their use and time may be changed */
  guint n_rows;
  guint *lines;           /* of the file, of each row */
  const char **cells;     /* n_rows * n_columns; "" where a row ends before */
  GPtrArray *problems;    /* lines that are no rows */
} LwLogTable;

/* (transfer full) NULL, with at least one problem added, if there is no table in it. */
LwLogTable *lw_log_table_read (const char       *data,
                               gsize             length,
                               GPtrArray        *problems);
/* Reads the file; one that cannot be read at all is one problem with line 0. */
LwLogTable *lw_log_table_load (const char       *path,
                               GPtrArray        *problems);
void        lw_log_table_free (LwLogTable       *table);

/* Gives a column its use; another that was the time, or the date, is then none. */
void        lw_log_table_use  (LwLogTable       *table,
                               guint             column,
                               LwLogUse          use);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwLogTable, lw_log_table_free)

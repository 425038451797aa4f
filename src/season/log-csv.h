/* From a log's table, with its columns as they are taken, to the log itself: what can be read
 * is, and what cannot is told by its line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/log-table.h"

typedef struct
{
  LwLog *log;             /* (nullable) NULL: nothing could be read, and `problems` say why */
  gboolean dated;         /* its times have dates: then it begins at */
  double start_s;         /* by the place's clock, as LwBatch.when_s */
  GPtrArray *problems;    /* rows and cells that are left out, in the order of lines */
  guint untold;           /* and so many more */
  guint gaps;             /* rows of which only a part could be used */
} LwLogTaken;

LwLogTaken *lw_log_take       (const LwLogTable *table,
                               const char       *id,
                               const char       *name);
void        lw_log_taken_free (LwLogTaken       *taken);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwLogTaken, lw_log_taken_free)

/* Logs into the document. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/write-log.h"

#include "season/log-points.h"
#include "season/put.h"

static void
put_curve (GString          *out,
           int               depth,
           const LwLogCurve *curve)
{
  lw_put_start (out, depth, "curve");
  lw_put_optional (out, "of", lw_log_of_id (curve->of));
  lw_put_optional (out, "heading", curve->heading);
  lw_put_number (out, "within-c", curve->within_c);
  g_string_append_c (out, '>');
  lw_points_append (out, curve->course);
  lw_put_end (out, depth, "curve");
}

static void
put_log (GString          *out,
         int               depth,
         const LwBatchLog *at)
{
  const LwLog *log = at->log;

  lw_put_start (out, depth, "log");
  lw_put_optional (out, "id", log->id);
  lw_put_optional (out, "name", log->name);
  lw_put_number (out, "minute", at->minute);
  lw_put_number (out, "rows", log->rows);
  lw_put_number (out, "left-out", log->left_out);
  lw_put_number (out, "first-line", log->first_line);
  lw_put_number (out, "last-line", log->last_line);
  g_string_append (out, ">\n");
  for (guint i = 0; i < log->n_curves; i++)
    put_curve (out, depth + 1, &log->curves[i]);
  lw_put_end (out, depth, "log");
}

gboolean
lw_write_has_logs (const LwBatch *batch,
                   int            step)
{
  for (guint i = 0; i < batch->n_logs; i++)
    if (batch->logs[i].step == step)
      return TRUE;

  return FALSE;
}

void
lw_write_logs (GString       *out,
               int            depth,
               const LwBatch *batch,
               int            step)
{
  for (guint i = 0; i < batch->n_logs; i++)
    if (batch->logs[i].step == step)
      put_log (out, depth, &batch->logs[i]);
}

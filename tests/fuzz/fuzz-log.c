/* Any bytes may be given as a temperature log: reading never crashes, tells why it gives nothing, and what it gives
 * is written into a season and read back. With a fuzzing engine, or alone: then on seeded changes of the tables below. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "any-bytes.h"

#include "season/document.h"
#include "season/edit.h"
#include "season/log-csv.h"
#include "season/log-say.h"

#define N_CHANGED 20000

static guint n_logs;

static void
write_and_read (LwLog *log)
{
  g_autoptr (LwSeason) plain = lw_edit_new_season (0), season = NULL, again = NULL;
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *text = NULL;
  gsize length;

  season = lw_edit_add_log (plain, 0, (LwBatchLog) { lw_log_ref (log), 1, 2.5 });
  text = lw_document_write (season, &length);
  again = lw_document_read (text, length, problems);
  demand (again != NULL && again->batches[0]->logs[0].log->n_curves == log->n_curves, "what was written cannot be read");
}

int
LLVMFuzzerTestOneInput (const guint8 *data,
                        size_t        size)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwLogTable) table = lw_log_table_read ((const char *) data, size, problems);
  g_autoptr (LwLogTaken) taken = NULL;

  demand ((table != NULL) == (problems->len == 0), "neither a table nor a problem, or both");
  demand_told (problems);
  if (table == NULL)
    return 0;

  taken = lw_log_take (table, "log", "Log");
  demand_told (taken->problems);
  demand (taken->log != NULL || taken->problems->len > 0, "no log, and no reason");
  if (taken->log == NULL)
    return 0;

  n_logs++;
  for (guint i = 0; i < taken->log->n_curves; i++)
    g_free (lw_say_curve (&taken->log->curves[i], table));
  g_free (lw_say_taken (taken));
  write_and_read (taken->log);

  return 0;
}

#ifndef LW_FUZZ_ENGINE
static const char *const tables[] = {
  "time,leaf,wall\n0,20.5,250\n1,21,OL\n2,22,251\n",
  "# logger\r\nlogger 3\r\nDate;Time;Leaf (°C);Pan (°F);Air [K]\r\n12.4.2026;23:59:59,5;20,5;480;295\r\n"
  "13.4.2026;0:00;\"21\";482;;\r\n",
  "0\t68,9\n1,5\t69\n3\t-999\n",
  "Timestamp,Leaf,Leaf 2\n2026-04-12T10:00:00.5,20,21\n2026-04-12T10:00:00.5,20,21\n2026-04-12T10:00:00,20,21\n",
  NULL,
};

static const char *const scraps[] = {
  "\"", "\"\"", ",", ";", "\t", "\n", "\r", "\r\n", ".", "-", "+", "e", "#", " ", "\xff", "\xef\xbb\xbf", "\xed\xa0\x80",
  "℃", "%", "(", "]", "/", "time", "date", "min", "leaf", "(K)", "_f", "1e999", "nan", "0x1p9", "9999999999", "1e300",
  "99999-99-99T99:99", "2026-04-12T10:00", "1.1.2026 00:00", "9999-12-31 23:59:59", "23:59:59.999", "0:00", "T", ":", "0",
  NULL,
};

int
main (int    argc,
      char **argv)
{
  return give_changed_tables (tables, scraps, N_CHANGED, &n_logs, "logs") ? 0 : 1;
}
#endif

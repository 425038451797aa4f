/* Words about logs. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/log-say.h"

#include <string.h>

#include "season/text.h"
#include "season/wording.h"

#define TOLD_C 1   /* a notch of air */

char *
lw_say_taken (const LwLogTaken *taken)
{
  const LwLog *log = taken->log;
  g_autofree char *rows = g_strdup_printf (ngettext ("%u row, lines %u to %u.", "%u rows, lines %u to %u.", log->rows),
                                           log->rows, log->first_line, log->last_line);
  g_autofree char *time = lw_say_minutes (lw_log_duration_s (log) / 60), *lasts = g_strdup_printf (_ (" It lasts %s."), time);
  g_autofree char *out = NULL, *gaps = NULL;

  if (log->left_out > 0)
    out = g_strdup_printf (ngettext (" %u row is left out.", " %u rows are left out.", log->left_out), log->left_out);
  if (taken->gaps > 0)
    gaps = g_strdup_printf (ngettext (" Of %u row a part is left out.", " Of %u rows a part is left out.", taken->gaps),
                            taken->gaps);

  return g_strconcat (rows, out != NULL ? out : "", gaps != NULL ? gaps : "", lasts, NULL);
}

static const char *
unit_of (const LwLogCurve *curve,
         const LwLogTable *table)
{
  for (guint i = 0; i < table->n_columns; i++)
    if (curve->heading != NULL && strcmp (table->columns[i].name, curve->heading) == 0)
      return table->columns[i].unit;

  return "°C";
}

/* 0 where it can be overlooked. */
static double
off_c (const LwFollowed *followed)
{
  return followed->waves_c < TOLD_C ? 0 : MIN (followed->waves_c, followed->off_c);
}

char *
lw_say_log_off (const LwFollowed *followed)
{
  double off = off_c (followed);

  if (off == 0)
    return NULL;

  return g_strdup_printf (_ ("It has more waves than are reckoned with: to this step it may be up to %.1f °C off."), off);
}

char *
lw_say_curve (const LwLogCurve *curve,
              const LwLogTable *table)
{
  const char *unit = unit_of (curve, table);
  /* Translators: lowest and highest temperature */
  g_autofree char *range = g_strdup_printf (_ ("%.1f to %.1f °C"), curve->low_c, curve->high_c);
  g_autofree char *turned = strcmp (unit, "°C") == 0 ? g_strdup ("") : g_strdup_printf (_ (", turned from %s"), unit);
  g_autofree char *kept = NULL, *told = NULL, *long_off = NULL;
  double off = curve->of == LW_LOG_LEAF ? 0 : off_c (lw_log_coarsest (curve));
  guint n;

  lw_course_times (curve->course, &n);
  kept = g_strdup_printf (ngettext ("%u point is kept within %g °C", "%u points are kept within %g °C", n), n,
                          curve->within_c);

  /* Translators: a column's heading, what it is of, its range, its unit if another, how much is kept of it */
  told = g_strdup_printf (_ ("“%s”: %s, %s%s; %s."), curve->heading != NULL ? curve->heading : "–",
                          lw_log_of_label (curve->of), range, turned, kept);
  if (off > 0)
    long_off = g_strdup_printf (_ ("It has many waves: to a step as long as the log it may be up to %.1f °C off."), off);

  return g_strjoin (" ", told, long_off, NULL);
}

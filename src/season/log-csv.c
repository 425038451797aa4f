/* Rows into curves. Faults of the same kind in rows that follow each other are told as one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/log-csv.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "season/table.h"
#include "season/text.h"

#define MOST_TOLD 200
#define DAY_S 86400.0
#define MOST_TIME 96

typedef enum
{
  FAULT_NONE,
  FAULT_TIME,
  FAULT_BACK,
  FAULT_TWICE,
  FAULT_FAR,
  FAULT_EMPTY,
  FAULT_BROKEN,
  FAULT_RANGE,
  FAULT_NUMBER,
} Fault;

static const char *const remedies[] = {
  [FAULT_TIME] = N_ ("Write times as 10:00:30 or 2026-04-12T10:00:30 without a zone, or as numbers."),
  [FAULT_BACK] = N_ ("The row is left out; sort the rows by their time."),
  [FAULT_TWICE] = N_ ("The row is left out; keep one of the two."),
  [FAULT_FAR] = N_ ("The row is left out."),
  [FAULT_EMPTY] = N_ ("The curve goes straight on to the next value."),
  [FAULT_BROKEN] = N_ ("It is left out; see to the thermocouple."),
  [FAULT_RANGE] = N_ ("It is left out: a broken thermocouple reads so, or the unit is another."),
  [FAULT_NUMBER] = N_ ("It is left out; write a number."),
};

/* A fault that goes on, of one column. */
typedef struct
{
  Fault fault;
  guint first;
  guint last;
  guint n;
  const char *cell;
} Run;

typedef struct
{
  const LwLogTable *table;
  LwLogTaken *taken;
  int time, date;         /* columns */
  Run *runs;              /* of each column; that of the time is the row's */
  double day_s;           /* what midnights have added */
  double last_clock_s;
  double last_s;          /* of the row before */
  guint row;
} Take;

/* What loggers write for a thermocouple that is broken or unplugged (from memory). */
static gboolean
is_broken (const char *cell)
{
  static const char *const words[] = {
    "nan", "-nan", "n/a", "#n/a", "na", "null", "none", "ol", "-ol", "open", "err", "error", "fault", "inf", "-inf",
    "over", "under", "overflow", "burnout", "x",
  };

  if (cell[strspn (cell, "-*?.")] == '\0')
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_ascii_strcasecmp (cell, words[i]) == 0)
      return TRUE;

  return FALSE;
}

static char *
what_of (const Take *take,
         guint       column,
         const Run  *run)
{
  const char *name = take->table->columns[column].name;
  g_autofree char *heading = lw_table_quote (name), *quoted = lw_table_quote (run->cell);

  switch (run->fault)
    {
    case FAULT_TIME:
      return g_strdup_printf (_ ("“%s” is not a time."), quoted);
    case FAULT_BACK:
      return g_strdup_printf (_ ("“%s” is before the row above."), quoted);
    case FAULT_TWICE:
      return g_strdup_printf (_ ("“%s” stands in the row above already."), quoted);
    case FAULT_FAR:
      return g_strdup_printf (_ ("“%s” is more than thirty days after the first row."), quoted);
    case FAULT_EMPTY:
      return g_strdup_printf (_ ("There is no value of “%s”."), heading);
    case FAULT_BROKEN:
      return g_strdup_printf (_ ("“%s” of “%s” is what a broken or unplugged thermocouple gives."), quoted, heading);
    case FAULT_RANGE:
      return g_strdup_printf (_ ("“%s” of “%s” is not between %d and %d °C."), quoted, heading, LW_LOG_LOW_C,
                              LW_LOG_HIGH_C);
    case FAULT_NUMBER:
    case FAULT_NONE:
    default:
      return g_strdup_printf (_ ("“%s” of “%s” is not a number."), quoted, heading);
    }
}

static void
end_run (Take *take,
         guint column)
{
  Run *run = &take->runs[column];
  g_autofree char *what = NULL, *alike = NULL;

  if (run->fault == FAULT_NONE)
    return;

  if (take->taken->problems->len < MOST_TOLD)
    {
      what = what_of (take, column, run);
      alike = run->n > 1 ? g_strdup_printf (ngettext (" The row after it is alike.", " The next %u rows are alike.",
                                                      run->n - 1), run->n - 1) : g_strdup ("");
      lw_problems_add (take->taken->problems, run->first, _ (remedies[run->fault]), "%s%s", what, alike);
    }
  else
    {
      take->taken->untold++;
    }
  run->fault = FAULT_NONE;
}

static void
note_fault (Take       *take,
            guint       column,
            Fault       fault,
            const char *cell)
{
  Run *run = &take->runs[column];

  if (run->fault == fault && run->last + 1 == take->row)
    {
      run->last = take->row;
      run->n++;
      return;
    }

  end_run (take, column);
  *run = (Run) { fault, take->table->lines[take->row], take->row, 1, cell };
}

static const char *
cell_of (const Take *take,
         int         column)
{
  return take->table->cells[(gsize) take->row * take->table->n_columns + (guint) column];
}

/* Without a date a time that jumps back by most of a day has passed midnight. */
static double
past_midnight (Take  *take,
               double clock_s)
{
  if (take->last_clock_s - clock_s > DAY_S / 2)
    take->day_s += DAY_S;
  take->last_clock_s = clock_s;

  return take->day_s + clock_s;
}

static gboolean
read_clock (Take       *take,
            const char *cell,
            double     *time_s)
{
  char text[MOST_TIME];

  if (take->date >= 0)
    g_snprintf (text, sizeof text, "%s %s", cell_of (take, take->date), cell);
  if (lw_table_moment (take->date >= 0 ? text : cell, time_s))
    {
      take->taken->dated = TRUE;
      return TRUE;
    }
  if (take->taken->dated || take->date >= 0 || !lw_table_clock (cell, time_s))
    return FALSE;

  *time_s = past_midnight (take, *time_s);

  return TRUE;
}

static gboolean
read_time (Take   *take,
           double *time_s)
{
  static const double seconds[LW_N_LOG_TIMES] = { [LW_TIME_SECONDS] = 1, [LW_TIME_MINUTES] = 60, [LW_TIME_HOURS] = 3600,
                                                  [LW_TIME_STOPWATCH] = 1 };
  LwLogTime time = take->table->columns[take->time].time;
  const char *cell = cell_of (take, take->time);
  double start_s = take->taken->start_s;
  Fault fault = FAULT_NONE;

  gboolean is_one = time == LW_TIME_CLOCK ? read_clock (take, cell, time_s)
                    : time == LW_TIME_STOPWATCH ? lw_table_stopwatch (cell, time_s) : lw_table_number (cell, time_s);

  if (!is_one)
    fault = FAULT_TIME;
  else if (time != LW_TIME_CLOCK)
    *time_s *= seconds[time];
  *time_s = round (1e3 * *time_s) / 1e3;

  if (fault == FAULT_NONE && !isnan (start_s))
    fault = *time_s - start_s > LW_LOG_MOST_S ? FAULT_FAR : *time_s < take->last_s ? FAULT_BACK
            : *time_s == take->last_s ? FAULT_TWICE : FAULT_NONE;
  if (fault != FAULT_NONE)
    note_fault (take, (guint) take->time, fault, cell);

  return fault == FAULT_NONE;
}

static gboolean
read_value (Take   *take,
            guint   column,
            double *temp_c)
{
  const LwLogColumn *at = &take->table->columns[column];
  const char *cell = cell_of (take, (int) column);
  Fault fault = FAULT_NONE;

  if (*cell == '\0')
    fault = FAULT_EMPTY;
  else if (!lw_table_number (cell, temp_c))
    fault = is_broken (cell) ? FAULT_BROKEN : FAULT_NUMBER;
  else if (at->factor != 1 || at->offset != 0)
    *temp_c = round (1e4 * (at->factor * *temp_c + at->offset)) / 1e4;

  if (fault == FAULT_NONE && !(*temp_c >= LW_LOG_LOW_C && *temp_c <= LW_LOG_HIGH_C))
    fault = FAULT_RANGE;
  if (fault != FAULT_NONE)
    note_fault (take, column, fault, cell);

  return fault == FAULT_NONE;
}

/* Times by number count from the log's begin, unless they begin at no such thing. */
static double
first_time (const Take *take,
            double      time_s)
{
  gboolean counted = take->table->columns[take->time].time != LW_TIME_CLOCK && time_s >= 0 && time_s <= LW_LOG_MOST_S / 2.0;

  return counted ? 0 : time_s;
}

/* FALSE if nothing of the row can be used. */
static gboolean
take_row (Take    *take,
          GArray **time_s,
          GArray **temp_c)
{
  guint used = 0, wanted = 0;
  double now_s = 0, value;

  if (!read_time (take, &now_s))
    return FALSE;

  if (isnan (take->taken->start_s))
    take->taken->start_s = first_time (take, now_s);
  take->last_s = now_s;

  for (guint i = 0; i < take->table->n_columns; i++)
    {
      if (time_s[i] == NULL)
        continue;

      wanted++;
      if (!read_value (take, i, &value))
        continue;

      used++;
      value = round (1e6 * value) / 1e6;
      now_s = take->last_s - take->taken->start_s;
      g_array_append_val (time_s[i], now_s);
      g_array_append_val (temp_c[i], value);
    }
  take->taken->gaps += used > 0 && used < wanted;

  return used > 0;
}

static int
compare_lines (gconstpointer a,
               gconstpointer b)
{
  const LwProblem *one = *(LwProblem *const *) a, *other = *(LwProblem *const *) b;

  return (one->line > other->line) - (one->line < other->line);
}

static void
make_log (Take       *take,
          LwLog      *log,
          GArray    **time_s,
          GArray    **temp_c)
{
  for (guint i = 0; i < take->table->n_columns; i++)
    {
      const LwLogColumn *column = &take->table->columns[i];
      LwLogOf of;

      if (time_s[i] != NULL && temp_c[i]->len > 0 && lw_log_use_of (column->use, &of) && log->n_curves < LW_MAX_CURVES)
        lw_log_add_rows (log, of, column->named ? column->name : NULL, (const double *) (gpointer) time_s[i]->data,
                         (const double *) (gpointer) temp_c[i]->data, temp_c[i]->len);
    }
}

/* Why there is nothing, if there is nothing. */
static void
tell_nothing (Take *take,
              guint wanted)
{
  if (wanted == 0)
    lw_problems_add (take->taken->problems, 0, _ ("Say of a column that it is leaf, wall or air."),
                     _ ("No column of temperatures is chosen."));
  else
    lw_problems_add (take->taken->problems, 0, _ ("Choose the column of the times, and what they are."),
                     _ ("No row could be read."));
}

LwLogTaken *
lw_log_take (const LwLogTable *table,
             const char       *id,
             const char       *name)
{
  LwLogTaken *taken = g_new0 (LwLogTaken, 1);
  g_autofree Run *runs = g_new0 (Run, table->n_columns);
  g_autofree GArray **time_s = g_new0 (GArray *, table->n_columns), **temp_c = g_new0 (GArray *, table->n_columns);
  g_autoptr (LwLog) log = lw_log_new (id, name);
  Take take = { .table = table, .taken = taken, .time = -1, .date = -1, .runs = runs, .last_s = -INFINITY };
  guint wanted = 0;
  LwLogOf of;

  taken->start_s = NAN;
  taken->problems = lw_problems_new ();
  for (guint i = 0; i < table->problems->len; i++)
    {
      const LwProblem *problem = g_ptr_array_index (table->problems, i);

      lw_problems_add (taken->problems, problem->line, problem->remedy, "%s", problem->what);
    }
  for (guint i = 0; i < table->n_columns; i++)
    {
      if (table->columns[i].use == LW_USE_TIME)
        take.time = (int) i;
      if (table->columns[i].use == LW_USE_DATE)
        take.date = (int) i;
      if (!lw_log_use_of (table->columns[i].use, &of) || wanted == LW_MAX_CURVES)
        continue;

      wanted++;
      time_s[i] = g_array_new (FALSE, FALSE, sizeof (double));
      temp_c[i] = g_array_new (FALSE, FALSE, sizeof (double));
    }

  log->rows = table->n_rows;
  log->first_line = table->lines[0];
  log->last_line = table->lines[table->n_rows - 1];
  for (take.row = 0; take.time >= 0 && wanted > 0 && take.row < table->n_rows; take.row++)
    log->left_out += !take_row (&take, time_s, temp_c);
  for (guint i = 0; i < table->n_columns; i++)
    end_run (&take, i);
  g_ptr_array_sort (taken->problems, compare_lines);

  make_log (&take, log, time_s, temp_c);
  if (log->n_curves > 0)
    taken->log = g_steal_pointer (&log);
  else
    tell_nothing (&take, wanted);
  for (guint i = 0; i < table->n_columns; i++)
    {
      g_clear_pointer (&time_s[i], g_array_unref);
      g_clear_pointer (&temp_c[i], g_array_unref);
    }

  return taken;
}

void
lw_log_taken_free (LwLogTaken *taken)
{
  g_clear_pointer (&taken->log, lw_log_unref);
  g_ptr_array_unref (taken->problems);
  g_free (taken);
}

/* Reading a table of hours: the header, then row by row, each problem with its line. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/weather-csv.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "season/document.h"
#include "season/notation.h"
#include "season/shape.h"
#include "season/table.h"
#include "season/text.h"
#include "season/weather-columns.h"

#define MOST_PROBLEMS 50
#define HOUR_S 3600
#define NIGHT_NOISE_W_M2 (-20)

typedef struct
{
  GPtrArray *problems;
  guint line;
  char separator;
  int at[LW_N_COLUMNS];            /* the cell's place in a row, -1: none */
  LwColumn columns[LW_N_COLUMNS];
  GArray *hours;
  gint64 start_s;
  gint64 last_s;                   /* of the row above */
  guint last_line;
} Import;

static const struct
{
  LwColumnKind kind;
  const char *attr;                /* of the document, for the range */
  gsize offset;
} values[] = {
  { LW_COLUMN_TEMP, "temp-c", offsetof (LwHour, temp_c) },
  { LW_COLUMN_HUMIDITY, "humidity-pct", offsetof (LwHour, humidity_pct) },
  { LW_COLUMN_SUN, "sun-w-m2", offsetof (LwHour, sun_w_m2) },
  { LW_COLUMN_CLOUD, "cloud-pct", offsetof (LwHour, cloud_pct) },
  { LW_COLUMN_WIND, "wind-m-s", offsetof (LwHour, wind_m_s) },
  { LW_COLUMN_RAIN, "rain-mm", offsetof (LwHour, rain_mm) },
};

static void
read_names (Import    *import,
            GPtrArray *cells)
{
  for (guint i = 0; i < cells->len; i++)
    {
      const char *name = g_ptr_array_index (cells, i);
      g_autofree char *quoted = lw_table_quote (name);
      LwColumn column;

      if (!lw_column_named (name, &column))
        continue;

      if (import->at[column.kind] >= 0)
        lw_problems_add (import->problems, import->line, _ ("Remove one of them, or give it another name."),
                         _ ("More than one column says “%s”; the second is “%s”."), lw_column_label (column.kind),
                         quoted);
      else if (!column.unit_known)
        lw_problems_add (import->problems, import->line,
                         column.kind == LW_COLUMN_TIME
                           ? _ ("Turn the times into those of the place's own clock.")
                           : _ ("Turn the values into one of the units that are read, and name it."),
                         _ ("The unit of the column “%s” is not read."), quoted);
      import->at[column.kind] = (int) i;
      import->columns[column.kind] = column;
    }
}

static void
check_names (Import *import)
{
  static const LwColumnKind needed[] = {
    LW_COLUMN_TIME, LW_COLUMN_TEMP, LW_COLUMN_HUMIDITY, LW_COLUMN_SUN, LW_COLUMN_WIND,
  };

  /* A date alone may hold the time too. */
  if (import->at[LW_COLUMN_TIME] < 0)
    {
      import->at[LW_COLUMN_TIME] = import->at[LW_COLUMN_DATE];
      import->at[LW_COLUMN_DATE] = -1;
    }
  /* Measured sunlight goes before cloud. */
  if (import->at[LW_COLUMN_SUN] >= 0)
    import->at[LW_COLUMN_CLOUD] = -1;

  for (guint i = 0; i < G_N_ELEMENTS (needed); i++)
    {
      gboolean cloud = needed[i] == LW_COLUMN_SUN && import->at[LW_COLUMN_CLOUD] >= 0;
      g_autofree char *remedy = NULL;

      if (import->at[needed[i]] >= 0 || cloud)
        continue;

      remedy = g_strdup_printf (_ ("Name one in the first row, such as “%s”."), lw_column_sample (needed[i]));
      if (needed[i] == LW_COLUMN_SUN)
        lw_problems_add (import->problems, import->line, remedy, _ ("No column tells of sunlight or cloud."));
      else
        lw_problems_add (import->problems, import->line, remedy, _ ("No column tells of %s."),
                         lw_column_label (needed[i]));
    }
}

/* (transfer none) the cell of that column, NULL if the row ends before it. */
static const char *
cell_of (const Import *import,
         GPtrArray    *cells,
         LwColumnKind  kind)
{
  guint at = (guint) import->at[kind];

  return at < cells->len ? g_ptr_array_index (cells, at) : NULL;
}

static gboolean
read_time (Import    *import,
           GPtrArray *cells,
           gint64    *when_s)
{
  const char *time = cell_of (import, cells, LW_COLUMN_TIME);
  const char *date = import->at[LW_COLUMN_DATE] >= 0 ? cell_of (import, cells, LW_COLUMN_DATE) : "";
  g_autofree char *text = g_strstrip (g_strdup_printf ("%s %s", date != NULL ? date : "", time != NULL ? time : ""));
  g_autofree char *quoted = lw_table_quote (text);

  if (lw_table_time (text, when_s))
    return TRUE;

  lw_problems_add (import->problems, import->line,
                   _ ("Write the place's own time as in 2026-04-12T10:00 or 12.4.2026 10:00, without a zone."),
                   _ ("“%s” is not a date and time."), quoted);

  return FALSE;
}

/* One hour after the row above. */
static void
check_time (Import *import,
            gint64  when_s)
{
  g_autofree char *before = lw_time_text (import->last_s), *now = lw_time_text (when_s);
  gint64 step_s = when_s - import->last_s;

  if (import->hours->len == 0 || step_s == HOUR_S)
    return;

  if (step_s == 0)
    lw_problems_add (import->problems, import->line, _ ("Keep one of the two rows."),
                     _ ("The hour %s stands in line %u already."), now, import->last_line);
  else if (step_s < 0)
    lw_problems_add (import->problems, import->line, _ ("Sort the rows by their time, each hour once."),
                     _ ("%s comes after %s of line %u."), now, before, import->last_line);
  else if (step_s % HOUR_S == 0)
    lw_problems_add (import->problems, import->line, _ ("Add the rows between them, or leave out all before or after."),
                     ngettext ("%d hour is missing between %s and %s.", "%d hours are missing between %s and %s.",
                               (gulong) (step_s / HOUR_S - 1)),
                     (int) MIN (step_s / HOUR_S - 1, G_MAXINT), before, now);
  else
    lw_problems_add (import->problems, import->line, _ ("Give one row for each hour."),
                     _ ("%s is not an hour after %s."), now, before);
}

static const LwAttrRow *
range_of (const LwAttrRow *rows,
          guint            n,
          const char      *attr)
{
  for (guint i = 0; i < n; i++)
    if (strcmp (rows[i].name, attr) == 0)
      return &rows[i];

  g_return_val_if_reached (&rows[0]);
}

static void
tell_value (Import          *import,
            LwColumnKind     kind,
            const LwAttrRow *range,
            const char      *cell,
            gboolean         number)
{
  g_autofree char *quoted = lw_table_quote (cell != NULL ? cell : "");
  g_autofree char *low = lw_number_text (range->low), *high = lw_number_text (range->high);
  g_autofree char *remedy = g_strdup_printf (_ ("Write a number from %s to %s in the unit of “%s”."), low, high,
                                             lw_column_sample (kind));

  if (cell == NULL || *cell == '\0')
    lw_problems_add (import->problems, import->line, remedy, _ ("There is no value of %s."), lw_column_label (kind));
  else if (number)
    lw_problems_add (import->problems, import->line, remedy, _ ("“%s” is out of range as %s."), quoted,
                     lw_column_label (kind));
  else
    lw_problems_add (import->problems, import->line, remedy, _ ("“%s” as %s is not a number."), quoted,
                     lw_column_label (kind));
}

static void
read_value (Import          *import,
            GPtrArray       *cells,
            LwColumnKind     kind,
            const LwAttrRow *range,
            double          *value)
{
  const LwColumn *column = &import->columns[kind];
  const char *cell = cell_of (import, cells, kind);
  gboolean number = cell != NULL && lw_table_number (cell, value);

  /* Rain that was not noted is none. */
  if (kind == LW_COLUMN_RAIN && (cell == NULL || *cell == '\0'))
    {
      *value = 0;
      return;
    }

  if (number && (column->factor != 1 || column->offset != 0))
    *value = round (1e4 * (column->factor * *value + column->offset)) / 1e4;
  if (kind == LW_COLUMN_SUN && *value < 0 && *value >= NIGHT_NOISE_W_M2)
    *value = 0;
  if (!number || !(*value >= range->low && *value <= range->high))
    tell_value (import, kind, range, cell, number);
}

static void
read_row (Import    *import,
          GPtrArray *cells)
{
  LwAttrRow rows[LW_MAX_ATTRS];
  guint n = lw_shape_attrs (LW_E_HOUR, -1, rows);
  LwHour hour = { .sun_w_m2 = NAN };
  gint64 when_s;

  if (!read_time (import, cells, &when_s))
    return;

  check_time (import, when_s);
  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    if (import->at[values[i].kind] >= 0)
      read_value (import, cells, values[i].kind, range_of (rows, n, values[i].attr),
                  (double *) ((char *) &hour + values[i].offset));

  if (import->hours->len == 0)
    import->start_s = when_s;
  import->last_s = when_s;
  import->last_line = import->line;
  g_array_append_val (import->hours, hour);
}

/* FALSE when there is no point in going on. */
static gboolean
read_line (Import     *import,
           const char *line,
           gboolean   *named)
{
  g_autoptr (GPtrArray) cells = NULL;

  if (lw_table_is_empty (line))
    return TRUE;

  if (!*named)
    {
      *named = TRUE;
      import->separator = lw_table_separator (line);
      cells = lw_table_cells (line, import->separator);
      read_names (import, cells);
      check_names (import);
      return import->problems->len == 0;
    }

  if (import->hours->len == LW_MAX_HOURS)
    {
      lw_problems_add (import->problems, import->line, _ ("Leave out what no batch needs."),
                       _ ("There are more than %d rows."), LW_MAX_HOURS);
      return FALSE;
    }

  cells = lw_table_cells (line, import->separator);
  read_row (import, cells);
  if (import->problems->len < MOST_PROBLEMS)
    return TRUE;

  lw_problems_add (import->problems, import->line, _ ("Mend those above first."), _ ("The rest was not read."));
  return FALSE;
}

LwWeather *
lw_weather_csv_read (const char *data,
                     gsize       length,
                     const char *id,
                     const char *name,
                     GPtrArray  *problems)
{
  g_autoptr (GPtrArray) found = lw_problems_new ();
  g_autoptr (GArray) hours = g_array_new (FALSE, FALSE, sizeof (LwHour));
  g_autofree char *text = lw_table_text (data, length, LW_MAX_FILE_BYTES, found);
  Import import = { .problems = found, .hours = hours };
  gboolean named = FALSE, on = text != NULL;
  char *at = text;

  for (guint i = 0; i < LW_N_COLUMNS; i++)
    import.at[i] = -1;
  while (on && *at != '\0')
    {
      const char *line = lw_table_line (&at);

      import.line++;
      on = read_line (&import, line, &named);
    }

  if (found->len == 0 && hours->len == 0)
    lw_problems_add (found, 0, _ ("Give a row that names the columns, and one row for each hour."),
                     _ ("There are no hours in it."));
  if (found->len > 0)
    {
      g_ptr_array_extend_and_steal (problems, g_steal_pointer (&found));
      return NULL;
    }

  return lw_weather_new (id, name, import.start_s, (const LwHour *) hours->data, hours->len);
}

LwWeather *
lw_weather_csv_load (const char *path,
                     const char *id,
                     const char *name,
                     GPtrArray  *problems)
{
  g_autoptr (GByteArray) bytes = lw_document_bytes (path, problems);

  if (bytes == NULL)
    return NULL;

  return lw_weather_csv_read (bytes->len > 0 ? (const char *) bytes->data : "", bytes->len, id, name, problems);
}

/* From text to rows of cells, in place: the cells point into the text. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/log-table.h"

#include <string.h>

#include "season/document.h"
#include "season/table.h"
#include "season/text.h"

#define MOST_COLUMNS 64
#define MOST_STRAY 20

/* A line that is not empty. */
typedef struct
{
  char *text;
  guint line;
} Line;

static GArray *
lines_of (char *text)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (Line));
  char *at = text;

  for (guint line = 1; *at != '\0'; line++)
    {
      Line one = { at, line };

      lw_table_line (&at);
      if (!lw_table_is_empty (one.text))
        g_array_append_val (lines, one);
    }

  return lines;
}

/* Where the table begins: two lines, or the last, of as many cells, more than one. */
static gboolean
find_table (GArray *lines,
            guint  *first,
            char   *separator,
            guint  *n_columns)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const char *text = g_array_index (lines, Line, i).text;
      const char *next = i + 1 < lines->len ? g_array_index (lines, Line, i + 1).text : text;

      *first = i;
      *separator = lw_table_separator (text);
      *n_columns = lw_table_count (text, *separator);
      if (*n_columns > 1 && *n_columns <= MOST_COLUMNS && lw_table_count (next, *separator) == *n_columns)
        return TRUE;
    }

  return FALSE;
}

static gboolean
is_value (const char *cell)
{
  double number;

  return lw_table_number (cell, &number) || lw_table_clock (cell, &number) || lw_table_moment (cell, &number);
}

static void
take_names (LwLogTable *table,
            gboolean    named)
{
  for (guint i = 0; i < table->n_columns; i++)
    {
      LwLogColumn *column = &table->columns[i];

      column->named = named && table->cells[i][0] != '\0';
      column->name = column->named ? g_strndup (table->cells[i], LW_MAX_TEXT / 4)
                                   : g_strdup_printf (_ ("column %u"), i + 1);
    }
}

static void
cut_rows (LwLogTable *table,
          GArray     *lines,
          guint       first,
          char        separator)
{
  const char *cells[MOST_COLUMNS + 1];
  guint longer = 0;

  table->cells = g_new (const char *, (gsize) (lines->len - first) * table->n_columns);
  table->lines = g_new (guint, lines->len - first);
  for (guint i = first; i < lines->len; i++)
    {
      Line *line = &g_array_index (lines, Line, i);
      guint n = lw_table_split (line->text, separator, cells, table->n_columns + 1);

      if (n > table->n_columns && *cells[table->n_columns] != '\0')
        {
          if (longer++ < MOST_STRAY)
            lw_problems_add (table->problems, line->line, _ ("Put cells that hold a separator into quotes."),
                             _ ("The row has more cells than the first, which has %u."), table->n_columns);
          continue;
        }
      for (guint k = 0; k < table->n_columns; k++)
        table->cells[(gsize) table->n_rows * table->n_columns + k] = k < n ? cells[k] : "";
      table->lines[table->n_rows++] = line->line;
    }
  if (longer > MOST_STRAY)
    lw_problems_add (table->problems, table->lines[table->n_rows > 0 ? table->n_rows - 1 : 0],
                     _ ("Put cells that hold a separator into quotes."),
                     ngettext ("%u more row has more cells than the first.", "%u more rows have more cells than the first.",
                               longer - MOST_STRAY), longer - MOST_STRAY);
}

/* The row of names is none of the table's. */
static void
drop_names (LwLogTable *table)
{
  table->n_rows--;
  memmove (table->lines, table->lines + 1, table->n_rows * sizeof *table->lines);
  memmove (table->cells, table->cells + table->n_columns,
           (gsize) table->n_rows * table->n_columns * sizeof *table->cells);
}

LwLogTable *
lw_log_table_read (const char *data,
                   gsize       length,
                   GPtrArray  *problems)
{
  g_autoptr (LwLogTable) table = g_new0 (LwLogTable, 1);
  g_autoptr (GArray) lines = NULL;
  gboolean named = TRUE;
  guint first = 0;
  char separator;

  table->problems = lw_problems_new ();
  table->text = lw_table_text (data, length, LW_MAX_FILE_BYTES, problems);
  if (table->text == NULL)
    return NULL;

  lines = lines_of (table->text);
  if (!find_table (lines, &first, &separator, &table->n_columns))
    {
      lw_problems_add (problems, 0, _ ("Give a column of times and one of temperatures, parted by commas, semicolons or tabs."),
                       _ ("There is no table in it."));
      return NULL;
    }
  if (lines->len > LW_LOG_MOST_ROWS)
    {
      lw_problems_add (problems, 0, _ ("Leave out what no batch needs."), _ ("There are more than %d rows."),
                       LW_LOG_MOST_ROWS);
      return NULL;
    }

  for (guint i = 0; i < MIN (first, MOST_STRAY); i++)
    lw_problems_add (table->problems, g_array_index (lines, Line, i).line, _ ("It is passed over."),
                     _ ("The line stands before the table."));
  table->columns = g_new0 (LwLogColumn, table->n_columns);
  cut_rows (table, lines, first, separator);

  for (guint i = 0; i < table->n_columns; i++)
    named = named && !is_value (table->cells[i]);
  take_names (table, named);
  if (named)
    drop_names (table);
  if (table->n_rows == 0)
    {
      lw_problems_add (problems, 0, _ ("Give a row for each time."), _ ("There are no rows in it."));
      return NULL;
    }
  lw_log_columns_guess (table->columns, table->cells, table->n_columns);

  return g_steal_pointer (&table);
}

LwLogTable *
lw_log_table_load (const char *path,
                   GPtrArray  *problems)
{
  g_autoptr (GByteArray) bytes = lw_document_bytes (path, problems);

  if (bytes == NULL)
    return NULL;

  return lw_log_table_read (bytes->len > 0 ? (const char *) bytes->data : "", bytes->len, problems);
}

void
lw_log_table_free (LwLogTable *table)
{
  for (guint i = 0; table->columns != NULL && i < table->n_columns; i++)
    g_free (table->columns[i].name);
  g_free (table->columns);
  g_free (table->lines);
  g_free (table->cells);
  g_free (table->text);
  g_ptr_array_unref (table->problems);
  g_free (table);
}

void
lw_log_table_use (LwLogTable *table,
                  guint       column,
                  LwLogUse    use)
{
  for (guint i = 0; i < table->n_columns; i++)
    if (table->columns[i].use == use && (use == LW_USE_TIME || use == LW_USE_DATE))
      table->columns[i].use = LW_USE_NONE;
  table->columns[column].use = use;
}

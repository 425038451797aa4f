/* The table of values: a row for each change, which the arrows walk through and a screen reader reads as one sentence. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fit-window-private.h"

#include <math.h>

#include "season/text.h"
#include "study/fit-words.h"

enum { COLUMN_NAME, COLUMN_BEFORE, COLUMN_AFTER, COLUMN_ERROR, COLUMN_DECIDED, COLUMN_CHANGE, N_COLUMNS };

typedef struct
{
  GtkSizeGroup *columns[N_COLUMNS];
} Columns;

static void
columns_free (Columns *columns)
{
  for (guint i = 0; i < N_COLUMNS; i++)
    g_object_unref (columns->columns[i]);
  g_free (columns);
}

/* A line of cells, each as wide as its column; names begin, numbers end. */
static GtkWidget *
line_new (Columns    *columns,
          char      **cells,
          const char *css_class)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  for (guint i = 0; i < N_COLUMNS; i++)
    {
      GtkWidget *cell = gtk_label_new (cells[i]);

      /* Numbers and their signs are read from the left everywhere. */
      gtk_label_set_xalign (GTK_LABEL (cell), i == COLUMN_NAME ? 0 : 1);
      if (i != COLUMN_NAME)
        gtk_widget_set_direction (cell, GTK_TEXT_DIR_LTR);
      gtk_widget_add_css_class (cell, css_class);
      gtk_size_group_add_widget (columns->columns[i], cell);
      gtk_box_append (GTK_BOX (line), cell);
    }

  return line;
}

/* (transfer full) where the leaf keeps it: before, after and error with the unit, else "". */
static void
value_cells (const LwFitLine *line,
             char           **cells)
{
  double start = NAN, value = NAN, error = NAN;
  const char *unit = lw_fit_unit (line->param->what);
  g_autofree char *told = NULL;

  if (line->leaf != NULL)
    lw_fit_param_value (line->param, line->leaf, &start, &value, &error);
  told = lw_fit_number_say (error, 2);
  cells[COLUMN_BEFORE] = isnan (start) ? g_strdup ("") : lw_fit_number_say (start, 4);
  cells[COLUMN_AFTER] = isnan (value) ? g_strdup ("") : lw_fit_number_say (value, 4);
  cells[COLUMN_ERROR] = isnan (error) ? g_strdup ("") : g_strdup_printf ("± %s %s", told, lw_unit_words (unit));
  g_strchomp (cells[COLUMN_ERROR]);
}

/* (transfer full) a change that every leaf has is told once for each. */
static char *
name_of (const LwFit     *fit,
         const LwFitLine *line,
         gboolean         several)
{
  if (several && line->leaf != NULL)
    return g_strdup_printf (_ ("%s, %s"), _ (lw_fit_row (line->param->what)->label), line->leaf->name);
  if (line->leaf != NULL)
    return g_strdup (_ (lw_fit_row (line->param->what)->label));

  return lw_fit_param_label (fit, line->param);
}

/* (transfer full) */
static char *
sentence_of (char **cells)
{
  if (cells[COLUMN_BEFORE][0] == '\0')
    return g_strdup_printf (_ ("%s: %s; decided by the weigh-ins: %s"), cells[COLUMN_NAME], cells[COLUMN_CHANGE],
                            cells[COLUMN_DECIDED]);

  return g_strdup_printf (_ ("%s: before %s, after %s %s, %s; decided by the weigh-ins: %s"), cells[COLUMN_NAME],
                          cells[COLUMN_BEFORE], cells[COLUMN_AFTER], cells[COLUMN_ERROR], cells[COLUMN_CHANGE],
                          cells[COLUMN_DECIDED]);
}

static void
add_line (GtkWidget       *list,
          Columns         *columns,
          const LwFit     *fit,
          const LwFitLine *line,
          gboolean         several)
{
  GtkWidget *row = gtk_list_box_row_new ();
  char *cells[N_COLUMNS + 1] = { NULL };
  g_autofree char *sentence = NULL;

  cells[COLUMN_NAME] = name_of (fit, line, several);
  value_cells (line, cells);
  cells[COLUMN_CHANGE] = lw_fit_param_say (line->param);
  /* Translators: at the end of its range, where no share is known */
  cells[COLUMN_DECIDED] = isnan (line->param->decided) ? g_strdup (_ ("at its bound"))
                                                       : g_strdup_printf (_ ("%.0f %%"), 100 * line->param->decided);
  sentence = sentence_of (cells);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), line_new (columns, cells, "fit-number"));
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_widget_set_tooltip_text (row, _ (lw_fit_row (line->param->what)->meaning));
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, sentence, -1);
  gtk_list_box_append (GTK_LIST_BOX (list), row);
  for (guint i = 0; i < N_COLUMNS; i++)
    g_free (cells[i]);
}

GtkWidget *
lw_fit_table_new (const LwFit *fit)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2), *list = gtk_list_box_new ();
  g_autoptr (GArray) lines = lw_fit_lines (fit);
  g_autoptr (GPtrArray) leaves = lw_fit_leaves (fit);
  Columns *columns = g_new0 (Columns, 1);
  char *heads[N_COLUMNS] = {
    (char *) _ ("may differ"), (char *) _ ("before"), (char *) _ ("after"), (char *) _ ("standard error"),
    (char *) _ ("decided"), (char *) _ ("change"),
  };
  GtkWidget *head;

  for (guint i = 0; i < N_COLUMNS; i++)
    columns->columns[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  g_object_set_data_full (G_OBJECT (box), "columns", columns, (GDestroyNotify) columns_free);

  head = line_new (columns, heads, "fit-head");
  gtk_widget_add_css_class (head, "fit-heads");
  gtk_widget_set_tooltip_text (head, _ ("Decided: how much of what was not known before the weigh-ins took away. 100 %: they "
                                        "alone say the value. 0 %: they say nothing of it."));
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Values of the leaf"), -1);
  gtk_widget_add_css_class (list, "fit-table");
  for (guint i = 0; i < lines->len; i++)
    add_line (list, columns, fit, &g_array_index (lines, LwFitLine, i), leaves->len > 1);
  gtk_widget_set_halign (box, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), head);
  gtk_box_append (GTK_BOX (box), list);

  return box;
}

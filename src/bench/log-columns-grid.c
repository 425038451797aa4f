/* A grid: headings, a choice for each column, the first rows as they stand in the file. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/log-columns-grid.h"

#include <string.h>

#include "season/table.h"
#include "season/text.h"

#define MOST_ROWS 6

static const struct
{
  const char *label;
  LwLogUse use;
  LwLogTime time;
} choices[] = {
  { N_ ("not used"), LW_USE_NONE, 0 },
  { N_ ("time by clock"), LW_USE_TIME, LW_TIME_CLOCK },
  { N_ ("time by stopwatch"), LW_USE_TIME, LW_TIME_STOPWATCH },
  { N_ ("time in seconds"), LW_USE_TIME, LW_TIME_SECONDS },
  { N_ ("time in minutes"), LW_USE_TIME, LW_TIME_MINUTES },
  { N_ ("time in hours"), LW_USE_TIME, LW_TIME_HOURS },
  { N_ ("date"), LW_USE_DATE, 0 },
  { N_ ("leaf"), LW_USE_LEAF, 0 },
  { N_ ("wall"), LW_USE_WALL, 0 },
  { N_ ("air"), LW_USE_AIR, 0 },
};

typedef struct
{
  LwLogTable *table;
  GtkWidget **chosen;  /* a drop-down for each column */
  void (*changed) (gpointer data);
  gpointer data;
  gboolean filling;
} Grid;

static void
grid_free (Grid *grid)
{
  g_free (grid->chosen);
  g_free (grid);
}

static guint
choice_of (const LwLogColumn *column)
{
  for (guint i = 0; i < G_N_ELEMENTS (choices); i++)
    if (choices[i].use == column->use && (column->use != LW_USE_TIME || choices[i].time == column->time))
      return i;

  return 0;
}

/* There is one time: choosing it takes it from another. */
static void
show_choices (Grid *grid)
{
  grid->filling = TRUE;
  for (guint i = 0; i < grid->table->n_columns; i++)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (grid->chosen[i]), choice_of (&grid->table->columns[i]));
  grid->filling = FALSE;
}

static void
chosen_cb (GtkWidget  *drop_down,
           GParamSpec *spec,
           Grid       *grid)
{
  guint choice = gtk_drop_down_get_selected (GTK_DROP_DOWN (drop_down));

  if (grid->filling || choice >= G_N_ELEMENTS (choices))
    return;

  for (guint i = 0; i < grid->table->n_columns; i++)
    if (grid->chosen[i] == drop_down)
      {
        lw_log_table_use (grid->table, i, choices[choice].use);
        if (choices[choice].use == LW_USE_TIME)
          grid->table->columns[i].time = choices[choice].time;
      }
  show_choices (grid);
  grid->changed (grid->data);
}

static GtkWidget *
cell_new (const char *text,
          const char *css_class)
{
  g_autofree char *quoted = lw_table_quote (text);
  GtkWidget *label = gtk_label_new (quoted);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);

  return label;
}

static GtkWidget *
choice_new (Grid              *grid,
            const LwLogColumn *column)
{
  const char *labels[G_N_ELEMENTS (choices) + 1] = { NULL };
  /* Translators: a column's heading */
  g_autofree char *name = g_strdup_printf (_ ("What “%s” is"), column->name);
  GtkWidget *drop_down;

  for (guint i = 0; i < G_N_ELEMENTS (choices); i++)
    labels[i] = _ (choices[i].label);
  drop_down = gtk_drop_down_new_from_strings (labels);
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_tooltip_text (drop_down, name);
  g_signal_connect (drop_down, "notify::selected", G_CALLBACK (chosen_cb), grid);

  return drop_down;
}

/* Read from the right, the first column is at the far end. */
static void
to_start_cb (GtkAdjustment *across)
{
  if (gtk_widget_get_default_direction () == GTK_TEXT_DIR_RTL)
    gtk_adjustment_set_value (across, gtk_adjustment_get_upper (across) - gtk_adjustment_get_page_size (across));
}

GtkWidget *
lw_log_columns_grid_new (LwLogTable *table,
                         void      (*changed) (gpointer data),
                         gpointer    data)
{
  GtkWidget *widget = gtk_grid_new (), *scrolled = gtk_scrolled_window_new ();
  Grid *grid = g_new0 (Grid, 1);

  *grid = (Grid) { table, g_new0 (GtkWidget *, table->n_columns), changed, data, FALSE };
  gtk_grid_set_column_spacing (GTK_GRID (widget), 12);
  gtk_grid_set_row_spacing (GTK_GRID (widget), 2);
  for (guint i = 0; i < table->n_columns; i++)
    {
      grid->chosen[i] = choice_new (grid, &table->columns[i]);
      gtk_grid_attach (GTK_GRID (widget), cell_new (table->columns[i].name, "heading"), (int) i, 0, 1, 1);
      gtk_grid_attach (GTK_GRID (widget), grid->chosen[i], (int) i, 1, 1, 1);
      for (guint row = 0; row < MIN (table->n_rows, MOST_ROWS); row++)
        gtk_grid_attach (GTK_GRID (widget), cell_new (table->cells[(gsize) row * table->n_columns + i], "small"), (int) i,
                         (int) row + 2, 1, 1);
    }
  show_choices (grid);

  g_object_set_data_full (G_OBJECT (widget), "grid", grid, (GDestroyNotify) grid_free);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_AUTOMATIC, GTK_POLICY_NEVER);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), widget);
  g_signal_connect (gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (scrolled)), "changed",
                    G_CALLBACK (to_start_cb), NULL);

  return scrolled;
}

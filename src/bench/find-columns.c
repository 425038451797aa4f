/* The columns. Cells are filled when a row comes into view, and again when its outcome is known. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/find-window-private.h"

#include "season/text.h"
#include "season/wording.h"

typedef enum
{
  NAME,
  DATE,
  LEAF,
  TEA,
  MADE,
  MOISTURE,
  OXIDATION,
  RUPTURE,
  WEIGHT,
  N_SORTED,
  IN_FILE = N_SORTED,
  N_COLUMNS
} Column;

static const struct
{
  const char *title;
  LwSortBy by;
  int outcome;     /* -1: none */
  const char *unit;
  int digits;
  int chars;       /* in view, if there is room for no more */
  gboolean wide;   /* takes the room that is left */
} columns[N_COLUMNS] = {
  [NAME] = { N_ ("Name"), LW_SORT_NAME, -1, NULL, 0, 20, TRUE },
  [DATE] = { N_ ("Date"), LW_SORT_DATE, -1, NULL, 0, 11, FALSE },
  [LEAF] = { N_ ("Leaf"), LW_SORT_LEAF, -1, NULL, 0, 13, FALSE },
  [TEA] = { N_ ("Kind of tea"), LW_SORT_TEA, -1, NULL, 0, 15, FALSE },
  [MADE] = { N_ ("State"), LW_SORT_MADE, -1, NULL, 0, 8, FALSE },
  [MOISTURE] = { N_ ("Moisture"), LW_SORT_OUTCOME, LW_MOISTURE, "%", 1, 6, FALSE },
  [OXIDATION] = { N_ ("Oxidation"), LW_SORT_OUTCOME, LW_OXIDATION, "%", 1, 6, FALSE },
  [RUPTURE] = { N_ ("Cell rupture"), LW_SORT_OUTCOME, LW_RUPTURE, "%", 1, 6, FALSE },
  [WEIGHT] = { N_ ("Finished weight"), LW_SORT_OUTCOME, LW_FINISHED_KG, "kg", 2, 8, FALSE },
  [IN_FILE] = { N_ ("File"), LW_SORT_NAME, -1, NULL, 0, 11, TRUE },
};

GStrv
lw_find_sort_names (void)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();

  for (int i = 0; i < N_SORTED; i++)
    g_strv_builder_add (names, _ (columns[i].title));

  return g_strv_builder_end (names);
}

LwSort
lw_find_sort_of (guint    column,
                 gboolean downwards)
{
  return (LwSort) { columns[column].by, columns[column].outcome, downwards };
}

/* (transfer full) */
static char *
cell_text (LwFound *found,
           Column   column)
{
  const LwHead *head = lw_found_head (found);
  const LwOutcome *outcome = lw_found_outcome (found);

  if (columns[column].outcome >= 0)
    {
      if (outcome == NULL)
        return g_strdup (lw_found_state (found) == LW_FOUND_FAILED ? _ ("not known") : "…");
      /* Translators: a number and its unit */
      return g_strdup_printf (_ ("%.*f %s"), columns[column].digits,
                              lw_find_number (columns[column].outcome, head, outcome), columns[column].unit);
    }

  if (column == DATE)
    return lw_say_date (head->when_s);
  if (column == MADE)
    return g_strdup (head->made ? _ ("made") : _ ("planned"));
  if (column == IN_FILE)
    return lw_found_path (found) != NULL ? g_filename_display_basename (lw_found_path (found))
                                         : g_strdup (_ ("this season"));

  return g_strdup (column == NAME ? head->name : column == LEAF ? head->leaf : head->tea);
}

static Column
column_of (GtkWidget *label)
{
  return (Column) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (label), "column"));
}

/* GTK names the row, which has the focus, by nothing that a person would know. */
static void
name_row (GtkWidget *label,
          LwFound   *found)
{
  GtkWidget *cell = gtk_widget_get_parent (label), *row = cell != NULL ? gtk_widget_get_parent (cell) : NULL;
  const LwHead *head = lw_found_head (found);
  g_autofree char *date = lw_say_date (head->when_s), *spoken = NULL;

  if (row == NULL)
    return;

  /* Translators: a batch's name, date, leaf, state */
  spoken = g_strdup_printf (_ ("%s, %s, %s, %s"), head->name, date, head->leaf, head->made ? _ ("made") : _ ("planned"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
}

static void
fill (GtkListItem *cell)
{
  GtkWidget *label = gtk_list_item_get_child (cell);
  LwFound *found = gtk_list_item_get_item (cell);
  g_autofree char *text = cell_text (found, column_of (label));

  gtk_label_set_label (GTK_LABEL (label), text);
}

/* Only when it is asked for: to give each cell its text beforehand takes GTK longer than all else of a search. */
static gboolean
tooltip_cb (GtkListItem *cell,
            int          x,
            int          y,
            gboolean     by_keys,
            GtkTooltip  *tooltip)
{
  LwFound *found = gtk_list_item_get_item (cell);
  Column column = column_of (gtk_list_item_get_child (cell));
  const char *path = found != NULL ? lw_found_path (found) : NULL;
  g_autofree char *text = NULL;

  if (found == NULL)
    return FALSE;

  text = column == IN_FILE && path != NULL ? g_filename_display_name (path) : cell_text (found, column);
  gtk_tooltip_set_text (tooltip, text);

  return TRUE;
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *cell,
          gpointer                  column)
{
  GtkWidget *label = gtk_label_new (NULL);
  Column of = (Column) GPOINTER_TO_INT (column);

  gtk_label_set_xalign (GTK_LABEL (label), columns[of].outcome >= 0 ? 1 : 0);
  if (columns[of].outcome >= 0)
    gtk_widget_set_direction (label, GTK_TEXT_DIR_LTR);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_width_chars (GTK_LABEL (label), columns[of].chars);
  g_object_set_data (G_OBJECT (label), "column", column);
  gtk_widget_set_has_tooltip (label, TRUE);
  g_signal_connect_object (label, "query-tooltip", G_CALLBACK (tooltip_cb), cell, G_CONNECT_SWAPPED);
  gtk_list_item_set_child (cell, label);
}

static void
bind_cb (LwFindWindow *self,
         GtkListItem  *cell)
{
  LwFound *found = gtk_list_item_get_item (cell);
  Column column = column_of (gtk_list_item_get_child (cell));

  fill (cell);
  if (column == NAME)
    name_row (gtk_list_item_get_child (cell), found);
  if (columns[column].outcome < 0)
    return;

  g_signal_connect_swapped (found, "known", G_CALLBACK (fill), cell);
  if (column == MOISTURE)
    lw_finder_want (self->finder, found, TRUE);
}

static void
unbind_cb (LwFindWindow *self,
           GtkListItem  *cell)
{
  LwFound *found = gtk_list_item_get_item (cell);

  g_signal_handlers_disconnect_by_data (found, cell);
  if (column_of (gtk_list_item_get_child (cell)) == MOISTURE)
    lw_finder_want (self->finder, found, FALSE);
}

/* The finder sorts; this only notes which heading was asked, and says “larger”, so that the view's own sorter tells by
 * its answer which way it goes. GTK before 4.10 has no other way to ask. */
static int
probe_cb (gconstpointer a,
          gconstpointer b,
          gpointer      column)
{
  int *noted = *(int *const *) a;

  *noted = GPOINTER_TO_INT (column);

  return 1;
}

static void
headings_cb (LwFindWindow *self)
{
  GtkSorter *sorter = gtk_column_view_get_sorter (GTK_COLUMN_VIEW (self->list));
  int *noted[] = { &self->column, &self->column }; /* two, since one would be equal to itself */
  GtkOrdering way;

  if (self->sorting)
    return;

  self->column = -1;
  way = gtk_sorter_compare (sorter, &noted[0], &noted[1]);
  if (self->column < 0)
    return;

  self->sorting = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->sort), (guint) self->column);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->downwards), way == GTK_ORDERING_SMALLER);
  self->sorting = FALSE;
  lw_find_fields_ask (self);
}

void
lw_find_columns_show_sort (LwFindWindow *self,
                           guint         column,
                           gboolean      downwards)
{
  GListModel *all = gtk_column_view_get_columns (GTK_COLUMN_VIEW (self->list));
  g_autoptr (GtkColumnViewColumn) of = g_list_model_get_item (all, column);

  gtk_column_view_sort_by_column (GTK_COLUMN_VIEW (self->list), NULL, GTK_SORT_ASCENDING);
  gtk_column_view_sort_by_column (GTK_COLUMN_VIEW (self->list), of,
                                  downwards ? GTK_SORT_DESCENDING : GTK_SORT_ASCENDING);
}

static void
add_column (LwFindWindow *self,
            Column        column)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) of = gtk_column_view_column_new (_ (columns[column].title), factory);

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), GINT_TO_POINTER (column));
  g_signal_connect_swapped (factory, "bind", G_CALLBACK (bind_cb), self);
  g_signal_connect_swapped (factory, "unbind", G_CALLBACK (unbind_cb), self);
  gtk_column_view_column_set_expand (of, columns[column].wide);
  gtk_column_view_column_set_resizable (of, TRUE);
  if (column < N_SORTED)
    {
      g_autoptr (GtkSorter) sorter = GTK_SORTER (gtk_custom_sorter_new (probe_cb, GINT_TO_POINTER (column), NULL));

      gtk_column_view_column_set_sorter (of, sorter);
    }
  gtk_column_view_append_column (GTK_COLUMN_VIEW (self->list), of);
}

GtkWidget *
lw_find_columns_new (LwFindWindow *self)
{
  GtkWidget *scrolled = gtk_scrolled_window_new ();

  self->selection = gtk_single_selection_new (g_object_ref (lw_finder_found (self->finder)));
  self->list = gtk_column_view_new (g_object_ref (GTK_SELECTION_MODEL (self->selection)));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Batches found"), -1);
  gtk_widget_add_css_class (self->list, "found");
  for (int i = 0; i < N_COLUMNS; i++)
    add_column (self, (Column) i);
  g_signal_connect_swapped (gtk_column_view_get_sorter (GTK_COLUMN_VIEW (self->list)), "changed",
                            G_CALLBACK (headings_cb), self);

  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->list);
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_widget_add_css_class (scrolled, "frame");

  return scrolled;
}

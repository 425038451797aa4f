/* The columns: where, what, this, that, difference. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-table-view.h"

#include "bench/over-table-item.h"
#include "season/text.h"

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *cell,
          gpointer                  column)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), GPOINTER_TO_UINT (column) >= LW_OVER_THIS ? 1 : 0);
  /* Numbers and their signs are read from the left everywhere. */
  gtk_widget_set_direction (label, GPOINTER_TO_UINT (column) >= LW_OVER_THIS ? GTK_TEXT_DIR_LTR : GTK_TEXT_DIR_NONE);
  gtk_widget_add_css_class (label, "over-number");
  gtk_list_item_set_child (cell, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *cell,
         gpointer                  column)
{
  LwOverItem *item = gtk_list_item_get_item (cell);
  GtkWidget *label = gtk_list_item_get_child (cell);

  gtk_label_set_label (GTK_LABEL (label), lw_over_item_words (item, GPOINTER_TO_UINT (column)));
  gtk_accessible_update_property (GTK_ACCESSIBLE (label), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, lw_over_item_all (item), -1);
}

GtkWidget *
lw_over_view_new (GListModel *items)
{
  static const char *const titles[] = { N_ ("After step"), N_ ("Outcome"), N_ ("This"), N_ ("That"), N_ ("Difference") };
  GtkWidget *view = gtk_column_view_new (GTK_SELECTION_MODEL (gtk_single_selection_new (g_object_ref (items))));

  gtk_accessible_update_property (GTK_ACCESSIBLE (view), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Differences"), -1);
  for (guint i = 0; i < LW_OVER_N_COLUMNS; i++)
    {
      GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
      g_autoptr (GtkColumnViewColumn) column = gtk_column_view_column_new (_ (titles[i]), factory);

      g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), GUINT_TO_POINTER (i));
      g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), GUINT_TO_POINTER (i));
      gtk_column_view_column_set_expand (column, i <= LW_OVER_OUTCOME);
      gtk_column_view_append_column (GTK_COLUMN_VIEW (view), column);
    }

  return view;
}

void
lw_over_view_set_clock (GtkWidget *view,
                        gboolean   by_clock)
{
  g_autoptr (GtkColumnViewColumn) where
    = g_list_model_get_item (gtk_column_view_get_columns (GTK_COLUMN_VIEW (view)), LW_OVER_WHERE);

  gtk_column_view_column_set_title (where, by_clock ? _ ("Time of day") : _ ("After step"));
}

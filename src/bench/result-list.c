/* The list: rows over one another, their pictures in one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/result-list.h"

struct _LwResultList
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (LwResultList, lw_result_list, GTK_TYPE_WIDGET)

static void
draw_rows (GtkWidget *widget,
           cairo_t   *cr)
{
  for (GtkWidget *row = gtk_widget_get_first_child (widget); row; row = gtk_widget_get_next_sibling (row))
    {
      graphene_point_t at;

      if (!gtk_widget_get_visible (row) || !gtk_widget_compute_point (row, widget, graphene_point_zero (), &at))
        continue;

      cairo_save (cr);
      cairo_translate (cr, at.x, at.y);
      lw_result_row_draw (LW_RESULT_ROW (row), cr);
      cairo_restore (cr);
    }
}

static void
lw_result_list_snapshot (GtkWidget   *widget,
                         GtkSnapshot *snapshot)
{
  cairo_t *cr;

  GTK_WIDGET_CLASS (lw_result_list_parent_class)->snapshot (widget, snapshot);
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                                                 (float) gtk_widget_get_height (widget)));
  draw_rows (widget, cr);
  cairo_destroy (cr);
}

static void
lw_result_list_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);

  G_OBJECT_CLASS (lw_result_list_parent_class)->dispose (object);
}

static void
lw_result_list_class_init (LwResultListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_result_list_dispose;
  widget_class->snapshot = lw_result_list_snapshot;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "resultlist");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST);
}

static void
lw_result_list_init (LwResultList *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}

GtkWidget *
lw_result_list_new (void)
{
  return g_object_new (LW_TYPE_RESULT_LIST, NULL);
}

void
lw_result_list_add (LwResultList *self,
                    LwResultRow  *row)
{
  gtk_widget_set_parent (GTK_WIDGET (row), GTK_WIDGET (self));
}

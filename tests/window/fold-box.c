/* The box that folds: one row where there is room, else two, and from the right as from the left. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fold-box.h"

typedef struct
{
  GtkWidget *box;
  GtkWidget *parts[3];
} Fixture;

static GtkWidget *
part_new (int width)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *line = gtk_label_new (NULL);

  gtk_widget_set_size_request (line, width, 30);
  gtk_box_append (GTK_BOX (box), line);

  return box;
}

static void
set_up (Fixture      *f,
        gconstpointer direction)
{
  static const int widths[] = { 150, 200, 300 };

  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    f->parts[i] = part_new (widths[i]);
  f->box = g_object_ref_sink (lw_fold_box_new (f->parts[0], f->parts[1], f->parts[2]));
  gtk_widget_set_direction (f->box, GPOINTER_TO_INT (direction));
}

static void
tear_down (Fixture      *f,
           gconstpointer direction)
{
  g_object_unref (f->box);
}

static graphene_rect_t
bounds (Fixture *f,
        guint    part)
{
  graphene_rect_t box;

  g_assert_true (gtk_widget_compute_bounds (f->parts[part], f->box, &box));

  return box;
}

/* Lays it out at that width and returns its height. */
static int
lay_out (Fixture *f,
         int      width)
{
  int height;

  gtk_widget_measure (f->box, GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL, NULL);
  gtk_widget_size_allocate (f->box, &(GtkAllocation) { 0, 0, width, height }, -1);

  return height;
}

static void
test_folds (Fixture      *f,
            gconstpointer direction)
{
  int wide = lay_out (f, 1000), least;
  graphene_rect_t first = bounds (f, 0), last = bounds (f, 2);

  g_assert_cmpfloat (first.origin.y, ==, last.origin.y);
  g_assert_true (GPOINTER_TO_INT (direction) == GTK_TEXT_DIR_RTL ? first.origin.x > last.origin.x
                                                                 : first.origin.x < last.origin.x);
  g_assert_cmpfloat (first.size.width, >, 400);

  gtk_widget_measure (f->box, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  g_assert_cmpint (least, <, 500);
  g_assert_cmpint (lay_out (f, 500), >, wide);
  first = bounds (f, 0);
  last = bounds (f, 2);
  g_assert_cmpfloat (last.origin.y, >=, first.origin.y + first.size.height);
  g_assert_cmpfloat (first.size.width, >=, 150);
  for (guint i = 0; i < G_N_ELEMENTS (f->parts); i++)
    {
      graphene_rect_t part = bounds (f, i);

      g_assert_cmpfloat (part.origin.x, >=, 0);
      g_assert_cmpfloat (part.origin.x + part.size.width, <=, 500);
    }
}

int
main (int    argc,
      char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add ("/fold-box/from-the-left", Fixture, GINT_TO_POINTER (GTK_TEXT_DIR_LTR), set_up, test_folds, tear_down);
  g_test_add ("/fold-box/from-the-right", Fixture, GINT_TO_POINTER (GTK_TEXT_DIR_RTL), set_up, test_folds, tear_down);

  return g_test_run ();
}

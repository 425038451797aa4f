/* The box that folds: how wide the window is decides, not what is in it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/fold-box.h"

#include "bench/look.h"

#define GAP 12
#define ROW_GAP 6

struct _LwFoldBox
{
  GtkWidget parent_instance;

  GtkWidget *first;
  GtkWidget *middle;
  GtkWidget *last;
};

G_DEFINE_FINAL_TYPE (LwFoldBox, lw_fold_box, GTK_TYPE_WIDGET)

static int
usual (GtkWidget     *widget,
       GtkOrientation orientation,
       int            for_size)
{
  int natural;

  gtk_widget_measure (widget, orientation, for_size, NULL, &natural, NULL, NULL);

  return natural;
}

static int
least_width (GtkWidget *widget)
{
  int least;

  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);

  return least;
}

static gboolean
folds (LwFoldBox *self,
       int        width)
{
  int line = usual (gtk_widget_get_first_child (self->first), GTK_ORIENTATION_HORIZONTAL, -1);

  return line + usual (self->middle, GTK_ORIENTATION_HORIZONTAL, -1)
         + usual (self->last, GTK_ORIENTATION_HORIZONTAL, -1) + 2 * GAP > width;
}

/* Width of the first part in a box that is `width` wide. */
static int
first_width (LwFoldBox *self,
             int        width)
{
  int rest = width - usual (self->middle, GTK_ORIENTATION_HORIZONTAL, -1) - GAP;

  if (!folds (self, width))
    rest -= usual (self->last, GTK_ORIENTATION_HORIZONTAL, -1) + GAP;

  return MAX (rest, least_width (self->first));
}

static void
lw_fold_box_measure (GtkWidget     *widget,
                     GtkOrientation orientation,
                     int            for_size,
                     int           *minimum,
                     int           *natural,
                     int           *minimum_baseline,
                     int           *natural_baseline)
{
  LwFoldBox *self = LW_FOLD_BOX (widget);
  int upper, last;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (least_width (self->first) + GAP + usual (self->middle, orientation, -1), least_width (self->last));
      *natural = usual (self->first, orientation, -1) + usual (self->middle, orientation, -1)
                 + usual (self->last, orientation, -1) + 2 * GAP;
      return;
    }

  if (for_size < 0)
    lw_fold_box_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &upper, &for_size, NULL, NULL);
  upper = MAX (usual (self->first, orientation, first_width (self, for_size)), usual (self->middle, orientation, -1));
  last = usual (self->last, orientation, -1);
  *minimum = *natural = folds (self, for_size) ? upper + ROW_GAP + last : MAX (upper, last);
}

static GtkSizeRequestMode
lw_fold_box_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
place (LwFoldBox *self,
       GtkWidget *child,
       int        x,
       int        y,
       int        width,
       int        height)
{
  int all = gtk_widget_get_width (GTK_WIDGET (self));

  gtk_widget_size_allocate (child, &(GtkAllocation) { lw_look_is_rtl (GTK_WIDGET (self)) ? all - x - width : x, y, width,
                                                      height }, -1);
}

static void
lw_fold_box_size_allocate (GtkWidget *widget,
                           int        width,
                           int        height,
                           int        baseline)
{
  LwFoldBox *self = LW_FOLD_BOX (widget);
  gboolean fold = folds (self, width);
  int first = first_width (self, width), middle = usual (self->middle, GTK_ORIENTATION_HORIZONTAL, -1);
  int last = usual (self->last, GTK_ORIENTATION_HORIZONTAL, -1), last_height = usual (self->last, GTK_ORIENTATION_VERTICAL, -1);
  int upper = fold ? MAX (height - last_height - ROW_GAP, 0) : height;

  last = MAX (MIN (last, width), least_width (self->last));
  place (self, self->first, 0, 0, first, upper);
  place (self, self->middle, first + GAP, 0, middle, upper);
  place (self, self->last, width - last, fold ? upper + ROW_GAP : 0, last, fold ? last_height : upper);
}

static void
lw_fold_box_dispose (GObject *object)
{
  LwFoldBox *self = LW_FOLD_BOX (object);

  g_clear_pointer (&self->first, gtk_widget_unparent);
  g_clear_pointer (&self->middle, gtk_widget_unparent);
  g_clear_pointer (&self->last, gtk_widget_unparent);

  G_OBJECT_CLASS (lw_fold_box_parent_class)->dispose (object);
}

static void
lw_fold_box_class_init (LwFoldBoxClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = lw_fold_box_dispose;
  widget_class->measure = lw_fold_box_measure;
  widget_class->get_request_mode = lw_fold_box_get_request_mode;
  widget_class->size_allocate = lw_fold_box_size_allocate;

  gtk_widget_class_set_css_name (widget_class, "foldbox");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GENERIC);
}

static void
lw_fold_box_init (LwFoldBox *self)
{
}

GtkWidget *
lw_fold_box_new (GtkWidget *first,
                 GtkWidget *middle,
                 GtkWidget *last)
{
  LwFoldBox *self = g_object_new (LW_TYPE_FOLD_BOX, NULL);

  self->first = first;
  self->middle = middle;
  self->last = last;
  gtk_widget_set_parent (first, GTK_WIDGET (self));
  gtk_widget_set_parent (middle, GTK_WIDGET (self));
  gtk_widget_set_parent (last, GTK_WIDGET (self));

  return GTK_WIDGET (self);
}

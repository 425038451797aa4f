/* The cell. It is drawn, not put together: a table has hundreds. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-cell.h"

#include <string.h>

#include "bench/look.h"

#define PAD 6
#define GAP 1      /* between shades */

struct _LwKnockCell
{
  GtkWidget parent_instance;

  PangoLayout *layout;
  char *said;
  double share;
  gboolean faint;
  gboolean marked;
};

G_DEFINE_FINAL_TYPE (LwKnockCell, lw_knock_cell, GTK_TYPE_WIDGET)

static void
append (GtkSnapshot *snapshot,
        LwInk        ink,
        float        inset,
        float        width,
        float        height)
{
  GdkRGBA color = lw_look_rgba (ink);

  gtk_snapshot_append_color (snapshot, &color,
                             &GRAPHENE_RECT_INIT (inset, inset, MAX (width - 2 * inset, 0), MAX (height - 2 * inset, 0)));
}

static void
lw_knock_cell_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  LwKnockCell *self = LW_KNOCK_CELL (widget);
  const LwPalette *palette = lw_look_palette (widget);
  GdkRGBA ink = lw_look_rgba (self->faint ? palette->faint : palette->ink);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget), text_width, text_height;

  if (self->marked)
    append (snapshot, palette->ink, GAP, (float) width, (float) height);
  if (self->marked || self->share != 0)
    append (snapshot, lw_ink_of_change (palette, self->share), self->marked ? GAP + 2 : GAP, (float) width, (float) height);

  /* Numbers stand one under the other, wherever people read from. */
  pango_layout_get_pixel_size (self->layout, &text_width, &text_height);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) (width - PAD - text_width),
                                                          (float) ((height - text_height) / 2)));
  gtk_snapshot_append_layout (snapshot, self->layout, &ink);
  gtk_snapshot_restore (snapshot);
}

static void
lw_knock_cell_measure (GtkWidget     *widget,
                       GtkOrientation orientation,
                       int            for_size,
                       int           *minimum,
                       int           *natural,
                       int           *minimum_baseline,
                       int           *natural_baseline)
{
  int width, height;

  pango_layout_get_pixel_size (LW_KNOCK_CELL (widget)->layout, &width, &height);
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? width + 2 * PAD : height + 2 * GAP;
}

static void
lw_knock_cell_css_changed (GtkWidget         *widget,
                           GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lw_knock_cell_parent_class)->css_changed (widget, change);
  pango_layout_context_changed (LW_KNOCK_CELL (widget)->layout);
}

static void
lw_knock_cell_finalize (GObject *object)
{
  LwKnockCell *self = LW_KNOCK_CELL (object);

  g_object_unref (self->layout);
  g_free (self->said);

  G_OBJECT_CLASS (lw_knock_cell_parent_class)->finalize (object);
}

static void
lw_knock_cell_class_init (LwKnockCellClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lw_knock_cell_finalize;
  widget_class->snapshot = lw_knock_cell_snapshot;
  widget_class->measure = lw_knock_cell_measure;
  widget_class->css_changed = lw_knock_cell_css_changed;

  gtk_widget_class_set_css_name (widget_class, "knockcell");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GRID_CELL);
}

static void
lw_knock_cell_init (LwKnockCell *self)
{
  self->layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), "");
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
}

GtkWidget *
lw_knock_cell_new (void)
{
  return g_object_new (LW_TYPE_KNOCK_CELL, NULL);
}

void
lw_knock_cell_set (LwKnockCell *self,
                   const char  *number,
                   const char  *said,
                   double       share,
                   gboolean     faint)
{
  g_autofree char *text = g_strconcat (LW_KNOCK_SIGN_FIRST, number, NULL);

  /* Telling screen readers costs more than all else. */
  if (g_strcmp0 (said, self->said) != 0)
    {
      g_free (self->said);
      self->said = g_strdup (said);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
    }
  if (self->share == share && self->faint == faint && strcmp (text, pango_layout_get_text (self->layout)) == 0)
    return;

  pango_layout_set_text (self->layout, text, -1);
  self->share = share;
  self->faint = faint;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
lw_knock_cell_mark (LwKnockCell *self,
                    gboolean     marked)
{
  if (self->marked == marked)
    return;

  self->marked = marked;
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_SELECTED, marked, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const char *
lw_knock_cell_said (LwKnockCell *self)
{
  return self->said;
}

/* The words over a column. They are drawn, since a label cannot be turned. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/knock-head.h"

#include "bench/look.h"

#define LONGEST 8.5      /* of a line, in letters' heights; longer words go on in a second line */
#define LINES 2
#define UNIT_SCALE 0.95

struct _LwKnockHead
{
  GtkWidget parent_instance;

  PangoLayout *words;
  PangoLayout *unit;
};

G_DEFINE_FINAL_TYPE (LwKnockHead, lw_knock_head, GTK_TYPE_WIDGET)

/* As the font of the moment has it. */
static void
set_lengths (LwKnockHead *self)
{
  PangoLayout *layouts[] = { self->words, self->unit };
  LwLetter letter = lw_look_letter (GTK_WIDGET (self));

  for (guint i = 0; i < G_N_ELEMENTS (layouts); i++)
    {
      pango_layout_context_changed (layouts[i]);
      pango_layout_set_width (layouts[i], (int) (LONGEST * letter.base_px * PANGO_SCALE));
    }
}

static void
lw_knock_head_measure (GtkWidget     *widget,
                       GtkOrientation orientation,
                       int            for_size,
                       int           *minimum,
                       int           *natural,
                       int           *minimum_baseline,
                       int           *natural_baseline)
{
  LwKnockHead *self = LW_KNOCK_HEAD (widget);
  PangoRectangle words, unit;

  pango_layout_get_pixel_extents (self->words, NULL, &words);
  pango_layout_get_pixel_extents (self->unit, NULL, &unit);
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? words.height + unit.height
                                                                  : MAX (words.width, unit.width);
}

static void
append (GtkSnapshot *snapshot,
        PangoLayout *layout,
        int          across,
        int          down,
        LwInk        ink)
{
  GdkRGBA color = lw_look_rgba (ink);
  PangoRectangle box;

  pango_layout_get_pixel_extents (layout, NULL, &box);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) across, (float) down));
  gtk_snapshot_rotate (snapshot, -90);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) -box.x, 0));
  gtk_snapshot_append_layout (snapshot, layout, &color);
  gtk_snapshot_restore (snapshot);
}

/* Over the numbers, which stand at the right wherever people read from, and beginning beside them. */
static void
lw_knock_head_snapshot (GtkWidget   *widget,
                        GtkSnapshot *snapshot)
{
  LwKnockHead *self = LW_KNOCK_HEAD (widget);
  const LwPalette *palette = lw_look_palette (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  PangoRectangle words, unit;

  pango_layout_get_pixel_extents (self->words, NULL, &words);
  pango_layout_get_pixel_extents (self->unit, NULL, &unit);
  append (snapshot, self->words, width - unit.height - words.height, height, palette->ink);
  append (snapshot, self->unit, width - unit.height, height, palette->faint);
}

static void
lw_knock_head_css_changed (GtkWidget         *widget,
                           GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (lw_knock_head_parent_class)->css_changed (widget, change);
  set_lengths (LW_KNOCK_HEAD (widget));
  gtk_widget_queue_resize (widget);
}

static void
lw_knock_head_finalize (GObject *object)
{
  LwKnockHead *self = LW_KNOCK_HEAD (object);

  g_object_unref (self->words);
  g_object_unref (self->unit);

  G_OBJECT_CLASS (lw_knock_head_parent_class)->finalize (object);
}

static void
lw_knock_head_class_init (LwKnockHeadClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lw_knock_head_finalize;
  widget_class->measure = lw_knock_head_measure;
  widget_class->snapshot = lw_knock_head_snapshot;
  widget_class->css_changed = lw_knock_head_css_changed;

  gtk_widget_class_set_css_name (widget_class, "knockhead");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
lw_knock_head_init (LwKnockHead *self)
{
  PangoAttrList *light = pango_attr_list_new ();

  self->words = gtk_widget_create_pango_layout (GTK_WIDGET (self), NULL);
  self->unit = gtk_widget_create_pango_layout (GTK_WIDGET (self), NULL);
  pango_attr_list_insert (light, pango_attr_weight_new (PANGO_WEIGHT_NORMAL));
  pango_attr_list_insert (light, pango_attr_scale_new (UNIT_SCALE));
  pango_layout_set_attributes (self->unit, light);
  pango_attr_list_unref (light);
  pango_layout_set_height (self->words, -LINES);
  pango_layout_set_height (self->unit, -1);
  pango_layout_set_wrap (self->words, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_ellipsize (self->words, PANGO_ELLIPSIZE_END);
  pango_layout_set_ellipsize (self->unit, PANGO_ELLIPSIZE_END);
}

GtkWidget *
lw_knock_head_new (const char *words,
                   const char *unit)
{
  LwKnockHead *self = g_object_new (LW_TYPE_KNOCK_HEAD, NULL);

  pango_layout_set_text (self->words, words, -1);
  pango_layout_set_text (self->unit, unit, -1);
  set_lengths (self);

  return GTK_WIDGET (self);
}

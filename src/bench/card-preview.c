/* Pages one under the other, as wide as there is room. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/card-preview.h"

#include "season/text.h"

#define GAP 14.0
#define LEAST_WIDTH 260
#define USUAL_WIDTH 520

struct _LwCardPreview
{
  GtkWidget parent_instance;

  LwCard *card;
};

G_DEFINE_FINAL_TYPE (LwCardPreview, lw_card_preview, GTK_TYPE_WIDGET)

/* Px for each point of the pages. */
static double
scale_for (const LwPages *pages,
           double         width)
{
  return MAX (width - 2 * GAP, 1) / pages->width;
}

static void
lw_card_preview_snapshot (GtkWidget   *widget,
                          GtkSnapshot *snapshot)
{
  LwCardPreview *self = LW_CARD_PREVIEW (widget);
  const LwPages *pages = self->card != NULL ? lw_card_pages (self->card) : NULL;
  double by = pages != NULL ? scale_for (pages, gtk_widget_get_width (widget)) : 1;

  for (guint i = 0; pages != NULL && i < pages->n; i++)
    {
      double top = GAP + i * (by * pages->height + GAP);
      graphene_rect_t place = GRAPHENE_RECT_INIT ((float) GAP, (float) top, (float) (by * pages->width),
                                                  (float) (by * pages->height));
      cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &place);

      cairo_translate (cr, GAP, top);
      cairo_scale (cr, by, by);
      lw_card_draw (cr, self->card, i);
      cairo_destroy (cr);
    }
}

static void
lw_card_preview_measure (GtkWidget     *widget,
                         GtkOrientation orientation,
                         int            for_size,
                         int           *minimum,
                         int           *natural,
                         int           *minimum_baseline,
                         int           *natural_baseline)
{
  LwCardPreview *self = LW_CARD_PREVIEW (widget);
  const LwPages *pages = self->card != NULL ? lw_card_pages (self->card) : NULL;

  *minimum = LEAST_WIDTH;
  *natural = USUAL_WIDTH;
  if (orientation == GTK_ORIENTATION_VERTICAL && pages != NULL)
    {
      double by = scale_for (pages, for_size > 0 ? for_size : USUAL_WIDTH);

      *minimum = *natural = (int) (GAP + pages->n * (by * pages->height + GAP));
    }
}

static GtkSizeRequestMode
lw_card_preview_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
lw_card_preview_finalize (GObject *object)
{
  g_clear_pointer (&LW_CARD_PREVIEW (object)->card, lw_card_free);

  G_OBJECT_CLASS (lw_card_preview_parent_class)->finalize (object);
}

static void
lw_card_preview_class_init (LwCardPreviewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = lw_card_preview_finalize;
  widget_class->snapshot = lw_card_preview_snapshot;
  widget_class->measure = lw_card_preview_measure;
  widget_class->get_request_mode = lw_card_preview_request_mode;

  gtk_widget_class_set_css_name (widget_class, "cardpreview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
lw_card_preview_init (LwCardPreview *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
}

GtkWidget *
lw_card_preview_new (void)
{
  return g_object_new (LW_TYPE_CARD_PREVIEW, NULL);
}

void
lw_card_preview_show (LwCardPreview *self,
                      LwCard        *card)
{
  g_autofree char *words = card != NULL ? lw_pages_text (lw_card_pages (card)) : g_strdup ("");
  guint n = card != NULL ? lw_card_pages (card)->n : 0;
  g_autofree char *label = g_strdup_printf (ngettext ("Preview of the wall card, %u page", "Preview of the wall card, %u pages",
                                                      n), n);

  g_clear_pointer (&self->card, lw_card_free);
  self->card = card;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

const LwCard *
lw_card_preview_card (LwCardPreview *self)
{
  return self->card;
}

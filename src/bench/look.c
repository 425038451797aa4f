/* Palette and lettering of a widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/look.h"

#include "bench/compat.h"

gboolean
lw_look_is_dark (GtkWidget *widget)
{
  GdkRGBA text = lw_compat_color (widget);

  return 0.2126f * text.red + 0.7152f * text.green + 0.0722f * text.blue > 0.5f;
}

const LwPalette *
lw_look_palette (GtkWidget *widget)
{
  return lw_palette (lw_look_is_dark (widget));
}

LwLetter
lw_look_letter (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double px = pango_font_description_get_size (font) / (double) PANGO_SCALE;

  if (!pango_font_description_get_size_is_absolute (font))
    px *= pango_cairo_context_get_resolution (context) / 72;

  return (LwLetter) {
    .family = pango_font_description_get_family (font),
    .base_px = px > 0 ? px : 13,
  };
}

gboolean
lw_look_is_rtl (GtkWidget *widget)
{
  return gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
}

GdkRGBA
lw_look_rgba (LwInk ink)
{
  return (GdkRGBA) { (float) ink.r, (float) ink.g, (float) ink.b, (float) ink.a };
}

void
lw_look_letter_number (GtkWidget *label,
                       GtkWidget *widget)
{
  LwLetter letter = lw_look_letter (widget);
  g_autoptr (PangoAttrList) attrs = pango_attr_list_new ();
  g_autoptr (PangoFontDescription) font = pango_font_description_new ();

  pango_font_description_set_family (font, letter.family != NULL ? letter.family : "Sans");
  pango_font_description_set_weight (font, PANGO_WEIGHT_BOLD);
  pango_font_description_set_absolute_size (font, 1.15 * letter.base_px * PANGO_SCALE);
  pango_attr_list_insert (attrs, pango_attr_font_desc_new (font));
  pango_attr_list_insert (attrs, pango_attr_font_features_new ("tnum"));
  gtk_label_set_attributes (GTK_LABEL (label), attrs);
}

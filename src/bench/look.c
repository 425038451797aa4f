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

char *
lw_look_numbers (const char *text)
{
  /* A mark of the direction: signs between numbers have none of their own. */
  return g_strconcat (gtk_widget_get_default_direction () == GTK_TEXT_DIR_RTL ? "\u200e" : "", text, NULL);
}

GdkRGBA
lw_look_rgba (LwInk ink)
{
  return (GdkRGBA) { (float) ink.r, (float) ink.g, (float) ink.b, (float) ink.a };
}

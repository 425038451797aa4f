/* Paragraphs by Pango, laid out for no surface in particular. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/paragraph.h"

#include <pango/pangocairo.h>

#define FIGURE_SIZE 100.0
#define MOST_KEPT 2048

/* Figures of one width; no ligatures, so that words can be found in a PDF. */
static void
set_features (PangoLayout *layout)
{
  PangoAttrList *attrs = pango_attr_list_new ();

  pango_attr_list_insert (attrs, pango_attr_font_features_new ("tnum, liga=0"));
  pango_layout_set_attributes (layout, attrs);
  pango_attr_list_unref (attrs);
}

/* (transfer none) kept: dear to make. For one thread. */
static PangoContext *
context_for (gboolean rtl)
{
  static PangoContext *contexts[2];
  PangoContext *context = contexts[rtl];
  cairo_font_options_t *options;

  if (context != NULL)
    return context;

  context = contexts[rtl] = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  options = cairo_font_options_create ();
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
  pango_context_set_base_dir (context, rtl ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);

  return context;
}

/* Pango turns the alignment of words that run against the page. */
static void
align (PangoLayout       *layout,
       const LwParagraph *paragraph)
{
  gboolean words_rtl = pango_layout_get_line_readonly (layout, 0)->resolved_dir == PANGO_DIRECTION_RTL;
  gboolean to_right = paragraph->rtl != paragraph->at_end;
  gboolean turned = words_rtl != paragraph->rtl;

  pango_layout_set_alignment (layout, to_right != turned ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
}

static PangoLayout *
layout_new (const LwParagraph *paragraph)
{
  PangoLayout *layout = pango_layout_new (context_for (paragraph->rtl != FALSE));
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family_static (font, "Sans");
  pango_font_description_set_weight (font, paragraph->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, paragraph->size * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  set_features (layout);
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  if (paragraph->width > 0)
    pango_layout_set_width (layout, (int) (paragraph->width * PANGO_SCALE));
  pango_layout_set_text (layout, paragraph->text, -1);
  align (layout, paragraph);

  return layout;
}

/* Fitting asks the same again and again: sizes are kept, and all dropped when they are too many. */
void
lw_paragraph_size (const LwParagraph *paragraph,
                   double            *width,
                   double            *height)
{
  static GHashTable *kept;
  g_autofree char *key = g_strdup_printf ("%d %d %.17g %.17g %s", paragraph->bold, paragraph->rtl, paragraph->size,
                                          paragraph->width, paragraph->text);
  PangoRectangle *box;

  if (kept == NULL)
    kept = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  box = g_hash_table_lookup (kept, key);
  if (box == NULL)
    {
      g_autoptr (PangoLayout) layout = layout_new (paragraph);

      if (g_hash_table_size (kept) >= MOST_KEPT)
        g_hash_table_remove_all (kept);
      box = g_new (PangoRectangle, 1);
      pango_layout_get_extents (layout, NULL, box);
      g_hash_table_insert (kept, g_steal_pointer (&key), box);
    }

  if (width != NULL)
    *width = (double) box->width / PANGO_SCALE;
  if (height != NULL)
    *height = (double) box->height / PANGO_SCALE;
}

void
lw_paragraph_draw (cairo_t           *cr,
                   const LwParagraph *paragraph,
                   double             x,
                   double             y)
{
  g_autoptr (PangoLayout) layout = layout_new (paragraph);

  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr);
}

double
lw_paragraph_figure (gboolean bold)
{
  const LwParagraph zero = { .text = "0", .size = FIGURE_SIZE, .bold = bold };
  g_autoptr (PangoLayout) layout = layout_new (&zero);
  PangoRectangle ink;

  pango_layout_get_extents (layout, &ink, NULL);

  return (double) ink.height / PANGO_SCALE / FIGURE_SIZE;
}

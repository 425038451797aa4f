/* Lettering. A layout is dear to make, so each cairo_t keeps one for all its text. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/letter.h"

#define BASE_PX 13.0

typedef struct
{
  PangoLayout *layout;
  PangoFontDescription *font;
  const char *family;
  double px;
  gboolean bold;
} Type;

static const cairo_user_data_key_t type_key;

static void
type_free (Type *type)
{
  pango_font_description_free (type->font);
  g_object_unref (type->layout);
  g_free (type);
}

/* Figures of one width, so that numbers do not tremble while they change; no ligatures, so that
 * words can be found in a PDF. */
static void
set_features (PangoLayout *layout)
{
  PangoAttrList *attrs = pango_attr_list_new ();

  pango_attr_list_insert (attrs, pango_attr_font_features_new ("tnum, liga=0"));
  pango_layout_set_attributes (layout, attrs);
  pango_attr_list_unref (attrs);
}

/* NULL where the cairo_t has failed, and so draws nothing. */
static Type *
type_of (cairo_t *cr)
{
  Type *type = cairo_get_user_data (cr, &type_key);

  if (type != NULL)
    return type;

  type = g_new0 (Type, 1);
  type->layout = pango_cairo_create_layout (cr);
  type->font = pango_font_description_new ();
  pango_layout_set_single_paragraph_mode (type->layout, TRUE);
  pango_layout_set_ellipsize (type->layout, PANGO_ELLIPSIZE_NONE);
  set_features (type->layout);
  if (cairo_set_user_data (cr, &type_key, type, (cairo_destroy_func_t) type_free)
      != CAIRO_STATUS_SUCCESS)
    g_clear_pointer (&type, type_free);

  return type;
}

/* (nullable) */
static PangoLayout *
set_text (cairo_t        *cr,
          const LwLetter *letter,
          double          size,
          gboolean        bold,
          const char     *text)
{
  Type *type = type_of (cr);
  double px = size * BASE_PX * lw_letter_scale (letter);

  if (type == NULL)
    return NULL;

  if (type->px != px || type->bold != bold || g_strcmp0 (type->family, letter->family) != 0)
    {
      type->px = px;
      type->bold = bold;
      type->family = g_intern_string (letter->family);
      pango_font_description_set_family_static (type->font, type->family ? type->family : "Sans");
      pango_font_description_set_weight (type->font,
                                         bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
      pango_font_description_set_absolute_size (type->font, px * PANGO_SCALE);
      pango_layout_set_font_description (type->layout, type->font);
    }
  pango_cairo_update_layout (cr, type->layout);
  pango_context_set_base_dir (pango_layout_get_context (type->layout),
                              letter->rtl ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);
  pango_layout_set_width (type->layout, -1);
  pango_layout_set_text (type->layout, text, -1);

  return type->layout;
}

static double
in_px (int units)
{
  return (double) units / PANGO_SCALE;
}

/* Shares of the width that lie left of x. */
static double
share_left (const LwLetter *letter,
            LwTextAnchor    anchor)
{
  if (anchor == LW_TEXT_MIDDLE)
    return 0.5;

  return (anchor == LW_TEXT_START) == !letter->rtl ? 0 : 1;
}

static double
draw (cairo_t        *cr,
      const LwLetter *letter,
      double          x,
      double          y,
      gboolean        on_baseline,
      LwTextAnchor    anchor,
      double          size,
      gboolean        bold,
      double          room,
      const char     *text)
{
  PangoLayout *layout = set_text (cr, letter, size, bold, text);
  PangoRectangle box;
  double width, left;

  if (layout == NULL)
    return 0;

  pango_layout_get_extents (layout, NULL, &box);
  if (room > 0 && in_px (box.width) > room)
    {
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
      pango_layout_set_width (layout, (int) (room * PANGO_SCALE));
      pango_layout_get_extents (layout, NULL, &box);
    }

  width = in_px (box.width);
  left = x - share_left (letter, anchor) * width - in_px (box.x);
  if (on_baseline)
    y -= in_px (pango_layout_get_baseline (layout));
  cairo_move_to (cr, left, y);
  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_NONE);

  return width;
}

double
lw_letter_draw (cairo_t        *cr,
                const LwLetter *letter,
                double          x,
                double          y,
                LwTextAnchor    anchor,
                double          size,
                gboolean        bold,
                double          room,
                const char     *text)
{
  return draw (cr, letter, x, y, FALSE, anchor, size, bold, room, text);
}

double
lw_letter_draw_on (cairo_t        *cr,
                   const LwLetter *letter,
                   double          x,
                   double          baseline,
                   LwTextAnchor    anchor,
                   double          size,
                   gboolean        bold,
                   double          room,
                   const char     *text)
{
  return draw (cr, letter, x, baseline, TRUE, anchor, size, bold, room, text);
}

void
lw_letter_size (cairo_t        *cr,
                const LwLetter *letter,
                double          size,
                gboolean        bold,
                const char     *text,
                double         *width,
                double         *height)
{
  PangoLayout *layout = set_text (cr, letter, size, bold, text);
  PangoRectangle box = { 0 };

  if (layout != NULL)
    pango_layout_get_extents (layout, NULL, &box);
  if (width != NULL)
    *width = in_px (box.width);
  if (height != NULL)
    *height = in_px (box.height);
}

double
lw_letter_scale (const LwLetter *letter)
{
  return letter->base_px > 0 ? letter->base_px / BASE_PX : 1;
}

double
lw_letter_line (const LwLetter *letter)
{
  return 1.4 * BASE_PX * lw_letter_scale (letter);
}

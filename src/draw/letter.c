/* Lettering. A layout is dear to make and to shape, and the same words come again and again: layouts are kept, and all
 * dropped when they are too many. For one thread. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/letter.h"

#define BASE_PX 13.0
#define MOST_KEPT 512

/* What a layout is for. */
typedef struct
{
  char *text;
  const char *family; /* interned, or NULL */
  double px;
  gboolean bold;
  gboolean rtl;
} Words;

/* What a layout is laid out for: with these it need not be laid out again. */
typedef struct
{
  cairo_font_options_t *options;
  double xx, yx, xy, yy;
} Ground;

typedef struct
{
  PangoLayout *layout;
  Ground ground;
} Kept;

static GHashTable *kept; /* Words to Kept */

static void
words_free (Words *words)
{
  g_free (words->text);
  g_free (words);
}

static void
kept_free (Kept *one)
{
  g_object_unref (one->layout);
  cairo_font_options_destroy (one->ground.options);
  g_free (one);
}

static guint
words_hash (gconstpointer key)
{
  const Words *words = key;

  return g_str_hash (words->text) ^ (guint) (64 * words->px) ^ (words->bold ? 0x5555u : 0) ^ (words->rtl ? 0x3333u : 0);
}

static gboolean
words_equal (gconstpointer a,
             gconstpointer b)
{
  const Words *one = a, *other = b;

  return one->px == other->px && one->bold == other->bold && one->rtl == other->rtl && one->family == other->family
         && g_str_equal (one->text, other->text);
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

static PangoLayout *
layout_new (cairo_t     *cr,
            const Words *words)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family_static (font, words->family != NULL ? words->family : "Sans");
  pango_font_description_set_weight (font, words->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, words->px * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  set_features (layout);
  pango_context_set_base_dir (pango_layout_get_context (layout),
                              words->rtl ? PANGO_DIRECTION_RTL : PANGO_DIRECTION_LTR);
  pango_layout_set_text (layout, words->text, -1);

  return layout;
}

static Ground
ground_of (cairo_t *cr)
{
  cairo_font_options_t *options = cairo_font_options_create ();
  cairo_matrix_t to;

  cairo_surface_get_font_options (cairo_get_target (cr), options);
  cairo_get_matrix (cr, &to);

  return (Ground) { options, to.xx, to.yx, to.xy, to.yy };
}

static gboolean
same_ground (const Ground *a,
             const Ground *b)
{
  return a->xx == b->xx && a->yx == b->yx && a->xy == b->xy && a->yy == b->yy
         && cairo_font_options_equal (a->options, b->options);
}

/* Pango lays out anew at every update, also to the same ground. */
static void
update (Kept    *one,
        cairo_t *cr)
{
  Ground ground = ground_of (cr);

  if (!same_ground (&one->ground, &ground))
    pango_cairo_update_layout (cr, one->layout);
  cairo_font_options_destroy (one->ground.options);
  one->ground = ground;
}

/* (transfer none) (nullable) where the cairo_t has failed, and so draws nothing. */
static PangoLayout *
set_text (cairo_t        *cr,
          const LwLetter *letter,
          double          size,
          gboolean        bold,
          const char     *text)
{
  Words words = {
    (char *) text, g_intern_string (letter->family), size * BASE_PX * lw_letter_scale (letter), bold, letter->rtl,
  };
  Kept *one;

  if (cairo_status (cr) != CAIRO_STATUS_SUCCESS)
    return NULL;
  if (kept == NULL)
    kept = g_hash_table_new_full (words_hash, words_equal, (GDestroyNotify) words_free, (GDestroyNotify) kept_free);

  one = g_hash_table_lookup (kept, &words);
  if (one == NULL)
    {
      if (g_hash_table_size (kept) >= MOST_KEPT)
        g_hash_table_remove_all (kept);
      one = g_new0 (Kept, 1);
      one->layout = layout_new (cr, &words);
      one->ground = ground_of (cr);
      words.text = g_strdup (text);
      g_hash_table_insert (kept, g_memdup2 (&words, sizeof words), one);
    }
  else
    {
      update (one, cr);
    }

  return one->layout;
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
  pango_layout_set_width (layout, -1);

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

/* Laying out and drawing pages. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/pages.h"

#include "draw/block.h"
#include "draw/paragraph.h"

#define BLACK ((LwInk) { 0, 0, 0, 1 })
#define WHITE ((LwInk) { 1, 1, 1, 1 })

static void
piece_clear (LwPiece *piece)
{
  g_free (piece->text);
}

LwPages *
lw_pages_new (double   width,
              double   height,
              gboolean rtl)
{
  LwPages *pages = g_new0 (LwPages, 1);

  pages->width = width;
  pages->height = height;
  pages->rtl = rtl;
  pages->n = 1;
  pages->pieces = g_array_new (FALSE, TRUE, sizeof (LwPiece));
  g_array_set_clear_func (pages->pieces, (GDestroyNotify) piece_clear);

  return pages;
}

void
lw_pages_free (LwPages *pages)
{
  g_array_unref (pages->pieces);
  g_free (pages);
}

static void
add (LwPages *pages,
     LwPiece  piece)
{
  piece.page = pages->n - 1;
  g_array_append_val (pages->pieces, piece);
}

static LwParagraph
paragraph_of (const LwPages *pages,
              const LwPiece *piece)
{
  return (LwParagraph) {
    .text = piece->text, .width = piece->place.width, .size = piece->size, .bold = piece->bold,
    .at_end = piece->at_end, .rtl = pages != NULL && pages->rtl,
  };
}

static double
words (LwPages *pages,
       LwPiece  piece)
{
  LwParagraph paragraph = paragraph_of (pages, &piece);

  if (piece.text[0] == '\0')
    return 0;

  lw_paragraph_size (&paragraph, NULL, &piece.place.height);
  if (pages != NULL)
    {
      piece.text = g_strdup (piece.text);
      add (pages, piece);
    }

  return piece.place.height;
}

double
lw_pages_words (LwPages    *pages,
                double      x,
                double      y,
                double      width,
                double      size,
                gboolean    bold,
                const char *text)
{
  return words (pages, (LwPiece) { .place = { x, y, width, 0 }, .text = (char *) text, .size = size, .bold = bold });
}

double
lw_pages_words_end (LwPages    *pages,
                    double      x,
                    double      y,
                    double      width,
                    double      size,
                    gboolean    bold,
                    const char *text)
{
  return words (pages, (LwPiece) { .place = { x, y, width, 0 }, .text = (char *) text, .size = size, .bold = bold,
                                   .at_end = TRUE });
}

void
lw_pages_rule (LwPages *pages,
               double   x,
               double   y,
               double   width,
               double   line)
{
  add (pages, (LwPiece) { .kind = LW_PIECE_RULE, .place = { x, y, width, line }, .line = line });
}

void
lw_pages_frame (LwPages *pages,
                LwPlace  place,
                double   line)
{
  add (pages, (LwPiece) { .kind = LW_PIECE_FRAME, .place = place, .line = line });
}

void
lw_pages_pictogram (LwPages *pages,
                    double   x,
                    double   y,
                    double   size,
                    LwKind   of)
{
  add (pages, (LwPiece) { .kind = LW_PIECE_PICTOGRAM, .place = { x, y, size, size }, .of = of });
}

void
lw_pages_picture (LwPages    *pages,
                  LwPlace     place,
                  LwPieceDraw draw,
                  gpointer    data)
{
  add (pages, (LwPiece) { .kind = LW_PIECE_PICTURE, .place = place, .draw = draw, .data = data });
}

void
lw_pages_turn (LwPages *pages)
{
  for (guint i = 0; pages->rtl && i < pages->pieces->len; i++)
    {
      LwPlace *place = &g_array_index (pages->pieces, LwPiece, i).place;

      place->x = pages->width - place->x - place->width;
    }
}

static void
draw_piece (cairo_t       *cr,
            const LwPages *pages,
            const LwPiece *piece)
{
  const LwPlace *at = &piece->place;
  LwParagraph paragraph;

  switch (piece->kind)
    {
    case LW_PIECE_WORDS:
      paragraph = paragraph_of (pages, piece);
      lw_paragraph_draw (cr, &paragraph, at->x, at->y);
      break;
    case LW_PIECE_RULE:
      cairo_rectangle (cr, at->x, at->y, at->width, at->height);
      cairo_fill (cr);
      break;
    case LW_PIECE_FRAME:
      cairo_rectangle (cr, at->x + piece->line / 2, at->y + piece->line / 2, at->width - piece->line,
                       at->height - piece->line);
      cairo_set_line_width (cr, piece->line);
      cairo_stroke (cr);
      break;
    case LW_PIECE_PICTOGRAM:
      lw_pictogram_draw (cr, piece->of, at->x, at->y, at->width, BLACK);
      break;
    case LW_PIECE_PICTURE:
    default:
      cairo_save (cr);
      cairo_translate (cr, at->x, at->y);
      piece->draw (cr, at->width, at->height, piece->data);
      cairo_restore (cr);
      break;
    }
}

void
lw_pages_draw (cairo_t       *cr,
               const LwPages *pages,
               guint          page)
{
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, pages->width, pages->height);
  cairo_clip_preserve (cr);
  lw_ink_use (cr, WHITE);
  cairo_fill (cr);

  for (guint i = 0; i < pages->pieces->len; i++)
    {
      const LwPiece *piece = &g_array_index (pages->pieces, LwPiece, i);

      if (piece->page != page)
        continue;
      lw_ink_use (cr, BLACK);
      draw_piece (cr, pages, piece);
    }
  cairo_restore (cr);
}

char *
lw_pages_text (const LwPages *pages)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < pages->pieces->len; i++)
    {
      const LwPiece *piece = &g_array_index (pages->pieces, LwPiece, i);

      if (piece->kind == LW_PIECE_WORDS)
        g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", piece->text);
    }
  g_string_replace (text, LW_PAGES_NO_BREAK, " ", 0);
  g_string_replace (text, LW_PAGES_JOINED, "", 0);

  return g_string_free (text, FALSE);
}

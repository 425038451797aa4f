/* Fitting the card on its paper: the largest type and the most curves with which it needs the fewest pages. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/card-private.h"

#include <math.h>

#include "draw/paragraph.h"
#include "draw/picture.h"
#include "draw/words.h"
#include "season/text.h"

#define MM (72 / 25.4)
#define A4_AREA (210 * MM * 297 * MM)
#define LARGE 34.0         /* largest sizes on A4 */
#define SMALL 10.5
#define MIDDLE 0.72        /* of the large size */
#define HEAD 1.9           /* of the small size: the batch's name */
#define FOOT 14.0          /* what the last line takes */
#define FRAME 1.0
#define FRAME_PAD 6.0
#define STEPS_OF_SIZE 6   /* few, so that few sizes of a font are loaded */
#define MOST_SPARE 16.0    /* points added to a row where there is room */
#define MOST_CURVES 0.42   /* of the page's height */

double
lw_card_figure (double metres)
{
  double angle = LW_CARD_ARC_MINUTES / 60 * G_PI / 180;

  return LW_CARD_FACTOR * metres * 1000 * tan (angle) * MM;
}

double
lw_card_width (const LwCard *card)
{
  return card->pages->width - 2 * LW_CARD_MARGIN;
}

double
lw_card_bottom (const LwCard *card)
{
  return card->pages->height - LW_CARD_MARGIN - FOOT;
}

double
lw_card_turn_page (LwCard *card)
{
  card->pages->n++;

  return LW_CARD_MARGIN
         + lw_pages_words (card->pages, LW_CARD_MARGIN, LW_CARD_MARGIN, lw_card_width (card), HEAD * card->small, TRUE,
                           card->name)
         + LW_CARD_GAP;
}

double
lw_card_turn_own (LwCard *card)
{
  double y = lw_card_turn_page (card) - LW_CARD_GAP;
  guint n = g_strv_length (card->cautions);
  /* Translators: %s is the sentence about local codes */
  g_autofree char *words = g_strdup_printf (_ ("Cautions: page 1. %s"), card->cautions[n - 1]);

  y += lw_pages_words (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), card->small, TRUE, words);

  return y + LW_CARD_GAP;
}

static double
put_head (LwCard *card)
{
  double y = LW_CARD_MARGIN, width = lw_card_width (card);

  y += lw_pages_words (card->pages, LW_CARD_MARGIN, y, width, HEAD * card->small * 1.2, TRUE, card->name);
  y += lw_pages_words (card->pages, LW_CARD_MARGIN, y, width, card->small, FALSE, card->about);

  return y + LW_CARD_GAP;
}

/* The box of cautions, its top at y; `pages` NULL: measures. */
static double
put_cautions (const LwCard *card,
              LwPages      *pages,
              double        y)
{
  double x = LW_CARD_MARGIN + FRAME_PAD, width = lw_card_width (card) - 2 * FRAME_PAD, top = y;
  guint n = g_strv_length (card->cautions);
  g_autofree char *told = NULL;

  y += FRAME_PAD;
  y += lw_pages_words (pages, x, y, width, card->small, TRUE, _ ("Caution"));
  for (guint i = 0; i + 1 < n; i++)
    {
      /* Translators: one of a list */
      g_autofree char *line = g_strdup_printf (_ ("• %s"), card->cautions[i]);

      y += lw_pages_words (pages, x, y, width, card->small, FALSE, line);
    }
  y += lw_pages_words (pages, x, y, width, card->small, TRUE, card->cautions[n - 1]);
  y += FRAME_PAD;
  if (pages != NULL)
    lw_pages_frame (pages, (LwPlace) { LW_CARD_MARGIN, top, lw_card_width (card), y - top }, FRAME);

  return y - top;
}

/* The last line of every page. */
static void
put_feet (LwCard *card)
{
  guint n = card->pages->n;
  double y = card->pages->height - LW_CARD_MARGIN - FOOT + 3, width = lw_card_width (card);
  const double size = lw_card_figure (LW_CARD_NEAR_METRES) / lw_paragraph_figure (FALSE);

  for (guint page = 0; page < n; page++)
    {
      /* Translators: page and number of pages */
      g_autofree char *count = g_strdup_printf (_ ("%u / %u"), page + 1, n);

      card->pages->n = page + 1;
      lw_pages_words (card->pages, LW_CARD_MARGIN, y, 0.85 * width, size, FALSE, card->foot);
      lw_pages_words_end (card->pages, LW_CARD_MARGIN + 0.88 * width, y, 0.12 * width, size, FALSE, count);
    }
}

/* One layout of the card's own pages with the sizes and choices that stand in `card`. */
static void
lay_out (LwCard *card)
{
  double width = card->pages->width, height = card->pages->height;
  gboolean rtl = card->pages->rtl;
  double y, caution, least, bottom;

  lw_pages_free (card->pages);
  card->pages = lw_pages_new (width, height, rtl);

  caution = put_cautions (card, NULL, 0);
  bottom = lw_card_bottom (card) - caution;
  put_cautions (card, card->pages, bottom);

  y = put_head (card);
  if (card->rows->len == 0)
    y += lw_pages_words (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), card->small, FALSE,
                         _ ("This batch has no steps yet."));
  y = lw_card_rows (card, y, bottom - LW_CARD_GAP);
  if (card->pages->n > card->most)
    return;
  if (card->pages->n > 1)
    bottom = lw_card_bottom (card);

  least = lw_card_curves_least (card);
  if (least > 0 && y + LW_CARD_GAP + least + LW_CARD_GAP > bottom)
    {
      y = lw_card_turn_own (card);
      bottom = lw_card_bottom (card);
      card->left = 0;
    }
  if (least > 0)
    {
      double room = MIN (bottom - y - 2 * LW_CARD_GAP, MAX (least, MOST_CURVES * card->pages->height));

      lw_card_curves (card, (LwPlace) { LW_CARD_MARGIN, y + LW_CARD_GAP, lw_card_width (card), room });
      card->left = MAX (bottom - y - 2 * LW_CARD_GAP - room, 0);
    }
}

/* Sizes between the least that may be read and the largest for the paper. */
static void
set_sizes (LwCard *card,
           double  share)
{
  double by = sqrt (card->pages->width * card->pages->height / A4_AREA);
  double large = lw_card_figure (LW_CARD_METRES) / lw_paragraph_figure (TRUE);
  double small = lw_card_figure (LW_CARD_NEAR_METRES) / lw_paragraph_figure (FALSE);

  card->large = large + share * MAX (LARGE * by - large, 0);
  card->small = small + share * MAX (SMALL * by - small, 0);
  card->middle = MIDDLE * card->large;
}

/* Whether it comes out on `most` pages, sign and advice beside the steps or under them. */
static gboolean
fits (LwCard *card,
      double  share,
      guint   curves,
      guint   most)
{
  set_sizes (card, share);
  card->curves = curves;
  card->spare = 0;
  card->most = most;
  for (card->under = FALSE; card->under <= TRUE; card->under++)
    {
      lay_out (card);
      if (card->pages->n <= most && (share == 0 || !card->cramped))
        return TRUE;
    }

  return FALSE;
}

/* Curves first, then the size of type. */
static void
fit_on (LwCard *card,
        guint   most)
{
  static const guint panels[] = { 3, 1, 0 };

  for (guint i = lw_card_has_curves (card) ? 0 : 2; i < G_N_ELEMENTS (panels); i++)
    {
      if (!fits (card, 0, panels[i], most))
        continue;
      for (guint k = STEPS_OF_SIZE; !fits (card, (double) k / STEPS_OF_SIZE, panels[i], most); k--)
        ;
      return;
    }
}

/* The fewest pages that do. */
static guint
least_pages (LwCard *card)
{
  guint least = G_MAXUINT;

  set_sizes (card, 0);
  card->curves = 0;
  card->most = G_MAXUINT;
  card->spare = 0;
  for (card->under = FALSE; card->under <= TRUE; card->under++)
    {
      lay_out (card);
      least = MIN (least, card->pages->n);
    }

  return least;
}

static void
fit (LwCard *card)
{
  guint pages = least_pages (card);

  fit_on (card, pages);

  /* What is free parts the rows. */
  card->spare = MIN (MOST_SPARE, card->left / MAX (card->rows->len, 1) * 0.95);
  card->most = G_MAXUINT;
  lay_out (card);
  if (card->pages->n > pages)
    {
      card->spare = 0;
      lay_out (card);
    }
}

LwCard *
lw_card_new (LwSeason         *season,
             guint             batch,
             LwTrack          *track,
             GArray           *checkpoints,
             const LwCardWish *wish)
{
  LwCard *card = g_new0 (LwCard, 1);
  double width, height;

  card->season = lw_season_ref (season);
  card->at = batch;
  card->batch = season->batches[batch];
  card->track = lw_track_ref (track);
  card->checkpoints = checkpoints != NULL ? g_array_ref (checkpoints) : NULL;
  card->wish = *wish;
  card->rows = g_array_new (FALSE, FALSE, sizeof (LwCardRow));
  g_array_set_clear_func (card->rows, (GDestroyNotify) lw_card_row_clear);
  lw_paper_size (wish->paper, wish->landscape, &width, &height);
  card->pages = lw_pages_new (width, height, lw_words_from_right ());

  lw_card_say (card);
  fit (card);
  card->n_own = card->pages->n;
  if (wish->sheet)
    lw_card_record (card);
  put_feet (card);
  lw_pages_turn (card->pages);

  return card;
}

void
lw_card_free (LwCard *card)
{
  lw_pages_free (card->pages);
  g_array_unref (card->rows);
  g_strfreev (card->cautions);
  g_free (card->name);
  g_free (card->about);
  g_free (card->foot);
  g_clear_pointer (&card->checkpoints, g_array_unref);
  lw_track_unref (card->track);
  lw_season_unref (card->season);
  g_free (card);
}

const LwPages *
lw_card_pages (const LwCard *card)
{
  return card->pages;
}

guint
lw_card_n_own (const LwCard *card)
{
  return card->n_own;
}

void
lw_card_draw (cairo_t      *cr,
              const LwCard *card,
              guint         page)
{
  lw_pages_draw (cr, card->pages, page);
}

static void
draw_page (cairo_t *cr,
           guint    page,
           gpointer data)
{
  lw_card_draw (cr, data, page);
}

gboolean
lw_card_save (const LwCard *card,
              const char   *path,
              GError      **error)
{
  return lw_picture_save_pages (path, card->pages->width, card->pages->height, card->batch->name, card->pages->n,
                                draw_page, (gpointer) card, error);
}

/* The card's steps as rows: pictogram, time, leading setting, weight, and what to look for. Cells stand side by side;
 * what is in a cell stands one under the other. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/card-private.h"
#include "draw/paragraph.h"

#define PAD 3.0          /* over and under a row */
#define BETWEEN 9.0      /* cells */
#define MOST_TIME 0.32   /* of the width */
#define MOST_LEADING 0.29
#define PICTOGRAM 1.25   /* of the large size */
#define WEIGHT_OF_REST 0.34 /* of what is right of it, where there is as much */
#define LEAST_TOLD 0.2   /* of the width */

typedef enum
{
  TIME,
  LEADING,
  WEIGHT,
  TOLD,
} Column;

#define N_COLUMNS (TOLD + 1)

typedef struct
{
  double x[N_COLUMNS];
  double width[N_COLUMNS];
} Columns;

static double
widest (const LwCard *card,
        double        size,
        gboolean      bold,
        gsize         offset)
{
  double most = 0;

  for (guint i = 0; i < card->rows->len; i++)
    {
      const char *row = (const char *) &g_array_index (card->rows, LwCardRow, i);
      const LwParagraph paragraph = { .text = *(char *const *) (row + offset), .size = size, .bold = bold };
      double width;

      lw_paragraph_size (&paragraph, &width, NULL);
      most = MAX (most, width);
    }

  /* Pango counts in whole units, and a width is cut to them. */
  return most + 0.1;
}

static Columns
columns_of (LwCard *card)
{
  double whole = lw_card_width (card);
  double time = widest (card, card->large, TRUE, offsetof (LwCardRow, time));
  double leading = widest (card, card->large, TRUE, offsetof (LwCardRow, leading));
  double weight = widest (card, card->middle, TRUE, offsetof (LwCardRow, weight));
  double per_ten = widest (card, card->small, FALSE, offsetof (LwCardRow, per_ten));
  Columns columns;
  double x = LW_CARD_MARGIN + PICTOGRAM * card->large + BETWEEN;
  double end = LW_CARD_MARGIN + whole;

  columns.width[TIME] = MIN (time, MOST_TIME * whole);
  columns.width[LEADING] = MIN (leading, MOST_LEADING * whole);
  columns.width[WEIGHT] = WEIGHT_OF_REST * (end - x - columns.width[TIME] - columns.width[LEADING] - 2 * BETWEEN);
  columns.width[WEIGHT] = MAX (weight, MIN (columns.width[WEIGHT], per_ten));
  for (guint i = TIME; i < N_COLUMNS; i++)
    {
      columns.x[i] = x;
      if (i < TOLD)
        x += columns.width[i] + BETWEEN;
    }
  columns.width[TOLD] = end - columns.x[TOLD];
  card->cramped = time > columns.width[TIME] || leading > columns.width[LEADING]
                  || (!card->under && columns.width[TOLD] < LEAST_TOLD * whole);
  if (card->under)
    {
      columns.width[WEIGHT] = end - columns.x[WEIGHT];
      columns.x[TOLD] = columns.x[TIME];
      columns.width[TOLD] = end - columns.x[TIME];
    }

  return columns;
}

/* One over the other; returns their height. */
static double
put_pair (LwPages       *pages,
          const Columns *columns,
          Column         column,
          double         y,
          double         size,
          const char    *over,
          double         small,
          gboolean       bold,
          const char    *below)
{
  double height = lw_pages_words (pages, columns->x[column], y, columns->width[column], size, TRUE, over);

  return height + lw_pages_words (pages, columns->x[column], y + height, columns->width[column], small, bold, below);
}

/* Lays out a row at y, or with `pages` NULL only measures it. */
static double
put_row (const LwCard    *card,
         LwPages         *pages,
         const Columns   *columns,
         const LwCardRow *row,
         double           y)
{
  double small = card->small, height, told, at;
  double heights[] = { PICTOGRAM * card->large, 0, 0, 0 };

  if (pages != NULL)
    lw_pages_pictogram (pages, LW_CARD_MARGIN, y, PICTOGRAM * card->large, row->kind);
  heights[1] = put_pair (pages, columns, TIME, y, card->large, row->time, small, TRUE, row->name);
  heights[2] = put_pair (pages, columns, LEADING, y, card->large, row->leading, small, FALSE, row->settings);
  heights[3] = put_pair (pages, columns, WEIGHT, y, card->middle, row->weight, small, FALSE, row->per_ten);
  height = MAX (MAX (heights[0], heights[1]), MAX (heights[2], heights[3]));

  at = card->under ? y + height : y;
  told = lw_pages_words (pages, columns->x[TOLD], at, columns->width[TOLD], small, TRUE, row->sign);
  told += lw_pages_words (pages, columns->x[TOLD], at + told, columns->width[TOLD], small, FALSE, row->advice);

  return card->under ? height + told : MAX (height, told);
}

double
lw_card_rows (LwCard *card,
              double  y,
              double  bottom)
{
  Columns columns = columns_of (card);

  for (guint i = 0; i < card->rows->len; i++)
    {
      const LwCardRow *row = &g_array_index (card->rows, LwCardRow, i);
      double pad = PAD + card->spare / 2;
      double height = put_row (card, NULL, &columns, row, 0) + 2 * pad;

      if (y + height > bottom && i > 0)
        {
          y = lw_card_turn_page (card);
          bottom = lw_card_bottom (card);
          if (card->pages->n > card->most)
            return y;
        }
      lw_pages_rule (card->pages, LW_CARD_MARGIN, y, lw_card_width (card), LW_HAIRLINE);
      put_row (card, card->pages, &columns, row, y + pad);
      y += height;
    }
  card->left = bottom - y;

  return y;
}

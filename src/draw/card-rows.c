/* The card's steps as rows: pictogram, time, leading setting, weight, and what to look for. Cells stand side by side;
 * what is in a cell stands one under the other. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/card-private.h"
#include "draw/paragraph.h"

#define PAD 3.0          /* over and under a row */
#define BETWEEN 9.0      /* cells */
#define AFTER_TIME 0.6   /* of the large size: from afar a lesser gap is one between words, "1 h 15 min 26 °C" */
#define AFTER_LEADING 0.4
#define MOST_TIME 0.32   /* of the width */
#define MOST_LEADING 0.29
#define PICTOGRAM 1.25   /* of the large size */
#define WEIGHT_OF_REST 0.34 /* of what is right of it, where there is as much */
#define LEAST_TOLD 0.2   /* of the width */
#define MUCH_TOLD 0.33   /* what is told gives up what it has beyond */
#define OVER_TOLD 0.3    /* of the small size, where it stands under the step */

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

/* Gives a column up to `wanted` of what is spare; returns what is left of it. */
static double
widen (double *width,
       double  wanted,
       double  spare)
{
  double by = CLAMP (wanted - *width, 0, MAX (spare, 0));

  *width += by;

  return spare - by;
}

static Columns
columns_of (LwCard *card)
{
  double whole = lw_card_width (card);
  double time = widest (card, card->large, TRUE, offsetof (LwCardRow, time));
  double leading = widest (card, card->large, TRUE, offsetof (LwCardRow, leading));
  double weight = widest (card, card->middle, TRUE, offsetof (LwCardRow, weight));
  double per_ten = widest (card, card->small, FALSE, offsetof (LwCardRow, per_ten));
  double settings = widest (card, card->small, FALSE, offsetof (LwCardRow, settings));
  const double after[N_COLUMNS] = { AFTER_TIME * card->large, AFTER_LEADING * card->large, BETWEEN };
  Columns columns;
  double x = LW_CARD_MARGIN + PICTOGRAM * card->large + BETWEEN;
  double end = LW_CARD_MARGIN + whole, rest, spare;

  columns.width[TIME] = MIN (time, MOST_TIME * whole);
  columns.width[LEADING] = MIN (leading, MOST_LEADING * whole);
  rest = end - x - columns.width[TIME] - after[TIME] - columns.width[LEADING] - after[LEADING];
  columns.width[WEIGHT] = MAX (weight, MIN (WEIGHT_OF_REST * rest, per_ten));

  /* Small words get lines of their own length, where there is room for that. */
  spare = rest - columns.width[WEIGHT] - (card->under ? 0 : after[WEIGHT] + MUCH_TOLD * whole);
  spare = widen (&columns.width[WEIGHT], per_ten, spare);
  widen (&columns.width[LEADING], settings, spare);

  for (guint i = TIME; i < N_COLUMNS; i++)
    {
      columns.x[i] = x;
      if (i < TOLD)
        x += columns.width[i] + after[i];
    }
  columns.width[TOLD] = end - columns.x[TOLD];
  card->cramped = time > columns.width[TIME] || leading > columns.width[LEADING]
                  || (!card->under && columns.width[TOLD] < LEAST_TOLD * whole);
  if (card->under)
    {
      columns.width[WEIGHT] = end - columns.x[WEIGHT];
      card->cramped |= per_ten > columns.width[WEIGHT];
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

  if (card->under && (row->sign[0] != '\0' || row->advice[0] != '\0'))
    height += OVER_TOLD * small;
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
          y = lw_card_turn_own (card);
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

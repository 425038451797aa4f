/* The wall card: a batch on paper to hang by the pan, and the batch sheet, a record page to write on. One drawing for
 * preview, printer and files; black on white. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/pages.h"
#include "draw/paper.h"
#include "leaf/track.h"
#include "study/advice.h"

/* Time, heat and the leading setting are to be read from here. A figure must then be as high as letters of 20/20 sight
 * are, five minutes of arc (H. Snellen, Optotypi ad visum determinandum, 1862; from memory), and twice that, so that
 * people of half that sight (20/40) read it, by poor light too: 5.8 mm. The factor is a choice. */
#define LW_CARD_METRES 2.0
#define LW_CARD_ARC_MINUTES 5.0
#define LW_CARD_FACTOR 2.0

/* What stands small is read from here by the same rule; words are never smaller. */
#define LW_CARD_NEAR_METRES 0.65

typedef struct
{
  LwPaper paper;
  gboolean landscape;
  double load_kg;     /* fresh leaf that this card is for */
  gboolean sheet;     /* with the batch sheet on pages after the card */
} LwCardWish;

typedef struct _LwCard LwCard;

/* Lays out the card of `batch` in `season` with its `track`. `checkpoints` (nullable) array of LwCheckpoint, one for
 * each step: without them the card gives no advice. Steps that do not fit go on to a second page. */
LwCard        *lw_card_new    (LwSeason         *season,
                               guint             batch,
                               LwTrack          *track,
                               GArray           *checkpoints,
                               const LwCardWish *wish);
void           lw_card_free   (LwCard           *card);

/* (transfer none) */
const LwPages *lw_card_pages  (const LwCard     *card);

/* How many of the pages are the card itself. */
guint          lw_card_n_own  (const LwCard     *card);

/* Draws page `page` at its size in points. */
void           lw_card_draw   (cairo_t          *cr,
                               const LwCard     *card,
                               guint             page);

/* Into a file; the suffix .pdf, .svg or .png chooses the format. A PDF holds all pages, of the others each page is a
 * file of its own: card.png, card-2.png. `error` says what is wrong and what to do. */
gboolean       lw_card_save   (const LwCard     *card,
                               const char       *path,
                               GError          **error);

/* Height of a figure that is read so far away by that rule, points. */
double         lw_card_figure (double            metres);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwCard, lw_card_free)

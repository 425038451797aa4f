/* What the card's files share: card.c fits it on the paper, card-words.c says what it says, card-rows.c lays out the
 * steps, card-curves.c the curves, record.c is the batch sheet, record-plan.c its planned side. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/card.h"
#include "season/surround.h"
#include "study/compare.h"

/* A step in words. */
typedef struct
{
  LwKind kind;
  char *time;      /* large: "18 h 20 min" */
  char *leading;   /* large: "260 °C" */
  char *name;      /* "2. Fix in pan" */
  char *settings;  /* "wall · load 4.5 kg" */
  char *weight;    /* "5.71 kg"; "" where it is not known */
  char *per_ten;   /* "10 kg fresh leaf should now weigh 7.1 kg" */
  char *sign;      /* "Look for: ..."; "" */
  char *advice;    /* "" */
} LwCardRow;

struct _LwCard
{
  LwSeason *season;
  guint at;
  const LwBatch *batch;
  LwTrack *track;
  GArray *checkpoints;  /* (nullable) */
  LwCardWish wish;
  LwPages *pages;
  guint n_own;

  GArray *rows;         /* of LwCardRow */
  char *name;
  char *about;
  char *foot;
  GStrv cautions;

  /* How this layout is tried. */
  double large;         /* sizes of type */
  double middle;
  double small;
  gboolean under;       /* sign and advice stand under the step, not beside it */
  guint most;           /* pages: a layout that needs more is given up */
  guint curves;         /* how many panels */
  double spare;         /* added to each row */
  gboolean cramped;     /* large words wrap, or what is told has hardly any width */
  double left;          /* of the lowest page that has steps, what is free */
};

#define LW_CARD_MARGIN 28.0
#define LW_CARD_GAP 8.0

/* Leaves a page and begins the next; returns its first y. */
double   lw_card_turn_page   (LwCard       *card);
/* The same for the card itself: its later pages say where the cautions are. */
double   lw_card_turn_own    (LwCard       *card);
double   lw_card_width       (const LwCard *card);
/* y where a page's contents end. */
double   lw_card_bottom      (const LwCard *card);

/* card-words.c */
double   lw_card_moisture    (const LwCard *card);  /* of the fresh leaf, % */
void     lw_card_say         (LwCard       *card);
/* The words of step `i`, to be cleared; needs season, batch, track and wish. */
LwCardRow lw_card_row        (const LwCard *card,
                              guint         i);
void     lw_card_row_clear   (LwCardRow    *row);
/* (transfer full) takes words; no line breaks between a figure and its unit or, with `named`, what stands before it. */
char    *lw_card_bind_figures (char       *words,
                               gboolean    named);
/* (transfer full) a text cut after `most` characters, with an ellipsis then. */
char    *lw_card_cut         (const char   *text,
                              guint         most);

/* card-rows.c: lays out all steps from y on, returns where they end. `bottom` is that of the first page. */
double   lw_card_rows        (LwCard       *card,
                              double        y,
                              double        bottom);

/* card-curves.c: whether the paper has the width for so many steps; least height of all panels; a picture there. */
gboolean lw_card_has_curves  (const LwCard *card);
double   lw_card_curves_least (const LwCard *card);
void     lw_card_curves      (LwCard       *card,
                              LwPlace       place);

/* record.c: the batch sheet's pages. */
void     lw_card_record      (LwCard       *card);

/* record-plan.c: what was planned, beside what was made; NULL where no plan was kept. */
typedef struct
{
  LwCard side;    /* the plan's season, batch, track and wish, no more */
  GArray *pairs;  /* of LwPair: planned, made */
} LwRecordPlan;

LwRecordPlan *lw_record_plan_new  (const LwCard       *card);
void          lw_record_plan_free (LwRecordPlan       *plan);
/* (transfer full) time and settings of a step of `side`, and what it gives at its end. */
char         *lw_record_say_step  (const LwCard       *side,
                                   guint               step);
/* (transfer full) what the tea of `side` comes to, of each outcome that `aimed` aims at. */
char         *lw_record_say_finished (const LwCard    *side,
                                      const LwBatch   *aimed);
/* (transfer full) made less planned: what was set, and what came of it. */
char         *lw_record_say_change (const LwRecordPlan *plan,
                                    const LwCard       *card,
                                    const LwPair       *pair);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LwCardRow, lw_card_row_clear)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwRecordPlan, lw_record_plan_free)

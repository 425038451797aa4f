/* A batch laid over: which it is, and what was computed of it. Its season never changes, so its curves are made
 * once and live as long as it does. For the main thread. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/panel.h"

typedef struct
{
  guint refs;
  guint number;      /* from 0: its letter, colour and dash, as long as it lies over */
  char *path;        /* (nullable) of the other season's file; NULL: of the season in hand */
  LwSeason *season;
  guint at;          /* in the season */
  LwTrack *track;    /* (nullable) until it is computed */
  char *failure;     /* (nullable) why it could not be */
  double *minutes;   /* of its steps */
  LwCurves *curves[LW_N_QUANTITIES]; /* made when first asked for */
  int *columns;      /* the step of the batch in hand that each of its steps matches, -1: none */
} LwLaid;

LwLaid         *lw_laid_new    (LwSeason        *season,
                                const char      *path,
                                guint            at,
                                guint            number);
LwLaid         *lw_laid_ref    (LwLaid          *laid);
void            lw_laid_unref  (LwLaid          *laid);

const LwBatch  *lw_laid_batch  (const LwLaid    *laid);

/* Whether `season` has at `at` what was computed: the batch, its leaf, its weather and its place. */
gboolean        lw_laid_is     (const LwLaid    *laid,
                                const LwSeason  *season,
                                guint            at);

/* Takes over what was computed of another that is the same. FALSE if it is not, or nothing was computed yet. */
gboolean        lw_laid_take   (LwLaid          *laid,
                                const LwLaid    *from);

/* Computes it in a thread, then calls `done` with `data`, on which a reference is held until then. */
void            lw_laid_compute (LwLaid         *laid,
                                void           (*done) (LwLaid *laid, gpointer data),
                                GObject         *data);

/* Matches its steps anew. */
void            lw_laid_match  (LwLaid          *laid,
                                const LwBatch   *in_hand);

/* (transfer none) the curves of a quantity; NULL until it is computed. */
const LwCurves *lw_laid_curves (LwLaid          *laid,
                                LwQuantity       of);

/* Its letter, "A" and on, after 26 a number; (transfer full). */
char           *lw_laid_tag    (const LwLaid    *laid);
/* (transfer full) its name, before it the year where it is of another season. */
char           *lw_laid_name   (const LwLaid    *laid);

/* How its line is drawn. */
LwInk           lw_laid_ink    (const LwLaid    *laid,
                                const LwPalette *palette);
guint           lw_laid_dash   (const LwLaid    *laid);
gboolean        lw_laid_is_thin (const LwLaid   *laid);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwLaid, lw_laid_unref)

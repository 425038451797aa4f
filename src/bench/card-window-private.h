/* What the card window's files share: card-window.c keeps the card up to date, card-fields.c makes the fields and
 * buttons. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/card-window.h"
#include "draw/card.h"

struct _LwCardWindow
{
  GtkWindow parent_instance;

  LwSession *session;
  GtkWidget *preview;
  GtkWidget *paper;
  GtkWidget *direction;
  GtkWidget *load;
  GtkWidget *sheet;
  GtkWidget *signs;
  GtkWidget *told;
  GtkWidget *save;
  GtkWidget *print;

  LwSeason *advised;     /* (nullable) that the advice is of, or will be */
  int batch;             /* and which of its batches; the load is of that, too */
  double batch_kg;       /* its own fresh leaf */
  GArray *checkpoints;   /* (nullable) the advice */
  gboolean keeps_advice; /* the edit under way changes words only */
  gboolean filling;      /* the load is being set by us */
  guint due;             /* source of the next layout */
  GCancellable *job;     /* (nullable) of the advice that is wanted */
};

/* card-fields.c: fills the window. */
void       lw_card_window_fill   (LwCardWindow *self);
LwCardWish lw_card_window_wish   (LwCardWindow *self);

/* card-window.c: the next layout, and the load that was changed. */
void       lw_card_window_queue  (LwCardWindow *self);
void       lw_card_window_load   (LwCardWindow *self);
void       lw_card_window_ask    (LwCardWindow *self); /* where to save */

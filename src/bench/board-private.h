/* What the board's files share: board.c is the widget, board-view.c lays the columns out
 * in this view or another. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/board.h"
#include "bench/over-rows.h"

#define LW_BOARD_EDGE 14 /* left and right of the columns: half a "+" button */
#define LW_BOARD_BY_CLOCK "by-clock" /* in the settings */

struct _LwBoard
{
  GtkWidget parent_instance;

  LwSession *session;
  GtkWidget *lane;
  GtkWidget *ruler;
  GtkWidget *rows;        /* of batches laid over */
  GtkWidget *scrolled;    /* around the panels, which may be too many for the height */
  GtkWidget *panels;
  GSettings *settings;    /* (nullable) */
  guint tick;

  LwScaleView view;
  int batch;              /* whose columns these are */
  guint glide;            /* tick, 0: none */
  gint64 glide_us;        /* when it began */
  LwScale from;
};

/* board-view.c */

/* Fills in the batch's times; returns how many. */
guint lw_board_step_minutes   (LwBoard        *self,
                               double         *minutes);

/* Lays the columns out, unless they are held or on their way. */
void  lw_board_lay_out        (LwBoard        *self);

/* Columns may have moved: all that stands on them is drawn anew. */
void  lw_board_columns_moved  (LwBoard        *self);

/* Gives the step's column the width, or back if it has it. */
void  lw_board_zoom           (LwBoard        *self,
                               guint           step);
void  lw_board_class_add_view (GtkWidgetClass *widget_class);

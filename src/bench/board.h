/* The board: the lane of blocks, the time ruler and the panels over one another, on
 * the same columns. Lays the columns out and asks for the result once a frame. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/lane.h"
#include "bench/panel-stack.h"

#define LW_TYPE_BOARD (lw_board_get_type ())
G_DECLARE_FINAL_TYPE (LwBoard, lw_board, LW, BOARD, GtkWidget)

/* Signal "zoom" (int): that step has the width now; -1: none any more.
 * Actions for its children:
 * "board.zoom" (u): gives that step's column the width, or back if it has it already;
 * "board.follow" (u): moves the zoom to that step, if there is one. */
GtkWidget    *lw_board_new          (LwSession *session);
LwLane       *lw_board_lane         (LwBoard   *self);
LwPanelStack *lw_board_panels       (LwBoard   *self);

/* Time by the clock, on one even scale; remembered. */
void          lw_board_set_by_clock (LwBoard   *self,
                                     gboolean   by_clock);
gboolean      lw_board_is_by_clock  (LwBoard   *self);
/* Whether logs of wall and air are drawn beside those of leaf. Default FALSE: they need a wide axis. */
void          lw_board_show_logs    (LwBoard   *self,
                                     gboolean   logs);

/* Back to all columns; FALSE if none was zoomed. */
gboolean      lw_board_zoom_out     (LwBoard   *self);

/* Moves the reading line by ticks of the ruler, from step to step; by keys. */
void          lw_board_read         (LwBoard   *self,
                                     int        by);

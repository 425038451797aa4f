/* The board: the lane of blocks, the time ruler and the panels over one another, on
 * the same columns. Lays the columns out and asks for the result once a frame. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/lane.h"

#define LW_TYPE_BOARD (lw_board_get_type ())
G_DECLARE_FINAL_TYPE (LwBoard, lw_board, LW, BOARD, GtkWidget)

GtkWidget *lw_board_new  (LwSession *session);
LwLane    *lw_board_lane (LwBoard   *self);

/* Moves the reading line by ticks of the ruler, from step to step; by keys. */
void       lw_board_read (LwBoard   *self,
                          int        by);

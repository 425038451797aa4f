/* The line at the present moment of the running batch, over its blocks and panels. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/board.h"
#include "bench/running.h"

#define LW_TYPE_NOW_LINE (lw_now_line_get_type ())
G_DECLARE_FINAL_TYPE (LwNowLine, lw_now_line, LW, NOW_LINE, GtkWidget)

/* To be laid over all of the board; the pointer goes through it. */
GtkWidget *lw_now_line_new (LwSession *session,
                            LwRunning *running,
                            LwBoard   *board);

/* A season in a file with one planned batch, opened as by a window, and a clock that tests set. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/running.h"

/* The computer's clock, and the one that nobody can set. */
extern double run_now_s, run_steady_s;

/* Both go on. */
void   run_go_on        (double           s);

typedef struct
{
  LwSession *session;
  LwRunning *running;
  char *told;
} RunWindow;

/* (transfer full) of a new file; the clocks begin. */
char  *run_season_path  (void);
void   run_window_open  (RunWindow       *window,
                         const char      *path);
/* As by kill -9: nothing is saved. */
void   run_window_clear (RunWindow       *window);

void   run_start        (RunWindow       *window);
/* Of the step under way, which is to be `step`. */
double run_minute       (const RunWindow *window,
                         guint            step);
void   run_weigh        (const RunWindow *window,
                         double           kg);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RunWindow, run_window_clear)

/* A batch that is being made: which step, since when, and what was waited. Pure arithmetic of clocks, and the edits that
 * say what was made. Times `_s` are seconds since 1970 by the wall clock, UTC, so that a closed lid or a program that
 * was ended loses none. While it is paused the clock of the batch stands: the model takes the leaf not to change. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

typedef struct
{
  gboolean on;
  guint step;
  double start_s;   /* of the batch */
  double step_s;    /* of the step */
  double waited_s;  /* paused in this step, before the pause that goes on */
  double paused_s;  /* when that began; NAN: none */
  double planned;   /* minutes that the step was to last; NAN: what the batch says */
} LwRun;

LwRun    lw_run_start      (double       now_s);
gboolean lw_run_is_paused  (const LwRun *run);
void     lw_run_pause      (LwRun       *run,
                            double       now_s);
void     lw_run_go_on      (LwRun       *run,
                            double       now_s);

/* The next step begins, also out of a pause. */
void     lw_run_next       (LwRun       *run,
                            double       now_s);

/* Minutes of the step that have passed, pauses left out; never below 0, whatever was done to the clock. */
double   lw_run_minute     (const LwRun *run,
                            double       now_s);

/* The wall clock was set by so much: what has passed of the run stays what it was. */
void     lw_run_shift      (LwRun       *run,
                            double       by_s);

/* The step is to last `minutes` now. To lengthen one that is over its time by no more than it has lasted does not plan it
 * anew: what is entered then does that. */
void     lw_run_plan       (LwRun       *run,
                            double       minutes,
                            double       now_s);

/* How long before the end of a step of `minutes` it is told: a tenth, at least 20 s, at most 5 min. */
double   lw_run_notice     (double       minutes);

/* Whether they say the same. */
gboolean lw_run_same       (const LwRun *a,
                            const LwRun *b);

/* Each returns (transfer full) a new season. A step's minutes become what its kind lets in that comes nearest to
 * `minutes`, to the second. */
LwSeason *lw_edit_begin_batch (const LwSeason *season,
                               guint           batch,
                               gint64          when_s);
LwSeason *lw_edit_end_step    (const LwSeason *season,
                               guint           batch,
                               guint           step,
                               double          minutes);
/* The batch is made, and `step` was its last: what would have followed is taken off. */
LwSeason *lw_edit_end_batch   (const LwSeason *season,
                               guint           batch,
                               guint           step,
                               double          minutes);

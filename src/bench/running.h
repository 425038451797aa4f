/* The running batch: which, in which step, since when; where it is now. Every change of it is written to its journal
 * before anything is drawn. One batch of a season runs at a time. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/session.h"
#include "season/run.h"

#define LW_TYPE_RUNNING (lw_running_get_type ())
G_DECLARE_FINAL_TYPE (LwRunning, lw_running, LW, RUNNING, GObject)

/* Signals:
 * "moved": time went on, about once a second, or another batch, step or pause.
 * "told" (words): something happened that people are to know.
 * "asks": a journal was found that is not put back unless people say so; bench/run-left.h. */
LwRunning  *lw_running_new       (LwSession  *session);

/* Index of the batch in the session's season; -1: none runs. */
int         lw_running_batch     (LwRunning  *self);
/* Whether that is the batch in hand. */
gboolean    lw_running_in_hand   (LwRunning  *self);

/* Where it is now. FALSE if none runs. `minute`: of the step, pauses left out; past the step's minutes where it lasts longer
 * than was planned. */
gboolean    lw_running_now       (LwRunning  *self,
                                  guint      *step,
                                  double     *minute);
/* Minutes that the step was to last, also where it has been over its time and what was entered made it longer. */
double      lw_running_planned   (LwRunning  *self);
gboolean    lw_running_is_paused (LwRunning  *self);

/* (nullable) why what was entered is not on the disk yet, translated; it is tried again by itself. */
const char *lw_running_trouble   (LwRunning  *self);

/* Whether the batch in hand can be started: it is planned and has steps, nothing else of the season runs, here or in
 * another window, and the season has a file. FALSE and `error` if not. */
gboolean    lw_running_may_start (LwRunning  *self,
                                  GError    **error);
/* Takes up, or asks about, what another window that is no longer there left in the journal. FALSE where there is nothing of
 * that kind. */
gboolean    lw_running_take_over (LwRunning  *self);
gboolean    lw_running_start     (LwRunning  *self,
                                  GError    **error);
void        lw_running_pause     (LwRunning  *self,
                                  gboolean    paused);
/* Ends the step: its minutes become those that it lasted. After the last one the batch is made. */
void        lw_running_next      (LwRunning  *self);
/* The batch is made now; steps that have not begun are taken off. */
void        lw_running_end       (LwRunning  *self);

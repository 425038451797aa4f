/* What the fit window's files share: fit-window.c lays it out and runs the fit, fit-choice.c is what is asked,
 * fit-answer.c and fit-table.c show what came out, fit-keep.c saves and uses it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/fit-job.h"
#include "bench/fit-panel.h"
#include "bench/fit-window.h"

typedef struct
{
  LwSession *session;
  GtkWidget *window;

  /* fit-choice.c */
  LwSeason *shown;                      /* the season that the ticks are of */
  GtkWidget *batches;
  GPtrArray *ticks;                     /* (transfer none) GtkCheckButton, one for each batch */
  GtkWidget *of_leaf;                   /* whose priors are told */
  GtkWidget *free[LW_FIT_BATCH_WEIGHT]; /* GtkCheckButton */
  GtkWidget *priors[LW_FIT_BATCH_WEIGHT];
  GtkWidget *leave_out;

  /* fit-window.c */
  LwFitJob *job;                        /* (nullable) */
  guint poll;
  GtkWidget *run;
  GtkWidget *stop;
  GtkWidget *progress;
  GtkWidget *state;

  /* fit-answer.c */
  LwFit *fit;                           /* (nullable) */
  GtkWidget *words;                     /* until there is one */
  GtkWidget *found;
  GtkWidget *changed;
  GtkWidget *said;
  GtkWidget *warnings;
  GtkWidget *head;
  GtkWidget *back;
  GtkWidget *on;
  GtkWidget *quantities;
  GtkWidget *panel;
  GtkWidget *table;

  /* fit-keep.c */
  GPtrArray *leaves;                    /* (nullable) ids of the fitted leaves */
  GPtrArray *kept;                      /* ids of the profiles they were saved as; empty until then */
  GtkWidget *names;
  GPtrArray *entries;                   /* (transfer none) one for each of `leaves` */
  GtkWidget *save;
  GtkWidget *keep_said;
  GtkWidget *uses;
  GtkWidget *use_hand;
  GtkWidget *use_planned;
} LwFitWindow;

/* fit-window.c */
GtkWidget *lw_fit_label           (const char   *text,
                                   const char   *css_class); /* (nullable) */
/* A column of widgets that a screen reader finds by name. */
GtkWidget *lw_fit_group           (const char   *name,
                                   int           spacing);
GtkWidget *lw_fit_button          (LwFitWindow  *self,
                                   GtkWidget    *box,
                                   const char   *label,
                                   GCallback     clicked);
void       lw_fit_clear           (GtkWidget    *box);
/* Whether it can be run now, and why not. */
void       lw_fit_window_check    (LwFitWindow  *self);
void       lw_fit_window_run      (LwFitWindow  *self);

/* fit-choice.c */
GtkWidget *lw_fit_choice_new      (LwFitWindow  *self);
/* The rows of the season as it is now; ticks stay with their batches' names. */
void       lw_fit_choice_fill     (LwFitWindow  *self);
/* (transfer full) array of guint. */
GArray    *lw_fit_choice_batches  (LwFitWindow  *self);
guint      lw_fit_choice_free     (LwFitWindow  *self);

/* fit-answer.c */
GtkWidget *lw_fit_answer_new      (LwFitWindow  *self);
/* Takes over `fit`. */
void       lw_fit_answer_show     (LwFitWindow  *self,
                                   LwFit        *fit);
/* After the season has changed. */
void       lw_fit_answer_refresh  (LwFitWindow  *self);

/* fit-table.c */
GtkWidget *lw_fit_table_new       (const LwFit  *fit);

/* fit-keep.c */
GtkWidget *lw_fit_keep_new        (LwFitWindow  *self);
/* Another fit is shown. */
void       lw_fit_keep_show       (LwFitWindow  *self);
void       lw_fit_keep_refresh    (LwFitWindow  *self);

/* What the lesson window's files share: lesson-window.c keeps the picture up to date, lesson-play.c moves the head,
 * lesson-ask.c asks first, lesson-bar.c makes the controls, lesson-edit.c edits the season's lessons. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/cast.h"
#include "bench/lesson-view.h"
#include "bench/lesson-window.h"

struct _LwLessonWindow
{
  GtkWindow parent_instance;

  LwSession *session;
  LwSeason *season;       /* that is shown */
  char *name;             /* (nullable) of the lesson that is shown; NULL: the batch in hand */
  LwQuantity of[LW_LESSON_CURVES];
  gboolean by_clock;
  LwCast *cast;

  GArray *stops;          /* of LwStop */
  gboolean *asked;        /* of each: whether its question was answered */
  guint at;               /* the stop that is shown */
  LwHead head;

  guint tick;             /* 0: not playing */
  double last_s;          /* by the clock: when the head last moved */
  guint speed;            /* place in the list of speeds */

  int ask;                /* the curve that is asked for; -1: none */
  LwHead ask_head;        /* where it is asked */
  guint ask_stop;         /* and the stop to go on from */
  double pointed;         /* NAN: nothing */
  LwGuess guesses[LW_GUESS_MOST];
  guint n_guesses;
  gboolean answering;     /* on its way to the end */
  gboolean answered;

  char *title;
  char *caption;
  char *where;

  GtkWidget *view;
  GtkWidget *bar;
  GtkWidget *choice;      /* of the lesson */
  GtkWidget *play;
  GtkWidget *pace;
  GtkWidget *curves[LW_LESSON_CURVES];
  GtkWidget *clock;
  GtkWidget *ask_menu;
  GtkWidget *ask_row;
  GtkWidget *ask_name;
  GtkWidget *ask_told;
  GMenu *questions;
  GSimpleActionGroup *actions;
  gboolean filling;       /* the controls are being set by us */
};

/* lesson-window.c */
const LwLesson *lw_lesson_window_lesson (LwLessonWindow *self); /* (nullable) that is shown */
void lw_lesson_window_choose   (LwLessonWindow *self,
                                const char     *name);          /* (nullable) */
void lw_lesson_window_refresh  (LwLessonWindow *self,
                                gboolean        tell);          /* a screen reader, too */

/* lesson-play.c */
double lw_lesson_window_speed  (LwLessonWindow *self);
void lw_lesson_play            (LwLessonWindow *self,
                                gboolean        on);
void lw_lesson_play_or_pause   (LwLessonWindow *self);
void lw_lesson_go              (LwLessonWindow *self,
                                int             way);           /* 1: to the next stop, -1: to the one before */
void lw_lesson_faster          (LwLessonWindow *self,
                                int             way);
void lw_lesson_add_keys        (LwLessonWindow *self);

/* lesson-ask.c */
GtkWidget *lw_lesson_ask_row_new (LwLessonWindow *self);
void lw_lesson_ask_begin       (LwLessonWindow *self,
                                guint           curve);
void lw_lesson_ask_end         (LwLessonWindow *self);
void lw_lesson_ask_point       (LwLessonWindow *self,
                                int             way);           /* moves the mark by a key */
void lw_lesson_ask_answer      (LwLessonWindow *self);
void lw_lesson_ask_arrived     (LwLessonWindow *self);          /* the answer is drawn */

/* lesson-bar.c */
void lw_lesson_bar_fill        (LwLessonWindow *self);
void lw_lesson_bar_update      (LwLessonWindow *self);

/* lesson-edit.c */
void lw_lesson_add_actions     (LwLessonWindow *self);
void lw_lesson_update_actions  (LwLessonWindow *self);

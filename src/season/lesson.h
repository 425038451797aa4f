/* A lesson: which batches are shown to apprentices, in which curves, and what is said or asked at which moment. A value
 * as those of season.h: once in a season's hands it never changes. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "season/season.h"

#define LW_LESSON_CURVES 3
#define LW_LESSON_MOST_SHOWN 4

typedef struct
{
  guint step;     /* of the first batch, from 0; one that it has not is kept and not shown */
  double minute;  /* of the step */
  int ask;        /* which of the curves is asked for: where does it end?; -1: nothing is */
  char *text;     /* (nullable) what is said, or how it is asked */
} LwLessonMoment;

struct _LwLesson
{
  char *name;       /* unique in the season, never empty */
  char *note;       /* (nullable) what it is about */
  gboolean by_clock; /* the batches run by one clock; else step beside step */
  LwQuantity curves[LW_LESSON_CURVES];
  guint n_shown;
  char **shown;     /* names of batches, the first is the one that moments are of */
  guint n_moments;
  LwLessonMoment *moments; /* in the order of time */
};

/* A lesson of one's own to fill, without batches. */
LwLesson *lw_lesson_new         (const char       *name);
LwLesson *lw_lesson_copy        (const LwLesson   *lesson);
LwLesson *lw_lesson_ref         (LwLesson         *lesson);
void      lw_lesson_unref       (LwLesson         *lesson);

void      lw_lesson_show        (LwLesson         *lesson,
                                 const char       *batch);
/* Puts it in its place by time, after others of the same; takes over `moment.text`. */
void      lw_lesson_add_moment  (LwLesson         *lesson,
                                 LwLessonMoment    moment);
void      lw_lesson_remove_moment (LwLesson       *lesson,
                                   guint           at);

/* In a season that nobody else holds. Take over the lesson; `put` replaces the one there. */
void      lw_season_add_lesson    (LwSeason       *season,
                                   LwLesson       *lesson);
void      lw_season_put_lesson    (LwSeason       *season,
                                   guint           at,
                                   LwLesson       *lesson);
void      lw_season_remove_lesson (LwSeason       *season,
                                   guint           at);
/* -1 if there is none. */
int       lw_season_lesson        (const LwSeason *season,
                                   const char     *name);

/* Lessons show `batch` under another name, or, NULL, no longer: one that then shows nothing goes. */
void      lw_season_lessons_follow (LwSeason      *season,
                                    const char    *batch,
                                    const char    *name);

/* Moments go with their steps: of the batch's `n` one was moved from place `from` to `to`, as lw_batch_move_step counts;
 * `from` -1: inserted there; `to` -1: removed, and its moments with it. Those of no step stay as they are. */
void      lw_season_lessons_step   (LwSeason      *season,
                                    const char    *batch,
                                    guint          n,
                                    int            from,
                                    int            to);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwLesson, lw_lesson_unref)

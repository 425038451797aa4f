/* Lessons, and how a season holds them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/lesson.h"

#include <string.h>

LwLesson *
lw_lesson_new (const char *name)
{
  LwLesson *lesson = g_atomic_rc_box_new0 (LwLesson);

  lesson->name = g_strdup (name);
  lesson->curves[0] = LW_MOISTURE;
  lesson->curves[1] = LW_OXIDATION;
  lesson->curves[2] = LW_RUPTURE;

  return lesson;
}

LwLesson *
lw_lesson_copy (const LwLesson *lesson)
{
  LwLesson *copy = lw_lesson_new (lesson->name);

  copy->note = g_strdup (lesson->note);
  copy->by_clock = lesson->by_clock;
  memcpy (copy->curves, lesson->curves, sizeof copy->curves);
  for (guint i = 0; i < lesson->n_shown; i++)
    lw_lesson_show (copy, lesson->shown[i]);
  for (guint i = 0; i < lesson->n_moments; i++)
    {
      LwLessonMoment moment = lesson->moments[i];

      moment.text = g_strdup (moment.text);
      lw_lesson_add_moment (copy, moment);
    }

  return copy;
}

LwLesson *
lw_lesson_ref (LwLesson *lesson)
{
  return g_atomic_rc_box_acquire (lesson);
}

static void
lesson_clear (LwLesson *lesson)
{
  for (guint i = 0; i < lesson->n_shown; i++)
    g_free (lesson->shown[i]);
  for (guint i = 0; i < lesson->n_moments; i++)
    g_free (lesson->moments[i].text);

  g_free (lesson->shown);
  g_free (lesson->moments);
  g_free (lesson->name);
  g_free (lesson->note);
}

void
lw_lesson_unref (LwLesson *lesson)
{
  g_atomic_rc_box_release_full (lesson, (GDestroyNotify) lesson_clear);
}

void
lw_lesson_show (LwLesson   *lesson,
                const char *batch)
{
  lesson->shown = g_renew (char *, lesson->shown, lesson->n_shown + 1);
  lesson->shown[lesson->n_shown++] = g_strdup (batch);
}

static gboolean
is_later (const LwLessonMoment *one,
          const LwLessonMoment *other)
{
  return one->step != other->step ? one->step > other->step : one->minute > other->minute;
}

void
lw_lesson_add_moment (LwLesson      *lesson,
                      LwLessonMoment moment)
{
  guint at = lesson->n_moments;

  while (at > 0 && is_later (&lesson->moments[at - 1], &moment))
    at--;

  lesson->moments = g_renew (LwLessonMoment, lesson->moments, lesson->n_moments + 1);
  memmove (&lesson->moments[at + 1], &lesson->moments[at], (lesson->n_moments - at) * sizeof moment);
  lesson->moments[at] = moment;
  lesson->n_moments++;
}

void
lw_lesson_remove_moment (LwLesson *lesson,
                         guint     at)
{
  g_return_if_fail (at < lesson->n_moments);

  g_free (lesson->moments[at].text);
  lesson->n_moments--;
  memmove (&lesson->moments[at], &lesson->moments[at + 1], (lesson->n_moments - at) * sizeof *lesson->moments);
}

void
lw_season_add_lesson (LwSeason *season,
                      LwLesson *lesson)
{
  season->lessons = g_renew (LwLesson *, season->lessons, season->n_lessons + 1);
  season->lessons[season->n_lessons++] = lesson;
}

void
lw_season_put_lesson (LwSeason *season,
                      guint     at,
                      LwLesson *lesson)
{
  g_return_if_fail (at < season->n_lessons);

  lw_lesson_unref (season->lessons[at]);
  season->lessons[at] = lesson;
}

void
lw_season_remove_lesson (LwSeason *season,
                         guint     at)
{
  g_return_if_fail (at < season->n_lessons);

  lw_lesson_unref (season->lessons[at]);
  season->n_lessons--;
  memmove (&season->lessons[at], &season->lessons[at + 1], (season->n_lessons - at) * sizeof *season->lessons);
}

int
lw_season_lesson (const LwSeason *season,
                  const char     *name)
{
  for (guint i = 0; i < season->n_lessons; i++)
    if (strcmp (season->lessons[i]->name, name) == 0)
      return (int) i;

  return -1;
}

static gboolean
shows (const LwLesson *lesson,
       const char     *batch)
{
  for (guint i = 0; i < lesson->n_shown; i++)
    if (strcmp (lesson->shown[i], batch) == 0)
      return TRUE;

  return FALSE;
}

/* (transfer full) the lesson as it follows. Without its first batch its moments mean nothing. */
static LwLesson *
followed (const LwLesson *lesson,
          const char     *batch,
          const char     *name)
{
  LwLesson *copy = lw_lesson_copy (lesson);
  gboolean first = strcmp (copy->shown[0], batch) == 0;
  guint n = 0;

  for (guint i = 0; i < copy->n_shown; i++)
    {
      char *shown = copy->shown[i];

      if (strcmp (shown, batch) == 0)
        {
          g_free (shown);
          shown = g_strdup (name);
        }
      if (shown != NULL)
        copy->shown[n++] = shown;
    }
  copy->n_shown = n;
  while (name == NULL && first && copy->n_moments > 0)
    lw_lesson_remove_moment (copy, copy->n_moments - 1);

  return copy;
}

void
lw_season_lessons_follow (LwSeason   *season,
                          const char *batch,
                          const char *name)
{
  for (guint i = season->n_lessons; i-- > 0;)
    {
      if (!shows (season->lessons[i], batch))
        continue;

      lw_season_put_lesson (season, i, followed (season->lessons[i], batch, name));
      if (season->lessons[i]->n_shown == 0)
        lw_season_remove_lesson (season, i);
    }
}

/* Where a step is afterwards; -1: nowhere. */
static int
place_after (int step,
             int from,
             int to)
{
  if (from >= 0 && step == from)
    return to;
  if (from >= 0 && step > from)
    step--;

  return to >= 0 && step >= to ? step + 1 : step;
}

void
lw_season_lessons_step (LwSeason   *season,
                        const char *batch,
                        guint       n,
                        int         from,
                        int         to)
{
  for (guint i = 0; i < season->n_lessons; i++)
    {
      const LwLesson *lesson = season->lessons[i];
      LwLesson *copy;

      if (lesson->n_moments == 0 || strcmp (lesson->shown[0], batch) != 0)
        continue;

      copy = lw_lesson_copy (lesson);
      while (copy->n_moments > 0)
        lw_lesson_remove_moment (copy, copy->n_moments - 1);
      for (guint k = 0; k < lesson->n_moments; k++)
        {
          LwLessonMoment moment = lesson->moments[k];
          int step = moment.step < n ? place_after ((int) moment.step, from, to) : (int) moment.step;

          if (step < 0)
            continue;

          moment.step = (guint) step;
          moment.text = g_strdup (moment.text);
          lw_lesson_add_moment (copy, moment);
        }
      lw_season_put_lesson (season, i, copy);
    }
}

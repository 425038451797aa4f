/* Lessons: their edits, how they follow batches, the order of their moments. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include "season/edit.h"
#include "season/lesson.h"

#define FULL 0 /* of the sample's batches */

/* Lessons come, change and go; they follow the names of batches, and one that shows nothing any more goes. */
static void
test_lessons (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  LwLesson *other = lw_lesson_copy (season->lessons[0]);
  g_autoptr (LwSeason) put = NULL, added = NULL, removed = lw_edit_remove_lesson (season, 0);
  g_autoptr (LwSeason) renamed = lw_edit_rename_batch (season, FULL, "14"), fewer = lw_edit_remove_batch (season, FULL);
  g_autoptr (LwSeason) none = lw_edit_remove_batch (fewer, 0);

  g_free (other->name);
  other->name = g_strdup ("Other");
  put = lw_edit_put_lesson (season, 0, lw_lesson_ref (other));
  added = lw_edit_put_lesson (season, -1, other);
  g_assert_cmpint (lw_season_lesson (put, "Other"), ==, 0);
  g_assert_cmpint (lw_season_lesson (put, "Wither & pan"), ==, -1);
  g_assert_true (put->lessons[1] == season->lessons[1]);
  g_assert_cmpint (lw_season_lesson (added, "Other"), ==, 2);
  g_assert_cmpuint (removed->n_lessons, ==, 1);
  g_assert_cmpstr (removed->lessons[0]->name, ==, "B");

  g_assert_cmpstr (season->lessons[0]->shown[0], ==, "Batch № 12");
  g_assert_cmpstr (renamed->lessons[0]->shown[0], ==, "14");
  g_assert_cmpuint (renamed->lessons[0]->n_moments, ==, 3);
  g_assert_true (renamed->lessons[1] == season->lessons[1]);

  /* The moments were the first batch's. */
  g_assert_cmpuint (fewer->n_lessons, ==, 2);
  g_assert_cmpuint (fewer->lessons[0]->n_shown, ==, 1);
  g_assert_cmpstr (fewer->lessons[0]->shown[0], ==, "Batch & 13");
  g_assert_cmpuint (fewer->lessons[0]->n_moments, ==, 0);
  g_assert_cmpuint (none->n_lessons, ==, 0);
}

static void
assert_steps (const LwSeason *season,
              const guint    *steps,
              guint           n)
{
  const LwLesson *lesson = season->lessons[0];

  g_assert_cmpuint (lesson->n_moments, ==, n);
  for (guint i = 0; i < n; i++)
    g_assert_cmpuint (lesson->moments[i].step, ==, steps[i]);
}

/* The sample's moments are of steps 1, 2 and 40; the last is none of the batch's, and stays. */
static void
test_follow_steps (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) first = lw_edit_add_step (season, FULL, 0, LW_KIND_ROLL);
  g_autoptr (LwSeason) between = lw_edit_add_step (season, FULL, 1, LW_KIND_ROLL);
  g_autoptr (LwSeason) removed = lw_edit_remove_step (season, FULL, 0);
  g_autoptr (LwSeason) moved = lw_edit_move_step (season, FULL, 1, 0);
  g_autoptr (LwSeason) other = lw_edit_remove_step (season, 1, 0);

  assert_steps (season, (const guint[]) { 0, 1, 39 }, 3);
  assert_steps (first, (const guint[]) { 1, 2, 39 }, 3);
  assert_steps (between, (const guint[]) { 0, 2, 39 }, 3);
  assert_steps (removed, (const guint[]) { 0, 39 }, 2);
  assert_steps (moved, (const guint[]) { 0, 1, 39 }, 3);
  g_assert_cmpint (moved->lessons[0]->moments[0].ask, ==, season->lessons[0]->moments[1].ask);
  g_assert_cmpstr (moved->lessons[0]->moments[1].text, ==, season->lessons[0]->moments[0].text);
  g_assert_true (other->lessons[0] == season->lessons[0]);
}

/* Moments stand in the order of time, those of the same in that of their coming. */
static void
test_moments (void)
{
  static const char *const order[] = { "a", "b", "c", "d" };
  g_autoptr (LwLesson) lesson = lw_lesson_new ("A");

  lw_lesson_add_moment (lesson, (LwLessonMoment) { 1, 0, -1, g_strdup ("c") });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 0, 9, -1, g_strdup ("a") });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 1, 5, -1, g_strdup ("x") });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 1, 5, -1, g_strdup ("d") });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 0, 9, -1, g_strdup ("b") });
  lw_lesson_remove_moment (lesson, 3);
  g_assert_cmpuint (lesson->n_moments, ==, G_N_ELEMENTS (order));
  for (guint i = 0; i < lesson->n_moments; i++)
    g_assert_cmpstr (lesson->moments[i].text, ==, order[i]);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/lesson/edits", test_lessons);
  g_test_add_func ("/lesson/moments", test_moments);
  g_test_add_func ("/lesson/follow-steps", test_follow_steps);

  return g_test_run ();
}

/* A lesson's stops, where its batches are side by side, and the ranking of guesses: with tracks whose turns and states are
 * made up, so that every answer is known. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "study/guess.h"
#include "study/lesson-stops.h"

#define A_MINUTES { 100, 20, 4 }
#define B_MINUTES { 50, 8 }

/* A track of steps in which the water falls by 1 each, evenly. */
static LwTrack *
track_new (const double *minutes,
           guint         n)
{
  static const LwPart whole = { 1, 1, 1, 1, 0 };
  LwTrack *track = g_new0 (LwTrack, 1);

  track->n_steps = n;
  track->n_parts = 1;
  track->parts = (LwPart *) &whole;
  track->leaf = (LwLeaf) { .fresh_water = 3, .n_parts = 1, .parts = &whole };
  track->steps = g_new0 (LwSegment *, n);
  for (guint i = 0; i < n; i++)
    {
      LwSegment *segment = lw_segment_new (60 * minutes[i], 2, 1);

      segment->time_s[0] = 0;
      segment->time_s[1] = 60 * minutes[i];
      memset (segment->states, 0, 2 * sizeof *segment->states);
      segment->states[0].water = 3 - i;
      segment->states[1].water = 2 - i;
      track->steps[i] = segment;
    }

  return track;
}

static void
turn (LwTrack   *track,
      guint      step,
      LwTurnKind kind,
      double     minute)
{
  LwSegment *segment = track->steps[step];

  segment->turns = g_renew (LwTurn, segment->turns, segment->n_turns + 1);
  segment->turns[segment->n_turns++] = (LwTurn) { kind, 60 * minute };
}

static void
track_free (LwTrack *track)
{
  for (guint i = 0; i < track->n_steps; i++)
    lw_segment_unref (track->steps[i]);
  g_free (track->steps);
  g_free (track);
}

typedef struct
{
  LwBatch *batch[2];
  LwTrack *track[2];
  LwShown shown[2];
} Two;

static const int columns[] = { 0, 2 };

/* A withers, is fixed and rolled; B withers and is rolled. */
static void
set_up (Two          *two,
        gconstpointer data)
{
  static const LwKind kinds[2][3] = { { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL }, { LW_KIND_WITHER, LW_KIND_ROLL } };
  static const double minutes[2][3] = { A_MINUTES, B_MINUTES };
  static const guint n[2] = { 3, 2 };

  for (guint i = 0; i < 2; i++)
    {
      two->batch[i] = lw_batch_new (i == 0 ? "A" : "B");
      for (guint k = 0; k < n[i]; k++)
        {
          LwStep step = lw_step_new (kinds[i][k]);

          lw_step_set (&step, LW_SET_MINUTES, minutes[i][k]);
          lw_batch_insert_step (two->batch[i], k, step);
        }
      two->track[i] = track_new (minutes[i], n[i]);
    }
  turn (two->track[0], 1, LW_TURN_HOT, 5);
  turn (two->track[0], 1, LW_TURN_ENZYME_HALF, 5);
  turn (two->track[1], 0, LW_TURN_WATER_HALF, 25);
  turn (two->track[1], 1, LW_TURN_RUPTURE_HALF, 4);
  two->shown[0] = (LwShown) { two->batch[0], two->track[0], NULL };
  two->shown[1] = (LwShown) { two->batch[1], two->track[1], columns };
}

static void
tear_down (Two          *two,
           gconstpointer data)
{
  for (guint i = 0; i < 2; i++)
    {
      lw_batch_unref (two->batch[i]);
      track_free (two->track[i]);
    }
}

typedef struct
{
  LwStopKind kind;
  guint shown;
  guint step;
  double minute;
} Expected;

static void
assert_stops (const GArray   *stops,
              const Expected *expected,
              guint           n)
{
  g_assert_cmpuint (stops->len, ==, n);
  for (guint i = 0; i < n; i++)
    {
      const LwStop *stop = &g_array_index (stops, LwStop, i);

      g_assert_cmpint (stop->kind, ==, expected[i].kind);
      g_assert_cmpuint (stop->shown, ==, expected[i].shown);
      g_assert_cmpuint (stop->head.step, ==, expected[i].step);
      g_assert_cmpfloat_with_epsilon (stop->head.minute, expected[i].minute, 1e-9);
    }
}

static LwLesson *
lesson_new (void)
{
  LwLesson *lesson = lw_lesson_new ("L");

  lw_lesson_show (lesson, "A");
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 1, 5, -1, g_strdup ("same") });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 1, 20, 0, NULL });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 1, 21, -1, g_strdup ("past the step") });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 7, 0, -1, g_strdup ("no such step") });

  return lesson;
}

/* Step beside step: at the same share of the step that matches. */
static void
test_by_step (Two          *two,
              gconstpointer data)
{
  static const Expected expected[] = {
    { LW_STOP_BEGIN, 0, 0, 0 }, { LW_STOP_TURN, 1, 0, 50 }, { LW_STOP_TURN, 0, 1, 5 }, { LW_STOP_TURN, 0, 1, 5 },
    { LW_STOP_MOMENT, 0, 1, 5 }, { LW_STOP_MOMENT, 0, 1, 20 }, { LW_STOP_TURN, 1, 2, 2 }, { LW_STOP_END, 0, 2, 4 },
  };
  g_autoptr (LwLesson) lesson = lesson_new ();
  g_autoptr (GArray) stops = lw_lesson_stops (two->shown, 2, FALSE, lesson);

  assert_stops (stops, expected, G_N_ELEMENTS (expected));
  g_assert_cmpint (g_array_index (stops, LwStop, 2).turn.kind, ==, LW_TURN_HOT);
  g_assert_cmpuint (g_array_index (stops, LwStop, 5).moment, ==, 1);
}

/* By one clock: as long after the start; what comes after the first has ended does not come. */
static void
test_by_clock (Two          *two,
               gconstpointer data)
{
  static const Expected expected[] = {
    { LW_STOP_BEGIN, 0, 0, 0 }, { LW_STOP_TURN, 1, 0, 25 }, { LW_STOP_TURN, 1, 0, 54 }, { LW_STOP_TURN, 0, 1, 5 },
    { LW_STOP_TURN, 0, 1, 5 }, { LW_STOP_END, 0, 2, 4 },
  };
  static const Expected other[] = {
    { LW_STOP_BEGIN, 0, 0, 0 }, { LW_STOP_TURN, 0, 0, 25 }, { LW_STOP_TURN, 0, 1, 4 }, { LW_STOP_END, 0, 1, 8 },
  };
  const LwShown turned[] = { two->shown[1], two->shown[0] };
  g_autoptr (GArray) stops = lw_lesson_stops (two->shown, 2, TRUE, NULL);
  g_autoptr (GArray) short_first = lw_lesson_stops (turned, 2, TRUE, NULL);

  assert_stops (stops, expected, G_N_ELEMENTS (expected));
  assert_stops (short_first, other, G_N_ELEMENTS (other));
}

static void
test_where (Two          *two,
            gconstpointer data)
{
  guint step;
  double minute;
  LwOutcome now;

  g_assert_true (lw_lesson_where (two->shown, 1, FALSE, (LwHead) { 2, 1 }, &step, &minute));
  g_assert_cmpuint (step, ==, 1);
  g_assert_cmpfloat (minute, ==, 2);
  g_assert_false (lw_lesson_where (two->shown, 1, FALSE, (LwHead) { 1, 1 }, &step, &minute));
  g_assert_true (lw_lesson_where (two->shown, 1, TRUE, (LwHead) { 0, 53 }, &step, &minute));
  g_assert_cmpuint (step, ==, 1);
  g_assert_cmpfloat (minute, ==, 3);
  /* It is over, and lies as it is. */
  g_assert_true (lw_lesson_where (two->shown, 1, TRUE, (LwHead) { 1, 10 }, &step, &minute));
  g_assert_cmpuint (step, ==, 1);
  g_assert_cmpfloat (minute, ==, 8);

  g_assert_true (lw_lesson_is (two->shown, 1, FALSE, (LwHead) { 0, 50 }, &now));
  g_assert_cmpfloat_with_epsilon (now.moisture_wb_pct, 100 * 2.5 / 3.5, 1e-6);
  g_assert_true (lw_lesson_is (two->shown, 0, TRUE, (LwHead) { 1, 10 }, &now));
  g_assert_cmpfloat_with_epsilon (now.moisture_wb_pct, 100 * 1.5 / 2.5, 1e-6);
  g_assert_false (lw_lesson_is (two->shown, 1, FALSE, (LwHead) { 1, 10 }, &now));
}

/* What comes is hidden until the last question is answered or passed. */
static void
test_hides (Two          *two,
            gconstpointer data)
{
  g_autoptr (LwLesson) lesson = lesson_new ();
  g_autoptr (GArray) stops = lw_lesson_stops (two->shown, 2, FALSE, lesson);
  gboolean answered[8] = { FALSE };

  g_assert_cmpuint (lw_lesson_stop_at (stops, (LwHead) { 0, 0 }), ==, 0);
  g_assert_cmpuint (lw_lesson_stop_at (stops, (LwHead) { 0, 49.9 }), ==, 0);
  g_assert_cmpuint (lw_lesson_stop_at (stops, (LwHead) { 1, 5 }), ==, 4);
  g_assert_cmpuint (lw_lesson_stop_at (stops, (LwHead) { 2, 4 }), ==, 7);
  g_assert_true (lw_lesson_hides (stops, lesson, answered, (LwHead) { 0, 0 }));
  g_assert_true (lw_lesson_hides (stops, lesson, answered, (LwHead) { 1, 20 }));
  g_assert_false (lw_lesson_hides (stops, lesson, answered, (LwHead) { 2, 0 }));
  g_assert_false (lw_lesson_hides (stops, NULL, answered, (LwHead) { 0, 0 }));
  answered[5] = TRUE;
  g_assert_false (lw_lesson_hides (stops, lesson, answered, (LwHead) { 0, 0 }));
}

static void
test_rank (void)
{
  LwGuess guesses[] = {
    { (char *) "a", 12, 0, 0 }, { (char *) "b", 9, 0, 0 }, { (char *) "c", 11, 0, 0 }, { (char *) "d", 10, 0, 0 },
    { (char *) "e", 2, 0, 0 },
  };
  static const char *const order[] = { "d", "b", "c", "a", "e" };
  static const double off[] = { 0, -1, 1, 2, -8 };
  static const guint ranks[] = { 1, 2, 2, 4, 5 };

  lw_guesses_rank (guesses, G_N_ELEMENTS (guesses), 10);
  for (guint i = 0; i < G_N_ELEMENTS (guesses); i++)
    {
      g_assert_cmpstr (guesses[i].name, ==, order[i]);
      g_assert_cmpfloat (guesses[i].off, ==, off[i]);
      g_assert_cmpuint (guesses[i].rank, ==, ranks[i]);
    }
  lw_guesses_rank (NULL, 0, 1);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add ("/lesson/by-step", Two, NULL, set_up, test_by_step, tear_down);
  g_test_add ("/lesson/by-clock", Two, NULL, set_up, test_by_clock, tear_down);
  g_test_add ("/lesson/where", Two, NULL, set_up, test_where, tear_down);
  g_test_add ("/lesson/hides", Two, NULL, set_up, test_hides, tear_down);
  g_test_add_func ("/lesson/rank", test_rank);

  return g_test_run ();
}

/* The stops of a lesson, and the other batches beside the first. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/lesson-stops.h"

static double
minutes_of (const LwShown *shown,
            guint          step)
{
  return lw_step_get (&shown->batch->steps[step], LW_SET_MINUTES);
}

/* The step in which `minute`, counted from the batch's start, is, and the minute in it; FALSE past its end, which they
 * then are. */
static gboolean
step_at (const LwShown *shown,
         double         minute,
         guint         *step,
         double        *in_step)
{
  guint last = shown->batch->n_steps - 1;

  for (*step = 0; *step < last && minute > minutes_of (shown, *step); (*step)++)
    minute -= minutes_of (shown, *step);
  *in_step = MIN (minute, minutes_of (shown, *step));

  return minute <= minutes_of (shown, *step);
}

int
lw_head_compare (LwHead a,
                 LwHead b)
{
  if (a.step != b.step)
    return a.step > b.step ? 1 : -1;

  return (a.minute > b.minute) - (a.minute < b.minute);
}

static int
column_of (const LwShown *shown,
           guint          step)
{
  return shown->columns != NULL ? shown->columns[step] : (int) step;
}

/* Where the first batch is when `shown[i]` is at a moment of its own; FALSE if it is not. */
static gboolean
head_when (const LwShown *shown,
           guint          i,
           gboolean       by_clock,
           guint          step,
           double         minute,
           LwHead        *head)
{
  int column;

  if (i == 0)
    {
      *head = (LwHead) { step, minute };
      return TRUE;
    }
  if (by_clock)
    return step_at (shown, lw_batch_begin_minute (shown[i].batch, step) + minute, &head->step, &head->minute);

  column = column_of (&shown[i], step);
  if (column < 0)
    return FALSE;

  head->step = (guint) column;
  head->minute = minute / minutes_of (&shown[i], step) * minutes_of (shown, head->step);

  return TRUE;
}

gboolean
lw_lesson_where (const LwShown *shown,
                 guint          i,
                 gboolean       by_clock,
                 LwHead         head,
                 guint         *step,
                 double        *minute)
{
  if (i == 0)
    {
      *step = head.step;
      *minute = head.minute;
      return TRUE;
    }
  if (by_clock)
    {
      step_at (&shown[i], lw_batch_begin_minute (shown[0].batch, head.step) + head.minute, step, minute);
      return TRUE;
    }

  for (*step = 0; *step < shown[i].batch->n_steps; (*step)++)
    if (column_of (&shown[i], *step) == (int) head.step)
      {
        *minute = head.minute / minutes_of (shown, head.step) * minutes_of (&shown[i], *step);
        return TRUE;
      }

  return FALSE;
}

gboolean
lw_lesson_is (const LwShown *shown,
              guint          i,
              gboolean       by_clock,
              LwHead         head,
              LwOutcome     *outcome)
{
  guint step;
  double minute;

  if (!lw_lesson_where (shown, i, by_clock, head, &step, &minute) || step >= shown[i].track->n_steps)
    return FALSE;

  *outcome = lw_track_outcome_at (shown[i].track, step, -1, 60 * minute);

  return TRUE;
}

static int
compare_stops (gconstpointer a,
               gconstpointer b)
{
  const LwStop *one = a, *other = b;
  int way = lw_head_compare (one->head, other->head);

  if (way == 0)
    way = (one->kind > other->kind) - (one->kind < other->kind);
  if (way == 0)
    way = (one->shown > other->shown) - (one->shown < other->shown);

  return way != 0 ? way : (one->moment > other->moment) - (one->moment < other->moment);
}

static void
add_turns (GArray        *stops,
           const LwShown *shown,
           guint          i,
           gboolean       by_clock)
{
  g_autoptr (GArray) turns = lw_turns_of (shown[i].track);

  for (guint k = 0; k < turns->len; k++)
    {
      LwStop stop = { .kind = LW_STOP_TURN, .shown = i, .turn = g_array_index (turns, LwTurnAt, k), .moment = k };

      if (head_when (shown, i, by_clock, stop.turn.step, stop.turn.minute, &stop.head))
        g_array_append_val (stops, stop);
    }
}

static void
add_moments (GArray         *stops,
             const LwShown  *first,
             const LwLesson *lesson)
{
  for (guint i = 0; i < lesson->n_moments; i++)
    {
      const LwLessonMoment *moment = &lesson->moments[i];
      LwStop stop = { .kind = LW_STOP_MOMENT, .head = { moment->step, moment->minute }, .moment = i };

      if (moment->step < first->batch->n_steps && moment->minute <= minutes_of (first, moment->step))
        g_array_append_val (stops, stop);
    }
}

GArray *
lw_lesson_stops (const LwShown  *shown,
                 guint           n,
                 gboolean        by_clock,
                 const LwLesson *lesson)
{
  GArray *stops = g_array_new (FALSE, FALSE, sizeof (LwStop));
  guint last = shown[0].batch->n_steps - 1;
  LwStop begin = { .kind = LW_STOP_BEGIN }, end = { .kind = LW_STOP_END, .head = { last, minutes_of (shown, last) } };

  g_array_append_val (stops, begin);
  g_array_append_val (stops, end);
  for (guint i = 0; i < n; i++)
    add_turns (stops, shown, i, by_clock);
  if (lesson != NULL)
    add_moments (stops, shown, lesson);
  g_array_sort (stops, compare_stops);

  return stops;
}

guint
lw_lesson_stop_at (const GArray *stops,
                   LwHead        head)
{
  guint at = 0;

  while (at + 1 < stops->len && lw_head_compare (g_array_index (stops, LwStop, at + 1).head, head) <= 0)
    at++;

  return at;
}

gboolean
lw_lesson_hides (const GArray   *stops,
                 const LwLesson *lesson,
                 const gboolean *answered,
                 LwHead          head)
{
  for (guint i = 0; lesson != NULL && i < stops->len; i++)
    {
      const LwStop *stop = &g_array_index (stops, LwStop, i);

      if (stop->kind == LW_STOP_MOMENT && lesson->moments[stop->moment].ask >= 0 && !answered[i]
          && lw_head_compare (head, stop->head) <= 0)
        return TRUE;
    }

  return FALSE;
}

/* What a lesson says, made from the numbers of the batches; and how its head goes on. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/lesson.h"

#include "draw/words.h"
#include "season/text.h"

#define EVEN_ROOM 1280.0 /* to lay out the columns in; only their shares count */

gboolean
lw_head_advance (LwHead        *head,
                 const LwBatch *batch,
                 gboolean       by_clock,
                 double         share)
{
  double minutes[LW_SCALE_MAX_STEPS], x;
  guint last = batch->n_steps - 1;
  LwScale scale;

  for (guint i = 0; i < batch->n_steps; i++)
    minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  lw_scale_fill_view (&scale, (LwScaleView) { .by_clock = by_clock, .zoomed = -1 }, minutes, batch->n_steps, 0, EVEN_ROOM,
                      FALSE);
  x = lw_scale_x (&scale, head->step, head->minute) + share * scale.total;
  if (x < lw_scale_x (&scale, last, minutes[last]))
    {
      lw_scale_at (&scale, x, &head->step, &head->minute);
      return TRUE;
    }

  *head = (LwHead) { last, minutes[last] };

  return FALSE;
}

static char *
say_question (const LwLessonMoment *moment,
              const LwQuantity     *of)
{
  if (moment->text != NULL)
    return g_strdup (moment->text);

  /* Translators: %s is an outcome, as "Moisture" */
  return g_strdup_printf (_ ("%s: where does the curve end?"), _ (lw_quantity_row (of[moment->ask])->label));
}

static char *
say_end (const LwShown    *shown,
         const LwQuantity *of)
{
  LwOutcome end = lw_track_end (shown[0].track, shown[0].track->n_steps - 1, -1);
  g_autoptr (GString) said = g_string_new (_ ("At the end:"));

  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    {
      g_autofree char *value = lw_words_value (of[i], lw_quantity_of (of[i], &end));

      g_string_append_printf (said, "%s %s %s", i > 0 ? ";" : "", _ (lw_quantity_row (of[i])->label), value);
    }
  g_string_append_c (said, '.');

  return g_string_free (g_steal_pointer (&said), FALSE);
}

char *
lw_lesson_says (const LwShown    *shown,
                guint             n,
                const LwStop     *stop,
                const LwLesson   *lesson,
                const LwQuantity *of)
{
  g_autofree char *turn = NULL;

  switch (stop->kind)
    {
    case LW_STOP_TURN:
      turn = lw_turn_sentence (&stop->turn);
      return n > 1 ? g_strdup_printf ("%s: %s", shown[stop->shown].batch->name, turn) : g_steal_pointer (&turn);
    case LW_STOP_MOMENT:
      return say_question (&lesson->moments[stop->moment], of);
    case LW_STOP_END:
      return say_end (shown, of);
    case LW_STOP_BEGIN:
    default:
      return g_strdup (lesson != NULL && lesson->note != NULL ? lesson->note : _ ("Space plays; the arrows go from one turning point to the next."));
    }
}

char *
lw_lesson_tells (LwQuantity     of,
                 double         truth,
                 const LwGuess *guesses,
                 guint          n)
{
  g_autofree char *value = lw_words_value (of, truth);
  g_autoptr (GString) told = g_string_new (NULL);

  /* Translators: an outcome, as "Moisture", and its value */
  g_string_append_printf (told, _ ("%s ends at %s."), _ (lw_quantity_row (of)->label), value);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *off = lw_words_change (of, guesses[i].off);

      /* Translators: rank and name of who guessed, and how far the guess is off: "+1.2", "% points" */
      g_string_append_printf (told, _ (" %u. %s: off by %s %s."), guesses[i].rank, guesses[i].name, off, lw_words_change_unit (of));
    }

  return g_string_free (g_steal_pointer (&told), FALSE);
}

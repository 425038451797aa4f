/* Lessons into the document. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/write-lesson.h"

#include "season/notation.h"
#include "season/put.h"
#include "season/shape.h"

static void
put_moment (GString              *out,
            const LwLessonMoment *moment)
{
  g_autofree char *minute = lw_number_text (moment->minute);

  g_string_append_printf (out, "    <moment step=\"%u\" minute=\"%s\"", moment->step + 1, minute);
  if (moment->ask >= 0)
    lw_put_attr (out, "ask", lw_lesson_curve_word ((guint) moment->ask));
  lw_put_said (out, "moment", moment->text);
}

static void
put_lesson (GString        *out,
            const LwLesson *lesson)
{
  lw_put_start (out, 1, "lesson");
  lw_put_attr (out, "name", lesson->name);
  lw_put_attr (out, "time", lw_lesson_time_word (lesson->by_clock ? 1 : 0));
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    lw_put_attr (out, lw_lesson_curve_word (i), lw_quantity_row (lesson->curves[i])->id);
  g_string_append (out, ">\n");

  lw_put_note (out, 2, "note", lesson->note);
  for (guint i = 0; i < lesson->n_shown; i++)
    {
      lw_put_start (out, 2, "show");
      lw_put_attr (out, "batch", lesson->shown[i]);
      g_string_append (out, "/>\n");
    }
  for (guint i = 0; i < lesson->n_moments; i++)
    put_moment (out, &lesson->moments[i]);
  lw_put_end (out, 1, "lesson");
}

void
lw_write_lessons (GString        *out,
                  const LwSeason *season)
{
  for (guint i = 0; i < season->n_lessons; i++)
    put_lesson (out, season->lessons[i]);
}

/* Lessons from the document. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/read-lesson.h"

#include <math.h>
#include <string.h>

#include "season/gate.h"
#include "season/text.h"

static void
read_show (LwReader *reader,
           xmlNode  *node,
           LwLesson *lesson)
{
  LwValue values[LW_MAX_ATTRS];
  const char *batch;

  lw_reader_attrs (reader, node, LW_E_SHOW, values);
  batch = lw_value_text (&values[0]);
  for (guint i = 0; i < lesson->n_shown; i++)
    if (*batch != '\0' && strcmp (lesson->shown[i], batch) == 0)
      lw_reader_tell (reader, lw_gate_line (node), _ ("Show it once."), _ ("The lesson shows one batch twice."));
  lw_lesson_show (lesson, batch);
}

static void
read_moment (LwReader *reader,
             xmlNode  *node,
             LwLesson *lesson)
{
  enum { STEP, MINUTE, ASK };
  LwValue values[LW_MAX_ATTRS];
  LwLessonMoment moment = { .ask = -1 };
  double step;

  lw_reader_attrs (reader, node, LW_E_MOMENT, values);
  step = values[STEP].given ? values[STEP].number : 1;
  if (step != floor (step))
    lw_reader_tell (reader, lw_gate_line (node), _ ("Write the number of a step."),
                    _ ("“step” is not a whole number."));
  moment.step = (guint) step - 1;
  moment.minute = values[MINUTE].number;
  if (values[ASK].given)
    moment.ask = values[ASK].word;
  moment.text = lw_reader_text (reader, node);
  if (moment.ask < 0 && moment.text == NULL)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Write what is said, or what is asked."),
                    _ ("A moment says nothing and asks nothing."));
  lw_lesson_add_moment (lesson, moment);
}

static void
take_in_lesson (LwReader *reader,
                xmlNode  *node,
                LwElement element,
                gpointer  into)
{
  LwLesson *lesson = into;

  if (element == LW_E_SHOW)
    read_show (reader, node, lesson);
  else if (element == LW_E_MOMENT)
    read_moment (reader, node, lesson);
  else
    lesson->note = lw_reader_note (reader, node, LW_E_NOTE, lesson->note);
}

LwLesson *
lw_read_lesson (LwReader *reader,
                xmlNode  *node)
{
  enum { NAME, TIME, FIRST };
  LwValue values[LW_MAX_ATTRS];
  LwLesson *lesson;

  lw_reader_attrs (reader, node, LW_E_LESSON, values);
  lesson = lw_lesson_new (lw_value_text (&values[NAME]));
  lesson->by_clock = values[TIME].given && values[TIME].word == 1;
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    lesson->curves[i] = (LwQuantity) (values[FIRST + i].given ? MAX (values[FIRST + i].word, 0) : 0);
  lw_reader_children (reader, node, LW_E_LESSON, take_in_lesson, lesson);

  return lesson;
}

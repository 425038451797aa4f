/* Puts a script on: plots, weather, batches as written, then the weigh-ins. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo/stage.h"

#include "demo/garden.h"
#include "demo/scale.h"
#include "demo/sky.h"
#include "season/lesson.h"
#include "season/notation.h"

#define ALTITUDE_M 1250

static LwAim
aim_of (const DemoAim *aim)
{
  return (LwAim) { .of = aim->of, .low = aim->low, .high = aim->high, .weight = 1 };
}

static gboolean
is_aim (const DemoAim *aim)
{
  return aim->low != 0 || aim->high != 0;
}

static void
add_step (LwBatch        *batch,
          const DemoStep *script)
{
  LwStep step = lw_step_new (script->kind);
  guint at = batch->n_steps;

  lw_step_set (&step, LW_SET_MINUTES, script->minutes);
  for (const DemoGiven *given = script->given; given->setting != LW_SET_MINUTES; given++)
    lw_step_set (&step, given->setting, given->value);
  step.note = g_strdup (script->note);
  step.sign = g_strdup (script->sign);

  lw_batch_insert_step (batch, at, step);
  for (const DemoAim *aim = script->aims; is_aim (aim); aim++)
    lw_batch_add_aim (batch, (int) at, aim_of (aim));
}

static void
add_making (LwBatch        *batch,
            const DemoStep *steps,
            const DemoAim  *aims)
{
  for (const DemoStep *step = steps; step->minutes > 0; step++)
    add_step (batch, step);
  for (const DemoAim *aim = aims; is_aim (aim); aim++)
    lw_batch_add_aim (batch, -1, aim_of (aim));
}

static gint64
time_of (const char *text)
{
  gint64 when_s = 0;

  if (!lw_time_parse (text, &when_s))
    g_error ("%s is no time", text);

  return when_s;
}

static LwBatch *
plan_of (const DemoBatch *script)
{
  LwBatch *plan = lw_batch_new (script->name);

  plan->when_s = time_of (script->was_start);
  plan->fresh_kg = script->true_kg;
  add_making (plan, script->was, script->aims);

  return plan;
}

static LwBatch *
batch_of (const DemoBatch *script)
{
  LwBatch *batch = lw_batch_new (script->name);

  batch->tea = g_strdup (script->tea);
  batch->note = g_strdup (script->note);
  batch->made = !script->planned;
  batch->fresh_kg = script->true_kg;
  batch->weather = g_strdup (script->weather);
  g_free (batch->leaf);
  batch->leaf = g_strdup (script->leaf);
  if (script->moisture_pct > 0)
    batch->fresh_moisture_pct = script->moisture_pct;
  batch->when_s = time_of (script->start);
  add_making (batch, script->steps, script->aims);
  if (script->was != NULL)
    batch->plan = plan_of (script);

  return batch;
}

static LwLesson *
lesson_of (const LwSeason   *season,
           const DemoLesson *script)
{
  LwLesson *lesson = lw_lesson_new (script->name);
  const LwBatch *first = season->batches[lw_season_batch (season, script->shown[0])];

  lesson->note = g_strdup (script->note);
  lesson->by_clock = script->by_clock;
  for (guint i = 0; i < LW_LESSON_CURVES; i++)
    lesson->curves[i] = script->curves[i];
  for (const char *const *shown = script->shown; *shown != NULL; shown++)
    lw_lesson_show (lesson, *shown);
  for (const DemoMoment *moment = script->moments; moment->step > 0; moment++)
    {
      double end = lw_step_get (&first->steps[moment->step - 1], LW_SET_MINUTES);

      lw_lesson_add_moment (lesson, (LwLessonMoment) {
        moment->step - 1, moment->minute == DEMO_END ? end : moment->minute, (int) moment->ask - 1, g_strdup (moment->text),
      });
    }

  return lesson;
}

LwSeason *
demo_stage (const DemoSeason *script)
{
  LwSeason *season = lw_season_new (script->name);

  season->place = g_strdup ("Ondry Ridge");
  season->note = g_strdup (script->note);
  season->altitude_m = ALTITUDE_M;
  season->latitude_deg = DEMO_LATITUDE_DEG;
  for (guint i = 0; i < DEMO_N_PLOTS; i++)
    lw_season_add_profile (season, demo_plot (i));
  for (guint i = 0; script->records[i].id != NULL; i++)
    lw_season_add_weather (season,
                           demo_weather (&script->records[i], 100 * script->seed + 90 + i));

  for (guint i = 0; i < script->n_batches; i++)
    {
      LwBatch *batch = batch_of (&script->batches[i]);

      if (batch->made)
        demo_weigh (season, batch, &script->batches[i], 100 * script->seed + i);
      lw_season_insert_batch (season, i, batch);
    }
  for (guint i = 0; i < script->n_lessons; i++)
    lw_season_add_lesson (season, lesson_of (season, &script->lessons[i]));

  return season;
}

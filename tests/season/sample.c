/* The sample season, and a comparison that knows every field. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <math.h>
#include <string.h>

#include "season/correction.h"
#include "season/lesson.h"

static void
add_profile (LwSeason *season)
{
  LwProfile *profile = lw_profile_new ("upper-terrace-2", "Upper Terrace <old> & \"strong\"");

  profile->fresh_moisture_pct = 123456789.123456789 / 1e7 + 60;
  profile->fresh_green = 1e-300;
  profile->note = g_strdup ("Facing south.\n  Pruned\tin autumn.\r\n");
  for (guint i = 0; i < LW_N_LAW; i++)
    lw_profile_set_law (profile, i, (2 * lw_law_fields ()[i].low + lw_law_fields ()[i].high) / 3);
  lw_profile_add_part (profile, "läufig", (LwPart) { 0.1, 0.2, 0.3, 0.4, 0.5 });
  lw_profile_add_part (profile, "嫩叶", (LwPart) { 0.9, 1.0 / 3, 10, 100, 0 });

  lw_season_add_profile (season, profile);
}

static void
add_weather (LwSeason *season)
{
  static const LwHour hours[] = {
    { 12.5, 81.25, 0, 0.1 }, { -3.3333333333333335, 99, 850, 12 }, { 0, 1, 1500, 60 },
    { 1, 2, NAN, 3, 0, 0.25 }, { 1, 2, NAN, 3, 66.6, 500 }, { 1, 2, 3, 4, 0, 5 },
  };
  LwWeather *weather = lw_weather_new ("march", "März", 1774656000, hours, G_N_ELEMENTS (hours));

  weather->note = g_strdup ("Invented.");
  lw_season_add_weather (season, weather);

  weather = lw_weather_new_constant ("hall", "Hall", &(LwHour) { 24.1, 70, NAN, 0.5, 12.5, 0 });
  weather->note = g_strdup ("A note.");
  lw_season_add_weather (season, weather);
  lw_season_add_weather (season, lw_weather_new_day ("dew", "By dew point",
                                                     &(LwDay) { 14, 6, 24.5, 15.25, NAN, -3, 30, 0.8 }));
  lw_season_add_weather (season, lw_weather_new_day ("wet", "By humidity",
                                                     &(LwDay) { -4, 0, -4, 23.9, 88.8, NAN, 100, 0 }));
}

static LwStep
full_step (void)
{
  LwStep step = lw_step_new (LW_KIND_FIX_PAN);
  const LwKindRow *row = lw_kind_row (LW_KIND_FIX_PAN);

  for (guint i = 0; i < row->n_settings; i++)
    lw_step_set (&step, row->settings[i].setting,
                 row->settings[i].low + (row->settings[i].high - row->settings[i].low) / 7);
  step.note = g_strdup ("The fire was slow.");
  step.sign = g_strdup ("Listen: the leaf stops crackling.");

  return step;
}

static void
add_logs (LwBatch *batch)
{
  static const double time_s[] = { 0, 0.25, 1.0 / 3, 86399.875 }, warm[] = { -50, 20.05, 299.99999999999994, 600 };
  LwLog *pan = lw_log_new ("pan-1", "Pan <12>"), *room = lw_log_new ("room", "Räume");

  *pan = (LwLog) { pan->id, pan->name, 86400, 12, 2, 86412, 0, NULL };
  lw_log_add_curve (pan, LW_LOG_WALL, "Wall (\"°F\")", 0.05, time_s, warm, G_N_ELEMENTS (time_s));
  lw_log_add_curve (pan, LW_LOG_LEAF, NULL, 0.1, time_s, warm, 1);
  room->rows = room->first_line = room->last_line = 1;
  lw_log_add_curve (room, LW_LOG_AIR, "T", 0, time_s, warm, 2);
  lw_batch_add_log (batch, (LwBatchLog) { pan, 1, -1.5 });
  lw_batch_add_log (batch, (LwBatchLog) { room, -1, 0.1 });
  lw_step_set_log (&batch->steps[1], LW_SET_WALL_C, "pan-1");
  lw_step_set_log (&batch->steps[1], LW_SET_AIR_C, "room");
  lw_step_set_log (&batch->steps[0], LW_SET_AIR_C, "room");
}

static LwBatch *
full_batch (void)
{
  LwBatch *batch = lw_batch_new ("Batch № 12");
  LwAim window = { LW_MOISTURE, 58.5, 66.1, 2.5, NULL };
  LwAim below = { LW_OXIDATION, -INFINITY, 0.1, 1, NULL };
  LwAim above = { LW_ROAST, 12, INFINITY, 0.001, NULL };
  LwWeighIn tared = { 0.1, LW_WEIGHED_KG, 7.1000000000000005, 0.02, 0.45, NULL };
  LwState shifts[2] = { { .water = 0.1, .enzyme = -0.25 }, { .roast_min = 1e-9 } };
  LwWeighIn judged = { 12.7, LW_JUDGED_OXIDATION_PCT, 4, 5, 0, NULL };
  LwWeighIn noted = { 13, LW_NOTED, 0, 0, 0, NULL };

  batch->tea = g_strdup ("reddened, sun-dried");
  batch->when_s = 1775989815;
  batch->made = TRUE;
  g_free (batch->leaf);
  batch->leaf = g_strdup ("upper-terrace-2");
  batch->weather = g_strdup ("march");
  batch->fresh_kg = 10.000000000000002;
  batch->fresh_moisture_pct = 78.3;
  batch->note = g_strdup (" 普洱 ]]> <note> ");
  lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_WITHER));
  lw_batch_insert_step (batch, 1, full_step ());
  window.note = g_strdup ("so that it <rolls>");
  lw_batch_add_aim (batch, -1, below);
  lw_batch_add_aim (batch, 1, window);
  lw_batch_add_aim (batch, 1, above);
  tared.note = g_strdup ("in the small tray");
  lw_batch_add_weigh_in (batch, 1, tared);
  lw_batch_add_weigh_in (batch, 1, judged);
  noted.note = g_strdup ("smells of <cut> grass");
  lw_batch_add_weigh_in (batch, 1, noted);
  lw_batch_set_correction (batch, 1, lw_correction_new (batch, 1, 12.7, -0.1, shifts, G_N_ELEMENTS (shifts)));
  add_logs (batch);
  batch->plan = lw_batch_copy (batch);
  batch->plan->when_s -= 59;
  batch->plan->fresh_kg = 1.0 / 3 + 9;
  lw_batch_forget_made (batch->plan);
  lw_batch_remove_aim (batch->plan, 1, LW_ROAST);

  return batch;
}

static LwBatch *
plain_batch (void)
{
  LwBatch *batch = lw_batch_new ("Batch & 13");

  batch->when_s = -3600;
  g_free (batch->leaf);
  batch->leaf = g_strdup ("large-leaf");
  for (int kind = 0; kind < LW_N_KINDS; kind++)
    lw_batch_insert_step (batch, (guint) kind, lw_step_new ((LwKind) kind));

  return batch;
}

static LwLesson *
full_lesson (void)
{
  LwLesson *lesson = lw_lesson_new ("Wither & pan");

  lesson->note = g_strdup ("What the <mat> does to the pan.");
  lesson->by_clock = TRUE;
  lesson->curves[0] = LW_LEAF_TEMP;
  lesson->curves[2] = LW_NEARLY_DRY;
  lw_lesson_show (lesson, "Batch № 12");
  lw_lesson_show (lesson, "Batch & 13");
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 1, 0.30000000000000004, 2, NULL });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 0, 4320, -1, g_strdup (" Now & \"then\" ") });
  lw_lesson_add_moment (lesson, (LwLessonMoment) { 39, 0, 0, g_strdup ("Where?") });

  return lesson;
}

LwSeason *
sample_season (void)
{
  LwSeason *season = lw_season_new ("Spring 2026, 春");

  season->place = g_strdup ("Ondry Ridge");
  season->altitude_m = 1250.1;
  season->latitude_deg = -24.000000000000004;
  season->note = g_strdup ("Dry, with two humid days.");
  add_profile (season);
  lw_season_add_profile (season, lw_profile_start ());
  add_weather (season);
  lw_season_insert_batch (season, 0, plain_batch ());
  lw_season_insert_batch (season, 0, full_batch ());
  lw_season_add_lesson (season, full_lesson ());
  lw_season_add_lesson (season, lw_lesson_new ("B"));
  lw_lesson_show (season->lessons[1], "Batch & 13");

  return season;
}

/* memcmp also tells -0 from 0 and takes a NAN for equal to itself. */
static void
assert_same_bits (gconstpointer a,
                  gconstpointer b,
                  gsize         size)
{
  if (size > 0)
    g_assert_cmpmem (a, size, b, size);
}

static void
assert_same_aims (const LwAim *a,
                  guint        n_a,
                  const LwAim *b,
                  guint        n_b)
{
  g_assert_cmpuint (n_a, ==, n_b);
  for (guint i = 0; i < n_a; i++)
    {
      g_assert_cmpint (a[i].of, ==, b[i].of);
      assert_same_bits (&a[i].low, &b[i].low, sizeof (double));
      assert_same_bits (&a[i].high, &b[i].high, sizeof (double));
      assert_same_bits (&a[i].weight, &b[i].weight, sizeof (double));
      g_assert_cmpstr (a[i].note, ==, b[i].note);
    }
}

static void
assert_same_weigh_in (const LwWeighIn *a,
                      const LwWeighIn *b)
{
  g_assert_cmpint (a->of, ==, b->of);
  g_assert_cmpstr (a->note, ==, b->note);
  assert_same_bits (&a->minute, &b->minute, sizeof (double));
  assert_same_bits (&a->value, &b->value, sizeof (double));
  assert_same_bits (&a->sd, &b->sd, sizeof (double));
  assert_same_bits (&a->tare_kg, &b->tare_kg, sizeof (double));
}

static void
assert_same_correction (const LwCorrection *a,
                        const LwCorrection *b)
{
  g_assert_true ((a == NULL) == (b == NULL));
  if (a == NULL)
    return;

  g_assert_cmpuint (a->n_by, ==, b->n_by);
  assert_same_bits (&a->minute, &b->minute, sizeof (double));
  assert_same_bits (&a->fresh_points, &b->fresh_points, sizeof (double));
  assert_same_bits (&a->jump->time_s, &b->jump->time_s, sizeof (double));
  g_assert_cmpuint (a->jump->n_parts, ==, b->jump->n_parts);
  assert_same_bits (a->jump->shifts, b->jump->shifts, a->jump->n_parts * sizeof (LwState));
}

static void
assert_same_step (const LwStep *a,
                  const LwStep *b)
{
  g_assert_cmpint (a->kind, ==, b->kind);
  g_assert_cmphex (a->given, ==, b->given);
  g_assert_cmpstr (a->note, ==, b->note);
  g_assert_cmpstr (a->sign, ==, b->sign);
  assert_same_bits (a->value, b->value, sizeof a->value);
  assert_same_aims (a->aims, a->n_aims, b->aims, b->n_aims);
  for (guint i = 0; i < LW_N_LOG_OF; i++)
    g_assert_cmpstr (a->log[i], ==, b->log[i]);
  g_assert_cmpuint (a->n_weigh_ins, ==, b->n_weigh_ins);
  for (guint i = 0; i < a->n_weigh_ins; i++)
    assert_same_weigh_in (&a->weigh_ins[i], &b->weigh_ins[i]);
}

static void
assert_same_log (const LwLog *a,
                 const LwLog *b)
{
  g_assert_cmpstr (a->id, ==, b->id);
  g_assert_cmpstr (a->name, ==, b->name);
  g_assert_cmpuint (a->rows, ==, b->rows);
  g_assert_cmpuint (a->left_out, ==, b->left_out);
  g_assert_cmpuint (a->first_line, ==, b->first_line);
  g_assert_cmpuint (a->last_line, ==, b->last_line);
  g_assert_cmpuint (a->n_curves, ==, b->n_curves);
  for (guint i = 0; i < a->n_curves; i++)
    {
      const LwLogCurve *one = &a->curves[i], *other = &b->curves[i];
      guint n, m;
      const double *one_s = lw_course_times (one->course, &n), *other_s = lw_course_times (other->course, &m);

      g_assert_cmpint (one->of, ==, other->of);
      g_assert_cmpstr (one->heading, ==, other->heading);
      assert_same_bits (&one->within_c, &other->within_c, sizeof (double));
      g_assert_cmpuint (n, ==, m);
      assert_same_bits (one_s, other_s, n * sizeof (double));
      assert_same_bits (lw_course_values (one->course), lw_course_values (other->course), n * sizeof (double));
    }
}

static void
assert_same_batch (const LwBatch *a,
                   const LwBatch *b)
{
  g_assert_cmpstr (a->name, ==, b->name);
  g_assert_cmpstr (a->tea, ==, b->tea);
  g_assert_cmpint (a->when_s, ==, b->when_s);
  g_assert_cmpint (a->made, ==, b->made);
  g_assert_cmpstr (a->leaf, ==, b->leaf);
  g_assert_cmpstr (a->weather, ==, b->weather);
  g_assert_cmpstr (a->note, ==, b->note);
  assert_same_bits (&a->fresh_kg, &b->fresh_kg, sizeof (double));
  g_assert_true (isnan (a->fresh_moisture_pct) ? isnan (b->fresh_moisture_pct)
                                               : a->fresh_moisture_pct == b->fresh_moisture_pct);
  g_assert_cmpuint (a->n_steps, ==, b->n_steps);
  for (guint i = 0; i < a->n_steps; i++)
    {
      assert_same_step (&a->steps[i], &b->steps[i]);
      /* One that no longer counts is as good as none. */
      assert_same_correction (lw_correction_of (a, i), lw_correction_of (b, i));
    }
  assert_same_aims (a->aims, a->n_aims, b->aims, b->n_aims);
  g_assert_cmpuint (a->n_logs, ==, b->n_logs);
  for (guint i = 0; i < a->n_logs; i++)
    {
      g_assert_cmpint (a->logs[i].step, ==, b->logs[i].step);
      assert_same_bits (&a->logs[i].minute, &b->logs[i].minute, sizeof (double));
      assert_same_log (a->logs[i].log, b->logs[i].log);
    }
  g_assert_true ((a->plan == NULL) == (b->plan == NULL));
  if (a->plan != NULL)
    {
      g_autoptr (LwBatch) one = lw_batch_as_planned (a), other = lw_batch_as_planned (b);

      assert_same_batch (one, other);
    }
}

static void
assert_same_profile (const LwProfile *a,
                     const LwProfile *b)
{
  g_assert_cmpstr (a->id, ==, b->id);
  g_assert_cmpstr (a->name, ==, b->name);
  g_assert_cmpstr (a->note, ==, b->note);
  assert_same_bits (&a->fresh_moisture_pct, &b->fresh_moisture_pct, sizeof (double));
  assert_same_bits (&a->fresh_green, &b->fresh_green, sizeof (double));
  g_assert_cmphex (a->given, ==, b->given);
  assert_same_bits (&a->law, &b->law, sizeof (LwLaw));
  g_assert_cmpuint (a->n_parts, ==, b->n_parts);
  assert_same_bits (a->parts, b->parts, a->n_parts * sizeof (LwPart));
  for (guint i = 0; i < a->n_parts; i++)
    g_assert_cmpstr (a->part_names[i], ==, b->part_names[i]);
}

static void
assert_same_weather (const LwWeather *a,
                     const LwWeather *b)
{
  g_assert_cmpstr (a->id, ==, b->id);
  g_assert_cmpstr (a->name, ==, b->name);
  g_assert_cmpstr (a->note, ==, b->note);
  g_assert_cmpint (a->form, ==, b->form);
  assert_same_bits (&a->day, &b->day, sizeof a->day);
  g_assert_cmpint (a->start_s, ==, b->start_s);
  g_assert_cmpuint (a->n_hours, ==, b->n_hours);
  assert_same_bits (a->hours, b->hours, a->n_hours * sizeof (LwHour));
}

static void
assert_same_lesson (const LwLesson *a,
                    const LwLesson *b)
{
  g_assert_cmpstr (a->name, ==, b->name);
  g_assert_cmpstr (a->note, ==, b->note);
  g_assert_cmpint (a->by_clock, ==, b->by_clock);
  assert_same_bits (a->curves, b->curves, sizeof a->curves);
  g_assert_cmpuint (a->n_shown, ==, b->n_shown);
  for (guint i = 0; i < a->n_shown; i++)
    g_assert_cmpstr (a->shown[i], ==, b->shown[i]);
  g_assert_cmpuint (a->n_moments, ==, b->n_moments);
  for (guint i = 0; i < a->n_moments; i++)
    {
      g_assert_cmpuint (a->moments[i].step, ==, b->moments[i].step);
      assert_same_bits (&a->moments[i].minute, &b->moments[i].minute, sizeof (double));
      g_assert_cmpint (a->moments[i].ask, ==, b->moments[i].ask);
      g_assert_cmpstr (a->moments[i].text, ==, b->moments[i].text);
    }
}

void
sample_assert_same (const LwSeason *a,
                    const LwSeason *b)
{
  g_assert_cmpstr (a->name, ==, b->name);
  g_assert_cmpstr (a->place, ==, b->place);
  g_assert_cmpstr (a->note, ==, b->note);
  assert_same_bits (&a->altitude_m, &b->altitude_m, sizeof (double));
  assert_same_bits (&a->latitude_deg, &b->latitude_deg, sizeof (double));

  g_assert_cmpuint (a->n_profiles, ==, b->n_profiles);
  for (guint i = 0; i < a->n_profiles; i++)
    assert_same_profile (a->profiles[i], b->profiles[i]);
  g_assert_cmpuint (a->n_weathers, ==, b->n_weathers);
  for (guint i = 0; i < a->n_weathers; i++)
    assert_same_weather (a->weathers[i], b->weathers[i]);
  g_assert_cmpuint (a->n_batches, ==, b->n_batches);
  for (guint i = 0; i < a->n_batches; i++)
    assert_same_batch (a->batches[i], b->batches[i]);
  g_assert_cmpuint (a->n_lessons, ==, b->n_lessons);
  for (guint i = 0; i < a->n_lessons; i++)
    assert_same_lesson (a->lessons[i], b->lessons[i]);
}

LwSeason *
sample_read (const char *text)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  LwSeason *season = lw_document_read (text, strlen (text), problems);

  if (season == NULL)
    g_error ("%s", lw_problem_text (g_ptr_array_index (problems, 0), "text"));
  g_assert_cmpuint (problems->len, ==, 0);

  return season;
}

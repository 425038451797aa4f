/* The clock of a running batch, and the edits that say what was made. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <math.h>

#include "season/correction.h"
#include "season/edit.h"
#include "season/run.h"

#define FULL 0 /* of the sample: wither and fix-pan */
#define PLAIN 1

static void
test_clock (void)
{
  LwRun run = lw_run_start (1000);

  g_assert_true (run.on);
  g_assert_cmpfloat (lw_run_minute (&run, 1000), ==, 0);
  g_assert_cmpfloat (lw_run_minute (&run, 1090), ==, 1.5);
  /* A clock that was set back. */
  g_assert_cmpfloat (lw_run_minute (&run, 400), ==, 0);

  /* And a run that follows it. */
  lw_run_shift (&run, -690);
  g_assert_cmpfloat (lw_run_minute (&run, 400), ==, 1.5);
  lw_run_shift (&run, 690);

  lw_run_next (&run, 1120);
  g_assert_cmpuint (run.step, ==, 1);
  g_assert_cmpfloat (run.start_s, ==, 1000);
  g_assert_cmpfloat (lw_run_minute (&run, 1180), ==, 1);
}

/* The wall clock is set: what has passed of the step, and of a pause, stays. */
static void
test_shift (void)
{
  LwRun run = lw_run_start (1000);

  lw_run_next (&run, 1120);
  lw_run_shift (&run, -3600);
  g_assert_cmpfloat (lw_run_minute (&run, 1180 - 3600), ==, 1);
  g_assert_cmpfloat (run.start_s, ==, 1000 - 3600);
  lw_run_pause (&run, 1240 - 3600);
  lw_run_shift (&run, 7200);
  g_assert_cmpfloat (lw_run_minute (&run, 9999), ==, 2);
  lw_run_go_on (&run, 1300 + 3600);
  g_assert_cmpfloat (run.waited_s, ==, 60);
}

static void
test_pause (void)
{
  LwRun run = lw_run_start (0), same = run;

  lw_run_pause (&run, 60);
  g_assert_true (lw_run_is_paused (&run));
  g_assert_false (lw_run_same (&run, &same));
  g_assert_cmpfloat (lw_run_minute (&run, 6000), ==, 1);
  lw_run_pause (&run, 6000);
  lw_run_go_on (&run, 660);
  g_assert_false (lw_run_is_paused (&run));
  g_assert_cmpfloat (lw_run_minute (&run, 720), ==, 2);
  lw_run_go_on (&run, 5000);
  lw_run_pause (&run, 720);
  lw_run_go_on (&run, 780);
  g_assert_cmpfloat (lw_run_minute (&run, 840), ==, 3);

  /* The next step starts anew, also out of a pause. */
  lw_run_pause (&run, 900);
  lw_run_next (&run, 1000);
  g_assert_false (lw_run_is_paused (&run));
  g_assert_cmpfloat (lw_run_minute (&run, 1060), ==, 1);
}

/* What is entered in a step that is over its time makes it longer, and does not plan it anew. */
static void
test_plan (void)
{
  LwRun run = lw_run_start (0);

  lw_run_plan (&run, 5, 0);
  g_assert_cmpfloat (run.planned, ==, 5);
  lw_run_plan (&run, 8, 60);
  g_assert_cmpfloat (run.planned, ==, 8);
  lw_run_plan (&run, 9, 600);
  g_assert_cmpfloat (run.planned, ==, 8);
  lw_run_plan (&run, 10, 600);
  g_assert_cmpfloat (run.planned, ==, 8);
  lw_run_plan (&run, 12, 600);
  g_assert_cmpfloat (run.planned, ==, 12);
  lw_run_plan (&run, 4, 600);
  g_assert_cmpfloat (run.planned, ==, 4);
  lw_run_next (&run, 700);
  g_assert_true (isnan (run.planned));
}

static void
test_notice (void)
{
  g_assert_cmpfloat (lw_run_notice (25), ==, 2.5);
  g_assert_cmpfloat (lw_run_notice (1000), ==, 5);
  g_assert_cmpfloat_with_epsilon (lw_run_notice (0.5), 1.0 / 3, 1e-12);
}

/* The plan stays what the batch was before its run, can stand beside it, and a repeat is a new plan. */
static void
assert_plan_kept (const LwSeason *before,
                  LwSeason       *made)
{
  g_autoptr (LwSeason) beside = lw_edit_add_planned (made, PLAIN), twice = lw_edit_add_planned (beside, PLAIN);
  g_autoptr (LwSeason) repeated = lw_edit_repeat_batch (made, PLAIN);
  const LwBatch *was = before->batches[PLAIN], *planned = beside->batches[PLAIN + 1];
  g_autofree char *name = g_strdup_printf ("%s, as planned", was->name);

  g_assert_cmpuint (beside->n_batches, ==, before->n_batches + 1);
  g_assert_cmpstr (planned->name, ==, name);
  g_assert_cmpstr (planned->leaf, ==, was->leaf);
  g_assert_cmpint (planned->when_s, ==, was->when_s);
  g_assert_false (planned->made);
  g_assert_null (planned->plan);
  g_assert_cmpuint (planned->n_steps, ==, was->n_steps);
  for (guint i = 0; i < was->n_steps; i++)
    {
      g_assert_cmpint (planned->steps[i].kind, ==, was->steps[i].kind);
      g_assert_cmpfloat (lw_step_get (&planned->steps[i], LW_SET_MINUTES), ==, lw_step_get (&was->steps[i], LW_SET_MINUTES));
      g_assert_cmpuint (planned->steps[i].n_aims, ==, was->steps[i].n_aims);
      g_assert_cmpuint (planned->steps[i].n_weigh_ins, ==, 0);
    }
  g_assert_cmpint (lw_season_batch (twice, name), ==, PLAIN + 2);
  g_assert_null (repeated->batches[PLAIN + 1]->plan);
}

/* What only its making gave a batch is not in its plan: weigh-ins, correction, a log that nothing follows, the note. */
static void
test_plan_of_made (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) loose = lw_edit_follow_log (season, FULL, 1, LW_SET_WALL_C, NULL);
  g_autoptr (LwSeason) begun = lw_edit_begin_batch (loose, FULL, 86400);
  g_autoptr (LwBatch) planned = lw_batch_as_planned (begun->batches[FULL]);
  const LwBatch *was = season->batches[FULL];

  g_assert_nonnull (lw_correction_of (was, 1));
  g_assert_cmpuint (was->steps[1].n_weigh_ins, >, 0);
  g_assert_cmpint (planned->when_s, ==, was->when_s);
  g_assert_false (planned->made);
  g_assert_null (planned->note);
  g_assert_null (planned->steps[1].correction);
  g_assert_cmpuint (planned->steps[1].n_weigh_ins, ==, 0);
  g_assert_cmpuint (planned->steps[1].n_aims, ==, was->steps[1].n_aims);
  g_assert_cmpuint (planned->n_aims, ==, was->n_aims);
  g_assert_null (lw_batch_log (planned, "pan-1"));
  g_assert_nonnull (lw_batch_log (planned, "room"));
}

static void
test_edits (void)
{
  g_autoptr (LwSeason) season = sample_season (), untouched = sample_season ();
  g_autoptr (LwSeason) begun = lw_edit_begin_batch (season, PLAIN, 86400);
  g_autoptr (LwSeason) ended = lw_edit_end_step (begun, PLAIN, 1, 12.3456);
  g_autoptr (LwSeason) short_one = lw_edit_end_step (begun, PLAIN, 0, 0.1);
  LwSeason *made;
  const LwBatch *batch;

  g_assert_cmpint (begun->batches[PLAIN]->when_s, ==, 86400);
  g_assert_false (begun->batches[PLAIN]->made);
  /* To the second. */
  g_assert_cmpfloat (lw_step_get (&ended->batches[PLAIN]->steps[1], LW_SET_MINUTES), ==, 741.0 / 60);
  /* No shorter than its kind may be. */
  g_assert_cmpfloat (lw_step_get (&short_one->batches[PLAIN]->steps[0], LW_SET_MINUTES), ==,
                     lw_kind_setting (LW_KIND_WITHER, LW_SET_MINUTES)->low);

  made = lw_edit_end_batch (ended, PLAIN, 2, 20);
  batch = made->batches[PLAIN];
  assert_plan_kept (season, made);
  g_assert_true (batch->made);
  g_assert_cmpuint (batch->n_steps, ==, 3);
  g_assert_cmpfloat (lw_step_get (&batch->steps[2], LW_SET_MINUTES), ==, 20);
  sample_assert_same (season, untouched);
  lw_season_unref (made);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/run/clock", test_clock);
  g_test_add_func ("/run/shift", test_shift);
  g_test_add_func ("/run/pause", test_pause);
  g_test_add_func ("/run/plan", test_plan);
  g_test_add_func ("/run/notice", test_notice);
  g_test_add_func ("/run/edits", test_edits);
  g_test_add_func ("/run/plan-of-made", test_plan_of_made);

  return g_test_run ();
}

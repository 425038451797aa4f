/* A weigh-in beside the model: a weight as moisture, a wall as it is set, and what cannot be compared. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>

#include "made.h"
#include "season/measured.h"
#include "study/beside.h"

typedef struct
{
  LwSeason *season;
  LwPlan *plan;
  LwTrack *track;
} Made;

static void
made_init (Made *made)
{
  g_autoptr (LwMarch) march = lw_march_new ();

  made->season = made_aimed ();
  made->plan = lw_plan_new (made->season, 0);
  made->track = lw_plan_march (made->plan, march, (LwSampling) { .samples = 50 });
}

static void
made_clear (Made *made)
{
  g_clear_pointer (&made->track, lw_track_unref);
  lw_plan_free (made->plan);
  lw_season_unref (made->season);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Made, made_clear)

static gboolean
beside (const Made *made,
        guint       step,
        LwWeighIn   weigh_in,
        LwBeside   *told)
{
  const LwBatch *batch = made->season->batches[0];

  return lw_beside (batch, step, &weigh_in, made->track, lw_fresh_moisture_pct (made->season, batch), told);
}

/* A weight that is the model's own, or so many of its errors away from it. */
static void
test_weight (void)
{
  g_auto (Made) made = { 0 };
  const LwBatch *batch;
  LwOutcome outcome;
  LwBeside told;

  made_init (&made);
  batch = made.season->batches[0];
  outcome = lw_track_end (made.track, 0, -1);
  for (int off = -2; off <= 2; off++)
    {
      double minutes = lw_step_get (&batch->steps[0], LW_SET_MINUTES);
      double kg = outcome.kg_per_kg_fresh * batch->fresh_kg + 0.35 + off * 0.01;

      g_assert_true (beside (&made, 0, (LwWeighIn) { minutes, LW_WEIGHED_KG, kg, 0.01, 0.35, NULL }, &told));
      g_assert_cmpint (told.of, ==, LW_MOISTURE);
      g_assert_cmpfloat_with_epsilon (told.model, outcome.moisture_wb_pct, 1e-9);
      /* Moisture is not straight in the weight. */
      g_assert_cmpfloat_with_epsilon (told.off_sds, off, 0.05);
      g_assert_cmpfloat (told.sd, >, 0);
    }
}

static void
test_others (void)
{
  g_auto (Made) made = { 0 };
  LwOutcome outcome;
  LwBeside told;

  made_init (&made);
  outcome = lw_track_outcome_at (made.track, 0, -1, 120);
  g_assert_true (beside (&made, 0, (LwWeighIn) { 2, LW_LEAF_C, outcome.leaf_temp_c - 3, 2, 0, NULL }, &told));
  g_assert_cmpint (told.of, ==, LW_LEAF_TEMP);
  g_assert_cmpfloat_with_epsilon (told.off_sds, -1.5, 1e-9);

  g_assert_true (beside (&made, 0, (LwWeighIn) { 2, LW_WALL_C, made_get (made.season, 0, LW_SET_WALL_C) + 10, 5, 0, NULL },
                         &told));
  g_assert_cmpint (told.of, ==, -1);
  g_assert_cmpfloat_with_epsilon (told.off_sds, 2, 1e-9);
}

static void
test_nothing (void)
{
  g_auto (Made) made = { 0 };
  char words[] = "a note";
  double after;
  LwBeside told;

  made_init (&made);
  after = made_get (made.season, 0, LW_SET_MINUTES) + 0.1;
  g_assert_false (beside (&made, 0, (LwWeighIn) { 1, LW_NOTED, 0, 0, 0, words }, &told));
  g_assert_false (beside (&made, 0, (LwWeighIn) { after, LW_LEAF_C, 60, 2, 0, NULL }, &told));
  /* A roll has no wall. */
  g_assert_false (beside (&made, 1, (LwWeighIn) { 1, LW_WALL_C, 60, 5, 0, NULL }, &told));
  g_clear_pointer (&made.track, lw_track_unref);
  g_assert_false (beside (&made, 0, (LwWeighIn) { 1, LW_LEAF_C, 60, 2, 0, NULL }, &told));
  g_assert_true (beside (&made, 0, (LwWeighIn) { 1, LW_WALL_C, 60, 5, 0, NULL }, &told));
}

int
main (int   argc,
      char *argv[])
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/beside/weight", test_weight);
  g_test_add_func ("/beside/others", test_others);
  g_test_add_func ("/beside/nothing", test_nothing);

  return g_test_run ();
}

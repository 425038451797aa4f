/* Steps that a source passes by: all but one that is named, and those that follow a log. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "made.h"
#include "season/log.h"
#include "study/chance.h"

#define ONE 0.8413447460685429 /* one deviation above the middle */

static const LwKind pans[] = { LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_FIX_PAN, LW_KIND_DRY_AIR };

/* Only that source varies. (transfer full) the plan with all luck one deviation up. */
static LwPlan *
plan_at (LwSeason   *season,
         const char *text,
         guint      *n_dims)
{
  g_auto (LwChance) chance = { 0 };
  LwVary varies[LW_N_VARY];
  double luck[8] = { ONE, ONE, ONE, ONE, ONE, ONE, ONE, ONE };

  lw_vary_usual (varies);
  g_assert_true (lw_vary_parse ("all=0", varies, NULL));
  g_assert_true (lw_vary_parse (text, varies, NULL));
  lw_chance_init (&chance, season, 0, varies);
  g_assert_cmpuint (chance.n_dims, <=, G_N_ELEMENTS (luck));
  *n_dims = chance.n_dims;

  return lw_chance_plan (&chance, luck);
}

static void
test_notation (void)
{
  static const char *const bad[] = {
    "wall=8/step0", "wall=8/step-1", "wall=8/step2.5", "wall=8/step2 ", "wall=8/batch2", "wall=8/step99999999999",
    "skin=5%/step2", "wall=8/step 2",
  };
  LwVary varies[LW_N_VARY];
  g_autofree char *text = NULL;

  lw_vary_usual (varies);
  g_assert_true (lw_vary_parse ("wall=8/step2", varies, NULL));
  g_assert_cmpuint (varies[LW_VARY_WALL].only, ==, 2);
  g_assert_true (varies[LW_VARY_WALL].each_step);
  text = lw_vary_text (varies[LW_VARY_WALL]);
  g_assert_cmpstr (text, ==, "8/step2");
  g_assert_true (lw_vary_parse ("time=4%/step12", varies, NULL));
  g_assert_cmpuint (varies[LW_VARY_TIME].only, ==, 12);
  g_assert_true (lw_vary_parse ("wall=8/step", varies, NULL));
  g_assert_cmpuint (varies[LW_VARY_WALL].only, ==, 0);

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (lw_vary_parse (bad[i], varies, NULL));
}

static void
test_one_step (void)
{
  g_autoptr (LwSeason) season = made_season (pans, G_N_ELEMENTS (pans));
  g_autoptr (LwPlan) own = lw_plan_new (season, 0), every = NULL, third = NULL, second = NULL;
  guint n;

  every = plan_at (season, "wall=6/step", &n);
  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpfloat_with_epsilon (every->steps[0].wall_c - own->steps[0].wall_c, 6, 1e-3);
  third = plan_at (season, "wall=6/step3", &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpfloat (third->steps[0].wall_c, ==, own->steps[0].wall_c);
  g_assert_cmpfloat_with_epsilon (third->steps[2].wall_c - own->steps[2].wall_c, 6, 1e-3);

  /* A roller has no wall. */
  second = plan_at (season, "wall=6/step2", &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_false (lw_chance_has (season, 0, LW_VARY_WALL, 2));
  g_assert_false (lw_chance_has (season, 0, LW_VARY_WALL, 9));
  g_assert_true (lw_chance_has (season, 0, LW_VARY_WALL, 3));
  g_assert_true (lw_chance_has (season, 0, LW_VARY_WALL, 0));
}

/* It is as it was measured: only the other pan strays, and where none is left the source is not offered. */
static void
test_log (void)
{
  const double time_s[] = { 0, 4000 }, temp_c[] = { 250, 240 };
  g_autoptr (LwSeason) season = made_season (pans, G_N_ELEMENTS (pans));
  LwBatch *batch = lw_batch_copy (season->batches[0]);
  LwLog *log = lw_log_new ("pan", "Pan");
  g_autoptr (LwPlan) plan = NULL;
  guint n;

  lw_log_add_curve (log, LW_LOG_WALL, NULL, 0.05, time_s, temp_c, G_N_ELEMENTS (time_s));
  lw_batch_add_log (batch, (LwBatchLog) { log, 0, 0 });
  lw_step_set_log (&batch->steps[0], LW_SET_WALL_C, "pan");
  lw_season_put_batch (season, 0, batch);
  plan = plan_at (season, "wall=6/step", &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_false (lw_chance_has (season, 0, LW_VARY_WALL, 1));
  g_assert_true (lw_chance_has (season, 0, LW_VARY_WALL, 3));

  batch = lw_batch_copy (season->batches[0]);
  lw_step_set_log (&batch->steps[2], LW_SET_WALL_C, "pan");
  lw_season_put_batch (season, 0, batch);
  g_assert_false (lw_chance_has (season, 0, LW_VARY_WALL, 0));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/vary-step/notation", test_notation);
  g_test_add_func ("/vary-step/one-step", test_one_step);
  g_test_add_func ("/vary-step/log", test_log);

  return g_test_run ();
}

/* Logs of a batch: where they begin through every edit of the steps, who follows them, and what leaf then meets. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "../leaf/near.h"
#include "season/edit.h"
#include "season/surround.h"

#define WHEN 1775989800
enum { WITHER, PAN, ROLL, SUN };

static LwLog *
ramp_new (const char *id)
{
  static const double time_s[] = { 0, 60, 3600 }, wall_c[] = { 100, 250, 260 }, air_c[] = { 20, 21, 30 };
  LwLog *log = lw_log_new (id, id);

  log->rows = log->first_line = log->last_line = 3;
  lw_log_add_curve (log, LW_LOG_WALL, NULL, 0, time_s, wall_c, G_N_ELEMENTS (time_s));
  lw_log_add_curve (log, LW_LOG_AIR, NULL, 0, time_s, air_c, G_N_ELEMENTS (time_s));

  return log;
}

/* One log by the clock, 300 minutes on, one with the pan, half a minute before it. */
static LwSeason *
season_new (void)
{
  g_autoptr (LwSeason) season = lw_edit_new_season (WHEN);
  g_autoptr (LwSeason) one = lw_edit_add_log (season, 0, (LwBatchLog) { ramp_new ("clock"), -1, 300 });

  return lw_edit_add_log (one, 0, (LwBatchLog) { ramp_new ("pan"), PAN, -0.5 });
}

static double
begins (const LwSeason *season,
        const char     *id)
{
  const LwBatch *batch = season->batches[0];

  return lw_batch_log_minute (batch, lw_batch_log (batch, id));
}

/* A log of a step goes with it; removing the step leaves the log at its moment; one by the clock never moves. */
static void
test_places (void)
{
  g_autoptr (LwSeason) season = season_new ();
  g_autoptr (LwSeason) longer = lw_edit_set (season, 0, WITHER, LW_SET_MINUTES, 400);
  g_autoptr (LwSeason) more = lw_edit_add_step (season, 0, 0, LW_KIND_REST);
  g_autoptr (LwSeason) moved = lw_edit_move_step (season, 0, PAN, SUN);
  g_autoptr (LwSeason) other = lw_edit_move_step (season, 0, SUN, WITHER);
  g_autoptr (LwSeason) gone = lw_edit_remove_step (season, 0, PAN);
  g_autoptr (LwSeason) before = lw_edit_remove_step (season, 0, WITHER);
  const LwSeason *all[] = { season, longer, more, moved, other, gone, before };
  static const double minutes[] = { 1079.5, 399.5, 1199.5, 1562.5, 1559.5, 1079.5, -0.5 };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    {
      assert_within (begins (all[i], "pan"), minutes[i], 1e-9, "with the pan");
      assert_within (begins (all[i], "clock"), 300, 0, "by the clock");
    }
  g_assert_cmpint (gone->batches[0]->logs[1].step, ==, -1);
  /* Logs are shared, not copied. */
  g_assert_true (season->batches[0]->logs[0].log == moved->batches[0]->logs[0].log);
}

static void
test_follows (void)
{
  g_autoptr (LwSeason) season = season_new ();
  g_autoptr (LwSeason) followed = lw_edit_follow_log (season, 0, PAN, LW_SET_WALL_C, "pan");
  g_autoptr (LwSeason) later = lw_edit_set (followed, 0, WITHER, LW_SET_MINUTES, 1000.3);
  g_autoptr (LwSeason) set = lw_edit_set (followed, 0, PAN, LW_SET_WALL_C, 240);
  g_autoptr (LwSeason) unset = lw_edit_unset (followed, 0, PAN, LW_SET_WALL_C);
  g_autoptr (LwSeason) removed = lw_edit_remove_log (followed, 0, "pan");
  g_autoptr (LwSeason) repeated = lw_edit_repeat_batch (followed, 0);
  g_autoptr (LwPlan) plan = lw_plan_new (followed, 0), again = lw_plan_new (later, 0), plain = lw_plan_new (set, 0);
  const LwConditions *pan = &plan->steps[PAN];

  g_assert_cmpint (pan->follow, ==, LW_FOLLOW_WALL);
  g_assert_true (pan->wall == season->batches[0]->logs[1].log->curves[0].followed[0].course);
  /* Means over 20 s lie off the log at its bend, by no more than a quarter of what it bends in that time. */
  g_assert_cmpfloat (season->batches[0]->logs[1].log->curves[0].followed[0].off_c, <, 0.25 + 150.0 / 60 * 20 / 8);
  assert_within (pan->wall_from_s, 30, 0, "its time at the pan's start");
  assert_within (pan->clock_s, 0, 0, "it needs no clock");
  /* It goes with the pan, so the pan's own conditions stay the same to the bit. */
  g_assert_cmpmem (pan, sizeof *pan, &again->steps[PAN], sizeof *pan);

  g_assert_cmpint (plain->steps[PAN].follow, ==, 0);
  assert_within (plain->steps[PAN].wall_c, 240, 0, "set by hand");
  g_assert_null (lw_step_log (&unset->batches[0]->steps[PAN], LW_SET_WALL_C));
  g_assert_null (lw_step_log (&removed->batches[0]->steps[PAN], LW_SET_WALL_C));
  g_assert_cmpuint (removed->batches[0]->n_logs, ==, 1);

  /* A repeated batch keeps what it is to be made by, and no measurements. */
  g_assert_cmpuint (repeated->batches[1]->n_logs, ==, 1);
  g_assert_cmpstr (lw_step_log (&repeated->batches[1]->steps[PAN], LW_SET_WALL_C), ==, "pan");
}

/* Air by the clock: the log's own time at the step's start, before the weather; humidity goes by that air. */
static void
test_air (void)
{
  static const LwHour hour = { 30, 50, NAN, 1, 0, 0 };
  g_autoptr (LwSeason) season = season_new ();
  g_autoptr (LwSeason) weathered = lw_edit_add_weather (season, lw_weather_new_constant ("w", "W", &hour));
  g_autoptr (LwSeason) with = lw_edit_set_batch_weather (weathered, 0, "w");
  g_autoptr (LwSeason) followed = lw_edit_follow_log (with, 0, WITHER, LW_SET_AIR_C, "clock");
  g_autoptr (LwPlan) plan = lw_plan_new (followed, 0);
  const LwConditions *at = &plan->steps[WITHER];
  LwBoundary boundary = lw_boundary_new (at, &plan->leaf, &plan->parts[0]);

  g_assert_cmpint (at->follow, ==, LW_FOLLOW_AIR | LW_FOLLOW_VAPOUR);
  assert_within (at->air_from_s, -18000, 0, "the log begins later");
  assert_within (lw_boundary_at (&boundary, 0).temp_c, 20, 0, "before it");
  assert_within (lw_boundary_at (&boundary, 18030).temp_c, 20.5, 0.25, "in it");
  assert_within (lw_boundary_at (&boundary, 30000).temp_c, 30, 0, "after it");
}

/* The wall's own heat, and the air that it heats, at every moment. */
static void
test_wall_heats_air (void)
{
  g_autoptr (LwSeason) season = season_new ();
  g_autoptr (LwSeason) followed = lw_edit_follow_log (season, 0, PAN, LW_SET_WALL_C, "pan");
  g_autoptr (LwPlan) plan = lw_plan_new (followed, 0);
  LwBoundary boundary = lw_boundary_new (&plan->steps[PAN], &plan->leaf, &plan->parts[0]);
  LwAround around = lw_boundary_at (&boundary, 15);

  assert_within (around.wall_c, 100 + 150 * 0.75, 0.25, "wall");
  assert_within (around.temp_c, 22 + 0.1 * (around.wall_c - 22), 1e-9, "air");
  assert_within (lw_conditions_bend_s (&plan->steps[PAN], 0), 30, 10.1, "bend, which a mean spreads");
  assert_within (lw_conditions_bend_s (&plan->steps[PAN], 41), 1500, 0, "the step's end");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch-log/places", test_places);
  g_test_add_func ("/batch-log/follows", test_follows);
  g_test_add_func ("/batch-log/air", test_air);
  g_test_add_func ("/batch-log/wall-heats-air", test_wall_heats_air);

  return g_test_run ();
}

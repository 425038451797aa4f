/* Re-planning: what has passed stays, what lies ahead meets its aims or says what escapes, and every reason is a number
 * of a full run. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "made.h"
#include "season/edit.h"
#include "study/replan.h"

static const LwKind chain[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };

#define N_CHAIN G_N_ELEMENTS (chain)

static void
weigh (LwSeason *season,
       guint     step,
       double    minute,
       double    kg)
{
  LwBatch *batch = lw_batch_copy (season->batches[0]);

  lw_batch_add_weigh_in (batch, step, (LwWeighIn) { minute, LW_WEIGHED_KG, kg, 0.02, 0, NULL });
  lw_season_put_batch (season, 0, batch);
}

/* A batch that meets its aims as planned, weighed at the end of the wither at `times` what was foretold. */
static LwSeason *
weighed_season (double times)
{
  LwSeason *season = made_season (chain, N_CHAIN);
  LwOutcome wither = made_end (season, 0, 0), pan = made_end (season, 1, 0), tea = made_end (season, 3, 0);

  made_aim (&season, 0, LW_WEIGHT, wither.kg_per_kg_fresh - 0.01, wither.kg_per_kg_fresh + 0.01);
  made_aim (&season, 1, LW_MOISTURE, pan.moisture_wb_pct - 1, pan.moisture_wb_pct + 1);
  made_aim (&season, -1, LW_MOISTURE, tea.moisture_wb_pct - 0.5, tea.moisture_wb_pct + 0.5);
  weigh (season, 0, made_get (season, 0, LW_SET_MINUTES),
         times * wither.kg_per_kg_fresh * season->batches[0]->fresh_kg);

  return season;
}

static LwReplan *
replan_pinned (LwSeason     *season,
               guint         step,
               double        minute,
               const GArray *pinned)
{
  LwReplanAsk ask = { .now = { step, minute }, .pinned = pinned };
  g_autoptr (GError) error = NULL;
  LwReplan *replan = lw_replan_new (season, 0, &ask, NULL, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < replan->n_rows; i++)
    if (replan->rows[i].why != NULL)
      g_test_message ("step %u %s: %g, now %g. %s", replan->rows[i].handle.step + 1,
                      lw_setting_row (replan->rows[i].handle.setting)->id, replan->rows[i].was, replan->rows[i].now,
                      replan->rows[i].why);
  g_test_message ("%s", replan->finding);

  return replan;
}

static LwReplan *
replan_of (LwSeason *season,
           guint     step,
           double    minute)
{
  return replan_pinned (season, step, minute, NULL);
}

/* Rows say what the season has; what is not in a row is as it was. */
static void
assert_rows (const LwSeason *before,
             const LwReplan *replan)
{
  g_autoptr (GArray) all = lw_handles_of (before, 0);
  guint changed = 0;

  for (guint i = 0; i < all->len; i++)
    {
      const LwHandle *handle = &g_array_index (all, LwHandle, i);
      double was = made_get (before, handle->step, handle->setting);
      double now = made_get (replan->season, handle->step, handle->setting), told = was;

      for (guint k = 0; k < replan->n_rows; k++)
        {
          const LwReplanRow *row = &replan->rows[k];

          g_assert_cmpint (row->handle.setting, !=, LW_SET_LOAD_KG);
          if (row->handle.step != handle->step || row->handle.setting != handle->setting)
            continue;
          g_assert_cmpfloat (row->was, ==, was);
          g_assert_true ((row->why != NULL) == (row->was != row->now));
          told = row->now;
        }
      g_assert_cmpfloat (now, ==, told);
      changed += now != was;
    }
  g_assert_cmpuint (replan->n_changed, ==, changed);
}

/* Heavier at the pan than planned: the rest is set so that its aims are met, by a full run from the corrected state. */
static void
test_heavier (void)
{
  g_autoptr (LwSeason) season = weighed_season (1.04);
  g_autoptr (LwReplan) replan = replan_of (season, 1, 0);
  LwOutcome tea = made_end (replan->season, 3, 0), uncorrected = made_end (season, 3, 0);

  assert_rows (season, replan);
  g_assert_true (replan->all_met);
  g_assert_cmpuint (replan->n_changed, >=, 1);
  g_assert_cmpuint (replan->n_aims, ==, 2);
  g_assert_false (replan->aims[0].of_tea);
  g_assert_true (replan->aims[1].of_tea);
  g_assert_true (replan->aims[0].planned.met);
  g_assert_false (replan->aims[0].before.met);
  g_assert_cmpfloat (replan->aims[0].before.missed, >, 0);
  g_assert_cmpfloat_with_epsilon (replan->aims[1].after.value, tea.moisture_wb_pct, 1e-9);
  g_assert_cmpfloat_with_epsilon (replan->aims[1].planned.value, uncorrected.moisture_wb_pct, 1e-9);
  g_assert_nonnull (lw_correction_of (replan->season->batches[0], 0));
  g_assert_null (lw_correction_of (season->batches[0], 0));
  g_assert_nonnull (strstr (replan->finding, "Moisture"));
}

/* As foretold: nothing need change. */
static void
test_as_foretold (void)
{
  g_autoptr (LwSeason) season = weighed_season (1);
  g_autoptr (LwReplan) replan = replan_of (season, 1, 0);

  g_assert_cmpuint (replan->n_changed, ==, 0);
  g_assert_true (replan->all_met);
  g_assert_nonnull (strstr (replan->finding, "as it was expected"));
}

/* Of the step under way only the time moves, and not below what has passed. */
static void
test_under_way (void)
{
  g_autoptr (LwSeason) season = weighed_season (0.9);
  g_autoptr (LwReplan) early = replan_of (season, 1, 6), late = NULL, over = NULL;
  double minutes = made_get (season, 1, LW_SET_MINUTES);

  assert_rows (season, early);
  for (guint i = 0; i < early->n_rows; i++)
    g_assert_true (early->rows[i].handle.step > 1 || early->rows[i].handle.setting == LW_SET_MINUTES);
  g_assert_cmpfloat (made_get (early->season, 1, LW_SET_MINUTES), >=, 6);
  g_assert_cmpfloat (made_get (early->season, 1, LW_SET_MINUTES), <, minutes - 1);

  late = replan_of (season, 1, minutes - 0.25);
  g_assert_cmpfloat (made_get (late->season, 1, LW_SET_MINUTES), >=, minutes - 0.25);
  g_assert_false (late->all_met);

  /* It has gone on for longer than planned. */
  over = replan_of (season, 1, minutes + 2);
  g_assert_cmpfloat (made_get (over->season, 1, LW_SET_MINUTES), >=, minutes + 2);
  assert_rows (season, over);
}

/* What is pinned stays, and something else is turned for it. */
static void
test_pinned (void)
{
  g_autoptr (LwSeason) season = weighed_season (1.04);
  g_autoptr (LwReplan) all = replan_of (season, 1, 0), rest = NULL;
  g_autoptr (GArray) pinned = g_array_new (FALSE, FALSE, sizeof (LwHandle));
  const LwHandle *handle;

  for (guint i = 0; i < all->n_rows && pinned->len == 0; i++)
    if (all->rows[i].was != all->rows[i].now)
      g_array_append_val (pinned, all->rows[i].handle);
  g_assert_cmpuint (pinned->len, ==, 1);

  rest = replan_pinned (season, 1, 0, pinned);
  assert_rows (season, rest);
  handle = &g_array_index (pinned, LwHandle, 0);
  g_assert_cmpfloat (made_get (rest->season, handle->step, handle->setting), ==,
                     made_get (season, handle->step, handle->setting));
  g_assert_cmpuint (rest->n_changed, >=, 1);
}

/* What cannot be had is told with its amount. */
static void
test_escapes (void)
{
  g_autoptr (LwSeason) season = weighed_season (1.04);
  g_autoptr (LwReplan) replan = NULL;
  g_autofree char *said = NULL, *met = NULL;
  guint escaping = 0;

  made_aim (&season, 2, LW_MOISTURE, 80, 90);
  replan = replan_of (season, 2, 0);
  g_assert_false (replan->all_met);
  for (guint i = 0; i < replan->n_aims; i++)
    if (!replan->aims[i].after.met)
      {
        const LwReplanAim *aim = &replan->aims[i];

        escaping++;
        g_assert_cmpuint (aim->want.step, ==, 2);
        g_assert_cmpfloat_with_epsilon (aim->after.missed, made_end (replan->season, 2, 0).moisture_wb_pct - 80, 1e-9);
        said = lw_replan_say_missed (aim);
      }
  g_assert_cmpuint (escaping, ==, 1);
  g_assert_nonnull (strstr (said, "Moisture after step 3 escapes"));
  met = lw_replan_say_missed (&replan->aims[replan->n_aims - 1]);
  g_assert_null (met);
}

static void
test_last (void)
{
  g_autoptr (LwSeason) season = weighed_season (1);
  LwInstant last;

  weigh (season, 2, 1000, 1);
  weigh (season, 1, 7, 1);
  weigh (season, 1, 3, 1);
  g_assert_true (lw_replan_last (season->batches[0], &last));
  g_assert_cmpuint (last.step, ==, 1);
  g_assert_cmpfloat (last.minute, ==, 7);
}

/* A slip is told in words that say where to look. */
static void
test_far (void)
{
  g_autoptr (LwSeason) season = weighed_season (0.45);
  g_autoptr (LwReplan) replan = replan_of (season, 1, 0);
  g_autofree char *far = lw_replan_say_far (&replan->correct->points[0]);

  g_test_message ("%s", far);
  g_assert_nonnull (strstr (far, "check scale and tare"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/replan/heavier", test_heavier);
  g_test_add_func ("/replan/as-foretold", test_as_foretold);
  g_test_add_func ("/replan/under-way", test_under_way);
  g_test_add_func ("/replan/pinned", test_pinned);
  g_test_add_func ("/replan/escapes", test_escapes);
  g_test_add_func ("/replan/last", test_last);
  g_test_add_func ("/replan/far", test_far);

  return g_test_run ();
}

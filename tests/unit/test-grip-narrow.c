/* Taking hold of blocks whose columns are narrower than they, by clock: each can be reached, and a time goes
 * with the pointer. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/grip.h"

#include "draw/block.h"

#define N_STEPS 4
#define TOP 30.0

/* 900 px for 810 minutes. */
static const double minutes[N_STEPS] = { 300, 25, 5, 480 };
static const LwLetter letter = { .base_px = 13 };

static LwSeason *
season_new (void)
{
  static const LwKind kinds[N_STEPS] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_SUN };
  LwSeason *season = lw_season_new ("s");
  LwBatch *batch = lw_batch_new ("b");

  for (guint i = 0; i < N_STEPS; i++)
    {
      LwStep step = lw_step_new (kinds[i]);

      lw_step_set (&step, LW_SET_MINUTES, minutes[i]);
      lw_batch_insert_step (batch, i, step);
    }
  lw_season_insert_batch (season, 0, batch);

  return season;
}

static LwGrip
grip_at (const LwSeason *season,
         const LwScale  *scale,
         double          x)
{
  static const double leading[N_STEPS] = { 25, 260, 3, 25 };

  return lw_grip_at (scale, season->batches[0], leading, TOP, lw_block_height (&letter), &letter, x, TOP + 1);
}

/* Each block has a body and an end to take hold of. */
static void
test_reach (gconstpointer rtl)
{
  g_autoptr (LwSeason) season = season_new ();
  LwScale scale;

  lw_scale_fill_view (&scale, (LwScaleView) { TRUE, -1 }, minutes, N_STEPS, 10, 900, GPOINTER_TO_INT (rtl));
  for (guint i = 0; i < N_STEPS; i++)
    {
      double left, right;
      LwGrip grip;

      lw_scale_block (&scale, i, &left, &right);
      grip = grip_at (season, &scale, (left + right) / 2);
      g_assert_cmpint (grip.part, ==, LW_GRIP_BODY);
      g_assert_cmpuint (grip.step, ==, i);
      grip = grip_at (season, &scale, scale.rtl ? left : right);
      g_assert_cmpint (grip.part, ==, LW_GRIP_EDGE);
      g_assert_cmpuint (grip.step, ==, i);
    }
}

/* The roll's column is a few px wide; its block's end, held, still adds time px by px. */
static void
test_drag (gconstpointer rtl)
{
  g_autoptr (LwSeason) season = season_new (), next = NULL;
  double left, right, end, way = GPOINTER_TO_INT (rtl) ? -1 : 1;
  LwScale scale;
  LwGrip grip;

  lw_scale_fill_view (&scale, (LwScaleView) { TRUE, -1 }, minutes, N_STEPS, 10, 900, GPOINTER_TO_INT (rtl));
  lw_scale_column (&scale, 2, &left, &right);
  g_assert_cmpfloat (right - left, <, 10);
  lw_scale_block (&scale, 2, &left, &right);
  end = way > 0 ? right : left;
  grip = grip_at (season, &scale, end);
  next = lw_grip_drag (&grip, season, 0, &scale, &letter, end + way * 100, TOP + 1, TRUE);
  g_assert_cmpfloat_with_epsilon (lw_step_get (&next->batches[0]->steps[2], LW_SET_MINUTES), 5 + 90, 1);
}

/* Dragged to another place, the columns stay by clock. */
static void
test_reorder (gconstpointer rtl)
{
  g_autoptr (LwSeason) season = season_new (), next = NULL;
  double left, right;
  LwScale scale;
  LwGrip grip;

  lw_scale_fill_view (&scale, (LwScaleView) { TRUE, -1 }, minutes, N_STEPS, 10, 900, GPOINTER_TO_INT (rtl));
  lw_scale_block (&scale, 2, &left, &right);
  grip = grip_at (season, &scale, (left + right) / 2);
  next = lw_grip_drag (&grip, season, 0, &scale, &letter, GPOINTER_TO_INT (rtl) ? 905 : 15, TOP + 1, FALSE);
  g_assert_nonnull (next);
  g_assert_cmpint (next->batches[0]->steps[0].kind, ==, LW_KIND_ROLL);
  g_assert_true (scale.view.by_clock);
  g_assert_cmpfloat_with_epsilon (scale.width[1] / scale.width[3], 300.0 / 480, 1e-9);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (int rtl = 0; rtl < 2; rtl++)
    {
      gconstpointer way = GINT_TO_POINTER (rtl);

      g_test_add_data_func (rtl ? "/grip-narrow/reach/right-to-left" : "/grip-narrow/reach/left-to-right", way, test_reach);
      g_test_add_data_func (rtl ? "/grip-narrow/drag/right-to-left" : "/grip-narrow/drag/left-to-right", way, test_drag);
      g_test_add_data_func (rtl ? "/grip-narrow/reorder/right-to-left" : "/grip-narrow/reorder/left-to-right", way,
                            test_reorder);
    }

  return g_test_run ();
}

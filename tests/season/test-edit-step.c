/* Edits of which steps there are, in which order and of which kind, and of which leaf. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include "season/correction.h"
#include "season/edit.h"

#define FULL 0 /* of the sample: wither and fix-pan, with aims and weigh-ins */

static void
test_steps (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) added = lw_edit_add_step (season, FULL, 1, LW_KIND_ROLL);
  g_autoptr (LwSeason) removed = lw_edit_remove_step (added, FULL, 1);
  g_autoptr (LwSeason) moved = lw_edit_move_step (season, FULL, 1, 0);
  const LwBatch *batch = added->batches[FULL];

  g_assert_cmpuint (batch->n_steps, ==, 3);
  g_assert_cmpint (batch->steps[1].kind, ==, LW_KIND_ROLL);
  g_assert_cmpfloat (lw_step_get (&batch->steps[1], LW_SET_MINUTES), ==, 3);
  g_assert_cmpint (batch->steps[2].kind, ==, LW_KIND_FIX_PAN);
  sample_assert_same (removed, season);

  /* Aims, weigh-ins and the note go with their step. */
  batch = moved->batches[FULL];
  g_assert_cmpint (batch->steps[0].kind, ==, LW_KIND_FIX_PAN);
  g_assert_cmpuint (batch->steps[0].n_aims, ==, 2);
  g_assert_cmpuint (batch->steps[0].n_weigh_ins, ==, 3);
  g_assert_cmpstr (batch->steps[0].note, ==, season->batches[FULL]->steps[1].note);
  g_assert_cmpuint (batch->steps[1].n_aims, ==, 0);
}

/* From pan to drum: time and wall begin anew, what else both have stays, in the drum's range. */
static void
test_kind (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) drum = lw_edit_set_kind (season, FULL, 1, LW_KIND_FIX_DRUM);
  g_autoptr (LwSeason) roll = lw_edit_set_kind (season, FULL, 1, LW_KIND_ROLL);
  const LwStep *pan = &season->batches[FULL]->steps[1], *turned = &drum->batches[FULL]->steps[1];
  const LwStep *rolled = &roll->batches[FULL]->steps[1];

  g_assert_cmpint (turned->kind, ==, LW_KIND_FIX_DRUM);
  for (LwSetting setting = 0; setting < LW_N_SETTINGS; setting++)
    {
      const LwKindSetting *range = lw_kind_setting (LW_KIND_FIX_DRUM, setting);

      if (setting == LW_SET_MINUTES)
        g_assert_cmpfloat (lw_step_get (turned, setting), ==, range->start);
      else if (range == NULL || setting == LW_SET_WALL_C || lw_kind_setting (LW_KIND_FIX_PAN, setting) == NULL)
        g_assert_false (lw_step_is_given (turned, setting));
      else
        g_assert_cmpfloat (lw_step_get (turned, setting), ==, CLAMP (lw_step_get (pan, setting), range->low, range->high));
    }
  g_assert_null (lw_step_log (turned, LW_SET_WALL_C));
  g_assert_cmpstr (lw_step_log (turned, LW_SET_AIR_C), ==, "room");
  g_assert_cmpuint (turned->n_aims, ==, pan->n_aims);
  g_assert_cmpuint (turned->n_weigh_ins, ==, pan->n_weigh_ins);
  g_assert_cmpstr (turned->note, ==, pan->note);
  g_assert_null (turned->sign);

  g_assert_false (lw_step_is_given (rolled, LW_SET_WALL_C));
  g_assert_cmpfloat (lw_step_get (rolled, LW_SET_AIR_C), ==, lw_step_get (pan, LW_SET_AIR_C));
  g_assert_null (rolled->log[LW_LOG_WALL]);
}

/* What was corrected for the parts of one leaf is nothing for another. */
static void
test_other_leaf (void)
{
  g_autoptr (LwSeason) season = sample_season (), next = NULL, again = NULL;
  const char *ids[] = { "large-leaf", NULL };
  g_autofree char *text = NULL;
  gsize length;

  g_assert_nonnull (lw_correction_of (season->batches[FULL], 1));
  next = lw_edit_set_leaves (season, ids);
  g_assert_cmpstr (next->batches[FULL]->leaf, ==, "large-leaf");
  g_assert_null (lw_correction_of (next->batches[FULL], 1));
  text = lw_document_write (next, &length);
  again = sample_read (text);
  sample_assert_same (again, next);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/edit-step/steps", test_steps);
  g_test_add_func ("/edit-step/kind", test_kind);
  g_test_add_func ("/edit-step/other-leaf", test_other_leaf);

  return g_test_run ();
}

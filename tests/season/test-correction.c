/* Corrections as values: how long they hold, what they do to a plan, and the edits that put and take them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <math.h>
#include <string.h>

#include "season/correction.h"
#include "season/edit.h"
#include "season/surround.h"

#define PAN 1

static const LwWeighIn weighed = { .minute = 10, .of = LW_WEIGHED_KG, .value = 2.9, .sd = 0.02 };

/* (transfer full) a batch weighed in the wither and in the pan, and corrected in the pan. */
static LwSeason *
corrected_season (double fresh_points)
{
  g_autoptr (LwSeason) season = lw_edit_new_season (0);
  LwBatch *batch = lw_batch_copy (season->batches[0]);
  guint n_parts = lw_season_profile (season, batch->leaf)->n_parts;
  g_autofree LwState *shifts = g_new0 (LwState, n_parts);

  for (guint i = 0; i < n_parts; i++)
    shifts[i].water = 0.125;
  lw_batch_add_weigh_in (batch, 0, weighed);
  lw_batch_add_weigh_in (batch, PAN, weighed);
  lw_season_put_batch (season, 0, batch);

  return lw_edit_correct (season, 0, PAN, lw_correction_new (batch, PAN, 10, fresh_points, shifts, n_parts));
}

static gboolean
holds (const LwSeason *season)
{
  return lw_correction_of (season->batches[0], PAN) != NULL;
}

/* The batch as one's own, in the season's hands. */
static LwBatch *
own_batch (LwSeason *season)
{
  LwBatch *batch = lw_batch_copy (season->batches[0]);

  lw_season_put_batch (season, 0, batch);

  return batch;
}

/* It holds as long as what it went by stays, and does not mind what comes later. */
static void
test_holds (void)
{
  g_autoptr (LwSeason) season = corrected_season (0);
  LwBatch *batch;
  LwWeighIn later = weighed;
  gsize length;
  g_autofree char *text = NULL;

  g_assert_true (holds (season));
  later.minute = 10.5;
  lw_batch_add_weigh_in (own_batch (season), PAN, later);
  lw_batch_add_weigh_in (own_batch (season), PAN + 1, weighed);
  g_assert_true (holds (season));
  lw_batch_add_weigh_in (own_batch (season), 0, (LwWeighIn) { .minute = 1, .of = LW_WALL_C, .value = 20, .sd = 5 });
  g_assert_true (holds (season));

  own_batch (season)->steps[PAN].weigh_ins[0].value = 3;
  g_assert_false (holds (season));
  own_batch (season)->steps[PAN].weigh_ins[0].value = weighed.value;
  g_assert_true (holds (season));

  batch = own_batch (season);
  batch->steps[0].n_weigh_ins = 0;
  g_assert_false (holds (season));
  text = lw_document_write (season, &length);
  g_assert_null (strstr (text, "<correction"));
  batch->steps[0].n_weigh_ins = 1;
  g_assert_true (holds (season));

  lw_batch_add_weigh_in (own_batch (season), 0, weighed);
  g_assert_false (holds (season));
}

/* A plan jumps where the correction holds, with the same jump as long as it is the same correction. */
static void
test_plan (void)
{
  g_autoptr (LwSeason) season = corrected_season (1.5), longer = NULL, without = NULL;
  const LwProfile *leaf = lw_season_profile (season, season->batches[0]->leaf);
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0), next = NULL, plain = NULL, outdated = NULL;

  longer = lw_edit_set (season, 0, 2, LW_SET_MINUTES, 7);
  without = lw_edit_uncorrect (season, 0);
  next = lw_plan_new (longer, 0);
  plain = lw_plan_new (without, 0);

  g_assert_nonnull (plan->steps[PAN].jump);
  g_assert_cmpfloat (plan->steps[PAN].jump->time_s, ==, 600);
  g_assert_cmpfloat (plan->steps[PAN].jump->shifts[0].water, ==, 0.125);
  g_assert_true (next->steps[PAN].jump == plan->steps[PAN].jump);
  g_assert_null (plan->steps[0].jump);
  g_assert_null (plain->steps[PAN].jump);
  g_assert_cmpfloat_with_epsilon (lw_wet_basis_pct (plan->leaf.fresh_water), leaf->fresh_moisture_pct + 1.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (lw_wet_basis_pct (plain->leaf.fresh_water), leaf->fresh_moisture_pct, 1e-9);

  own_batch (season)->steps[PAN].weigh_ins[0].sd = 0.05;
  outdated = lw_plan_new (season, 0);
  g_assert_null (outdated->steps[PAN].jump);
  g_assert_cmpfloat (outdated->leaf.fresh_water, ==, plain->leaf.fresh_water);
}

/* One correction to a batch, and none in a repeated one. */
static void
test_edits (void)
{
  g_autoptr (LwSeason) season = corrected_season (0), again = NULL, repeated = NULL;
  const LwBatch *batch = season->batches[0];
  guint n_parts = batch->steps[PAN].correction->jump->n_parts;
  g_autofree LwState *shifts = g_new0 (LwState, n_parts);

  again = lw_edit_correct (season, 0, 0, lw_correction_new (batch, 0, 10, 0, shifts, n_parts));
  g_assert_nonnull (lw_correction_of (again->batches[0], 0));
  g_assert_null (again->batches[0]->steps[PAN].correction);
  g_assert_cmpuint (again->batches[0]->steps[0].correction->n_by, ==, 1);
  g_assert_true (holds (season));

  repeated = lw_edit_repeat_batch (season, 0);
  g_assert_null (repeated->batches[1]->steps[PAN].correction);
  g_assert_cmpuint (batch->steps[PAN].correction->n_by, ==, 2);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/correction/holds", test_holds);
  g_test_add_func ("/correction/plan", test_plan);
  g_test_add_func ("/correction/edits", test_edits);

  return g_test_run ();
}

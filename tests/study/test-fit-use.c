/* What the window needs of a fit besides its answer: which batches can be used and why not others, the rows of the
 * table, whether the season is still the one that was fitted, names and dates of what is saved. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

#include "fit-made.h"
#include "season/edit.h"
#include "study/fit-tells.h"
#include "study/fit-words.h"

#define BIT(what) LW_FIT_BIT (LW_FIT_##what)

static LwSeason *
weighed_season (void)
{
  g_autoptr (LwSeason) season = fit_made_season ();

  return fit_made_weigh (season, &(FitTruth) { { [LW_FIT_SKIN] = 0.2 } }, NULL);
}

static void
assert_useless (const LwBatch *batch,
                const char    *words)
{
  g_autofree char *said = lw_fit_say_useless (batch);

  g_assert_nonnull (said);
  g_assert_nonnull (strstr (said, words));
  g_assert_false (lw_fit_can_use (batch));
}

static void
test_tells (void)
{
  g_autoptr (LwBatch) batch = lw_batch_new ("1");
  g_autofree char *told = NULL, *reason = NULL;

  lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_WITHER));
  lw_step_set (&batch->steps[0], LW_SET_MINUTES, 60);
  batch->made = TRUE;
  assert_useless (batch, "nothing was weighed");
  lw_batch_add_weigh_in (batch, 0, (LwWeighIn) { 10, LW_WALL_C, 200, 5, 0, NULL });
  assert_useless (batch, "walls");
  lw_batch_add_weigh_in (batch, 0, (LwWeighIn) { 61, LW_WEIGHED_KG, 4, 0.02, 0, NULL });
  assert_useless (batch, "after");
  lw_batch_add_weigh_in (batch, 0, (LwWeighIn) { 60, LW_WEIGHED_KG, 4, 0.02, 0, NULL });
  lw_batch_add_weigh_in (batch, 0, (LwWeighIn) { 30, LW_LEAF_C, 24, 2, 0, NULL });
  lw_batch_add_weigh_in (batch, 0, (LwWeighIn) { 50, LW_WEIGHED_KG, 4.1, 0.02, 0, NULL });
  g_assert_true (lw_fit_can_use (batch));
  reason = lw_fit_say_useless (batch);
  g_assert_null (reason);
  told = lw_fit_say_told (batch);
  g_assert_cmpuint (lw_fit_quantities (batch), ==, 1u << LW_MOISTURE | 1u << LW_WEIGHT | 1u << LW_LEAF_TEMP);
  g_assert_cmpstr (told, ==, "weight × 2, leaf temperature × 1; 1 after its step's end");
  batch->made = FALSE;
  assert_useless (batch, "planned");
}

/* A batch's own change has one row, a leaf's one for each leaf. */
static void
test_lines (void)
{
  g_autoptr (LwSeason) weighed = weighed_season ();
  LwBatch *other = lw_batch_copy (weighed->batches[1]);
  LwProfile *second = lw_profile_copy (weighed->profiles[0]);
  LwFitAsk ask = { .free = BIT (SKIN) | BIT (MOISTURE) | BIT (CONTACT) };
  g_autoptr (LwFit) fit = NULL;
  g_autoptr (GArray) lines = NULL;
  const LwFitWhat expected[] = { LW_FIT_SKIN, LW_FIT_SKIN, LW_FIT_MOISTURE, LW_FIT_MOISTURE, LW_FIT_CONTACT };

  g_free (second->id);
  second->id = g_strdup ("second");
  lw_season_add_profile (weighed, second);
  g_free (other->leaf);
  other->leaf = g_strdup ("second");
  lw_season_put_batch (weighed, 1, other);
  fit = lw_fit_new (weighed, &ask, NULL, NULL);
  lines = lw_fit_lines (fit);
  g_assert_cmpuint (lines->len, ==, G_N_ELEMENTS (expected));
  for (guint i = 0; i < lines->len; i++)
    {
      const LwFitLine *line = &g_array_index (lines, LwFitLine, i);

      g_assert_cmpint (line->param->what, ==, expected[i]);
      g_assert_true (line->leaf == (i == 4 ? NULL : weighed->profiles[i % 2]));
    }
}

static void
test_is_of (void)
{
  g_autoptr (LwSeason) weighed = weighed_season ();
  g_autoptr (GArray) one = g_array_new (FALSE, FALSE, sizeof (guint));
  LwFitAsk ask = { .batches = one, .free = BIT (SKIN) };
  g_autoptr (LwFit) fit = NULL;
  g_autoptr (LwSeason) fewer = lw_edit_remove_batch (weighed, 0), none = NULL;
  g_autoptr (LwSeason) renamed = lw_edit_rename_batch (weighed, 1, "other"), own = NULL;
  g_autoptr (LwSeason) leaf = lw_edit_put_profile (weighed, lw_profile_copy (weighed->profiles[0]));
  guint second = 1;

  g_array_append_val (one, second);
  fit = lw_fit_new (weighed, &ask, NULL, NULL);
  none = lw_edit_remove_batch (weighed, 1);
  own = lw_edit_rename_batch (weighed, 0, "other");
  g_assert_true (lw_fit_is_of (fit, weighed));
  g_assert_true (lw_fit_is_of (fit, fewer));
  g_assert_true (lw_fit_is_of (fit, own));
  g_assert_false (lw_fit_is_of (fit, none));
  g_assert_false (lw_fit_is_of (fit, renamed));
  g_assert_false (lw_fit_is_of (fit, leaf));
}

static void
test_save_as (void)
{
  g_autoptr (LwSeason) weighed = weighed_season ();
  LwFitAsk ask = { .free = BIT (SKIN) };
  g_autoptr (LwFit) fit = lw_fit_new (weighed, &ask, NULL, NULL);
  const char *names[] = { "Mine" };
  LwFitSaveAs as = { names, weighed->batches[0]->when_s };
  g_autoptr (LwSeason) next = lw_fit_save (fit, weighed, &as), used = NULL;
  const char *ids[] = { NULL, next->profiles[1]->id, NULL, NULL };
  g_autofree char *usual = lw_fit_new_name (weighed, weighed->profiles[0]);
  g_autofree char *again = lw_fit_new_name (next, weighed->profiles[0]);

  g_assert_cmpstr (next->profiles[1]->name, ==, "Mine");
  g_assert_true (g_str_has_suffix (next->profiles[1]->note, "\nFitted on 1 Jan 1970."));
  g_assert_true (g_str_has_suffix (usual, ", fitted"));
  g_assert_true (g_str_has_suffix (again, ", fitted 2"));

  used = lw_edit_set_leaves (next, ids);
  g_assert_true (used->batches[0] == next->batches[0]);
  g_assert_cmpstr (used->batches[1]->leaf, ==, next->profiles[1]->id);
  g_assert_cmpuint (used->batches[1]->n_steps, ==, next->batches[1]->n_steps);
}

/* The numbers in the sentences are those of the fit. */
static void
test_words (void)
{
  g_autoptr (LwSeason) weighed = weighed_season ();
  LwFitAsk ask = { .free = BIT (SKIN) | BIT (MOISTURE), .leave_one_out = TRUE };
  g_autoptr (LwFit) fit = lw_fit_new (weighed, &ask, NULL, NULL);
  g_autofree char *miss = lw_fit_miss_say (fit, NULL), *of_one = lw_fit_miss_say (fit, &fit->batches[0]);
  g_autofree char *unseen = lw_fit_unseen_say (fit, NULL), *skin = lw_fit_prior_say (LW_FIT_SKIN, weighed->profiles[0]);
  g_autofree char *pan = lw_fit_prior_say (LW_FIT_CONTACT, weighed->profiles[0]);
  g_autofree char *moisture = lw_fit_prior_say (LW_FIT_MOISTURE, weighed->profiles[0]);
  g_autofree char *before = g_strdup_printf ("missed them by %.1f times", sqrt (fit->before / fit->n_points));
  g_autofree char *within = g_strdup_printf ("within %.1f times", fit->unseen_rms);
  g_autofree char *unseen_one = lw_fit_unseen_say (fit, &fit->batches[1]);
  g_autofree char *of_second = g_strdup_printf ("The others foretell it to within %.1f times the instruments' errors.", fit->batches[1].unseen_rms);
  g_autofree char *counted = g_strdup_printf ("%u weigh-ins", fit->batches[0].n_points);

  g_assert_nonnull (strstr (miss, before));
  g_assert_nonnull (strstr (of_one, counted));
  g_assert_nonnull (strstr (unseen, within));
  g_assert_cmpstr (unseen_one, ==, of_second);
  g_assert_cmpstr (skin, ==, "0.00021 m/s ± 30 %");
  g_assert_cmpstr (pan, ==, "± 20 %");
  g_assert_cmpstr (moisture, ==, "77 % wet basis ± 1.5 % points");
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit-use/tells", test_tells);
  g_test_add_func ("/fit-use/lines", test_lines);
  g_test_add_func ("/fit-use/is-of", test_is_of);
  g_test_add_func ("/fit-use/save-as", test_save_as);
  g_test_add_func ("/fit-use/words", test_words);

  return g_test_run ();
}

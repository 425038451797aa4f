/* What a fit tells besides its values: not enough data, changes that cannot be told apart, weigh-ins left out; how it
 * is stopped, and the profile it leaves. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>
#include <string.h>

#include "fit-made.h"
#include "season/leaf-field.h"
#include "study/fit-words.h"

#define BIT(what) LW_FIT_BIT (LW_FIT_##what)
#define LEAF "large-leaf"

/* (transfer full) the four batches weighed without errors on a leaf whose skin is more open. */
static LwSeason *
weighed_season (double skin)
{
  g_autoptr (LwSeason) season = fit_made_season ();

  return fit_made_weigh (season, &(FitTruth) { { [LW_FIT_SKIN] = skin } }, NULL);
}

static void
assert_said (const LwFit      *fit,
             LwFitWarningKind  kind,
             const char       *words)
{
  const LwFitWarning *warning = fit_made_warning (fit, kind);
  g_autofree char *said = NULL;

  g_assert_nonnull (warning);
  said = lw_fit_warning_say (fit, warning);
  g_test_message ("%s", said);
  g_assert_nonnull (strstr (said, words));
}

static void
test_table (void)
{
  for (guint i = 0; i < LW_N_FIT_WHAT; i++)
    {
      const LwFitRow *row = lw_fit_row (i);

      g_assert_cmpfloat (row->spread, >, 0);
      g_assert_nonnull (row->source);
      g_assert_nonnull (row->meaning);
      if (row->field >= 0)
        g_assert_cmpstr (lw_law_fields ()[row->field].symbol, ==, row->id);
      g_assert_cmpint (lw_fit_find (row->id), ==, i == LW_FIT_BATCH_WEIGHT ? -1 : (int) i);
    }
  g_assert_cmpint (lw_fit_find ("nothing"), ==, -1);
  g_assert_cmpfloat (lw_fit_row (LW_FIT_BATCH_WEIGHT)->spread, ==, lw_measure_row (LW_WEIGHED_KG)->sd);
}

/* By hand: 8 % torn that grow by half are 12 %, and the other 92 become 88. */
static void
test_apply (void)
{
  g_autoptr (LwProfile) leaf = lw_profile_start ();
  double skin = leaf->law.cut_m_s, low = -INFINITY, high = INFINITY;

  lw_fit_apply (LW_FIT_TORN, log (1.5), leaf, NULL);
  g_assert_cmpfloat_with_epsilon (lw_fit_value (LW_FIT_TORN, leaf), 0.12, 1e-12);
  g_assert_cmpfloat_with_epsilon (leaf->parts[0].share, 0.55 * 88 / 92, 1e-12);
  g_assert_cmpfloat_with_epsilon (lw_profile_share_sum (leaf), 1, 1e-12);
  lw_fit_apply (LW_FIT_SKIN, log (2), leaf, NULL);
  g_assert_cmpfloat_with_epsilon (leaf->law.cut_m_s, 2 * skin, 1e-15);
  lw_fit_apply (LW_FIT_MOISTURE, -2, leaf, NULL);
  g_assert_cmpfloat (leaf->fresh_moisture_pct, ==, 75);
  g_assert_true (isnan (lw_fit_value (LW_FIT_CONTACT, leaf)));

  lw_fit_narrow (LW_FIT_SKIN, leaf, &low, &high);
  g_assert_cmpfloat_with_epsilon (2 * skin * exp (high), lw_law_fields ()[lw_law_find ("g-cut")].high, 1e-12);
}

static void
test_pan (void)
{
  g_autoptr (LwBatch) batch = lw_batch_new ("1");
  LwStep pan = lw_step_new (LW_KIND_FIX_PAN);
  double contact = lw_step_get (&pan, LW_SET_WALL_W_M2K);

  lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_WITHER));
  lw_batch_insert_step (batch, 1, pan);
  lw_fit_apply (LW_FIT_CONTACT, log (1.1), NULL, batch);
  g_assert_cmpfloat_with_epsilon (lw_step_get (&batch->steps[1], LW_SET_WALL_W_M2K), 1.1 * contact, 1e-9);
}

/* However much or little is free. */
static void
test_one_weight (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0.2);
  const guint asked[] = { lw_fit_usual (), BIT (SKIN), BIT (ROLLING) };

  for (guint i = 0; i < G_N_ELEMENTS (asked); i++)
    {
      g_autoptr (LwSeason) part = fit_made_part (weighed, 0, 1);
      g_autoptr (LwFit) fit = fit_made_fit (part, asked[i]);

      g_assert_cmpuint (fit->n_points, ==, 1);
      g_assert_false (fit->enough);
      assert_said (fit, LW_FIT_FEW_POINTS, "Not enough data");
      g_assert_null (lw_fit_save (fit, part, NULL));
    }
}

/* Weights of a wither say nothing of rolling, however many there are. */
static void
test_nothing_told (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0);
  g_autoptr (LwSeason) part = fit_made_part (weighed, 1, 2);
  g_autoptr (LwFit) fit = fit_made_fit (part, BIT (ROLLING));

  g_assert_false (fit->enough);
  g_assert_cmpfloat_with_epsilon (fit->params[0].error, lw_fit_row (LW_FIT_ROLLING)->spread, 1e-6);
  g_assert_null (fit_made_warning (fit, LW_FIT_FEW_POINTS));
  assert_said (fit, LW_FIT_NOTHING_TOLD, "Not enough data");
}

/* Its parts are told by name: the skin by the weights, breaking by nothing in that batch. */
static void
test_not_told (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0.2);
  g_autoptr (LwSeason) part = fit_made_part (weighed, 0, 4);
  g_autoptr (LwFit) fit = fit_made_fit (part, BIT (SKIN) | BIT (BREAKING));

  g_assert_true (fit->enough);
  g_assert_cmpfloat (fit->params[0].decided, >, 0.9);
  g_assert_cmpfloat (fit->params[1].decided, <, 0.01);
  g_assert_cmpuint (fit_made_warning (fit, LW_FIT_NOT_TOLD)->a, ==, 1);
  assert_said (fit, LW_FIT_NOT_TOLD, "breaking");
}

/* With one batch the moisture of the leaf and that of the batch are the same thing. The data decide their sum; of their
 * difference they say nothing, so what is left is its prior: of variances a and b, given the sum, each has ab/(a+b). */
static void
test_twins (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0);
  g_autoptr (LwSeason) part = fit_made_part (weighed, 3, 6);
  g_autoptr (LwFit) fit = fit_made_fit (part, BIT (MOISTURE) | BIT (BATCH_MOISTURE));
  const LwFitWarning *twins = fit_made_warning (fit, LW_FIT_TWINS);
  double a = lw_fit_row (LW_FIT_MOISTURE)->spread, b = lw_fit_row (LW_FIT_BATCH_MOISTURE)->spread;

  g_assert_nonnull (twins);
  g_assert_cmpuint (twins->a, ==, 0);
  g_assert_cmpuint (twins->b, ==, 1);
  g_assert_cmpfloat (twins->number, <, -LW_FIT_TWIN);
  g_assert_cmpfloat_with_epsilon (fit->params[0].error, a * b / hypot (a, b), 0.02);
  assert_said (fit, LW_FIT_TWINS, "fresh moisture");
}

static void
test_no_twins (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0.1);
  g_autoptr (LwFit) fit = fit_made_fit (weighed, BIT (SKIN) | BIT (OXIDATION));

  g_assert_cmpuint (fit->n_warnings, ==, 0);
  g_assert_cmpfloat (fit->correlations[0], ==, 1);
  g_assert_cmpfloat (fit->correlations[1], ==, fit->correlations[2]);
}

static void
test_bound (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0.4);
  LwProfile *leaf = lw_profile_copy (weighed->profiles[0]);
  const LwLawField *skin = &lw_law_fields ()[lw_law_find ("g-cut")];
  g_autoptr (LwFit) fit = NULL;

  /* What lies beyond the law's range is out of reach. */
  leaf->law.cut_m_s = 0.9 * skin->high;
  lw_season_put_profile (weighed, leaf);
  {
    g_autoptr (LwSeason) beyond = fit_made_weigh (weighed, &(FitTruth) { { [LW_FIT_SKIN] = 0.4 } }, NULL);

    fit = fit_made_fit (beyond, BIT (SKIN));
  }
  g_assert_true (fit->params[0].at_bound);
  g_assert_cmpfloat_with_epsilon (fit->params[0].change, log (1 / 0.9), 1e-9);
  g_assert_true (isnan (fit->params[0].error));
  g_assert_true (fit->enough);
  g_assert_null (fit_made_warning (fit, LW_FIT_NOTHING_TOLD));
  assert_said (fit, LW_FIT_AT_BOUND, "openness of the skin");
}

static void
test_misfit (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0);
  LwBatch *batch = lw_batch_copy (weighed->batches[2]);
  g_autoptr (LwFit) fit = NULL;

  batch->steps[0].weigh_ins[0].value += 0.5;
  lw_season_put_batch (weighed, 2, batch);
  fit = fit_made_fit (weighed, BIT (SKIN) | BIT (MOISTURE));
  assert_said (fit, LW_FIT_MISFIT, "too small");
  assert_said (fit, LW_FIT_MISFIT, "(chance under 1×10⁻⁶), those of “3” the most");
}

static void
test_left_out (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0);
  LwBatch *late = lw_batch_copy (weighed->batches[0]), *planned = lw_batch_copy (weighed->batches[1]);
  LwBatch *bare = lw_batch_copy (weighed->batches[2]);
  guint all[] = { 0, 1, 2, 3 };
  g_autoptr (GArray) batches = g_array_append_vals (g_array_new (FALSE, FALSE, sizeof (guint)), all, 4);
  LwFitAsk ask = { .free = BIT (SKIN), .batches = batches };
  g_autoptr (LwFit) fit = NULL;

  lw_step_set (&late->steps[0], LW_SET_MINUTES, 200);
  planned->made = FALSE;
  for (guint i = 0; i < bare->n_steps; i++)
    bare->steps[i].n_weigh_ins = 0;
  lw_season_put_batch (weighed, 0, late);
  lw_season_put_batch (weighed, 1, planned);
  lw_season_put_batch (weighed, 2, bare);
  fit = lw_fit_new (weighed, &ask, NULL, NULL);

  g_assert_cmpuint (fit->n_batches, ==, 2);
  g_assert_cmpuint (fit->batches[0].n_late, ==, 1);
  g_assert_cmpuint (fit->batches[0].n_silent, ==, 1);
  g_assert_cmpuint (fit->batches[0].n_points, ==, 5);
  g_assert_cmpfloat (fit_made_warning (fit, LW_FIT_LATE)->number, ==, 1);
  assert_said (fit, LW_FIT_LATE, "“1”");
  assert_said (fit, LW_FIT_PLANNED, "“2”");
  assert_said (fit, LW_FIT_BARE, "“3”");
}

static void
test_nothing_there (void)
{
  g_autoptr (LwSeason) season = weighed_season (0);
  LwFitAsk ask = { .free = BIT (SKIN), .leaf = "another" };
  g_autoptr (GError) error = NULL;

  g_assert_null (lw_fit_new (season, &ask, NULL, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_NOT_FOUND);
}

typedef struct
{
  double last;
  double stop_at;
  GCancellable *cancellable;
} Watch;

static void
watch_cb (double   share,
          gpointer data)
{
  Watch *watch = data;

  g_assert_cmpfloat (share, >=, watch->last);
  g_assert_cmpfloat (share, <=, 1);
  watch->last = share;
  if (share >= watch->stop_at)
    g_cancellable_cancel (watch->cancellable);
}

/* At the start, in the fit, and while batches are left out. */
static void
test_cancel (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0.2);
  const double stops[] = { 0, 0.2, 0.6 };

  for (guint i = 0; i < G_N_ELEMENTS (stops); i++)
    {
      g_autoptr (GCancellable) cancellable = g_cancellable_new ();
      g_autoptr (GError) error = NULL;
      Watch watch = { 0, stops[i], cancellable };
      LwFitAsk ask = { .free = BIT (SKIN), .leave_one_out = TRUE, .progress = watch_cb, .progress_data = &watch };

      if (stops[i] == 0)
        g_cancellable_cancel (cancellable);
      g_assert_null (lw_fit_new (weighed, &ask, cancellable, &error));
      g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
      g_assert_cmpfloat (watch.last, <, 1);
    }
}

static void
test_progress (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0.2);
  Watch watch = { 0, INFINITY, NULL };
  LwFitAsk ask = { .free = BIT (SKIN), .leave_one_out = TRUE, .progress = watch_cb, .progress_data = &watch };
  g_autoptr (LwFit) fit = lw_fit_new (weighed, &ask, NULL, NULL);

  g_assert_cmpfloat (watch.last, ==, 1);
  /* The others foretell it all: nothing was off. */
  g_assert_cmpfloat (fit->unseen_sd, <, 0.2);
  g_assert_cmpfloat (fit->unseen_rms, <, 0.2);
}

/* A batch of another leaf foretold from the rest is as far off as it is. */
static void
test_foretold (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0.2);
  g_autoptr (LwSeason) other = weighed_season (-0.2);
  LwFitAsk ask = { .free = BIT (SKIN) | BIT (MOISTURE), .leave_one_out = TRUE };
  g_autoptr (LwFit) fit = NULL;

  lw_season_put_batch (weighed, 1, lw_batch_copy (other->batches[1]));
  fit = lw_fit_new (weighed, &ask, NULL, NULL);
  g_assert_cmpfloat (fit->batches[1].unseen_sd, >, 3);
  g_assert_cmpfloat (fit->batches[1].unseen_rms, >=, fit->batches[1].unseen_sd);
  g_assert_cmpfloat (fit->batches[1].unseen_rms, >, sqrt (fit->batches[1].after / fit->batches[1].n_points));
}

static void
test_save (void)
{
  g_autoptr (LwSeason) weighed = weighed_season (0.2);
  g_autoptr (LwFit) fit = fit_made_fit (weighed, lw_fit_usual ());
  g_autoptr (LwSeason) once = lw_fit_save (fit, weighed, NULL), twice = lw_fit_save (fit, once, NULL);
  const LwProfile *leaf = lw_season_profile (once, LEAF "-fitted"), *again = lw_season_profile (twice, LEAF "-fitted-2");
  g_autoptr (GError) error = NULL;
  double start, value, by;

  g_assert_cmpuint (once->n_profiles, ==, 2);
  g_assert_nonnull (leaf);
  g_assert_nonnull (again);
  g_assert_cmpstr (leaf->name, !=, again->name);
  g_assert_true (lw_profile_check (leaf, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (once->batches[0]->leaf, ==, LEAF);
  g_assert_true (once->profiles[0] == weighed->profiles[0]);

  lw_fit_param_value (&fit->params[0], weighed->profiles[0], &start, &value, &by);
  g_assert_cmpfloat (start, ==, weighed->profiles[0]->law.cut_m_s);
  g_assert_cmpfloat_with_epsilon (value / start, exp (fit->params[0].change), 1e-12);
  g_assert_cmpfloat_with_epsilon (by, value * fit->params[0].error, 1e-15);
  g_assert_cmpfloat_with_epsilon (leaf->law.cut_m_s, value, 1e-3 * value);
  g_assert_nonnull (strstr (leaf->note, "Large leaf"));
  g_assert_nonnull (strstr (leaf->note, "of: 1 (1 Jan 1970); 2 (1 Jan 1970); 3 (1 Jan 1970); 4 (1 Jan 1970)\n"));
  g_assert_nonnull (strstr (leaf->note, "openness of the skin (g-cut): 0.00021 → "));
  g_assert_nonnull (strstr (leaf->note, " ± "));
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fit-told/table", test_table);
  g_test_add_func ("/fit-told/apply", test_apply);
  g_test_add_func ("/fit-told/pan", test_pan);
  g_test_add_func ("/fit-told/one-weight", test_one_weight);
  g_test_add_func ("/fit-told/nothing-told", test_nothing_told);
  g_test_add_func ("/fit-told/not-told", test_not_told);
  g_test_add_func ("/fit-told/twins", test_twins);
  g_test_add_func ("/fit-told/no-twins", test_no_twins);
  g_test_add_func ("/fit-told/bound", test_bound);
  g_test_add_func ("/fit-told/misfit", test_misfit);
  g_test_add_func ("/fit-told/left-out", test_left_out);
  g_test_add_func ("/fit-told/nothing-there", test_nothing_there);
  g_test_add_func ("/fit-told/cancel", test_cancel);
  g_test_add_func ("/fit-told/progress", test_progress);
  g_test_add_func ("/fit-told/foretold", test_foretold);
  g_test_add_func ("/fit-told/save", test_save);

  return g_test_run ();
}

/* What holds for every batch that a document can hold, tried on thousands made by chance on two threads:
 * the solver comes through, states stay in their bounds, what only grows never falls, water and heat balance,
 * and more of a thing does more. A batch for which something does not hold is printed as a season's document.
 * `test-property SEED` tries that batch alone. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "balance.h"
#include "chance.h"
#include "season/document.h"
#include "season/surround.h"
#include "study/heat.h"

#define BATCHES 3000
#define FIRST_SEED 20260425
#define THREADS 2
#define SAMPLES 24
#define BALANCE_SAMPLES 160   /* as in the window */
#define MORE_EVERY 4          /* batches, for one that is done over with more of something */
#define BALANCE_EVERY 20
#define MOST_TOLD 5

#define SLACK 1e-4            /* in what grows: the solver's error; a hundredth of a percent, which no screen shows */
#define WATER_BOUND 1e-4
#define HEAT_BOUND 1e-3
#define HEAT_SLACK_K 0.01     /* of the leaf's temperature, where hardly any heat flows */
#define COLDEST_C -20.0       /* the coldest air, and a leaf that dries in it */
#define HOTTEST_C 430.0       /* the hottest wall, and sun on it */

static gint failures;
static gint balanced;
static gint compared;

static void
tell (guint32     seed,
      LwSeason   *season,
      const char *what)
{
  g_autofree char *text = NULL;
  gsize length;

  if (g_atomic_int_add (&failures, 1) >= MOST_TOLD)
    return;

  text = lw_document_write (season, &length);
  g_printerr ("# seed %u: %s\n%s\n", seed, what, text);
}

/* (transfer full) what is wrong with a state; NULL if nothing is. */
static char *
wrong_state (const LwState *s)
{
  static const struct { const char *name; gsize offset; double low, high; } bounds[] = {
    { "water", offsetof (LwState, water), 0, 100 },
    { "temperature", offsetof (LwState, temp_c), COLDEST_C, HOTTEST_C },
    { "enzyme", offsetof (LwState, enzyme), 0, 1 },
    { "oxidation", offsetof (LwState, oxidation), 0, 1 },
    { "wilting", offsetof (LwState, wilt), 0, INFINITY },
    { "heat", offsetof (LwState, heat), 0, INFINITY },
    { "rolling", offsetof (LwState, roll), 0, INFINITY },
    { "roast", offsetof (LwState, roast_min), 0, INFINITY },
    { "green note", offsetof (LwState, green), 0, 20 },
    { "broken leaf", offsetof (LwState, broken), 0, 1 },
    { "twist", offsetof (LwState, twist), 0, 1 },
  };

  G_STATIC_ASSERT (G_N_ELEMENTS (bounds) == LW_N_STATE);
  for (guint i = 0; i < G_N_ELEMENTS (bounds); i++)
    {
      double value = *(const double *) ((const char *) s + bounds[i].offset);

      if (!isfinite (value) || value < bounds[i].low || value > bounds[i].high)
        return g_strdup_printf ("%s is %.17g", bounds[i].name, value);
    }

  return NULL;
}

/* (transfer full) what fell between two states and must not; NULL if nothing did. */
static char *
fallen_state (const LwState *from,
              const LwState *to,
              const LwPart  *part)
{
  const struct { const char *name; double from, to; } grown[] = {
    { "oxidation", from->oxidation, to->oxidation },
    { "rupture", lw_state_rupture (from, part), lw_state_rupture (to, part) },
    { "roast", from->roast_min, to->roast_min },
    { "broken leaf", from->broken, to->broken },
    { "twist", from->twist, to->twist },
    { "lost enzyme", 1 - from->enzyme, 1 - to->enzyme },
  };

  for (guint i = 0; i < G_N_ELEMENTS (grown); i++)
    if (grown[i].to < grown[i].from - SLACK * MAX (grown[i].from, 1))
      return g_strdup_printf ("%s fell from %.17g to %.17g", grown[i].name, grown[i].from, grown[i].to);

  return NULL;
}

static char *
wrong_outcome (const LwOutcome *outcome)
{
  for (gsize k = 0; k < sizeof *outcome / sizeof (double); k++)
    if (!isfinite (((const double *) outcome)[k]))
      return g_strdup_printf ("number %u of the outcome is none", (guint) k + 1);

  if (outcome->nearly_dry_pct < 0 || outcome->nearly_dry_pct > 100.000001 || outcome->roasted_pct < 0
      || outcome->roasted_pct > 100.000001 || outcome->uneven_pct < 0 || outcome->uneven_pct > 50.000001)
    return g_strdup_printf ("nearly dry %g, roasted %g, uneven %g", outcome->nearly_dry_pct, outcome->roasted_pct,
                            outcome->uneven_pct);

  return NULL;
}

static char *
wrong_moment (const LwTrack *track,
              guint          step,
              guint          i)
{
  LwOutcome outcome = lw_track_outcome (track, step, -1, i);
  char *wrong = wrong_outcome (&outcome);

  for (guint part = 0; part < track->n_parts && wrong == NULL; part++)
    {
      const LwState *here = lw_track_state (track, step, part, i);

      wrong = wrong_state (here);
      if (wrong == NULL && i > 0)
        wrong = fallen_state (lw_track_state (track, step, part, i - 1), here, &track->parts[part]);
    }

  return wrong;
}

static char *
wrong_track (const LwTrack *track)
{
  if (track->failure.failed)
    return g_strdup_printf ("step %u failed after %g s with %d", track->failure.step + 1, track->failure.time_s,
                            track->failure.code);

  for (guint step = 0; step < track->n_steps; step++)
    for (guint i = 0; i < track->steps[step]->n; i++)
      {
        g_autofree char *wrong = wrong_moment (track, step, i);

        if (wrong != NULL)
          return g_strdup_printf ("step %u at %g s: %s", step + 1, track->steps[step]->time_s[i], wrong);
      }

  return NULL;
}

/* Heat capacity of the whole batch at a step's end. */
static double
capacity_j_k (const LwSeason *season,
              const LwTrack  *track,
              guint           step)
{
  const LwLeaf *leaf = &track->leaf;
  double weight = lw_track_end (track, step, -1).kg_per_kg_fresh * (1 + leaf->fresh_water);

  return season->batches[0]->fresh_kg / (1 + leaf->fresh_water)
         * (leaf->law.c_dry_j_kgk + (weight - 1) * leaf->law.c_water_j_kgk);
}

static char *
wrong_balance (LwMarch  *march,
               LwSeason *season,
               LwPlan   *plan)
{
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = BALANCE_SAMPLES });
  g_autoptr (LwHeat) heat = lw_heat_new (plan, season->batches[0], track);

  for (guint i = 0; i < heat->n_steps; i++)
    {
      const LwHeatStep *step = &heat->steps[i];
      double miss = lw_heat_miss (step);

      if (!(fabs (miss) * step->gross_j <= HEAT_BOUND * step->gross_j + HEAT_SLACK_K * capacity_j_k (season, track, i)))
        return g_strdup_printf ("heat of step %u misses by %.3g", i + 1, miss);
    }

  for (guint i = 0; i < plan->n_steps; i++)
    {
      double miss = balance_of_water (plan, track, i);

      if (!(miss <= WATER_BOUND))
        return g_strdup_printf ("water of step %u misses by %.3g", i + 1, miss);
    }
  g_atomic_int_inc (&balanced);

  return NULL;
}

/* More of `setting` than in the step, as far as its range goes; FALSE if that is no more. */
static gboolean
more_of (LwConditions *at,
         const LwStep *step,
         LwSetting     setting)
{
  const LwKindSetting *range = lw_kind_setting (step->kind, setting);
  double value = range != NULL ? lw_step_get (step, setting) : 0;
  double more = range != NULL ? MIN (value * 1.25, range->high) : 0;

  if (more <= value)
    return FALSE;
  if (setting == LW_SET_PRESS_KPA)
    at->press_kpa = more;
  else if (setting == LW_SET_WALL_C)
    at->wall_c = more;
  else
    at->duration_s = 60 * more;

  return TRUE;
}

/* Does `step` over with more of a setting, all before it the same, and compares the ends. */
static char *
wrong_order (LwMarch       *march,
             const LwPlan  *plan,
             const LwBatch *batch,
             const LwTrack *track,
             guint          step,
             LwSetting      setting)
{
  g_autofree LwConditions *steps = g_memdup2 (plan->steps, plan->n_steps * sizeof *steps);
  g_autoptr (LwTrack) more = NULL;

  if (!more_of (&steps[step], &batch->steps[step], setting))
    return NULL;

  more = lw_march_run (march, &plan->leaf, steps, step + 1, (LwSampling) { .samples = SAMPLES });
  if (more->failure.failed)
    return g_strdup_printf ("step %u with more %s failed", step + 1, lw_setting_row (setting)->id);

  for (guint part = 0; part < track->n_parts; part++)
    {
      const LwState *a = lw_track_state (track, step, part, track->steps[step]->n - 1);
      const LwState *b = lw_track_state (more, step, part, more->steps[step]->n - 1);
      double was = setting == LW_SET_WALL_C ? -a->enzyme : lw_state_rupture (a, &track->parts[part]);
      double is = setting == LW_SET_WALL_C ? -b->enzyme : lw_state_rupture (b, &track->parts[part]);

      if (is < was - SLACK)
        return g_strdup_printf ("step %u, part %u: with more %s, %s went from %.10g to %.10g", step + 1, part + 1,
                                lw_setting_row (setting)->id, setting == LW_SET_WALL_C ? "enzyme" : "rupture",
                                fabs (was), fabs (is));
      if (setting == LW_SET_PRESS_KPA && b->twist < a->twist - SLACK)
        return g_strdup_printf ("step %u, part %u: more pressure, less twist", step + 1, part + 1);
    }
  g_atomic_int_inc (&compared);

  return NULL;
}

static char *
wrong_orders (LwMarch       *march,
              const LwPlan  *plan,
              const LwBatch *batch,
              const LwTrack *track)
{
  static const LwSetting settings[] = { LW_SET_PRESS_KPA, LW_SET_WALL_C };
  char *wrong = NULL;

  for (guint step = 0; step < batch->n_steps && wrong == NULL; step++)
    {
      for (guint i = 0; i < G_N_ELEMENTS (settings) && wrong == NULL; i++)
        wrong = wrong_order (march, plan, batch, track, step, settings[i]);
      if (wrong == NULL && batch->steps[step].kind == LW_KIND_ROLL)
        wrong = wrong_order (march, plan, batch, track, step, LW_SET_MINUTES);
    }

  return wrong;
}

static void
try_batch (LwMarch *march,
           guint32  seed,
           gboolean all)
{
  g_autoptr (LwSeason) season = chance_season (seed);
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwTrack) track = lw_plan_march (plan, march, (LwSampling) { .samples = SAMPLES });
  g_autofree char *wrong = wrong_track (track);

  if (wrong == NULL && (all || seed % MORE_EVERY == 0))
    wrong = wrong_orders (march, plan, season->batches[0], track);
  if (wrong == NULL && (all || seed % BALANCE_EVERY == 0))
    wrong = wrong_balance (march, season, plan);
  if (wrong != NULL)
    tell (seed, season, wrong);
}

static gpointer
try_share (gpointer data)
{
  g_autoptr (LwMarch) march = lw_march_new ();

  for (guint32 i = GPOINTER_TO_UINT (data); i < BATCHES; i += THREADS)
    try_batch (march, FIRST_SEED + i, FALSE);

  return NULL;
}

static void
test_batches (void)
{
  GThread *threads[THREADS];

  for (guint i = 0; i < THREADS; i++)
    threads[i] = g_thread_new ("share", try_share, GUINT_TO_POINTER (i));
  for (guint i = 0; i < THREADS; i++)
    g_thread_join (threads[i]);

  g_test_message ("%d batches, %d balanced, %d steps with more of something; %d failed", BATCHES, balanced, compared,
                  failures);
  g_assert_cmpint (failures, ==, 0);
  g_assert_cmpint (balanced, >=, BATCHES / BALANCE_EVERY - 1);
  g_assert_cmpint (compared, >=, BATCHES / MORE_EVERY);
}

/* What the dice make is a document, and the document is what they made. */
static void
test_documents (void)
{
  for (guint32 seed = FIRST_SEED; seed < FIRST_SEED + 200; seed++)
    {
      g_autoptr (LwSeason) season = chance_season (seed), back = NULL;
      g_autoptr (GPtrArray) problems = lw_problems_new ();
      gsize length, again_length;
      g_autofree char *text = lw_document_write (season, &length), *again = NULL;

      back = lw_document_read (text, length, problems);
      if (back == NULL)
        g_error ("seed %u: %s\n%s", seed, lw_problem_text (g_ptr_array_index (problems, 0), "chance"), text);
      again = lw_document_write (back, &again_length);
      g_assert_cmpmem (text, length, again, again_length);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  if (argc > 1)
    {
      g_autoptr (LwMarch) march = lw_march_new ();

      try_batch (march, (guint32) g_ascii_strtoull (argv[1], NULL, 10), TRUE);
      return failures > 0;
    }

  g_test_add_func ("/property/documents", test_documents);
  g_test_add_func ("/property/batches", test_batches);

  return g_test_run ();
}

/* correct-rows SEASON STEP MINUTE: for the first batch of a season's file, what a correction at that moment goes by and
 * what it comes to, as JSON for test_correct_peer.py: rows of every part's states, the fresh moisture, the foretold readings
 * and the outcomes, as the maker wrote the batch down and for each sample of luck; then the answer. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdio.h>

#include "season/document.h"
#include "season/edit.h"
#include "season/measured.h"
#include "season/problem.h"
#include "study/chance.h"
#include "study/correct.h"
#include "study/design.h"
#include "study/spread.h"

typedef struct
{
  const LwBatch *batch;
  const LwCorrect *correct;
  guint n_parts;
} Rows;

static void
put_numbers (const double *numbers,
             gsize         n)
{
  printf ("[");
  for (gsize i = 0; i < n; i++)
    printf ("%s%.17g", i > 0 ? ", " : "", numbers[i]);
  printf ("]");
}

/* Marches to the moment and writes the row. */
static void
put_row (const Rows *rows,
         LwPlan     *plan,
         LwMarch    *march)
{
  const LwCorrect *correct = rows->correct;
  g_autoptr (GArray) row = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (LwTrack) track = NULL;
  LwOutcome end;
  double number;

  plan->n_steps = correct->step + 1;
  plan->steps[correct->step].duration_s = 60 * correct->minute;
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 64 });
  g_assert_false (track->failure.failed);

  g_array_append_vals (row, lw_track_state (track, correct->step, 0, track->steps[correct->step]->n - 1),
                       rows->n_parts * LW_N_STATE);
  number = lw_wet_basis_pct (plan->leaf.fresh_water);
  g_array_append_val (row, number);
  for (guint i = 0; i < correct->n; i++)
    {
      const LwWeighed *seen = &correct->points[i].weighed;
      LwOutcome outcome = lw_track_outcome_at (track, seen->step, -1, 60 * seen->weigh_in.minute);

      number = lw_foretold (&seen->weigh_in, &outcome, rows->batch->fresh_kg);
      g_array_append_val (row, number);
    }
  end = lw_track_end (track, correct->step, -1);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      number = lw_quantity_of (q, &end);
      g_array_append_val (row, number);
    }
  put_numbers ((const double *) (gpointer) row->data, row->len);
}

/* As the maker wrote it down, and as it turns out at each sample's luck: how long steps take is not a matter of luck. */
static void
put_samples (const Rows *rows,
             LwSeason   *season)
{
  g_auto (LwChance) chance = { 0 };
  g_autoptr (LwPlan) plan = lw_plan_new (season, 0);
  g_autoptr (LwMarch) usual = lw_march_new (), loose = lw_march_new ();
  g_autofree double *luck = NULL;
  LwVary varies[LW_N_VARY];

  lw_vary_usual (varies);
  varies[LW_VARY_TIME].sd = 0;
  lw_chance_init (&chance, season, 0, varies);
  luck = lw_design_new (LW_CORRECT_SAMPLES, chance.n_dims, 1);
  lw_march_set_tolerance (loose, LW_SPREAD_TOLERANCE);

  printf (",\n\"nominal\": ");
  put_row (rows, plan, usual);
  printf (",\n\"samples\": [");
  for (guint i = 0; i < LW_CORRECT_SAMPLES; i++)
    {
      g_autoptr (LwPlan) sample = lw_chance_plan (&chance, luck + (gsize) i * chance.n_dims);

      printf (i > 0 ? ",\n" : "");
      put_row (rows, sample, loose);
    }
  printf ("]");
}

static void
put_answer (const Rows *rows)
{
  const LwCorrect *correct = rows->correct;
  const LwCorrection *correction = lw_correction_of (correct->season->batches[0], correct->step);
  g_autoptr (LwPlan) plan = lw_plan_new (correct->season, 0);
  g_autoptr (LwMarch) march = lw_march_new ();

  printf (",\n\"readings\": [");
  for (guint i = 0; i < correct->n; i++)
    printf ("%s[%.17g, %.17g, %.17g, %.17g]", i > 0 ? ", " : "", correct->points[i].weighed.weigh_in.value,
            correct->points[i].weighed.weigh_in.sd, correct->points[i].combined, correct->points[i].combined_sd);
  printf ("],\n\"outcome-sds\": [");
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    printf ("%s%.17g", q > 0 ? ", " : "", correct->of[q].combined_sd);
  printf ("],\n\"points\": %.17g, \"shifts\": ", correction->fresh_points);
  put_numbers ((const double *) correction->jump->shifts, rows->n_parts * LW_N_STATE);
  printf (",\n\"corrected\": ");
  put_row (rows, plan, march);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = argc == 4 ? lw_document_load (argv[1], problems) : NULL;
  LwCorrectAsk ask = { 0 };
  g_autoptr (LwCorrect) correct = NULL;
  Rows rows;

  if (season == NULL)
    return 1;

  ask.step = (guint) g_ascii_strtoull (argv[2], NULL, 10) - 1;
  ask.minute = g_ascii_strtod (argv[3], NULL);
  correct = lw_correct_new (season, 0, &ask, NULL, NULL);
  if (correct == NULL)
    return 1;

  rows = (Rows) { season->batches[0], correct, lw_season_profile (season, season->batches[0]->leaf)->n_parts };
  printf ("{\"parts\": %u, \"states\": [", rows.n_parts);
  for (gsize k = 0; k < LW_N_STATE; k++)
    printf ("%s\"%s\"", k > 0 ? ", " : "", lw_shift_rows ()[k].id);
  printf ("]");
  put_samples (&rows, season);
  put_answer (&rows);
  printf ("}\n");

  return 0;
}

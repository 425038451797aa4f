/* The truth is marched far finer than any fit does, and read at every minute of it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-made.h"

#include <math.h>

#include "season/surround.h"

#define TOLERANCE 1e-8
#define EVERY_S 20
#define END (-1)
#define MOST_LOOKS 4

typedef struct
{
  double minute;
  LwMeasure of;
  double tare_kg;
} Look;

typedef struct
{
  LwKind kind;
  double minutes;
  guint n;
  Look looks[MOST_LOOKS];
} Step;

static const Step green[] = {
  { LW_KIND_WITHER, 300, 2, { { 150, LW_WEIGHED_KG }, { END, LW_WEIGHED_KG } } },
  { LW_KIND_FIX_PAN, 22, 3, { { 2, LW_WALL_C }, { 12, LW_LEAF_C }, { END, LW_WEIGHED_KG, 0.6 } } },
  { LW_KIND_ROLL, 10 },
  { LW_KIND_DRY_AIR, 60, 2, { { 20, LW_WEIGHED_KG }, { END, LW_METER_PCT } } },
};
static const Step black[] = {
  { LW_KIND_WITHER, 900, 2, { { 400, LW_WEIGHED_KG }, { END, LW_WEIGHED_KG } } },
  { LW_KIND_ROLL, 45, 1, { { END, LW_JUDGED_OXIDATION_PCT } } },
  { LW_KIND_REST, 90, 2, { { 30, LW_JUDGED_OXIDATION_PCT }, { END, LW_JUDGED_OXIDATION_PCT } } },
  { LW_KIND_DRY_AIR, 50, 2, { { 15, LW_WEIGHED_KG }, { END, LW_METER_PCT } } },
};
static const Step withered[] = {
  { LW_KIND_WITHER, 1100, 3, { { 300, LW_WEIGHED_KG }, { END, LW_WEIGHED_KG }, { END, LW_JUDGED_OXIDATION_PCT } } },
  { LW_KIND_FIX_PAN, 14, 2, { { 8, LW_LEAF_C }, { END, LW_WEIGHED_KG } } },
  { LW_KIND_ROLL, 5, 1, { { END, LW_JUDGED_BROKEN_PCT } } },
  { LW_KIND_DRY_AIR, 60, 1, { { 10, LW_WEIGHED_KG } } },
};
static const Step drum[] = {
  { LW_KIND_WITHER, 240, 1, { { END, LW_WEIGHED_KG } } },
  { LW_KIND_FIX_DRUM, 6, 2, { { 3, LW_LEAF_C }, { END, LW_WEIGHED_KG } } },
  { LW_KIND_ROLL, 30 },
  { LW_KIND_DRY_AIR, 90, 3, { { 20, LW_WEIGHED_KG }, { 40, LW_WEIGHED_KG }, { END, LW_METER_PCT } } },
};

static const struct
{
  const Step *steps;
  guint n;
  double fresh_kg;
} made[] = {
  { green, G_N_ELEMENTS (green), 8 },
  { black, G_N_ELEMENTS (black), 6 },
  { withered, G_N_ELEMENTS (withered), 7 },
  { drum, G_N_ELEMENTS (drum), 20 },
};

static void
add_step (LwBatch    *batch,
          const Step *from)
{
  LwStep step = lw_step_new (from->kind);

  lw_step_set (&step, LW_SET_MINUTES, from->minutes);
  lw_batch_insert_step (batch, batch->n_steps, step);
  for (guint i = 0; i < from->n; i++)
    {
      const Look *look = &from->looks[i];

      lw_batch_add_weigh_in (batch, batch->n_steps - 1,
                             (LwWeighIn) { look->minute < 0 ? from->minutes : look->minute, look->of, look->tare_kg,
                                           lw_measure_row (look->of)->sd, look->tare_kg, NULL });
    }
}

LwSeason *
fit_made_season (void)
{
  LwSeason *season = lw_season_new ("S");

  season->altitude_m = 1250;
  lw_season_add_profile (season, lw_profile_start ());
  for (guint i = 0; i < G_N_ELEMENTS (made); i++)
    {
      g_autofree char *name = g_strdup_printf ("%u", i + 1);
      LwBatch *batch = lw_batch_new (name);

      batch->made = TRUE;
      batch->fresh_kg = made[i].fresh_kg;
      batch->when_s = 8 * 3600;
      g_free (batch->leaf);
      batch->leaf = g_strdup (season->profiles[0]->id);
      for (guint k = 0; k < made[i].n; k++)
        add_step (batch, &made[i].steps[k]);
      lw_season_insert_batch (season, i, batch);
    }

  return season;
}

double
fit_made_scatter (GRand *dice)
{
  double radius = sqrt (-2 * log (1 - g_rand_double (dice)));

  return radius * cos (2 * G_PI * g_rand_double (dice));
}

/* (transfer full) the season in which the batch and its leaf are what they truly are. */
static LwSeason *
true_season (const LwSeason *season,
             guint           batch,
             const FitTruth *truth)
{
  LwSeason *next = lw_season_copy (season);
  LwBatch *own = lw_batch_copy (season->batches[batch]);
  LwProfile *leaf = lw_profile_copy (lw_season_profile (season, own->leaf));

  for (guint i = 0; i < LW_FIT_BATCH_WEIGHT; i++)
    if (truth->change[i] != 0)
      lw_fit_apply (i, truth->change[i], leaf, own);
  lw_season_put_profile (next, leaf);
  lw_season_put_batch (next, batch, own);

  return next;
}

static double
seen (const LwTrack   *track,
      const LwStep    *step,
      guint            at,
      const LwWeighIn *weigh_in,
      double           true_kg)
{
  int of = lw_measure_row (weigh_in->of)->quantity;
  LwOutcome outcome = lw_track_outcome_at (track, at, -1, 60 * weigh_in->minute);

  if (of < 0)
    return lw_step_get (step, LW_SET_WALL_C);

  return lw_quantity_of ((LwQuantity) of, &outcome) * (weigh_in->of == LW_WEIGHED_KG ? true_kg : 1)
         + weigh_in->tare_kg;
}

static LwBatch *
weigh (const LwSeason *season,
       guint           at,
       const FitTruth *truth,
       GRand          *dice)
{
  LwBatch *batch = lw_batch_copy (season->batches[at]);
  double true_kg = batch->fresh_kg;
  g_autoptr (LwSeason) real = true_season (season, at, truth);
  g_autoptr (LwPlan) plan = lw_plan_new (real, at);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;

  lw_march_set_tolerance (march, TOLERANCE);
  track = lw_plan_march (plan, march, (LwSampling) { .every_s = EVERY_S });
  g_assert_false (track->failure.failed);

  for (guint s = 0; s < batch->n_steps; s++)
    for (guint i = 0; i < batch->steps[s].n_weigh_ins; i++)
      {
        LwWeighIn *one = &batch->steps[s].weigh_ins[i];

        one->value = seen (track, &batch->steps[s], s, one, true_kg)
                     + (dice != NULL ? one->sd * fit_made_scatter (dice) : 0);
      }
  if (dice != NULL)
    batch->fresh_kg += lw_measure_row (LW_WEIGHED_KG)->sd * fit_made_scatter (dice);

  return batch;
}

LwSeason *
fit_made_weigh (LwSeason       *season,
                const FitTruth *truth,
                GRand          *dice)
{
  LwSeason *next = lw_season_copy (season);

  for (guint i = 0; i < season->n_batches; i++)
    lw_season_put_batch (next, i, weigh (season, i, truth, dice));

  return next;
}

LwFit *
fit_made_fit (LwSeason *season,
              guint     free)
{
  LwFitAsk ask = { .free = free };
  g_autoptr (GError) error = NULL;
  LwFit *fit = lw_fit_new (season, &ask, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (fit);

  return fit;
}

LwSeason *
fit_made_part (const LwSeason *season,
               guint           batch,
               guint           n)
{
  LwSeason *next = lw_season_copy (season);
  LwBatch *own = lw_batch_copy (season->batches[batch]);
  guint taken = 0;

  for (guint s = 0; s < own->n_steps; s++)
    {
      guint here = MIN (n - taken, own->steps[s].n_weigh_ins);

      own->steps[s].n_weigh_ins = here; /* no notes to be freed in what is cut off */
      taken += here;
    }
  while (next->n_batches > 1)
    lw_season_remove_batch (next, next->n_batches - 1);
  lw_season_put_batch (next, 0, own);

  return next;
}

const LwFitWarning *
fit_made_warning (const LwFit     *fit,
                  LwFitWarningKind kind)
{
  for (guint i = 0; i < fit->n_warnings; i++)
    if (fit->warnings[i].kind == kind)
      return &fit->warnings[i];

  return NULL;
}

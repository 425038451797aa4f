/* The study "Why here": every kind of sentence is provoked by a batch, and whatever is said holds, read off the track
 * by other means than those that chose it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "claims.h"

#define STEPS 3
#define GIVEN 5
#define SAMPLES 400
#define SOLVED 2e-3   /* percent points or minutes: how closely tracks are solved */

typedef struct
{
  gsize offset;  /* in LwConditions */
  double value;
} Given;

typedef struct
{
  LwKind kind;
  double minutes;
  Given given[GIVEN];
} Step;

typedef struct
{
  LwWhyKind kind;
  LwRate rate;
  guint n;
  Step steps[STEPS];
  double minute;   /* of the last step */
  const char *says;
} Case;

#define AIR(c) { offsetof (LwConditions, air_temp_c), c }
#define DAMP(share) { offsetof (LwConditions, humidity), share }
#define WIND(m_s) { offsetof (LwConditions, air_m_s), m_s }
#define SPREAD(kg_m2) { offsetof (LwConditions, spread_kg_m2), kg_m2 }
#define PRESS(kpa) { offsetof (LwConditions, press_kpa), kpa }

#define WITHER(minutes, ...) { LW_KIND_WITHER, minutes, { __VA_ARGS__ } }
#define PAN(minutes) { LW_KIND_FIX_PAN, minutes, { { 0, 0 } } }
#define STEAM(minutes) { LW_KIND_FIX_STEAM, minutes, { { 0, 0 } } }
#define ROLL(minutes, ...) { LW_KIND_ROLL, minutes, { __VA_ARGS__ } }
#define REST(minutes, ...) { LW_KIND_REST, minutes, { __VA_ARGS__ } }
#define HOT(minutes, ...) { LW_KIND_DRY_AIR, minutes, { __VA_ARGS__ } }
#define NONE { 0, 0 }

static const Case cases[] = {
  { LW_WHY_OX_STOPPED_HERE, LW_RATE_OXIDATION, 1, { HOT (600, AIR (90), SPREAD (0.5), WIND (2)) }, 120, "less than 1 % of the enzyme is left, since" },
  { LW_WHY_OX_STOPPED_EARLIER, LW_RATE_OXIDATION, 2, { PAN (25), ROLL (10, NONE) }, 5, "in step 1." },
  { LW_WHY_OX_STOPPED, LW_RATE_OXIDATION, 2, { HOT (60, AIR (74), DAMP (0.95)), ROLL (30, PRESS (12), AIR (15)) }, 28, "less than 1 % of" },
  { LW_WHY_OX_WARMTH_HERE, LW_RATE_OXIDATION, 1, { PAN (25) }, 20, "Warmth oxidises more than the enzyme does: less" },
  { LW_WHY_OX_WARMTH_EARLIER, LW_RATE_OXIDATION, 2, { PAN (10), REST (300, AIR (70), DAMP (0.98)) }, 200, "80 °C in step 1." },
  { LW_WHY_OX_WARMTH, LW_RATE_OXIDATION, 1, { HOT (60, AIR (74), DAMP (0.95)) }, 50, "does: the leaf is at 7" },
  { LW_WHY_OX_FREE, LW_RATE_OXIDATION, 1, { ROLL (60, PRESS (12), AIR (27)) }, 25, "Little holds oxidation" },
  { LW_WHY_OX_ENZYME, LW_RATE_OXIDATION, 2, { HOT (20, AIR (70), DAMP (0.9)), ROLL (60, PRESS (12), AIR (27)) }, 40, "by its enzyme" },
  { LW_WHY_OX_WHOLE, LW_RATE_OXIDATION, 1, { WITHER (600, NONE) }, 60, "of all cells are ruptured" },
  { LW_WHY_OX_DRY, LW_RATE_OXIDATION, 2, { ROLL (40, PRESS (12)), HOT (300, AIR (40), DAMP (0.1), SPREAD (0.3), WIND (2)) }, 250, "by dryness" },
  { LW_WHY_OX_DONE, LW_RATE_OXIDATION, 2, { ROLL (60, PRESS (12)), REST (600, AIR (28), DAMP (0.95)) }, 590, "is oxidised already" },
  { LW_WHY_OX_COLD, LW_RATE_OXIDATION, 1, { ROLL (60, PRESS (12), AIR (5)) }, 55, "by coolness: the leaf is at" },
  { LW_WHY_WATER_STEAM, LW_RATE_WATER, 1, { STEAM (1) }, 0.02, "steam condenses" },
  { LW_WHY_WATER_GAINED, LW_RATE_WATER, 2, { HOT (600, AIR (90), SPREAD (0.5), WIND (2)), WITHER (60, DAMP (0.95)) }, 30, "up from the air" },
  { LW_WHY_WATER_FREE, LW_RATE_WATER, 1, { WITHER (60, AIR (38), DAMP (0.2), WIND (4), SPREAD (0.05)) }, 1, "Little holds water" },
  { LW_WHY_WATER_DRY, LW_RATE_WATER, 1, { HOT (600, AIR (90), SPREAD (0.3), WIND (2)) }, 20, "holds on to what is left" },
  { LW_WHY_WATER_PULL, LW_RATE_WATER, 1, { WITHER (600, DAMP (0.93), AIR (20)) }, 300, "pull is" },
  { LW_WHY_WATER_FILM, LW_RATE_WATER, 2, { ROLL (60, PRESS (12)), WITHER (60, AIR (45), DAMP (0.1), WIND (0.01), SPREAD (0.05)) }, 3, "still air" },
  { LW_WHY_WATER_SURFACE, LW_RATE_WATER, 1, { WITHER (600, SPREAD (8), AIR (30), DAMP (0.3)) }, 30, "of its surface" },
  { LW_WHY_RUPTURE_DONE, LW_RATE_RUPTURE, 1, { ROLL (60, PRESS (12)) }, 58, "are ruptured" },
  { LW_WHY_RUPTURE_STILL, LW_RATE_RUPTURE, 1, { WITHER (600, NONE) }, 1, "nothing presses" },
  { LW_WHY_RUPTURE_DRY, LW_RATE_RUPTURE, 2, { HOT (200, AIR (60), SPREAD (0.3), WIND (2)), ROLL (10, PRESS (6)) }, 5, "the leaf is dry" },
  { LW_WHY_RUPTURE_ROLL, LW_RATE_RUPTURE, 1, { ROLL (10, PRESS (5)) }, 5, "it is 5.0 kPa" },
  { LW_WHY_RUPTURE_HEAT, LW_RATE_RUPTURE, 1, { PAN (25) }, 5, "Heat ruptures" },
  { LW_WHY_RUPTURE_WILT, LW_RATE_RUPTURE, 1, { WITHER (1200, DAMP (0.4), AIR (25)) }, 1000, "Wilting ruptures" },
  { LW_WHY_ENZYME_GONE, LW_RATE_ENZYME, 1, { PAN (25) }, 20, "hardly any enzyme" },
  { LW_WHY_ENZYME_KEEPS, LW_RATE_ENZYME, 1, { WITHER (600, NONE) }, 1, "enzyme keeps" },
  { LW_WHY_ENZYME_HEAT, LW_RATE_ENZYME, 1, { HOT (20, AIR (70), DAMP (0.9)) }, 8, "Heat destroys" },
  { LW_WHY_ENZYME_AGE, LW_RATE_ENZYME, 1, { WITHER (1200, DAMP (0.4), AIR (25)) }, 1000, "Wilting wears" },
  { LW_WHY_ROAST_COLD, LW_RATE_ROAST, 1, { WITHER (600, NONE) }, 60, "only at 2" },
  { LW_WHY_ROAST_WET, LW_RATE_ROAST, 1, { PAN (25) }, 5, "still at" },
  { LW_WHY_ROAST_WALL, LW_RATE_ROAST, 1, { PAN (90) }, 85, "hot wall" },
  { LW_WHY_ROAST_COOL, LW_RATE_ROAST, 1, { HOT (600, AIR (95), SPREAD (0.3), WIND (2)) }, 500, "held back most by the leaf's temperature" },
  { LW_WHY_ROAST_LEAF, LW_RATE_ROAST, 1, { HOT (600, AIR (128), SPREAD (0.3), WIND (2)) }, 500, "all through" },
};

static Made
make (const Step *steps,
      guint       n)
{
  LwKind kinds[STEPS];
  g_autoptr (LwMarch) march = lw_march_new ();
  Made made;

  for (guint i = 0; i < n; i++)
    kinds[i] = steps[i].kind;
  made.season = made_season (kinds, n);
  made.plan = lw_plan_new (made.season, 0);
  for (guint i = 0; i < n; i++)
    {
      made.plan->steps[i].duration_s = 60 * steps[i].minutes;
      for (guint k = 0; k < GIVEN; k++)
        if (steps[i].given[k].offset > 0)
          *(double *) ((char *) &made.plan->steps[i] + steps[i].given[k].offset) = steps[i].given[k].value;
    }
  made.track = lw_plan_march (made.plan, march, (LwSampling) { .samples = SAMPLES, .turns = TRUE });
  g_assert_false (made.track->failure.failed);

  return made;
}

static void
made_clear (Made *made)
{
  lw_track_unref (made->track);
  lw_plan_free (made->plan);
  lw_season_unref (made->season);
}

static void
test_kinds (void)
{
  gboolean seen[LW_N_WHY_KINDS] = { FALSE };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const Case *c = &cases[i];
      Made made = make (c->steps, c->n);
      g_autoptr (LwWhy) why = lw_why_new (made.plan, made.track, c->n - 1, c->minute, c->rate);

      g_test_message ("%u: %s", i, why->sentence);
      if (why->kind != c->kind || strstr (why->sentence, c->says) == NULL)
        g_error ("case %u (kind %u) says: %s", i, c->kind, why->sentence);
      claims_assert (&made, why, lw_why_per_h (why, why->per_s));
      seen[c->kind] = TRUE;
      made_clear (&made);
    }

  for (LwWhyKind kind = 0; kind < LW_N_WHY_KINDS; kind++)
    if (!seen[kind])
      g_error ("no case for kind %u", kind);
}

/* The trade's value of a rate at a sample. */
static double
told (const LwTrack *track,
      guint          step,
      guint          i,
      LwRate         rate)
{
  LwOutcome at = lw_track_outcome (track, step, -1, i);
  const double values[LW_N_RATES] = {
    [LW_RATE_OXIDATION] = at.oxidation_pct,
    [LW_RATE_WATER] = -at.moisture_wb_pct,
    [LW_RATE_RUPTURE] = at.rupture_pct,
    [LW_RATE_ENZYME] = -at.enzyme_left_pct,
    [LW_RATE_ROAST] = at.roast_min,
  };

  return values[rate];
}

/* At sample `i`, which is between two others: what is said holds, the numbers are the track's own slope, and the
 * factors multiply to the rate, of the batch and of each part. */
static void
assert_moment (const Made *made,
               guint       step,
               guint       i,
               LwRate      rate)
{
  const LwSegment *segment = made->track->steps[step];
  g_autoptr (LwWhy) why = lw_why_new (made->plan, made->track, step, segment->time_s[i] / 60, rate);
  double gap_h = (segment->time_s[i + 1] - segment->time_s[i - 1]) / 3600, sum = 0;
  double before = told (made->track, step, i - 1, rate), here = told (made->track, step, i, rate),
         after = told (made->track, step, i + 1, rate);
  double slope = (after - before) / gap_h, bend = fabs (after - 2 * here + before) / gap_h;

  g_assert_cmpfloat (fabs (lw_why_per_h (why, why->per_s) - slope), <=, 2 * bend + 2e-2 * fabs (slope) + SOLVED / gap_h);
  claims_assert (made, why, lw_why_per_h (why, why->per_s));

  for (guint k = 0; k < why->n_ways; k++)
    {
      double mean = 0, product = lw_factors_product (&why->ways[k].mean) * why->ways[k].apart;

      for (guint part = 0; part < why->n_parts; part++)
        mean += made->track->parts[part].share * lw_factors_product (&why->parts[k * why->n_parts + part]);
      g_assert_cmpfloat (fabs (mean - why->ways[k].per_s), <=, 1e-12 * fabs (mean));
      if (why->ways[k].apart != 1)
        g_assert_cmpfloat (fabs (product - mean), <=, 1e-12 * fabs (mean));
      g_assert_cmpuint (why->parts[k * why->n_parts].way, ==, why->ways[k].mean.way);
      sum += mean;
    }
  g_assert_cmpfloat (fabs (sum - why->per_s), <=, 1e-12 * (fabs (sum) + fabs (why->ways[0].per_s)));
}

/* All along every case's batch. */
static void
test_always (void)
{
  for (guint c = 0; c < G_N_ELEMENTS (cases); c++)
    {
      Made made = make (cases[c].steps, cases[c].n);

      for (guint step = 0; step < cases[c].n; step++)
        for (guint i = 5; i < SAMPLES; i += 13)
          for (LwRate rate = 0; rate < LW_N_RATES; rate++)
            assert_moment (&made, step, i, rate);
      made_clear (&made);
    }
}

/* The minute in the sentence is that of the turning point, the percentage that of the panel. */
static void
test_numbers (void)
{
  const Step pan[] = { PAN (25) };
  Made made = make (pan, 1);
  g_autofree char *since = NULL;
  guint told_of = 0;

  for (guint i = 0; i < made.track->steps[0]->n_turns; i++)
    if (made.track->steps[0]->turns[i].kind == LW_TURN_HOT)
      since = g_strdup_printf (", since the leaf passed 80 °C at minute %.1f.", made.track->steps[0]->turns[i].time_s / 60);
  g_assert_nonnull (since);

  for (double minute = 0; minute < 12; minute += 0.01)
    {
      g_autoptr (LwWhy) why = lw_why_new (made.plan, made.track, 0, minute, LW_RATE_OXIDATION);
      double left = lw_track_outcome_at (made.track, 0, -1, minute * 60).enzyme_left_pct;

      if (why->kind != LW_WHY_OX_WARMTH_HERE && why->kind != LW_WHY_OX_STOPPED_HERE)
        continue;

      g_assert_true (g_str_has_suffix (why->sentence, since));
      g_assert_true (strstr (why->sentence, left < 0.5 ? ": less than 1 % of" : left < 1.5 ? ": 1 % of" : " % of") != NULL);
      told_of++;
    }
  g_assert_cmpuint (told_of, >, 100);
  made_clear (&made);
}

static void
test_words (void)
{
  LwWhy why = { .rate = LW_RATE_OXIDATION };
  const struct { double per_h; const char *said; } rates[] = {
    { 12.34, "12.3 % points an hour" }, { 120, "2.00 % points a minute" }, { -1e-9, "0.00 % points an hour" },
  };
  const struct { double value; gboolean times; const char *said; } factors[] = {
    { 0.314, FALSE, "0.31" }, { 1.25, TRUE, "× 1.25" }, { 1e-6, TRUE, "× < 0.01" }, { 0, FALSE, "0.00" },
    { 138.2, TRUE, "× 138" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rates); i++)
    {
      g_autofree char *said = lw_why_say_rate (&why, rates[i].per_h / 360000);

      g_assert_cmpstr (said, ==, rates[i].said);
    }
  for (guint i = 0; i < G_N_ELEMENTS (factors); i++)
    {
      g_autofree char *said = lw_why_say_factor (factors[i].value, factors[i].times);

      g_assert_cmpstr (said, ==, factors[i].said);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/why/kinds", test_kinds);
  g_test_add_func ("/why/always", test_always);
  g_test_add_func ("/why/numbers", test_numbers);
  g_test_add_func ("/why/words", test_words);

  return g_test_run ();
}

/* The story that the shipped seasons tell, held to what the model computes of them.
 * Margins stand in the code; the seasons are invented. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo-test.h"

#include <math.h>

#define HOUR_S 3600
#define DAY_H 24

typedef struct
{
  guint n;
  double least_dry, most_dry;     /* share of the leaf under 20 % at the pan */
  double least_roast, most_roast; /* mean of a batch, after the pan */
  double least_dry_part, most_part; /* roast of the parts that came dry, and of any part */
  double most_uneven;             /* at the pan */
  double most_wall_c, least_pan_min, least_wall_c, most_pan_min;
} Withers;

static double
share_dry (const LwTrack *track)
{
  double share = 0;

  for (guint part = 0; part < track->n_parts; part++)
    if (lw_track_end (track, 0, (int) part).moisture_wb_pct < 20)
      share += track->parts[part].share;

  return share;
}

static void
take_parts (Withers       *withers,
            const LwTrack *track)
{
  for (guint part = 0; part < track->n_parts; part++)
    {
      double roast = lw_track_end (track, 1, (int) part).roast_min;

      withers->most_part = MAX (withers->most_part, roast);
      if (lw_track_end (track, 0, (int) part).moisture_wb_pct < 20)
        withers->least_dry_part = MIN (withers->least_dry_part, roast);
    }
}

static void
take_batch (Withers       *withers,
            const LwBatch *batch,
            const LwTrack *track)
{
  double dry = share_dry (track), roast = lw_track_end (track, 1, -1).roast_min;
  double uneven = lw_track_end (track, 0, -1).uneven_pct;
  double wall_c = lw_step_get (&batch->steps[1], LW_SET_WALL_C);
  double pan_min = lw_step_get (&batch->steps[1], LW_SET_MINUTES);

  g_test_message ("%s: %.2f of the leaf dry at the pan, uneven %.1f, roast %.2f min after it",
                  batch->name, dry, uneven, roast);

  withers->n++;
  withers->least_dry = MIN (withers->least_dry, dry);
  withers->most_dry = MAX (withers->most_dry, dry);
  withers->least_roast = MIN (withers->least_roast, roast);
  withers->most_roast = MAX (withers->most_roast, roast);
  withers->most_uneven = MAX (withers->most_uneven, uneven);
  withers->least_wall_c = MIN (withers->least_wall_c, wall_c);
  withers->most_wall_c = MAX (withers->most_wall_c, wall_c);
  withers->least_pan_min = MIN (withers->least_pan_min, pan_min);
  withers->most_pan_min = MAX (withers->most_pan_min, pan_min);
  take_parts (withers, track);
}

/* All made long withers of a year that go to the pan. */
static Withers
long_withers (int year)
{
  g_autoptr (LwSeason) season = demo_load (year);
  Withers withers = {
    .least_dry = INFINITY, .least_roast = INFINITY, .least_dry_part = INFINITY,
    .least_wall_c = INFINITY, .least_pan_min = INFINITY,
  };

  for (guint i = 0; i < season->n_batches; i++)
    {
      const LwBatch *batch = season->batches[i];

      if (batch->made && g_strcmp0 (batch->tea, "reddened sun-dried") == 0)
        {
          g_autoptr (LwTrack) track = demo_march (season, i);

          g_assert_cmpint (batch->steps[1].kind, ==, LW_KIND_FIX_PAN);
          take_batch (&withers, batch, track);
        }
    }

  return withers;
}

/* 2025 a third of the leaf came nearly dry to the pan and roasted there; 2026 it came even. */
static void
test_withers (void)
{
  Withers bare = long_withers (2025), covered = long_withers (2026);

  g_test_message ("dry parts of 2025 roasted %.0f min or more, any part of 2026 %.1f min or less",
                  bare.least_dry_part, covered.most_part);

  g_assert_cmpuint (bare.n, >=, 4);
  g_assert_cmpfloat (bare.least_dry, >=, 0.25);
  g_assert_cmpfloat (bare.most_dry, <=, 0.5);
  g_assert_cmpfloat (bare.least_roast, >, 30);

  g_assert_cmpuint (covered.n, >=, 4);
  g_assert_cmpfloat (covered.most_dry, ==, 0);
  g_assert_cmpfloat (covered.most_roast, <, 2);
  g_assert_cmpfloat (covered.most_uneven, <, 0.6 * bare.most_uneven);
  g_assert_cmpfloat (bare.least_dry_part, >, 10 * covered.most_part);

  /* The gentler, longer pan. */
  g_assert_cmpfloat (covered.most_wall_c, <, bare.least_wall_c - 20);
  g_assert_cmpfloat (covered.least_pan_min, >, 1.5 * bare.most_pan_min);
}

static int
numbered (const LwSeason *season,
          int             number)
{
  for (guint i = 0; i < season->n_batches; i++)
    if (atoi (season->batches[i]->name) == number)
      return (int) i;

  g_assert_not_reached ();
}

/* A wet morning: batch 9 is heavier at the drum than its aim, and batch 8 was not. */
static void
test_wet_morning (void)
{
  g_autoptr (LwSeason) season = demo_load (2026);
  guint eight = (guint) numbered (season, 8), nine = (guint) numbered (season, 9);
  g_autoptr (LwTrack) usual = demo_march (season, eight);
  g_autoptr (LwTrack) wet = demo_march (season, nine);
  const LwStep *wither = &season->batches[nine]->steps[0];
  const LwWeighIn *last = &wither->weigh_ins[wither->n_weigh_ins - 1];
  double a = lw_track_end (usual, 0, -1).kg_per_kg_fresh;
  double b = lw_track_end (wet, 0, -1).kg_per_kg_fresh;

  g_test_message ("kg per kg fresh at the drum: batch 8 %.3f, batch 9 %.3f, planned %.2f at most",
                  a, b, wither->aims[0].high);

  g_assert_cmpint (wither->aims[0].of, ==, LW_WEIGHT);
  g_assert_cmpint (season->batches[nine]->steps[1].kind, ==, LW_KIND_FIX_DRUM);
  g_assert_cmpfloat (a, <, wither->aims[0].high);
  g_assert_cmpfloat (b, >, wither->aims[0].high + 0.03);
  g_assert_cmpfloat ((last->value - last->tare_kg) / season->batches[nine]->fresh_kg, >,
                     wither->aims[0].high + 0.03);
  g_assert_cmpfloat (lw_track_end (wet, 0, -1).moisture_wb_pct, >,
                     lw_track_end (usual, 0, -1).moisture_wb_pct + 3);
}

/* The buyer wants batch 12 again: 15 plans the same steps in other weather, and as it stands
 * misses aims that 12 met. */
static void
test_again (void)
{
  g_autoptr (LwSeason) season = demo_load (2026);
  guint at = (guint) numbered (season, 12), again = (guint) numbered (season, 15);
  const LwBatch *a = season->batches[at], *b = season->batches[again];
  g_autoptr (LwTrack) first = demo_march (season, at);
  g_autoptr (LwTrack) second = demo_march (season, again);
  guint missed[2] = { 0 };

  g_assert_nonnull (strstr (a->note, "buyer"));
  g_assert_false (b->made);
  g_assert_cmpstr (a->weather, !=, b->weather);
  g_assert_cmpuint (a->n_steps, ==, b->n_steps);

  for (guint i = 0; i < a->n_steps; i++)
    {
      g_assert_cmpint (a->steps[i].kind, ==, b->steps[i].kind);
      g_assert_cmpuint (a->steps[i].given, ==, b->steps[i].given);
      g_assert_cmpmem (a->steps[i].value, sizeof a->steps[i].value,
                       b->steps[i].value, sizeof b->steps[i].value);

      for (guint k = 0; k < a->steps[i].n_aims; k++)
        {
          const LwAim *aim = &a->steps[i].aims[k];
          LwOutcome ends[] = { lw_track_end (first, i, -1), lw_track_end (second, i, -1) };

          for (guint j = 0; j < 2; j++)
            missed[j] += !(lw_quantity_of (aim->of, &ends[j]) >= aim->low
                           && lw_quantity_of (aim->of, &ends[j]) <= aim->high);
        }
    }

  g_assert_cmpuint (missed[0], ==, 0);
  g_assert_cmpuint (missed[1], >=, 1);
}

static double
mean_humidity (const LwHour *hours,
               guint         n)
{
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += hours[i].humidity_pct;

  return sum / n;
}

/* 2026 is drier than 2025 but for two humid days; it rained on the morning of batch 9. */
static void
test_weather (void)
{
  g_autoptr (LwSeason) before = demo_load (2025), season = demo_load (2026);
  const LwWeather *wet = before->weathers[0], *dry = season->weathers[0];
  const LwBatch *nine = season->batches[numbered (season, 9)];
  guint morning = (guint) ((nine->when_s - dry->start_s) / HOUR_S / DAY_H * DAY_H + 7);
  double a = mean_humidity (wet->hours, wet->n_hours);
  double b = mean_humidity (dry->hours, dry->n_hours);
  guint humid = 0;

  for (guint i = 0; i < dry->n_hours; i += DAY_H)
    humid += mean_humidity (&dry->hours[i], DAY_H) > 75;

  for (guint i = 0; i < MIN (wet->n_hours, dry->n_hours); i++)
    for (guint k = 0; k < 2; k++)
      {
        double temp_c = (k ? dry : wet)->hours[i].temp_c;

        g_assert_cmpfloat (temp_c, >, 12);
        g_assert_cmpfloat (temp_c, <, 30);
      }

  g_test_message ("mean humidity %.1f %%, then %.1f %%; %u humid days", a, b, humid);
  g_assert_cmpuint (humid, ==, 2);
  g_assert_cmpfloat (b, <, a - 3);
  for (guint i = morning; i < morning + 3; i++)
    {
      g_assert_cmpfloat (dry->hours[i].humidity_pct, >=, 90);
      g_assert_cmpfloat (dry->hours[i].sun_w_m2, <, 200);
    }
}

void
demo_add_story (void)
{
  g_test_add_func ("/demo/story/withers", test_withers);
  g_test_add_func ("/demo/story/wet-morning", test_wet_morning);
  g_test_add_func ("/demo/story/again", test_again);
  g_test_add_func ("/demo/story/weather", test_weather);
}

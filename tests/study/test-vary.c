/* What varies: the notation, the points, and what a batch meets at them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "made.h"
#include "study/chance.h"
#include "study/design.h"
#include "study/moved.h"
#include "study/tally.h"

static const LwKind four[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };

static void
test_notation (void)
{
  static const struct { const char *text; LwVarySource source; LwVary is; } good[] = {
    { "wall=7", LW_VARY_WALL, { 7, FALSE, TRUE } },
    { "wall=2.5%", LW_VARY_WALL, { 2.5, TRUE, TRUE } },
    { "wall=7/batch", LW_VARY_WALL, { 7, FALSE, FALSE } },
    { "time=4%/step", LW_VARY_TIME, { 4, TRUE, TRUE } },
    { "skin=0", LW_VARY_SKIN, { 0, FALSE, FALSE } },
    { "moisture=0.5/batch", LW_VARY_MOISTURE, { 0.5, FALSE, FALSE } },
  };
  static const char *const bad[] = {
    "", "=", "wall", "wall=", "wall=x", "wall=-1", "wall=nan", "wall=inf", "wall=1e999", "wall=5 ", "wall= 5",
    "wall=5%%", "wall=5/steps", "wal=5", "walls=5", "wall=101", "wall=101%", "moisture=1%", "moisture=1/step", "skin=1",
    "air=1/step", "all=1", "all", "wall=0x1p4/", "wall=5,3", "wall==5",
  };
  LwVary varies[LW_N_VARY], usual[LW_N_VARY];

  lw_vary_usual (usual);
  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_autoptr (GError) error = NULL;

      lw_vary_usual (varies);
      g_assert_true (lw_vary_parse (good[i].text, varies, &error));
      g_assert_no_error (error);
      for (guint s = 0; s < LW_N_VARY; s++)
        {
          const LwVary *want = s == good[i].source ? &good[i].is : &usual[s];

          g_assert_cmpfloat (varies[s].sd, ==, want->sd);
          g_assert_cmpint (varies[s].percent, ==, want->percent);
          g_assert_cmpint (varies[s].each_step, ==, want->each_step);
        }
    }

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;

      lw_vary_usual (varies);
      g_test_message ("“%s”", bad[i]);
      g_assert_false (lw_vary_parse (bad[i], varies, &error));
      g_assert_nonnull (error);
      for (guint s = 0; s < LW_N_VARY; s++)
        g_assert_cmpfloat (varies[s].sd, ==, usual[s].sd);
    }

  g_assert_true (lw_vary_parse ("all=0", varies, NULL));
  for (guint s = 0; s < LW_N_VARY; s++)
    g_assert_cmpfloat (varies[s].sd, ==, 0);
}

/* What is written is read again; the usual amounts are within their own bounds. */
static void
test_notation_again (void)
{
  LwVary usual[LW_N_VARY], varies[LW_N_VARY];

  lw_vary_usual (usual);
  for (guint s = 0; s < LW_N_VARY; s++)
    {
      g_autofree char *amount = lw_vary_text (usual[s]);
      g_autofree char *text = g_strdup_printf ("%s=%s", lw_vary_row (s)->id, amount);
      g_autoptr (GError) error = NULL;

      lw_vary_usual (varies);
      varies[s].sd = -1;
      lw_vary_parse (text, varies, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat (varies[s].sd, ==, usual[s].sd);
      g_assert_cmpfloat (usual[s].sd, >, 0);
    }
}

/* In every dimension 2^m points fall one into each of 2^m cells, shifted or not; another seed gives other points. */
static void
test_design_even (void)
{
  enum { N = 256, D = LW_DESIGN_EVEN };
  g_autofree double *rows = lw_design_new (N, D, 7), *shorter = lw_design_new (N / 2, D, 7);
  g_autofree double *other = lw_design_new (N, D, 8);
  guint differ = 0;

  for (guint k = 0; k < D; k++)
    {
      gboolean taken[N] = { FALSE };

      for (guint i = 0; i < N; i++)
        {
          guint cell = (guint) (rows[i * D + k] * N);

          g_assert_cmpfloat (rows[i * D + k], >, 0);
          g_assert_cmpfloat (rows[i * D + k], <, 1);
          g_assert_false (taken[cell]);
          taken[cell] = TRUE;
          differ += rows[i * D + k] != other[i * D + k];
        }
    }
  for (guint i = 0; i < N / 2 * D; i++)
    g_assert_cmpfloat (shorter[i], ==, rows[i]);
  g_assert_cmpuint (differ, >, N * D * 9 / 10);
}

/* Beyond GSL's dimensions: plain random numbers, uniform, and unlike each other. */
static void
test_design_beyond (void)
{
  enum { N = 4096, D = LW_DESIGN_EVEN + 6 };
  g_autofree double *rows = lw_design_new (N, D, 3);

  for (guint k = LW_DESIGN_EVEN - 1; k < D; k++)
    {
      double mean = 0, square = 0, with = 0;

      for (guint i = 0; i < N; i++)
        {
          double u = rows[i * D + k] - 0.5, v = rows[i * D + k - 1] - 0.5;

          mean += u / N;
          square += u * u / N;
          with += u * v / N;
        }
      g_assert_cmpfloat (fabs (mean), <, 4 * sqrt (1.0 / 12 / N));
      g_assert_cmpfloat (fabs (square - 1.0 / 12), <, 0.005);
      g_assert_cmpfloat (fabs (with), <, 4.0 / 12 / sqrt (N));
    }
}

/* Against the textbook: 97.5 % of a normal distribution lie under 1.959964 deviations; cut in half, its mean is
 * sd sqrt (2/pi) away. */
static void
test_cut_normal (void)
{
  enum { N = 20000 };
  double mean = 0;

  g_assert_cmpfloat_with_epsilon (lw_design_cut_normal (0.975, 10, 2, -INFINITY, INFINITY), 10 + 2 * 1.959964, 1e-6);
  g_assert_cmpfloat_with_epsilon (lw_design_cut_normal (0.5, 10, 2, -INFINITY, INFINITY), 10, 1e-12);
  g_assert_cmpfloat (lw_design_cut_normal (0.3, 10, 0, 0, 20), ==, 10);
  g_assert_cmpfloat (lw_design_cut_normal (0.3, 10, 0, 12, 20), ==, 12);
  for (guint i = 0; i < N; i++)
    {
      double value = lw_design_cut_normal ((i + 0.5) / N, 10, 2, 10, INFINITY);

      g_assert_cmpfloat (value, >=, 10);
      mean += value / N;
    }
  g_assert_cmpfloat_with_epsilon (mean, 10 + 2 * sqrt (2 / G_PI), 1e-3);
}

static LwPlan *
plan_at (LwSeason   *season,
         const char *const *texts,
         double      luck)
{
  g_auto (LwChance) chance = { 0 };
  g_autofree double *all = NULL;
  LwVary varies[LW_N_VARY];

  lw_vary_usual (varies);
  for (guint i = 0; texts[i] != NULL; i++)
    g_assert_true (lw_vary_parse (texts[i], varies, NULL));
  lw_chance_init (&chance, season, 0, varies);
  all = g_new (double, MAX (chance.n_dims, 1));
  for (guint i = 0; i < chance.n_dims; i++)
    all[i] = luck;

  return lw_chance_plan (&chance, all);
}

/* With ordinary luck the batch is the one written down; with none of it varying, whatever the luck. */
static void
test_chance_middle (void)
{
  g_autoptr (LwSeason) season = made_season (four, G_N_ELEMENTS (four));
  g_autoptr (LwPlan) own = lw_plan_new (season, 0);
  g_autoptr (LwPlan) middle = plan_at (season, (const char *const[]) { "hot-air=1", NULL }, 0.5);
  g_autoptr (LwPlan) none = plan_at (season, (const char *const[]) { "all=0", NULL }, 0.99);

  g_assert_cmpmem (none->steps, none->n_steps * sizeof *none->steps, own->steps, own->n_steps * sizeof *own->steps);
  g_assert_cmpmem (&none->leaf.law, sizeof (LwLaw), &own->leaf.law, sizeof (LwLaw));
  g_assert_cmpfloat_with_epsilon (middle->steps[1].wall_c, own->steps[1].wall_c, 1e-9);
  g_assert_cmpfloat_with_epsilon (middle->steps[0].duration_s, own->steps[0].duration_s, 1e-6);
  g_assert_cmpfloat_with_epsilon (middle->leaf.fresh_water, own->leaf.fresh_water, 1e-9);
}

/* Each source moves what it is called after by its amount, and nothing else. 0.8413447 is one deviation. */
static void
test_chance_one_deviation (void)
{
  static const char *const walls[] = { "all=0", "wall=6", NULL }, *const times[] = { "all=0", "time=10%", NULL };
  static const char *const skins[] = { "all=0", "skin=20%", NULL }, *const airs[] = { "all=0", "air=2", NULL };
  static const char *const suns[] = { "all=0", "sun=10%", NULL };
  g_autoptr (LwSeason) season = made_season (four, G_N_ELEMENTS (four));
  g_autoptr (LwPlan) own = NULL, wall = NULL, time = NULL, skin = NULL, air = NULL, sun = NULL;
  double one = 0.8413447460685429;
  guint field = (guint) lw_law_find ("g-cut");

  made_set (&season, 0, LW_SET_SUN_PCT, 100);
  own = lw_plan_new (season, 0);
  wall = plan_at (season, walls, one);
  g_assert_cmpfloat_with_epsilon (wall->steps[1].wall_c - own->steps[1].wall_c, 6, 1e-3);
  g_assert_cmpfloat (wall->steps[1].duration_s, ==, own->steps[1].duration_s);
  g_assert_cmpfloat (wall->leaf.fresh_water, ==, own->leaf.fresh_water);

  time = plan_at (season, times, one);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat_with_epsilon (time->steps[i].duration_s / own->steps[i].duration_s, 1.1, 1e-6);

  skin = plan_at (season, skins, one);
  g_assert_cmpfloat_with_epsilon (lw_law_get (&skin->leaf.law, field) / lw_law_get (&own->leaf.law, field), 1.2, 1e-6);

  /* Rooms stray; the dryer's heated air does not. */
  air = plan_at (season, airs, one);
  g_assert_cmpfloat_with_epsilon (air->steps[0].air_temp_c - own->steps[0].air_temp_c, 2, 1e-4);
  g_assert_cmpfloat_with_epsilon (air->steps[2].air_temp_c - own->steps[2].air_temp_c, 2, 1e-4);
  g_assert_cmpfloat (air->steps[3].air_temp_c, ==, own->steps[3].air_temp_c);

  /* There can be more sun than was said, though the setting is at its most. */
  sun = plan_at (season, suns, one);
  g_assert_cmpfloat_with_epsilon (sun->steps[0].sun_share, 1.1, 1e-6);
}

/* Whatever the luck, every value is within the document's range. */
static void
test_chance_ranges (void)
{
  static const char *const wild[] = {
    "wall=100", "time=100%", "load=100%", "layer=100%", "pressure=100%", "moisture=20", "air=20", "humidity=40",
    "skin=100%", "oxidation=100%", "enzyme=100%", "hot-air=100", "sun=100%", NULL,
  };
  g_autoptr (LwSeason) season = made_season (four, G_N_ELEMENTS (four));
  const double lucks[] = { 1e-9, 0.01, 0.3, 0.7, 0.99, 1 - 1e-9 };

  for (guint l = 0; l < G_N_ELEMENTS (lucks); l++)
    {
      g_autoptr (LwPlan) plan = plan_at (season, wild, lucks[l]);
      const LwBatch *batch = plan->season->batches[0];

      for (guint i = 0; i < batch->n_steps; i++)
        for (guint k = 0; k < lw_kind_row (batch->steps[i].kind)->n_settings; k++)
          {
            const LwKindSetting *row = &lw_kind_row (batch->steps[i].kind)->settings[k];

            g_assert_cmpfloat (lw_step_get (&batch->steps[i], row->setting), >=, row->low);
            g_assert_cmpfloat (lw_step_get (&batch->steps[i], row->setting), <=, row->high);
          }
      for (guint f = 0; f < LW_N_LAW; f++)
        {
          g_assert_cmpfloat (lw_law_get (&plan->leaf.law, f), >=, lw_law_fields ()[f].low);
          g_assert_cmpfloat (lw_law_get (&plan->leaf.law, f), <=, lw_law_fields ()[f].high);
        }
      g_assert_cmpfloat (batch->fresh_moisture_pct, >=, 50);
      g_assert_cmpfloat (batch->fresh_moisture_pct, <=, 92);
    }
}

/* A moved record reads as the record and the move, all through the batch. */
static void
test_moved_hours (void)
{
  LwHour hours[96];
  g_autoptr (LwWeather) weather = NULL, moved = NULL, still = NULL;
  const double from_s = 20.3 * 3600, to_s = 51.7 * 3600;

  for (guint i = 0; i < G_N_ELEMENTS (hours); i++)
    hours[i] = (LwHour) { 20 + 6 * sin (i * 0.26), 60 + 20 * cos (i * 0.31), 300 * fabs (sin (i * 0.13)), 1, NAN, NAN };
  weather = lw_weather_new ("w", "W", 0, hours, G_N_ELEMENTS (hours));
  moved = lw_weather_moved (weather, &(LwWeatherMove) { 3, 0, from_s, to_s });
  still = lw_weather_moved (weather, &(LwWeatherMove) { 0, 0, from_s, to_s });
  g_assert_cmpuint (moved->n_hours, <, 40);
  for (double t = from_s; t <= to_s; t += 300)
    {
      LwAirNow was = lw_sky_at (weather->sky, t), is = lw_sky_at (moved->sky, t), same = lw_sky_at (still->sky, t);

      g_assert_cmpfloat_with_epsilon (is.temp_c, was.temp_c + 3, 1e-9);
      g_assert_cmpfloat_with_epsilon (is.sun_w_m2, was.sun_w_m2, 1e-9);
      g_assert_cmpfloat (is.vapour_pa, >, was.vapour_pa);
      g_assert_cmpfloat_with_epsilon (same.vapour_pa, was.vapour_pa, 1e-9);
    }
}

/* Before and after the record too, and for the other forms. */
static void
test_moved_others (void)
{
  const LwHour hour = { 24, 60, NAN, 0.5, 20, 0 };
  const LwDay dew = { 15, 5, 25, 14, NAN, 12, 20, 1 }, damp = { 15, 5, 25, 14, 70, NAN, 20, 1 };
  g_autoptr (LwWeather) record = lw_weather_new ("w", "W", 0, (LwHour[2]) { hour, hour }, 2);
  g_autoptr (LwWeather) constant = lw_weather_new_constant ("c", "C", &hour);
  g_autoptr (LwWeather) dewy = lw_weather_new_day ("d", "D", &dew), damply = lw_weather_new_day ("e", "E", &damp);
  LwWeather *all[] = { record, constant, dewy, damply };

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    for (int when = -1; when <= 1; when++)
      {
        double t = when * 900000.0;
        g_autoptr (LwWeather) moved = lw_weather_moved (all[i], &(LwWeatherMove) { 2, 10, t, t + 3600 });
        g_autoptr (LwWeather) wild = lw_weather_moved (all[i], &(LwWeatherMove) { 400, -400, t, t + 3600 });
        LwAirNow was = lw_sky_at (all[i]->sky, t), is = lw_sky_at (moved->sky, t), far = lw_sky_at (wild->sky, t);

        g_assert_cmpfloat_with_epsilon (is.temp_c, was.temp_c + 2, 1e-9);
        g_assert_cmpfloat (is.vapour_pa, >, was.vapour_pa * 1.05);
        g_assert_cmpfloat (far.temp_c, <=, 60);
        g_assert_cmpfloat (far.vapour_pa, >, 0);
      }
}

/* 1..9 by hand; a share's error as the Beta distribution has it; Ppk of ISO 22514-4 by hand. */
static void
test_tally (void)
{
  double values[] = { 9, 1, NAN, 8, 2, 7, 3, INFINITY, 6, 4, 5 };
  LwSpan span = lw_span_of (values, G_N_ELEMENTS (values)), nothing = lw_span_of (values, 0);

  g_assert_cmpfloat_with_epsilon (span.mean, 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (span.sd, sqrt (7.5), 1e-12);
  g_assert_cmpfloat_with_epsilon (span.q05, 1.4, 1e-12);
  g_assert_cmpfloat_with_epsilon (span.q25, 3, 1e-12);
  g_assert_cmpfloat_with_epsilon (span.q50, 5, 1e-12);
  g_assert_cmpfloat_with_epsilon (span.q75, 7, 1e-12);
  g_assert_cmpfloat_with_epsilon (span.q95, 8.6, 1e-12);
  g_assert_true (isnan (nothing.mean));

  g_assert_cmpfloat_with_epsilon (lw_span_ppk (&(LwSpan) { .mean = 5, .sd = 0.5 }, 2, 6), 1 / 1.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (lw_span_ppk (&(LwSpan) { .mean = 5, .sd = 0.5 }, 2, INFINITY), 2, 1e-12);
  g_assert_cmpfloat_with_epsilon (lw_span_ppk (&(LwSpan) { .mean = 7, .sd = 0.5 }, -INFINITY, 6), -1 / 1.5, 1e-12);
  g_assert_true (isnan (lw_span_ppk (&(LwSpan) { .mean = 5, .sd = 0.5 }, -INFINITY, INFINITY)));
  g_assert_true (isnan (lw_span_ppk (&(LwSpan) { .mean = 5, .sd = 0 }, 2, 6)));

  /* The textbook's table: 68.27 and 95.45 % within one and two deviations, 15.87 % beyond one. */
  g_assert_cmpfloat_with_epsilon (lw_span_normal_share (&(LwSpan) { .mean = 5, .sd = 0.5 }, 4.5, 5.5), 0.682689, 1e-6);
  g_assert_cmpfloat_with_epsilon (lw_span_normal_share (&(LwSpan) { .mean = 5, .sd = 0.5 }, 4, 6), 0.954500, 1e-6);
  g_assert_cmpfloat_with_epsilon (lw_span_normal_share (&(LwSpan) { .mean = 5, .sd = 0.5 }, -INFINITY, 4.5), 0.158655, 1e-6);
  g_assert_true (isnan (lw_span_normal_share (&(LwSpan) { .mean = 5, .sd = 0 }, 2, 6)));

  g_assert_cmpfloat_with_epsilon (lw_share_se (50, 100), sqrt (0.25 / 103), 1e-12);
  g_assert_cmpfloat (lw_share_se (0, 100), >, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/vary/notation", test_notation);
  g_test_add_func ("/vary/notation-again", test_notation_again);
  g_test_add_func ("/vary/design-even", test_design_even);
  g_test_add_func ("/vary/design-beyond", test_design_beyond);
  g_test_add_func ("/vary/cut-normal", test_cut_normal);
  g_test_add_func ("/vary/chance-middle", test_chance_middle);
  g_test_add_func ("/vary/chance-one-deviation", test_chance_one_deviation);
  g_test_add_func ("/vary/chance-ranges", test_chance_ranges);
  g_test_add_func ("/vary/moved-hours", test_moved_hours);
  g_test_add_func ("/vary/moved-others", test_moved_others);
  g_test_add_func ("/vary/tally", test_tally);

  return g_test_run ();
}

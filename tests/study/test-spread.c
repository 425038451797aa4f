/* A spread: the same bytes by any number of threads, what must follow from the amounts, numbers found in other ways. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>

#include "made.h"
#include "study/design.h"
#include "study/spread.h"

static const LwKind three[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL };

static LwSpread *
spread_of (LwSeason          *season,
           guint              samples,
           guint              rows,
           const char *const *texts)
{
  LwSpreadAsk ask;

  lw_spread_ask_init (&ask);
  ask.samples = samples;
  ask.rows = rows;
  for (guint i = 0; texts != NULL && texts[i] != NULL; i++)
    g_assert_true (lw_vary_parse (texts[i], ask.varies, NULL));

  return lw_spread_new (season, 0, &ask, NULL);
}

static void
assert_same (const LwSpread *a,
             const LwSpread *b)
{
  gsize indices = (gsize) a->n_ends * LW_N_QUANTITIES * a->n_sources;
  gsize bands = (gsize) a->n_steps * (a->points + 1) * LW_N_QUANTITIES;

  g_assert_cmpmem (a->ends, a->n_ends * sizeof *a->ends, b->ends, b->n_ends * sizeof *b->ends);
  g_assert_cmpmem (a->aims, a->n_aims * sizeof *a->aims, b->aims, b->n_aims * sizeof *b->aims);
  g_assert_cmpmem (a->indices, indices * sizeof *a->indices, b->indices, indices * sizeof *b->indices);
  g_assert_cmpmem (a->bands, bands * sizeof *a->bands, b->bands, bands * sizeof *b->bands);
  g_assert_cmpuint (a->inside, ==, b->inside);
}

/* Under a weather, too, so that skies come and go. */
static void
test_threads (void)
{
  const LwHour hour = { 24, 60, NAN, 0.5, 20, 0 };
  g_autoptr (LwSeason) season = made_season (three, G_N_ELEMENTS (three));
  g_autoptr (LwSpread) one = NULL;
  LwSpreadAsk ask;

  lw_season_add_weather (season, lw_weather_new_constant ("hall", "Hall", &hour));
  season->batches[0]->weather = g_strdup ("hall");
  made_aim (&season, 0, LW_MOISTURE, 60, 75);
  lw_spread_ask_init (&ask);
  ask.samples = 64;
  ask.rows = 16;
  ask.points = 3;
  ask.threads = 1;
  one = lw_spread_new (season, 0, &ask, NULL);
  for (guint threads = 2; threads <= 5; threads++)
    {
      g_autoptr (LwSpread) more = NULL;

      ask.threads = threads;
      more = lw_spread_new (season, 0, &ask, NULL);
      assert_same (one, more);
    }
}

static void
test_seed (void)
{
  g_autoptr (LwSeason) season = made_aimed ();
  g_autoptr (LwSpread) a = NULL, b = NULL, c = NULL;
  const LwSpan *x, *y;
  LwSpreadAsk ask;

  lw_spread_ask_init (&ask);
  ask.samples = 256;
  ask.rows = 16;
  ask.points = 2;
  ask.seed = 11;
  a = lw_spread_new (season, 0, &ask, NULL);
  b = lw_spread_new (season, 0, &ask, NULL);
  assert_same (a, b);

  /* Other luck: other numbers, the same answer. */
  ask.seed = 12;
  c = lw_spread_new (season, 0, &ask, NULL);
  x = &a->ends[1].of[LW_MOISTURE];
  y = &c->ends[1].of[LW_MOISTURE];
  g_assert_cmpfloat (x->mean, !=, y->mean);
  g_assert_cmpfloat (fabs (x->mean - y->mean), <, x->sd / 10);
  g_assert_cmpfloat_with_epsilon (x->sd / y->sd, 1, 0.2);
}

/* The mean and deviation of one source, by a fine grid of batches instead of samples. */
static void
test_one_source (void)
{
  enum { GRID = 60 };
  g_autoptr (LwSeason) season = made_aimed ();
  g_autoptr (LwSpread) spread = spread_of (season, 1024, 0, (const char *const[]) { "all=0", "wall=8", NULL });
  const LwSpan *span = &spread->ends[1].of[LW_MOISTURE];
  const LwSpreadAim *moisture = &spread->aims[0];
  double wall = made_get (season, 0, LW_SET_WALL_C), mean = 0, square = 0, inside = 0;

  for (guint i = 0; i < GRID; i++)
    {
      g_autoptr (LwSeason) moved = lw_season_ref (season);
      LwOutcome pan, end;

      made_set (&moved, 0, LW_SET_WALL_C, lw_design_cut_normal ((i + 0.5) / GRID, wall, 8, 80, 400));
      pan = made_end (moved, 0, 0);
      end = made_end (moved, 1, 0);
      mean += end.moisture_wb_pct / GRID;
      square += end.moisture_wb_pct * end.moisture_wb_pct / GRID;
      inside += lw_want_holds (&moisture->want, pan.moisture_wb_pct) / (double) GRID;
    }
  g_test_message ("mean %.4f, by samples %.4f; deviation %.4f, %.4f; inside %.3f, %.3f", mean, span->mean,
                  sqrt (square - mean * mean), span->sd, inside, moisture->share);
  g_assert_cmpfloat_with_epsilon (span->mean, mean, 0.02 * span->sd);
  g_assert_cmpfloat_with_epsilon (span->sd / sqrt (square - mean * mean), 1, 0.04);
  g_assert_cmpfloat_with_epsilon (moisture->share, inside, 0.03);
  g_assert_cmpfloat (moisture->share, <, 1);
  g_assert_cmpfloat (span->q05, <, span->q50);
  g_assert_cmpfloat (span->q50, <, span->q95);
}

/* The share is what is counted, and the performance index is the formula's. */
static void
test_aims (void)
{
  g_autoptr (LwSeason) season = made_aimed ();
  g_autoptr (LwSpread) spread = spread_of (season, 256, 0, NULL);
  const LwSpan *pan = &spread->ends[0].of[LW_MOISTURE], *end = &spread->ends[1].of[LW_RUPTURE];

  g_assert_cmpuint (spread->n_ends, ==, 2);
  g_assert_cmpuint (spread->n_aims, ==, 2);
  g_assert_cmpuint (spread->failed, ==, 0);
  g_assert_cmpuint (spread->inside, <=, MIN (spread->aims[0].inside, spread->aims[1].inside));
  g_assert_cmpuint (spread->inside + 256, >=, spread->aims[0].inside + spread->aims[1].inside);
  g_assert_cmpfloat (spread->share, ==, spread->inside / 256.0);
  g_assert_cmpfloat (spread->share, >, 0);
  g_assert_cmpfloat (spread->share, <, 1);
  g_assert_cmpfloat_with_epsilon (spread->aims[0].ppk, fmin (spread->aims[0].want.high - pan->mean,
                                                             pan->mean - spread->aims[0].want.low) / (3 * pan->sd),
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (spread->aims[1].ppk, (end->mean - spread->aims[1].want.low) / (3 * end->sd), 1e-12);
}

/* An end of the scale is no limit. */
static void
test_scale_ends (void)
{
  g_autoptr (LwSeason) season = made_season (made_two, 2);
  g_autoptr (LwSpread) spread = NULL;
  const LwSpan *enzyme;
  double low, high;

  made_set (&season, 0, LW_SET_MINUTES, 6);
  made_aim (&season, 0, LW_ENZYME, 0, 8);
  made_aim (&season, -1, LW_ENZYME, 0, 100);
  spread = spread_of (season, 512, 0, NULL);
  enzyme = &spread->ends[0].of[LW_ENZYME];
  g_test_message ("enzyme %.2f ± %.2f, Ppk %.3f, inside %.3f, if normal %.3f", enzyme->mean, enzyme->sd,
                  spread->aims[0].ppk, spread->aims[0].share, spread->aims[0].normal);
  g_assert_cmpfloat_with_epsilon (spread->aims[0].ppk, (8 - enzyme->mean) / (3 * enzyme->sd), 1e-12);
  g_assert_cmpfloat_with_epsilon (spread->aims[0].normal, 0.5 * erfc ((enzyme->mean - 8) / enzyme->sd / M_SQRT2), 1e-9);
  g_assert_cmpfloat (spread->aims[0].share, >, 0.5);

  g_assert_false (lw_want_limits (&spread->aims[1].want, &low, &high));
  g_assert_true (isnan (spread->aims[1].ppk) && isnan (spread->aims[1].normal));
  g_assert_false (lw_spread_misleads (&spread->aims[1]));
}

/* By what is counted and what the index would have: 3 standard errors, and not less than 1 %. */
static void
test_misleads (void)
{
  LwSpreadAim aim = { .share = 0.9, .share_se = 0.01, .normal = 0.925 };

  g_assert_false (lw_spread_misleads (&aim));
  aim.normal = 0.935;
  g_assert_true (lw_spread_misleads (&aim));
  aim.normal = 0.865;
  g_assert_true (lw_spread_misleads (&aim));
  aim = (LwSpreadAim) { .share = 1, .share_se = 0.0005, .normal = 0.992 };
  g_assert_false (lw_spread_misleads (&aim));
}

static guint
source_at (const LwSpread *spread,
           LwVarySource    source)
{
  for (guint s = 0; s < spread->n_sources; s++)
    if (spread->sources[s] == source)
      return s;

  g_assert_not_reached ();
}

/* A source that does not vary has no share; one that acts only later has none before; shares of nearly straight
 * effects add up to 1. */
static void
test_sources (void)
{
  g_autoptr (LwSeason) season = made_aimed ();
  g_autoptr (LwSpread) spread = spread_of (season, 256, 256, (const char *const[]) { "load=0", NULL });
  double sum = 0;

  for (guint e = 0; e < 2; e++)
    for (guint q = 0; q < LW_N_QUANTITIES; q++)
      {
        const LwIndex *load = lw_spread_index (spread, e, q, source_at (spread, LW_VARY_LOAD));

        g_assert_cmpfloat (load->first, ==, 0);
        g_assert_cmpfloat (load->total, ==, 0);
      }
  g_assert_cmpfloat (lw_spread_index (spread, 0, LW_MOISTURE, source_at (spread, LW_VARY_PRESSURE))->total, ==, 0);
  g_assert_cmpfloat (lw_spread_index (spread, 1, LW_RUPTURE, source_at (spread, LW_VARY_PRESSURE))->total, >, 0.03);

  for (guint s = 0; s < spread->n_sources; s++)
    sum += lw_spread_index (spread, 0, LW_MOISTURE, s)->first;
  g_assert_cmpfloat_with_epsilon (sum, 1, 0.2);
  g_assert_cmpfloat (lw_spread_index (spread, 0, LW_MOISTURE, source_at (spread, LW_VARY_MOISTURE))->first, >, 0.1);
}

/* No source, no scatter: every sample is the batch. */
static void
test_still (void)
{
  g_autoptr (LwSeason) season = made_aimed ();
  g_autoptr (LwSpread) spread = spread_of (season, 8, 8, (const char *const[]) { "all=0", NULL });
  LwOutcome end = made_end (season, 1, LW_SPREAD_TOLERANCE);

  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      const LwSpan *span = &spread->ends[1].of[q];
      double close = 1e-13 * fabs (span->mean);

      g_assert_cmpfloat (span->q95 - span->q05, <=, close);
      g_assert_cmpfloat (fabs (span->q50 - lw_quantity_of (q, &end)), <=, close);
    }
  g_assert_cmpfloat (spread->share, ==, 1);
  g_assert_true (isnan (spread->aims[0].ppk));
}

static void
test_wider (void)
{
  static const char *const walls[] = { "wall=2", "wall=6", "wall=18" };
  g_autoptr (LwSeason) season = made_aimed ();
  double width = 0, share = 1.01;

  for (guint i = 0; i < G_N_ELEMENTS (walls); i++)
    {
      g_autoptr (LwSpread) spread = spread_of (season, 256, 0, (const char *const[]) { "all=0", walls[i], NULL });
      const LwSpan *span = &spread->ends[1].of[LW_MOISTURE];

      g_assert_cmpfloat (span->q95 - span->q05, >, 1.5 * width);
      g_assert_cmpfloat (spread->aims[0].share, <, share);
      width = span->q95 - span->q05;
      share = spread->aims[0].share;
    }
}

/* By itself in each step times even out; with the same luck in all they add up. */
static void
test_step_or_batch (void)
{
  const LwKind rolls[] = { LW_KIND_ROLL, LW_KIND_ROLL, LW_KIND_ROLL, LW_KIND_ROLL };
  g_autoptr (LwSeason) season = made_season (rolls, G_N_ELEMENTS (rolls));
  g_autoptr (LwSpread) each = spread_of (season, 256, 0, (const char *const[]) { "all=0", "time=10%/step", NULL });
  g_autoptr (LwSpread) all = spread_of (season, 256, 0, (const char *const[]) { "all=0", "time=10%/batch", NULL });
  double ratio = all->ends[0].of[LW_RUPTURE].sd / each->ends[0].of[LW_RUPTURE].sd;

  /* Four equal steps: twice the deviation. */
  g_assert_cmpfloat_with_epsilon (ratio, 2, 0.2);
}

/* The bands start where the leaf starts, hang together from step to step, and end in the spans of the ends. */
static void
test_bands (void)
{
  g_autoptr (LwSeason) season = made_aimed ();
  g_autoptr (LwSpread) spread = NULL;
  LwSpreadAsk ask;

  lw_spread_ask_init (&ask);
  ask.samples = 64;
  ask.rows = 0;
  ask.points = 8;
  spread = lw_spread_new (season, 0, &ask, NULL);
  g_assert_null (spread->indices);
  g_assert_cmpfloat_with_epsilon (lw_spread_band (spread, 0, 0, LW_ENZYME)->q50, 100, 1e-4);
  for (guint q = 0; q < LW_N_QUANTITIES; q++)
    {
      const LwSpan *last = lw_spread_band (spread, 1, 8, q), *end = &spread->ends[1].of[q];
      double close = 1e-4 * (1 + fabs (end->q95));

      g_assert_cmpfloat_with_epsilon (last->q05, end->q05, close);
      g_assert_cmpfloat_with_epsilon (last->q95, end->q95, close);
      g_assert_cmpfloat_with_epsilon (lw_spread_band (spread, 0, 8, q)->q50, lw_spread_band (spread, 1, 0, q)->q50,
                                      close);
      for (guint i = 0; i <= 8; i++)
        g_assert_cmpfloat (lw_spread_band (spread, 0, i, q)->q05, <=, lw_spread_band (spread, 0, i, q)->q95);
    }
}

typedef struct
{
  GCancellable *cancellable;
  guint calls;
  guint last;
  guint total;
} Progress;

static void
note_progress (guint    done,
               guint    total,
               gpointer data)
{
  Progress *progress = data;

  g_assert_cmpuint (done, >=, progress->last);
  g_assert_cmpuint (done, <=, total);
  progress->calls++;
  progress->last = done;
  progress->total = total;
  if (progress->cancellable != NULL && done >= 20)
    g_cancellable_cancel (progress->cancellable);
}

static void
test_cancel (void)
{
  g_autoptr (LwSeason) season = made_aimed (), empty = made_season (made_two, 0);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (LwSpread) spread = NULL;
  Progress all = { 0 }, some = { .cancellable = cancellable };
  LwSpreadAsk ask;

  lw_spread_ask_init (&ask);
  ask.samples = 64;
  ask.rows = 8;
  ask.progress = note_progress;
  ask.progress_data = &all;
  g_assert_null (lw_spread_new (empty, 0, &ask, NULL));
  spread = lw_spread_new (season, 0, &ask, NULL);
  g_assert_cmpuint (all.last, ==, all.total);
  g_assert_cmpuint (all.total, ==, 64 + 8 * (spread->n_sources + 1));

  /* In the midst of it; and before. */
  ask.samples = 16000;
  ask.progress_data = &some;
  g_assert_null (lw_spread_new (season, 0, &ask, cancellable));
  g_assert_cmpuint (some.last, <, 1000);
  g_assert_null (lw_spread_new (season, 0, &ask, cancellable));
}

/* Without an aim every sample that can be computed is inside. */
static void
test_no_aims (void)
{
  g_autoptr (LwSeason) season = made_season (made_two, 2);
  g_autoptr (LwSpread) spread = spread_of (season, 16, 0, NULL);

  g_assert_cmpuint (spread->n_ends, ==, 1);
  g_assert_cmpuint (spread->n_aims, ==, 0);
  g_assert_cmpuint (spread->inside, ==, 16);
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/spread/threads", test_threads);
  g_test_add_func ("/spread/seed", test_seed);
  g_test_add_func ("/spread/one-source", test_one_source);
  g_test_add_func ("/spread/aims", test_aims);
  g_test_add_func ("/spread/scale-ends", test_scale_ends);
  g_test_add_func ("/spread/misleads", test_misleads);
  g_test_add_func ("/spread/sources", test_sources);
  g_test_add_func ("/spread/still", test_still);
  g_test_add_func ("/spread/wider", test_wider);
  g_test_add_func ("/spread/step-or-batch", test_step_or_batch);
  g_test_add_func ("/spread/bands", test_bands);
  g_test_add_func ("/spread/cancel", test_cancel);
  g_test_add_func ("/spread/no-aims", test_no_aims);

  return g_test_run ();
}

/* How long the leaf model takes: bench-speed SEASON BATCH TOLERANCE [many]. Prints a name, a tab
 * and a number a line: milliseconds of the processor, or with "many" those that pass on the clock
 * for many batches; peers/speed.py reads and explains them. Asserts nothing. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <locale.h>
#include <time.h>

#include "leaf/rates.h"
#include "season/document.h"
#include "season/surround.h"

#define CURVES ((LwSampling) { .samples = 160 }) /* as the window keeps them */
#define ENDS ((LwSampling) { .samples = 1 })
#define TIMES 61
#define MANY 10000
#define MOST_PARTS 64

/* A leaf and its steps; borrows both. */
typedef struct
{
  LwLeaf leaf;
  const LwConditions *steps;
  guint n_steps;
  double tolerance;
} Chain;

static void
say (const char *name,
     double      value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_print ("%s\t%s\n", name, g_ascii_formatd (digits, sizeof digits, "%.6g", value));
}

/* Of the processor, in this thread: other work on the machine counts less. */
static double
spent_ms (void)
{
  struct timespec spent;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &spent);

  return 1e3 * (double) spent.tv_sec + 1e-6 * (double) spent.tv_nsec;
}

static int
by_size (const void *a,
         const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

static double
median (double *values,
        guint   n)
{
  qsort (values, n, sizeof *values, by_size);

  return values[n / 2];
}

static LwMarch *
march_for (const Chain *chain)
{
  LwMarch *march = lw_march_new ();

  g_assert (march != NULL);
  lw_march_set_tolerance (march, chain->tolerance);

  return march;
}

static void
run (LwMarch     *march,
     const Chain *chain,
     LwSampling   sampling)
{
  g_autoptr (LwTrack) track = lw_march_run (march, &chain->leaf, chain->steps, chain->n_steps, sampling);

  g_assert_false (track->failure.failed);
}

/* All steps: the leaf is each time a little other, so that nothing remembered is of use. */
static double
full_ms (Chain      chain,
         LwSampling sampling)
{
  g_autoptr (LwMarch) march = march_for (&chain);
  double took[TIMES];

  run (march, &chain, sampling);
  for (guint i = 0; i < TIMES; i++)
    {
      double begin;

      chain.leaf.fresh_water *= 1 + 1e-7;
      begin = spent_ms ();
      run (march, &chain, sampling);
      took[i] = spent_ms () - begin;
    }

  return median (took, TIMES);
}

/* The last step's duration moves, as when its edge is dragged. */
static double
last_ms (Chain chain)
{
  g_autoptr (LwMarch) march = march_for (&chain);
  g_autofree LwConditions *steps = g_memdup2 (chain.steps, chain.n_steps * sizeof *steps);
  double took[TIMES];

  chain.steps = steps;
  run (march, &chain, CURVES);
  for (guint i = 0; i < TIMES; i++)
    {
      double begin;

      steps[chain.n_steps - 1].duration_s += 60;
      begin = spent_ms ();
      run (march, &chain, CURVES);
      took[i] = spent_ms () - begin;
      g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, 1);
    }

  return median (took, TIMES);
}

/* As many calls of the right-hand side as one step costs, at states along its way, and nothing else. */
static double
floor_of_step_ms (const Chain   *chain,
                  const LwTrack *track,
                  guint          step,
                  gulong         calls)
{
  const LwSegment *segment = track->steps[step];
  g_autofree LwBoundary *boundaries = g_new (LwBoundary, track->n_parts);
  g_autofree LwAround *around = g_new (LwAround, segment->n);
  double took[TIMES];

  for (guint part = 0; part < track->n_parts; part++)
    boundaries[part] = lw_boundary_new (&chain->steps[step], &track->leaf, &track->parts[part]);
  for (guint i = 0; i < segment->n; i++)
    {
      around[i] = lw_boundary_at (boundaries, segment->time_s[i]);
      lw_rates_meet (boundaries, lw_track_state (track, step, 0, i), track->n_parts, &around[i]);
    }

  for (guint times = 0; times < TIMES; times++)
    {
      double begin = spent_ms ();
      volatile double kept = 0;

      for (gulong call = 0; call < calls; call++)
        {
          guint part = (guint) (call % track->n_parts);
          guint i = (guint) (call / track->n_parts % segment->n);
          LwState rate;

          lw_rates (&boundaries[part], &around[i], lw_track_state (track, step, part, i), &rate);
          kept += rate.water;
        }
      took[times] = spent_ms () - begin;
    }

  return median (took, TIMES);
}

/* What the step ends cost in calls and solver's steps, and the floor under that. */
static void
say_floor (const Chain *chain)
{
  g_autoptr (LwMarch) march = march_for (chain);
  g_autoptr (LwMarch) curves = march_for (chain);
  g_autoptr (LwTrack) track = lw_march_run (curves, &chain->leaf, chain->steps, chain->n_steps, CURVES);
  gulong calls = 0, solver_steps = 0;
  double floor_ms = 0;

  for (guint step = 0; step < chain->n_steps; step++)
    {
      Chain head = *chain;
      const LwMarchCost *cost = lw_march_cost (march);

      /* Steps before this one are remembered, so that the cost is this one's. */
      head.n_steps = step + 1;
      run (march, &head, ENDS);
      calls += cost->rate_calls;
      solver_steps += cost->solver_steps;
      floor_ms += floor_of_step_ms (chain, track, step, cost->rate_calls);
    }

  say ("count of rate calls", (double) calls);
  say ("count of solver steps", (double) solver_steps);
  say ("floor", floor_ms);
}

/* `n` parts that are alike as those of a leaf are: its own, each split into several that lie a little apart. */
static void
split_parts (const LwLeaf *leaf,
             guint         n,
             LwPart       *parts)
{
  guint each = MAX (n / leaf->n_parts, 1);

  for (guint i = 0; i < n; i++)
    {
      parts[i] = leaf->parts[i / each];
      parts[i].share = n < leaf->n_parts ? 1.0 / n : parts[i].share / each;
      parts[i].exposure *= 1 + 0.01 * (i % each);
    }
}

static void
say_parts (Chain chain)
{
  LwLeaf whole = chain.leaf;
  LwPart parts[MOST_PARTS];

  for (guint n = 1; n <= MOST_PARTS; n *= 4)
    {
      g_autofree char *name = g_strdup_printf ("parts %u", n);

      split_parts (&whole, n, parts);
      chain.leaf.parts = parts;
      chain.leaf.n_parts = n;
      say (name, full_ms (chain, CURVES));
    }
}

/* The first 1, 2, ... steps; when there are no more, the same chain over again. */
static void
say_steps (Chain chain)
{
  guint n = chain.n_steps;
  g_autofree LwConditions *steps = g_new (LwConditions, 2 * n);
  double whole_s = 0;

  for (guint i = 0; i < n; i++)
    whole_s += chain.steps[i].duration_s;
  for (guint i = 0; i < 2 * n; i++)
    {
      steps[i] = chain.steps[i % n];
      if (i >= n && steps[i].follow != 0)
        steps[i].clock_s += whole_s;
    }

  chain.steps = steps;
  for (guint count = 1; count <= 2 * n; count *= 2)
    {
      g_autofree char *name = g_strdup_printf ("steps %u", count);

      chain.n_steps = count;
      say (name, full_ms (chain, CURVES));
    }
}

typedef struct
{
  Chain chain;
  guint first;
  guint by;
  LwOutcome *results; /* MANY of them, shared: each thread writes its own */
} Work;

static gpointer
work (gpointer data)
{
  Work *mine = data;
  g_autoptr (LwMarch) march = march_for (&mine->chain);
  double water = mine->chain.leaf.fresh_water;

  for (guint i = mine->first; i < MANY; i += mine->by)
    {
      g_autoptr (LwTrack) track = NULL;

      mine->chain.leaf.fresh_water = water * (1 + 1e-6 * (i + 1));
      track = lw_march_run (march, &mine->chain.leaf, mine->chain.steps, mine->chain.n_steps, ENDS);
      g_assert_false (track->failure.failed);
      mine->results[i] = lw_track_end (track, track->n_steps - 1, -1);
    }

  return NULL;
}

static void
say_many (Chain chain,
          guint threads)
{
  g_autofree LwOutcome *results = g_new0 (LwOutcome, MANY);
  g_autofree Work *works = g_new0 (Work, threads);
  g_autofree GThread **handles = g_new0 (GThread *, threads);
  g_autofree char *sum = NULL, *name = g_strdup_printf ("many on %u", threads);
  gint64 begin = g_get_monotonic_time ();

  for (guint i = 0; i < threads; i++)
    {
      works[i] = (Work) { .chain = chain, .first = i, .by = threads, .results = results };
      handles[i] = g_thread_new (name, work, &works[i]);
    }
  for (guint i = 0; i < threads; i++)
    g_thread_join (handles[i]);

  say (name, (double) (g_get_monotonic_time () - begin) / 1e3);
  sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) results, MANY * sizeof *results);
  g_print ("sum on %u\t%s\n", threads, sum);
}

int
main (int    argc,
      char **argv)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (LwPlan) plan = NULL;
  Chain chain;
  double tolerance = argc >= 4 ? g_ascii_strtod (argv[3], NULL) : 0;
  int batch;

  setlocale (LC_ALL, "");
  if (!(tolerance > 0))
    {
      g_printerr ("usage: bench-speed SEASON BATCH TOLERANCE [many]\n");
      return 2;
    }
  season = lw_document_load (argv[1], problems);
  batch = season != NULL ? lw_season_batch (season, argv[2]) : -1;
  if (batch < 0)
    {
      g_printerr ("bench-speed: %s has no batch %s\n", argv[1], argv[2]);
      return 1;
    }

  plan = lw_plan_new (season, (guint) batch);
  chain = (Chain) { .leaf = plan->leaf, .steps = plan->steps, .n_steps = plan->n_steps, .tolerance = tolerance };

  if (argc > 4)
    {
      say_many (chain, 1);
      say_many (chain, 2);
      return 0;
    }

  say ("full", full_ms (chain, CURVES));
  say ("ends", full_ms (chain, ENDS));
  say ("last", last_ms (chain));
  say_floor (&chain);
  say_parts (chain);
  say_steps (chain);

  return 0;
}

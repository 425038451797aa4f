/* Matching steps by kind, and moments by the clock. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/compare.h"

#include <math.h>
#include <stdlib.h>

#define DAY_S 86400

/* Two moments nearer than this are one. */
#define SAME_S 0.5

#define SAMPLES 160 /* a step */

static LwMoment
end_of (const LwSide *side,
        guint         step)
{
  if (step >= side->track->n_steps)
    return (LwMoment) { .step = step };

  return (LwMoment) {
    .there = TRUE, .step = step, .minute = side->track->steps[step]->duration_s / 60,
    .is = lw_track_end (side->track, step, -1),
  };
}

LwTrack *
lw_compare_track (LwSeason *season,
                  guint     batch,
                  char    **failure)
{
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwPlan) plan = lw_plan_new (season, batch);
  g_autoptr (LwTrack) track = NULL;

  g_assert (march != NULL && plan != NULL);
  track = lw_plan_march (plan, march, (LwSampling) { .samples = SAMPLES });
  if (!track->failure.failed)
    return g_steal_pointer (&track);

  *failure = lw_plan_failure_text (plan, season->batches[batch], track);

  return NULL;
}

/* most[i, j]: how many pairs can be made of the steps from i of one and from j of the other. */
static guint *
count_pairs (const LwBatch *a,
             const LwBatch *b)
{
  guint wide = b->n_steps + 1;
  guint *most = g_new0 (guint, (gsize) (a->n_steps + 1) * wide);

  for (guint i = a->n_steps; i-- > 0;)
    for (guint j = b->n_steps; j-- > 0;)
      most[i * wide + j] = a->steps[i].kind == b->steps[j].kind
                             ? most[(i + 1) * wide + j + 1] + 1
                             : MAX (most[(i + 1) * wide + j], most[i * wide + j + 1]);

  return most;
}

GArray *
lw_compare_pairs (const LwBatch *a,
                  const LwBatch *b)
{
  g_autofree guint *most = count_pairs (a, b);
  GArray *pairs = g_array_new (FALSE, FALSE, sizeof (LwPair));
  guint wide = b->n_steps + 1, i = 0, j = 0;

  while (i < a->n_steps || j < b->n_steps)
    {
      gboolean both = i < a->n_steps && j < b->n_steps;
      LwPair pair = { { -1, -1 } };

      if (both && a->steps[i].kind == b->steps[j].kind)
        pair = (LwPair) { { (int) i++, (int) j++ } };
      else if (!both ? i < a->n_steps : most[(i + 1) * wide + j] >= most[i * wide + j + 1])
        pair.of[0] = (int) i++;
      else
        pair.of[1] = (int) j++;
      g_array_append_val (pairs, pair);
    }

  return pairs;
}

void
lw_compare_columns (const LwBatch *one,
                    const LwBatch *other,
                    int           *columns)
{
  g_autoptr (GArray) pairs = lw_compare_pairs (one, other);

  for (guint i = 0; i < pairs->len; i++)
    {
      const LwPair *pair = &g_array_index (pairs, LwPair, i);

      if (pair->of[1] >= 0)
        columns[pair->of[1]] = pair->of[0];
    }
}

static void
add_row (GArray       *rows,
         const LwSide  sides[2],
         LwPair        pair)
{
  LwCompareRow row = { .clock_s = NAN };

  for (guint i = 0; i < 2; i++)
    if (pair.of[i] >= 0)
      row.of[i] = end_of (&sides[i], (guint) pair.of[i]);
  g_array_append_val (rows, row);
}

GArray *
lw_compare_steps (const LwSide sides[2])
{
  const LwBatch *a = sides[0].batch, *b = sides[1].batch;
  g_autoptr (GArray) pairs = lw_compare_pairs (a, b);
  GArray *rows = g_array_new (FALSE, TRUE, sizeof (LwCompareRow));
  LwPair last = { { -1, -1 } }, ends = { { (int) a->n_steps - 1, (int) b->n_steps - 1 } };

  for (guint i = 0; i < pairs->len; i++)
    {
      last = g_array_index (pairs, LwPair, i);
      add_row (rows, sides, last);
    }
  if (a->n_steps > 0 && b->n_steps > 0 && (last.of[0] != ends.of[0] || last.of[1] != ends.of[1]))
    add_row (rows, sides, ends);

  return rows;
}

/* Seconds from midnight to the batch's start. */
static double
start_of_day (const LwBatch *batch)
{
  return (double) (((batch->when_s % DAY_S) + DAY_S) % DAY_S);
}

double
lw_compare_begins (const LwBatch *one,
                   const LwBatch *other)
{
  double later = start_of_day (other) - start_of_day (one);

  return later > DAY_S / 2 ? later - DAY_S : later < -DAY_S / 2 ? later + DAY_S : later;
}

/* Fills in when each begins by the clock of the first. */
static void
find_starts (const LwSide sides[2],
             double       starts[2])
{
  starts[0] = start_of_day (sides[0].batch);
  starts[1] = starts[0] + lw_compare_begins (sides[0].batch, sides[1].batch);
  for (guint i = 0; i < 2; i++)
    if (starts[i] < 0)
      {
        starts[0] += DAY_S;
        starts[1] += DAY_S;
      }
}

static void
add_ends (GArray       *times,
          const LwSide *side,
          double        start_s)
{
  double clock_s = start_s;

  for (guint i = 0; i < side->track->n_steps; i++)
    {
      clock_s += side->track->steps[i]->duration_s;
      g_array_append_val (times, clock_s);
    }
}

static int
by_size (const void *a,
         const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return x < y ? -1 : x > y;
}

static LwMoment
moment_at (const LwSide *side,
           double        since)
{

  if (since < -SAME_S)
    return (LwMoment) { 0 };

  for (guint i = 0; i < side->track->n_steps; i++)
    {
      double duration_s = side->track->steps[i]->duration_s;

      if (fabs (since - duration_s) <= SAME_S)
        return end_of (side, i);
      if (since < duration_s)
        return (LwMoment) {
          .there = TRUE, .step = i, .minute = fmax (since, 0) / 60,
          .is = lw_track_outcome_at (side->track, i, -1, fmax (since, 0)),
        };
      since -= duration_s;
    }

  return (LwMoment) { 0 };
}

GArray *
lw_compare_clock (const LwSide sides[2])
{
  g_autoptr (GArray) times = g_array_new (FALSE, FALSE, sizeof (double));
  GArray *rows = g_array_new (FALSE, TRUE, sizeof (LwCompareRow));
  double last = -INFINITY, starts[2];

  find_starts (sides, starts);
  add_ends (times, &sides[0], starts[0]);
  add_ends (times, &sides[1], starts[1]);
  g_array_sort (times, by_size);
  for (guint i = 0; i < times->len; i++)
    {
      double clock_s = g_array_index (times, double, i);

      if (clock_s - last > SAME_S)
        {
          LwCompareRow row = { clock_s, { moment_at (&sides[0], clock_s - starts[0]),
                                             moment_at (&sides[1], clock_s - starts[1]) } };

          g_array_append_val (rows, row);
          last = clock_s;
        }
    }

  return rows;
}

/* Matching steps by kind, and moments by the clock. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/compare.h"

#include <math.h>
#include <stdlib.h>

#define DAY_S 86400

/* Two moments nearer than this are one. */
#define SAME_S 0.5

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

static void
add_pair (GArray       *rows,
          const LwSide  sides[2],
          int           a,
          int           b)
{
  LwCompareRow row = { .clock_s = NAN };

  if (a >= 0)
    row.of[0] = end_of (&sides[0], (guint) a);
  if (b >= 0)
    row.of[1] = end_of (&sides[1], (guint) b);
  g_array_append_val (rows, row);
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
lw_compare_steps (const LwSide sides[2])
{
  const LwBatch *a = sides[0].batch, *b = sides[1].batch;
  g_autofree guint *most = count_pairs (a, b);
  GArray *rows = g_array_new (FALSE, TRUE, sizeof (LwCompareRow));
  guint wide = b->n_steps + 1, i = 0, j = 0;

  while (i < a->n_steps || j < b->n_steps)
    {
      gboolean both = i < a->n_steps && j < b->n_steps;

      if (both && a->steps[i].kind == b->steps[j].kind)
        add_pair (rows, sides, (int) i++, (int) j++);
      else if (!both ? i < a->n_steps : most[(i + 1) * wide + j] >= most[i * wide + j + 1])
        add_pair (rows, sides, (int) i++, -1);
      else
        add_pair (rows, sides, -1, (int) j++);
    }

  return rows;
}

/* Seconds from midnight to the batch's start. */
static double
start_of_day (const LwBatch *batch)
{
  return (double) (((batch->when_s % DAY_S) + DAY_S) % DAY_S);
}

static void
add_ends (GArray       *times,
          const LwSide *side)
{
  double clock_s = start_of_day (side->batch);

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
           double        clock_s)
{
  double since = clock_s - start_of_day (side->batch);

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
  double last = -INFINITY;

  add_ends (times, &sides[0]);
  add_ends (times, &sides[1]);
  g_array_sort (times, by_size);
  for (guint i = 0; i < times->len; i++)
    {
      double clock_s = g_array_index (times, double, i);

      if (clock_s - last > SAME_S)
        {
          LwCompareRow row = { clock_s, { moment_at (&sides[0], clock_s), moment_at (&sides[1], clock_s) } };

          g_array_append_val (rows, row);
          last = clock_s;
        }
    }

  return rows;
}

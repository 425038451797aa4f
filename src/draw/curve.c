/* Reading a track's samples into curves. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/curve.h"

/* One step: rows of n values, the mean first, then each part, then lowest and highest. */
typedef struct
{
  guint n;
  double *minutes;
  double *rows;
} Step;

struct _LwCurves
{
  guint n_steps;
  guint n_parts;
  double low;
  double high;
  Step *steps;
  double *values; /* what the steps' pointers point into */
};

static double *
row_of (const Step *step,
        guint       row)
{
  return step->rows + (gsize) row * step->n;
}

/* `parts` is room for what they are like, one for each. */
static void
read_sample (LwCurves      *curves,
             const LwTrack *track,
             LwQuantity     quantity,
             guint          at,
             guint          i,
             LwOutcome     *parts)
{
  Step *step = &curves->steps[at];
  LwOutcome all = lw_outcome_all (&track->leaf, lw_track_state (track, at, 0, i), parts);
  double mean = lw_quantity_of (quantity, &all), low = mean, high = mean;

  row_of (step, 0)[i] = mean;
  for (guint part = 0; part < curves->n_parts; part++)
    {
      double value = lw_quantity_of (quantity, &parts[part]);

      row_of (step, 1 + part)[i] = value;
      low = MIN (low, value);
      high = MAX (high, value);
    }
  row_of (step, 1 + curves->n_parts)[i] = low;
  row_of (step, 2 + curves->n_parts)[i] = high;

  curves->low = MIN (curves->low, low);
  curves->high = MAX (curves->high, high);
}

LwCurves *
lw_curves_new (const LwTrack *track,
               LwQuantity     quantity)
{
  LwCurves *curves = g_atomic_rc_box_new0 (LwCurves);
  g_autofree LwOutcome *parts = g_new (LwOutcome, MAX (track->n_parts, 1));
  gsize n_values = 0;
  double *next;

  curves->n_steps = track->n_steps;
  /* No part by itself is uneven, or a share of the batch. */
  curves->n_parts = quantity >= LW_UNEVEN ? 0 : track->n_parts;
  curves->low = G_MAXDOUBLE;
  curves->high = -G_MAXDOUBLE;
  curves->steps = g_new0 (Step, track->n_steps);

  for (guint i = 0; i < track->n_steps; i++)
    n_values += (gsize) track->steps[i]->n * (curves->n_parts + 4);
  next = curves->values = g_new (double, n_values);

  for (guint i = 0; i < track->n_steps; i++)
    {
      const LwSegment *segment = track->steps[i];
      Step *step = &curves->steps[i];

      step->n = segment->n;
      step->minutes = next;
      step->rows = next + segment->n;
      next += (gsize) segment->n * (curves->n_parts + 4);
      for (guint k = 0; k < segment->n; k++)
        {
          step->minutes[k] = segment->time_s[k] / 60;
          read_sample (curves, track, quantity, i, k, parts);
        }
    }

  return curves;
}

LwCurves *
lw_curves_ref (LwCurves *curves)
{
  return g_atomic_rc_box_acquire (curves);
}

static void
curves_clear (LwCurves *curves)
{
  g_free (curves->steps);
  g_free (curves->values);
}

void
lw_curves_unref (LwCurves *curves)
{
  g_atomic_rc_box_release_full (curves, (GDestroyNotify) curves_clear);
}

void
lw_curves_range (const LwCurves *curves,
                 double         *low,
                 double         *high)
{
  gboolean any = curves->low <= curves->high;

  *low = any ? curves->low : 0;
  *high = any ? curves->high : 0;
}

guint
lw_curves_n_steps (const LwCurves *curves)
{
  return curves->n_steps;
}

guint
lw_curves_n_parts (const LwCurves *curves)
{
  return curves->n_parts;
}

const double *
lw_curves_minutes (const LwCurves *curves,
                   guint           step,
                   guint          *n)
{
  if (n != NULL)
    *n = curves->steps[step].n;

  return curves->steps[step].minutes;
}

const double *
lw_curves_values (const LwCurves *curves,
                  guint           step,
                  int             part)
{
  return row_of (&curves->steps[step], (guint) (part + 1));
}

const double *
lw_curves_lowest (const LwCurves *curves,
                  guint           step)
{
  return row_of (&curves->steps[step], curves->n_parts + 1);
}

const double *
lw_curves_highest (const LwCurves *curves,
                   guint           step)
{
  return row_of (&curves->steps[step], curves->n_parts + 2);
}

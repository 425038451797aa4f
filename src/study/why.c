/* The numbers of "Why here": factors of every way and part, their means, and what holds a way back. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/why.h"

#include <math.h>
#include <stdlib.h>

#include "study/why-sentence.h"

/* Factors of all parts for the ways of one rate. */
typedef struct
{
  const LwTrack *track;
  LwBoundary *boundaries;
  LwState *states;
  LwAround around;
} Moment;

static void
moment_fill (Moment       *at,
             const LwPlan *plan,
             guint         step,
             double        t_s)
{
  const LwTrack *track = at->track;

  for (guint i = 0; i < track->n_parts; i++)
    {
      at->boundaries[i] = lw_boundary_new (&plan->steps[step], &track->leaf, &track->parts[i]);
      at->states[i] = lw_track_state_at (track, step, i, t_s);
    }
  at->around = lw_boundary_at (at->boundaries, t_s);
  lw_rates_meet (at->boundaries, at->states, track->n_parts, &at->around);
}

/* Settings and forces are not what holds a way back; what makes it slower than its reference is. */
static gboolean
can_hold (LwFactorName name)
{
  static const gboolean never[LW_N_FACTORS] = {
    [LW_FACTOR_SKIN] = TRUE, [LW_FACTOR_OPENED] = TRUE, [LW_FACTOR_COLDER] = TRUE, [LW_FACTOR_COVER] = TRUE,
    [LW_FACTOR_DAMPER] = TRUE, [LW_FACTOR_PRESS] = TRUE, [LW_FACTOR_SOFT] = TRUE, [LW_FACTOR_TIME] = TRUE,
  };

  return !never[name];
}

static int
least (const LwFactors *mean)
{
  int at = -1;

  for (guint i = 0; i < mean->n; i++)
    if (can_hold (mean->factors[i].name) && mean->factors[i].value < 1
        && (at < 0 || mean->factors[i].value < mean->factors[at].value))
      at = (int) i;

  return at;
}

static LwWhyWay
way_of (const Moment *at,
        LwWay         way,
        LwFactors    *parts)
{
  LwWhyWay told = { 0 };
  double product;

  for (guint i = 0; i < at->track->n_parts; i++)
    {
      double share = at->track->parts[i].share;

      parts[i] = lw_rates_factors (&at->boundaries[i], &at->around, &at->states[i], way);
      if (i == 0)
        {
          told.mean = parts[0];
          for (guint k = 0; k < parts[0].n; k++)
            told.mean.factors[k].value = 0;
        }
      for (guint k = 0; k < parts[i].n; k++)
        told.mean.factors[k].value += share * parts[i].factors[k].value;
      told.per_s += share * lw_factors_product (&parts[i]);
    }

  product = lw_factors_product (&told.mean);
  told.apart = told.per_s / product > 0 && isfinite (told.per_s / product) ? told.per_s / product : 1;
  told.holds = least (&told.mean);

  return told;
}

static int
by_strength (const void *a,
             const void *b)
{
  double first = fabs (((const LwWhyWay *) a)->per_s), second = fabs (((const LwWhyWay *) b)->per_s);

  /* Ways that do nothing keep their order. */
  if (first == second)
    return (int) ((const LwWhyWay *) a)->mean.way - (int) ((const LwWhyWay *) b)->mean.way;

  return first < second ? 1 : -1;
}

/* The ways, strongest first, and their parts in the same order. */
static void
tell_ways (LwWhy        *why,
           const Moment *at)
{
  guint n = why->n_parts, first = 0;
  g_autofree LwFactors *parts = g_new (LwFactors, (gsize) LW_WAYS_MOST * n);

  while (lw_way_rate (first) != why->rate)
    first++;
  for (LwWay way = first; way < LW_N_WAYS && lw_way_rate (way) == why->rate; way++)
    {
      why->ways[why->n_ways] = way_of (at, way, &parts[why->n_ways * n]);
      why->per_s += why->ways[why->n_ways].per_s;
      why->n_ways++;
    }

  qsort (why->ways, why->n_ways, sizeof *why->ways, by_strength);
  why->parts = g_new (LwFactors, (gsize) why->n_ways * n);
  for (guint i = 0; i < why->n_ways; i++)
    memcpy (&why->parts[i * n], &parts[(why->ways[i].mean.way - first) * n], n * sizeof *parts);
}

LwWhy *
lw_why_new (const LwPlan  *plan,
            const LwTrack *track,
            guint          step,
            double         minute,
            LwRate         rate)
{
  g_autofree LwBoundary *boundaries = g_new (LwBoundary, track->n_parts);
  g_autofree LwState *states = g_new (LwState, track->n_parts);
  Moment at = { .track = track, .boundaries = boundaries, .states = states };
  LwWhy *why = g_new0 (LwWhy, 1);

  g_return_val_if_fail (step < track->n_steps, (g_free (why), NULL));

  why->rate = rate;
  why->step = step;
  why->minute = CLAMP (minute, 0, track->steps[step]->duration_s / 60);
  why->n_parts = track->n_parts;
  moment_fill (&at, plan, step, why->minute * 60);
  why->here = lw_outcome_mean (&track->leaf, states);
  tell_ways (why, &at);
  why->sentence = lw_why_sentence (why, plan, track, &why->kind);

  return why;
}

void
lw_why_free (LwWhy *why)
{
  g_free (why->parts);
  g_free (why->sentence);
  g_free (why);
}

double
lw_why_per_h (const LwWhy *why,
              double       per_s)
{
  double dry = 1 - why->here.moisture_wb_pct / 100;

  if (why->rate == LW_RATE_ROAST)
    return 3600 * per_s;

  /* Of wet basis, water / (1 + water), to its water: (1 + water)^-2. */
  return 100 * 3600 * per_s * (why->rate == LW_RATE_WATER ? dry * dry : 1);
}

double
lw_why_still_per_h (LwRate rate)
{
  static const double still[LW_N_RATES] = {
    [LW_RATE_OXIDATION] = 1.0,
    [LW_RATE_WATER] = 0.1,
    [LW_RATE_RUPTURE] = 0.1,
    [LW_RATE_ENZYME] = 0.2,
    [LW_RATE_ROAST] = 0.05,
  };

  return still[rate];
}

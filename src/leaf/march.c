/* The march through the steps of a batch, and its memory of the last one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/march.h"

#include <math.h>
#include <string.h>

#include "leaf/solver.h"

struct _LwMarch
{
  LwSolver *solver;
  LwMarchCost cost;

  /* The last run: its track, and all that it was made from. */
  LwTrack *last;
  GArray *last_steps; /* LwConditions; each holds references on its sky, courses and jump */
  LwSampling last_sampling;
  LwAimed aimed;

  const LwState *first; /* (nullable) where the run under way begins, else with fresh leaf */
};

static void
conditions_clear (LwConditions *conditions)
{
  if (conditions->sky != NULL)
    lw_sky_unref ((LwSky *) conditions->sky);
  if (conditions->jump != NULL)
    lw_jump_unref ((LwJump *) conditions->jump);
  if (conditions->wall != NULL)
    lw_course_unref ((LwCourse *) conditions->wall);
  if (conditions->air != NULL)
    lw_course_unref ((LwCourse *) conditions->air);
}

static void
march_forget (LwMarch *march)
{
  g_clear_pointer (&march->last, lw_track_unref);
  g_array_set_size (march->last_steps, 0);
}

LwMarch *
lw_march_new (void)
{
  g_autoptr (LwSolver) solver = lw_solver_new ();
  LwMarch *march;

  if (solver == NULL)
    return NULL;

  march = g_new0 (LwMarch, 1);
  march->solver = g_steal_pointer (&solver);
  march->aimed = (LwAimed) { NAN, NAN };
  march->last_steps = g_array_new (FALSE, TRUE, sizeof (LwConditions));
  g_array_set_clear_func (march->last_steps, (GDestroyNotify) conditions_clear);

  return march;
}

void
lw_march_free (LwMarch *march)
{
  march_forget (march);
  g_array_unref (march->last_steps);
  lw_solver_free (march->solver);
  g_free (march);
}

void
lw_march_set_tolerance (LwMarch *march,
                        double   relative)
{
  g_return_if_fail (relative >= 1e-10 && relative <= 1e-2);

  march_forget (march);
  lw_solver_set_tolerance (march->solver, relative);
}

static gboolean
same_bound (double a,
            double b)
{
  return a == b || (isnan (a) && isnan (b));
}

void
lw_march_set_aimed (LwMarch *march,
                    LwAimed  aimed)
{
  if (same_bound (aimed.high, march->aimed.high) && same_bound (aimed.low, march->aimed.low))
    return;

  march_forget (march);
  march->aimed = aimed;
  lw_solver_set_aimed (march->solver, aimed);
}

const LwMarchCost *
lw_march_cost (const LwMarch *march)
{
  return &march->cost;
}

static gboolean
same_leaf (const LwTrack *last,
           const LwLeaf  *leaf)
{
  return last->n_parts == leaf->n_parts
         && last->leaf.fresh_water == leaf->fresh_water
         && last->leaf.fresh_green == leaf->fresh_green
         && last->leaf.fresh_temp_c == leaf->fresh_temp_c
         && memcmp (&last->leaf.law, &leaf->law, sizeof leaf->law) == 0
         && memcmp (last->parts, leaf->parts, leaf->n_parts * sizeof *leaf->parts) == 0;
}

/* How many of the first steps can be taken over from the last run. */
static guint
steps_known (LwMarch            *march,
             const LwLeaf       *leaf,
             const LwConditions *steps,
             guint               n_steps,
             LwSampling          sampling)
{
  guint known = 0;

  if (march->last == NULL || !same_leaf (march->last, leaf)
      || sampling.samples != march->last_sampling.samples
      || sampling.every_s != march->last_sampling.every_s || sampling.turns != march->last_sampling.turns)
    return 0;

  while (known < n_steps && known < march->last->n_steps
         && memcmp (&steps[known], &g_array_index (march->last_steps, LwConditions, known),
                    sizeof *steps) == 0)
    known++;

  return known;
}

static LwSegment *
segment_for (double     begin_s,
             double     duration_s,
             LwSampling sampling,
             guint      n_parts)
{
  /* A moment that only rounding keeps off a whole multiple is one. */
  double first = sampling.every_s * (floor (begin_s / sampling.every_s + 1e-9) + 1) - begin_s;
  guint inside = MAX (sampling.samples, 1) - 1;
  double gap = duration_s / (inside + 1);
  LwSegment *segment;

  if (sampling.every_s > 0)
    {
      gap = sampling.every_s;
      inside = first < duration_s ? (guint) MAX (ceil ((duration_s - first) / gap - 1e-9), 0) : 0;
    }
  else
    {
      first = gap;
    }

  segment = lw_segment_new (duration_s, inside + 2, n_parts);
  for (guint i = 0; i < inside; i++)
    segment->time_s[i + 1] = MIN (first + i * gap, duration_s);
  segment->time_s[inside + 1] = duration_s;

  return segment;
}

/* The same with two samples where it jumps, one before and one after. */
static LwSegment *
segment_with (LwSegment    *plain,
              const LwJump *jump)
{
  double jump_s = lw_jump_at_s (jump, plain->duration_s);
  LwSegment *segment = lw_segment_new (plain->duration_s, plain->n + 2, plain->n_parts);
  guint n = 0;

  for (guint i = 0; i < plain->n && plain->time_s[i] < jump_s; i++)
    segment->time_s[n++] = plain->time_s[i];
  segment->time_s[n++] = jump_s;
  segment->time_s[n++] = jump_s;
  for (guint i = 0; i < plain->n; i++)
    if (plain->time_s[i] > jump_s)
      segment->time_s[n++] = plain->time_s[i];

  segment->n = n;
  lw_segment_unref (plain);

  return segment;
}

/* The step's boundaries and first states, one for each part. */
static LwBoundary *
step_begin (const LwMarch      *march,
            const LwTrack      *track,
            const LwConditions *conditions,
            guint               step,
            LwState            *first)
{
  LwBoundary *boundaries = g_new (LwBoundary, track->n_parts);

  for (guint part = 0; part < track->n_parts; part++)
    {
      boundaries[part] = lw_boundary_new (conditions, &track->leaf, &track->parts[part]);
      if (step == 0)
        first[part] = march->first != NULL ? march->first[part] : lw_state_fresh (&track->leaf);
      else
        first[part] = *lw_track_state (track, step - 1, part, track->steps[step - 1]->n - 1);
    }

  return boundaries;
}

/* Solves the step into its segment's samples. Returns 0, or the solver's negative code. */
static int
solve (LwMarch            *march,
       const LwConditions *conditions,
       const LwBoundary   *boundaries,
       LwSegment          *segment)
{
  const LwJump *jump = conditions->jump;
  guint n_parts = segment->n_parts;
  gboolean jumped = jump == NULL;
  int code = lw_solver_start (march->solver, boundaries, segment->states, n_parts);

  if (code == 0 && jump != NULL)
    code = lw_solver_stop_at (march->solver, lw_jump_at_s (jump, conditions->duration_s));

  for (guint i = 1; i < segment->n && code == 0; i++)
    {
      LwState *states = &segment->states[(gsize) i * n_parts], *before = states - n_parts;

      if (jumped || segment->time_s[i] > segment->time_s[i - 1])
        {
          code = lw_solver_advance (march->solver, segment->time_s[i], states);
          continue;
        }

      jumped = TRUE;
      memcpy (states, before, n_parts * sizeof *states);
      lw_jump_apply (jump, states, n_parts);
      code = lw_solver_jump (march->solver, segment->time_s[i], conditions->duration_s, before, states);
    }

  return code;
}

/* NULL if the solver failed; `failure` then says where. */
static LwSegment *
march_step (LwMarch            *march,
            const LwTrack      *track,
            const LwConditions *conditions,
            guint               step,
            double              begin_s,
            LwSampling          sampling,
            LwFailure          *failure)
{
  g_autoptr (LwSegment) segment = segment_for (begin_s, conditions->duration_s, sampling, track->n_parts);
  g_autofree LwBoundary *boundaries = NULL;
  const LwTurn *turns;
  gulong steps, calls;
  int code;

  if (conditions->jump != NULL)
    segment = segment_with (g_steal_pointer (&segment), conditions->jump);
  boundaries = step_begin (march, track, conditions, step, segment->states);
  lw_solver_seek (march->solver, sampling.turns);
  code = solve (march, conditions, boundaries, segment);

  if (code != 0)
    {
      *failure = (LwFailure) {
        .failed = TRUE, .step = step, .time_s = lw_solver_time_s (march->solver), .code = code,
      };
      return NULL;
    }

  turns = lw_solver_turns (march->solver, &segment->n_turns);
  segment->turns = g_memdup2 (turns, segment->n_turns * sizeof *turns);
  lw_solver_work (march->solver, &steps, &calls);
  march->cost.solver_steps += steps;
  march->cost.rate_calls += calls;
  march->cost.steps_run++;

  return g_steal_pointer (&segment);
}

static LwTrack *
track_begin (const LwLeaf *leaf,
             guint         n_steps)
{
  LwTrack *track = g_atomic_rc_box_new0 (LwTrack);

  track->n_parts = leaf->n_parts;
  track->parts = g_memdup2 (leaf->parts, leaf->n_parts * sizeof *leaf->parts);
  track->leaf = *leaf;
  track->leaf.parts = track->parts;
  track->steps = g_new0 (LwSegment *, n_steps);

  return track;
}

LwTrack *
lw_march_run (LwMarch            *march,
              const LwLeaf       *leaf,
              const LwConditions *steps,
              guint               n_steps,
              LwSampling          sampling)
{
  guint known = steps_known (march, leaf, steps, n_steps, sampling);
  LwTrack *track = track_begin (leaf, n_steps);
  double begin_s = 0;

  march->cost = (LwMarchCost) { 0 };

  for (guint i = 0; i < n_steps; i++)
    {
      LwSegment *segment = i < known ? lw_segment_ref (march->last->steps[i])
                                     : march_step (march, track, &steps[i], i, begin_s, sampling,
                                                   &track->failure);

      if (segment == NULL)
        break;

      track->steps[track->n_steps++] = segment;
      begin_s += steps[i].duration_s;
    }

  march_forget (march);
  march->last = lw_track_ref (track);
  march->last_sampling = sampling;
  for (guint i = 0; i < track->n_steps; i++)
    {
      if (steps[i].sky != NULL)
        lw_sky_ref ((LwSky *) steps[i].sky);
      if (steps[i].jump != NULL)
        lw_jump_ref ((LwJump *) steps[i].jump);
      if (steps[i].wall != NULL)
        lw_course_ref ((LwCourse *) steps[i].wall);
      if (steps[i].air != NULL)
        lw_course_ref ((LwCourse *) steps[i].air);
      g_array_append_val (march->last_steps, steps[i]);
    }

  return track;
}

LwTrack *
lw_march_run_from (LwMarch            *march,
                   const LwLeaf       *leaf,
                   const LwState      *first,
                   const LwConditions *steps,
                   guint               n_steps,
                   LwSampling          sampling)
{
  LwTrack *track;

  march_forget (march);
  march->first = first;
  track = lw_march_run (march, leaf, steps, n_steps, sampling);
  march->first = NULL;
  march_forget (march);

  return track;
}

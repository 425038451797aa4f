/* Turning points beside dense sampling and bisection, and what must not move them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/solver.h"
#include "near.h"
#include "sample.h"

#define CHAIN 5
#define DENSE 1500

/* Fixed leaf, and leaf left to oxidise. */
static const guint chains[][CHAIN] = {
  { SAMPLE_WITHER, SAMPLE_PAN, SAMPLE_ROLL, SAMPLE_SUN, SAMPLE_HOT_AIR },
  { SAMPLE_WITHER, SAMPLE_WITHER, SAMPLE_ROLL, SAMPLE_COVERED, SAMPLE_HOT_AIR },
};
static const LwAimed aimed = { .high = 0.10, .low = 0.09 };

static void
chain_steps (LwConditions steps[CHAIN],
             const guint  chain[CHAIN])
{
  LwConditions all[SAMPLE_STEPS];

  sample_steps (all);
  for (guint i = 0; i < CHAIN; i++)
    steps[i] = all[chain[i]];
  steps[2].press_kpa = 12;
  steps[2].duration_s = 1500;
  steps[4].air_temp_c = 128;
  steps[4].duration_s = 2 * 3600;
}

static LwTrack *
march_chain (LwSampling          sampling,
             const LwLeaf       *leaf,
             const LwConditions *steps)
{
  g_autoptr (LwMarch) march = lw_march_new ();

  lw_march_set_aimed (march, aimed);

  return lw_march_run (march, leaf, steps, CHAIN, sampling);
}

static void
make_boundaries (const LwTrack      *track,
                 const LwConditions *conditions,
                 LwBoundary         *boundaries)
{
  for (guint i = 0; i < track->n_parts; i++)
    boundaries[i] = lw_boundary_new (conditions, &track->leaf, &track->parts[i]);
}

/* The value of one function, `t_s` into the step, solved anew from the step's start. */
static double
value_at (const LwTrack    *track,
          const LwBoundary *boundaries,
          guint             step,
          LwTurnKind        kind,
          double            t_s)
{
  g_autoptr (LwSolver) solver = lw_solver_new ();
  LwState states[8];
  double values[LW_N_TURNS];

  g_assert_cmpint (lw_solver_start (solver, boundaries, lw_track_state (track, step, 0, 0), track->n_parts), ==, 0);
  g_assert_cmpint (lw_solver_advance (solver, t_s, states), ==, 0);
  lw_turning_values (boundaries, states, track->n_parts, &aimed, values);

  return values[kind];
}

static double
bisect (const LwTrack    *track,
        const LwBoundary *boundaries,
        guint             step,
        LwTurnKind        kind,
        double            low_s,
        double            high_s)
{
  for (guint i = 0; i < 60 && high_s - low_s > 1e-9 * high_s; i++)
    {
      double middle_s = (low_s + high_s) / 2;

      if (value_at (track, boundaries, step, kind, middle_s) * lw_turning_way (kind) > 0)
        high_s = middle_s;
      else
        low_s = middle_s;
    }

  return (low_s + high_s) / 2;
}

static double
find (const LwTrack *track,
      guint          step,
      LwTurnKind     kind,
      double         low_s,
      double         high_s)
{
  const LwSegment *segment = track->steps[step];

  for (guint i = 0; i < segment->n_turns; i++)
    if (segment->turns[i].kind == kind && segment->turns[i].time_s >= low_s && segment->turns[i].time_s <= high_s)
      return segment->turns[i].time_s;

  g_error ("turn %u between %g and %g s of step %u was not found", kind, low_s, high_s, step + 1);
}

/* Every change of sign that samples show is a turn, at the time that bisection finds; and there are no others. */
static void
assert_bisected (const guint chain[CHAIN],
                 gboolean    seen[LW_N_TURNS])
{
  LwConditions steps[CHAIN];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwTrack) dense = NULL;

  chain_steps (steps, chain);
  dense = march_chain ((LwSampling) { .samples = DENSE, .turns = TRUE }, &leaf, steps);
  g_assert_cmpuint (dense->n_steps, ==, CHAIN);

  for (guint step = 0; step < CHAIN; step++)
    {
      const LwSegment *segment = dense->steps[step];
      LwBoundary boundaries[G_N_ELEMENTS (sample_parts)];
      double before[LW_N_TURNS], now[LW_N_TURNS];
      guint crossed = 0;

      make_boundaries (dense, &steps[step], boundaries);
      lw_turning_values (boundaries, lw_track_state (dense, step, 0, 0), leaf.n_parts, &aimed, before);
      for (guint i = 1; i < segment->n; i++)
        {
          lw_turning_values (boundaries, lw_track_state (dense, step, 0, i), leaf.n_parts, &aimed, now);
          for (LwTurnKind kind = 0; kind < LW_N_TURNS; kind++)
            if (before[kind] * lw_turning_way (kind) < 0 && now[kind] * lw_turning_way (kind) >= 0)
              {
                double low = segment->time_s[i - 1], high = segment->time_s[i];
                double exact = bisect (dense, boundaries, step, kind, low, high);

                g_test_message ("step %u turn %u at %.6f s", step + 1, kind, exact);
                assert_relative (find (dense, step, kind, low, high), exact, 1e-6, "turning point");
                crossed++;
                seen[kind] = TRUE;
              }
          memcpy (before, now, sizeof before);
        }
      g_assert_cmpuint (segment->n_turns, ==, crossed);
    }
}

static void
test_bisection (void)
{
  gboolean seen[LW_N_TURNS] = { FALSE };

  for (guint i = 0; i < G_N_ELEMENTS (chains); i++)
    assert_bisected (chains[i], seen);

  for (LwTurnKind kind = 0; kind < LW_N_TURNS; kind++)
    if (!seen[kind])
      g_error ("no step of the test has turn %u", kind);
}

/* The same to the last bit whatever is sampled; and in the order of time. */
static void
test_sampling (void)
{
  LwConditions steps[CHAIN];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwTrack) few = NULL;
  g_autoptr (LwTrack) many = NULL;

  chain_steps (steps, chains[0]);
  few = march_chain ((LwSampling) { .samples = 1, .turns = TRUE }, &leaf, steps);
  many = march_chain ((LwSampling) { .every_s = 7, .turns = TRUE }, &leaf, steps);
  for (guint step = 0; step < CHAIN; step++)
    {
      const LwSegment *a = few->steps[step], *b = many->steps[step];

      g_assert_cmpuint (a->n_turns, ==, b->n_turns);
      for (guint i = 0; i < a->n_turns; i++)
        {
          g_assert_cmpint (a->turns[i].kind, ==, b->turns[i].kind);
          g_assert_cmpfloat (a->turns[i].time_s, ==, b->turns[i].time_s);
          g_assert_cmpfloat (a->turns[i].time_s, >, i > 0 ? a->turns[i - 1].time_s - 1e-9 : 0);
          g_assert_cmpfloat (a->turns[i].time_s, <=, a->duration_s);
        }
    }
}

/* A step taken over from the last run keeps its turns; another aim finds its own. */
static void
test_memory (void)
{
  LwConditions steps[CHAIN];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) first = NULL;
  g_autoptr (LwTrack) second = NULL;
  g_autoptr (LwTrack) third = NULL;
  guint n = 0;

  chain_steps (steps, chains[0]);
  first = lw_march_run (march, &leaf, steps, CHAIN, (LwSampling) { .samples = 20, .turns = TRUE });
  steps[CHAIN - 1].duration_s *= 0.9;
  second = lw_march_run (march, &leaf, steps, CHAIN, (LwSampling) { .samples = 20, .turns = TRUE });
  g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, 1);
  g_assert_true (first->steps[1] == second->steps[1]);
  g_assert_cmpuint (second->steps[1]->n_turns, >, 0);

  lw_march_set_aimed (march, (LwAimed) { .high = 2, .low = NAN });
  third = lw_march_run (march, &leaf, steps, CHAIN, (LwSampling) { .samples = 20, .turns = TRUE });
  for (guint step = 0; step < CHAIN; step++)
    for (guint i = 0; i < third->steps[step]->n_turns; i++)
      n += third->steps[step]->turns[i].kind == LW_TURN_MOISTURE_REACHED;
  g_assert_cmpuint (n, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/turning/bisection", test_bisection);
  g_test_add_func ("/turning/sampling", test_sampling);
  g_test_add_func ("/turning/memory", test_memory);

  return g_test_run ();
}

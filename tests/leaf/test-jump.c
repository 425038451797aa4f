/* Jumps: that they come where they should, that what follows starts from there, and that nothing else moves. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/march.h"
#include "leaf/solver.h"
#include "near.h"
#include "sample.h"

#define CHAIN 4 /* wither, pan, roll, sun */
#define JUMP_S 600
#define MOST_PARTS 8

static const LwSampling coarse = { .samples = 20 };
static const LwState wetter = { .water = 0.2, .temp_c = -3, .oxidation = 0.05 };

static LwJump *
jump_new (const LwLeaf *leaf,
          double        time_s,
          LwState       shift)
{
  LwState shifts[MOST_PARTS];

  g_assert_cmpuint (leaf->n_parts, <=, MOST_PARTS);
  for (guint i = 0; i < leaf->n_parts; i++)
    shifts[i] = shift;

  return lw_jump_new (time_s, shifts, leaf->n_parts);
}

static void
assert_same_end (const LwTrack *a,
                 const LwTrack *b,
                 guint          step)
{
  g_assert_cmpmem (lw_track_state (a, step, 0, a->steps[step]->n - 1), a->n_parts * sizeof (LwState),
                   lw_track_state (b, step, 0, b->steps[step]->n - 1), b->n_parts * sizeof (LwState));
}

/* The rest of the step is what the solver makes of the shifted states by itself. */
static void
test_goes_on (void)
{
  LwConditions steps[SAMPLE_STEPS], rest;
  LwBoundary boundaries[MOST_PARTS];
  LwState states[MOST_PARTS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwJump) jump = jump_new (&leaf, JUMP_S, wetter);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwSolver) solver = lw_solver_new ();
  g_autoptr (LwTrack) track = NULL;
  guint n = 0;

  sample_steps (steps);
  rest = steps[SAMPLE_PAN];
  rest.duration_s -= JUMP_S;
  steps[SAMPLE_PAN].jump = jump;
  track = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  g_assert_false (track->failure.failed);
  g_assert_cmpuint (track->steps[0]->n, ==, 21);

  while (track->steps[1]->time_s[n + 1] > track->steps[1]->time_s[n])
    n++;
  g_assert_cmpfloat (track->steps[1]->time_s[n], ==, JUMP_S);
  for (guint i = 0; i < leaf.n_parts; i++)
    {
      const LwState *before = lw_track_state (track, 1, i, n), *after = lw_track_state (track, 1, i, n + 1);

      assert_within (after->water, before->water + 0.2, 1e-12, "jump");
      assert_within (after->temp_c, before->temp_c - 3, 1e-12, "jump");
      assert_within (after->oxidation, before->oxidation + 0.05, 1e-12, "jump");
      g_assert_cmpfloat (after->heat, ==, before->heat);
      g_assert_cmpfloat (lw_track_state_at (track, 1, i, JUMP_S).water, ==, after->water);
      boundaries[i] = lw_boundary_new (&rest, &leaf, &leaf.parts[i]);
      states[i] = *after;
    }

  g_assert_cmpint (lw_solver_start (solver, boundaries, states, leaf.n_parts), ==, 0);
  g_assert_cmpint (lw_solver_advance (solver, rest.duration_s, states), ==, 0);
  for (guint i = 0; i < leaf.n_parts; i++)
    for (gsize k = 0; k < LW_N_STATE; k++)
      {
        double got = ((const double *) lw_track_state (track, 1, i, track->steps[1]->n - 1))[k];

        assert_within (got, ((const double *) &states[i])[k], 1e-9 * (1 + fabs (got)), "jump");
      }
}

/* A jump by nothing, wherever it comes, moves no end by more than the solver's errors. */
static void
test_by_nothing (void)
{
  const double times_s[] = { 0, 7, 1000, 25 * 60, 1e6 };
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) plain = NULL;

  sample_steps (steps);
  plain = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  for (guint i = 0; i < G_N_ELEMENTS (times_s); i++)
    {
      g_autoptr (LwJump) jump = jump_new (&leaf, times_s[i], (LwState) { 0 });
      g_autoptr (LwTrack) track = NULL;
      LwOutcome a, b;

      steps[SAMPLE_PAN].jump = jump;
      track = lw_march_run (march, &leaf, steps, CHAIN, coarse);
      steps[SAMPLE_PAN].jump = NULL;
      g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, 3);
      a = lw_track_end (plain, 3, -1);
      b = lw_track_end (track, 3, -1);
      assert_within (a.moisture_wb_pct, b.moisture_wb_pct, 1e-3, "jump");
      assert_within (a.oxidation_pct, b.oxidation_pct, 1e-3, "jump");
      assert_within (a.rupture_pct, b.rupture_pct, 1e-3, "jump");
    }
}

/* The number of samples moves no state, and the march knows the jump again, but no other. */
static void
test_memory (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwJump) jump = jump_new (&leaf, JUMP_S, wetter);
  g_autoptr (LwJump) other = jump_new (&leaf, JUMP_S, wetter);
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) few = NULL, many = NULL, timed = NULL;

  sample_steps (steps);
  steps[SAMPLE_PAN].jump = jump;
  many = lw_march_run (march, &leaf, steps, CHAIN, (LwSampling) { .samples = 200 });
  timed = lw_march_run (march, &leaf, steps, CHAIN, (LwSampling) { .every_s = 300 });
  few = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  for (guint step = 0; step < CHAIN; step++)
    {
      assert_same_end (few, many, step);
      assert_same_end (few, timed, step);
    }

  lw_track_unref (lw_march_run (march, &leaf, steps, CHAIN, coarse));
  g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, 0);
  steps[SAMPLE_PAN].jump = other;
  lw_track_unref (lw_march_run (march, &leaf, steps, CHAIN, coarse));
  g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, 3);
}

/* Past the end it comes at the end, and the next step starts there; bounds are kept. */
static void
test_at_end (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwJump) jump = jump_new (&leaf, 1e6, (LwState) { .water = 0.1, .enzyme = 2, .roll = -9 });
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;
  guint last;

  sample_steps (steps);
  steps[SAMPLE_PAN].jump = jump;
  track = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  g_assert_false (track->failure.failed);
  last = track->steps[1]->n - 1;
  for (guint i = 0; i < leaf.n_parts; i++)
    {
      const LwState *before = lw_track_state (track, 1, i, last - 1), *after = lw_track_state (track, 1, i, last);

      assert_within (after->water, before->water + 0.1, 1e-12, "jump");
      g_assert_cmpfloat (after->enzyme, ==, 1);
      g_assert_cmpfloat (after->roll, ==, 0);
      g_assert_cmpmem (lw_track_state (track, 2, i, 0), sizeof *after, after, sizeof *after);
      g_assert_cmpfloat (lw_track_state_at (track, 1, i, track->steps[1]->duration_s).water, ==, after->water);
    }
}

/* What lies between the states before and after turns at that moment. */
static void
test_turns (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwJump) jump = jump_new (&leaf, JUMP_S, (LwState) { .enzyme = -1, .water = -9 });
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;
  gboolean enzyme = FALSE, water = FALSE;

  sample_steps (steps);
  steps[SAMPLE_WITHER].jump = jump;
  track = lw_march_run (march, &leaf, steps, 1, (LwSampling) { .samples = 20, .turns = TRUE });
  for (guint i = 0; i < track->steps[0]->n_turns; i++)
    {
      const LwTurn *turn = &track->steps[0]->turns[i];

      g_test_message ("turn %d at %g s", turn->kind, turn->time_s);
      g_assert_true (i == 0 || turn->time_s >= turn[-1].time_s);
      enzyme |= turn->kind == LW_TURN_ENZYME_HALF && turn->time_s == JUMP_S;
      water |= turn->kind == LW_TURN_WATER_HALF && turn->time_s == JUMP_S;
    }
  g_assert_true (enzyme && water);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/jump/goes-on", test_goes_on);
  g_test_add_func ("/jump/by-nothing", test_by_nothing);
  g_test_add_func ("/jump/memory", test_memory);
  g_test_add_func ("/jump/at-end", test_at_end);
  g_test_add_func ("/jump/turns", test_turns);

  return g_test_run ();
}

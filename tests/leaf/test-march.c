/* The march: what it remembers, what it samples, how it converges, how it fails. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/march.h"
#include "near.h"
#include "sample.h"

#define CHAIN 4 /* wither, pan, roll, sun */

static const LwSampling coarse = { .samples = 20 };

/* Weighted RMS of the difference, as CVODE's own tests measure: 1 is the tolerance. */
static double
distance (const LwState *a,
          const LwState *b,
          double         relative)
{
  static const LwState size = {
    .water = 0.05, .temp_c = 10, .wilt = 0.05, .heat = 0.05, .roll = 0.05, .twist = 0.05,
    .enzyme = 0.02, .oxidation = 0.05, .roast_min = 0.2, .green = 0.05, .broken = 0.05,
  };
  double sum = 0;

  for (gsize k = 0; k < LW_N_STATE; k++)
    {
      double x = ((const double *) a)[k], y = ((const double *) b)[k];
      double w = relative * (fabs (y) + ((const double *) &size)[k]);

      sum += (x - y) * (x - y) / (w * w);
    }

  return sqrt (sum / LW_N_STATE);
}

static void
assert_same_track (const LwTrack *a,
                   const LwTrack *b)
{
  g_assert_cmpuint (a->n_steps, ==, b->n_steps);
  for (guint step = 0; step < a->n_steps; step++)
    {
      g_assert_cmpuint (a->steps[step]->n, ==, b->steps[step]->n);
      g_assert_cmpmem (a->steps[step]->states, a->steps[step]->n * a->n_parts * sizeof (LwState),
                       b->steps[step]->states, b->steps[step]->n * b->n_parts * sizeof (LwState));
    }
}

/* Changing step k computes k and what follows, and nothing else; the result is that of a fresh march. */
static void
test_memory (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();

  sample_steps (steps);
  lw_track_unref (lw_march_run (march, &leaf, steps, CHAIN, coarse));
  g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, CHAIN);

  for (guint k = 0; k < CHAIN; k++)
    {
      g_autoptr (LwMarch) fresh = lw_march_new ();
      g_autoptr (LwTrack) quick = NULL;
      g_autoptr (LwTrack) whole = NULL;

      steps[k].duration_s *= 1.01;
      quick = lw_march_run (march, &leaf, steps, CHAIN, coarse);
      g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, CHAIN - k);
      whole = lw_march_run (fresh, &leaf, steps, CHAIN, coarse);
      assert_same_track (quick, whole);
    }

  lw_track_unref (lw_march_run (march, &leaf, steps, CHAIN, coarse));
  g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, 0);

  leaf.law.oxidise_s *= 1.1;
  lw_track_unref (lw_march_run (march, &leaf, steps, CHAIN, coarse));
  g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, CHAIN);
}

/* Rows fall on whole multiples of the interval in the batch's time, and on every step's ends. */
static void
test_every (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;
  double begin = 0;

  sample_steps (steps);
  steps[0].duration_s = 1000.5;
  track = lw_march_run (march, &leaf, steps, CHAIN, (LwSampling) { .every_s = 300 });

  for (guint step = 0; step < CHAIN; step++)
    {
      const LwSegment *segment = track->steps[step];

      assert_within (segment->time_s[0], 0, 0, "start");
      assert_within (segment->time_s[segment->n - 1], steps[step].duration_s, 0, "end");
      for (guint i = 1; i + 1 < segment->n; i++)
        {
          double whole = (begin + segment->time_s[i]) / 300;

          assert_within (whole, round (whole), 1e-9, "multiple");
          g_assert_cmpfloat (segment->time_s[i], >, segment->time_s[i - 1]);
        }
      begin += steps[step].duration_s;
    }
  g_assert_cmpuint (track->steps[0]->n, ==, 5);
}

/* Sampling does not move the states, and step edges join. */
static void
test_edges (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) few = NULL;
  g_autoptr (LwTrack) many = NULL;

  sample_steps (steps);
  few = lw_march_run (march, &leaf, steps, CHAIN, (LwSampling) { .samples = 1 });
  many = lw_march_run (march, &leaf, steps, CHAIN, (LwSampling) { .samples = 200 });

  for (guint step = 0; step < CHAIN; step++)
    for (guint part = 0; part < leaf.n_parts; part++)
      {
        const LwState *end = lw_track_state (many, step, part, 200);

        g_assert_cmpfloat (distance (lw_track_state (few, step, part, 1), end, 1e-5), <, 1e-6);
        if (step + 1 < CHAIN)
          g_assert_cmpmem (end, sizeof *end, lw_track_state (many, step + 1, part, 0), sizeof *end);
      }
}

/* The default tolerance keeps step ends within 1e-4 of a solution a thousand times tighter. */
static void
test_tolerance (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwMarch) tight = lw_march_new ();
  g_autoptr (LwTrack) usual = NULL;
  g_autoptr (LwTrack) exact = NULL;

  sample_steps (steps);
  lw_march_set_tolerance (tight, 1e-9);
  usual = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  exact = lw_march_run (tight, &leaf, steps, CHAIN, coarse);

  for (guint step = 0; step < CHAIN; step++)
    for (guint part = 0; part < leaf.n_parts; part++)
      {
        double off = distance (lw_track_state (usual, step, part, 20), lw_track_state (exact, step, part, 20), 1e-4);

        g_test_message ("step %u part %u: %.3f of the bound", step + 1, part, off);
        g_assert_cmpfloat (off, <, 1);
      }
}

/* Bounds, and what can only grow, in every sample. */
static void
test_bounds (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;

  sample_steps (steps);
  track = lw_march_run (march, &leaf, steps, SAMPLE_STEPS, (LwSampling) { .samples = 100 });
  g_assert_false (track->failure.failed);

  for (guint step = 0; step < track->n_steps; step++)
    for (guint part = 0; part < leaf.n_parts; part++)
      for (guint i = 0; i <= 100; i++)
        {
          const LwState *s = lw_track_state (track, step, part, i);
          const LwState *before = lw_track_state (track, step, part, i > 0 ? i - 1 : 0);

          g_assert_true (s->water >= 0 && s->enzyme >= 0 && s->enzyme <= 1);
          g_assert_true (s->oxidation >= 0 && s->oxidation <= 1 && s->broken <= 1 && s->twist <= 1);
          g_assert_cmpfloat (s->oxidation, >=, before->oxidation - 5e-6);
          g_assert_cmpfloat (lw_state_rupture (s, &leaf.parts[part]), >=,
                             lw_state_rupture (before, &leaf.parts[part]) - 5e-6);
          g_assert_cmpfloat (s->enzyme, <=, before->enzyme + 5e-6);
          g_assert_cmpfloat (s->roast_min, >=, before->roast_min - 5e-6);
        }
}

/* Conditions that no solver can follow end in a told failure; what went before is kept. */
static void
test_failure (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) track = NULL;
  g_autoptr (LwTrack) after = NULL;

  sample_steps (steps);
  steps[2].air_temp_c = NAN;
  track = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  g_assert_true (track->failure.failed);
  g_assert_cmpuint (track->failure.step, ==, 2);
  g_assert_cmpuint (track->n_steps, ==, 2);
  g_assert_cmpint (track->failure.code, <, 0);
  g_assert_cmpfloat (lw_track_end (track, 1, -1).moisture_wb_pct, >, 10);

  sample_steps (steps);
  after = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  g_assert_false (after->failure.failed);
  g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, 2);
}

/* One part or sixty-four: the mean of equal parts is the part. */
static void
test_parts (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  LwPart equal[64];
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) one = NULL;
  g_autoptr (LwTrack) many = NULL;
  LwOutcome a, b;

  sample_steps (steps);
  for (guint i = 0; i < 64; i++)
    equal[i] = (LwPart) { .share = 1.0 / 64, .exposure = 1, .area = 1, .cuticle = 1, .ruptured = 0.01 };
  leaf.parts = equal;
  leaf.n_parts = 64;
  /* Sixty-four parts round otherwise than one, and so step otherwise: within the tolerance. */
  lw_march_set_tolerance (march, 1e-9);
  many = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  equal[0].share = 1;
  leaf.n_parts = 1;
  one = lw_march_run (march, &leaf, steps, CHAIN, coarse);

  a = lw_track_end (many, CHAIN - 1, -1);
  b = lw_track_end (one, CHAIN - 1, -1);
  assert_relative (a.rupture_pct, b.rupture_pct, 1e-7, "rupture");
  assert_relative (a.moisture_wb_pct, b.moisture_wb_pct, 1e-7, "moisture");
  assert_within (a.uneven_pct, 0, 1e-4, "unevenness");
}

/* Going on from where a track has come to is the rest of that track; fresh leaf is the usual beginning. */
static void
test_from (void)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwMarch) march = lw_march_new ();
  g_autoptr (LwTrack) whole = NULL;
  LwState states[G_N_ELEMENTS (sample_parts)];

  sample_steps (steps);
  whole = lw_march_run (march, &leaf, steps, CHAIN, coarse);
  for (guint k = 1; k < CHAIN; k++)
    {
      g_autoptr (LwTrack) rest = NULL;

      for (guint part = 0; part < leaf.n_parts; part++)
        states[part] = *lw_track_state (whole, k - 1, part, whole->steps[k - 1]->n - 1);
      rest = lw_march_run_from (march, &leaf, states, steps + k, CHAIN - k, coarse);
      g_assert_cmpuint (rest->n_steps, ==, CHAIN - k);
      for (guint i = 0; i < rest->n_steps; i++)
        for (guint part = 0; part < leaf.n_parts; part++)
          g_assert_cmpfloat (distance (lw_track_state (rest, i, part, 20), lw_track_state (whole, k + i, part, 20), 3e-6),
                             <, 1e-9);
    }

  /* Nothing of it is remembered. */
  {
    g_autoptr (LwTrack) again = lw_march_run (march, &leaf, steps, CHAIN, coarse);

    g_assert_cmpuint (lw_march_cost (march)->steps_run, ==, CHAIN);
    assert_same_track (again, whole);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/march/memory", test_memory);
  g_test_add_func ("/march/every", test_every);
  g_test_add_func ("/march/from", test_from);
  g_test_add_func ("/march/edges", test_edges);
  g_test_add_func ("/march/tolerance", test_tolerance);
  g_test_add_func ("/march/bounds", test_bounds);
  g_test_add_func ("/march/failure", test_failure);
  g_test_add_func ("/march/parts", test_parts);

  return g_test_run ();
}

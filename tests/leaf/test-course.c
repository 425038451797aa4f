/* Logged temperatures: the lines, their thinning, and leaf that follows them, beside exact
 * solutions and beside steps that need no log. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "near.h"
#include "sample.h"

#define ROWS 20000

static void
test_lines (void)
{
  const double time_s[] = { 10, 20, 50 }, value[] = { 100, 200, 140 };
  g_autoptr (LwCourse) course = lw_course_new (time_s, value, G_N_ELEMENTS (time_s));

  assert_within (lw_course_at (course, -1e9), 100, 0, "before");
  assert_within (lw_course_at (course, 10), 100, 0, "first");
  assert_within (lw_course_at (course, 15), 150, 1e-12, "between");
  assert_within (lw_course_at (course, 35), 170, 1e-12, "between");
  assert_within (lw_course_at (course, 1e9), 140, 0, "after");

  assert_within (lw_course_bend (course, 0), 10, 0, "first bend");
  assert_within (lw_course_bend (course, 10), 20, 0, "next bend");
  assert_within (lw_course_bend (course, 49), 50, 0, "last bend");
  g_assert_true (isinf (lw_course_bend (course, 50)));
}

/* Noise, waves, jumps and straight stretches: the lines pass all points as near as told, at every tolerance. */
static void
test_thinned (void)
{
  g_autofree double *time_s = g_new (double, ROWS), *value = g_new (double, ROWS);
  g_autofree double *few_s = g_new (double, ROWS), *few = g_new (double, ROWS);
  g_autofree guint *kept = g_new (guint, ROWS);
  g_autoptr (GRand) dice = g_rand_new_with_seed (1);
  guint last = ROWS + 1;

  for (guint i = 0; i < ROWS; i++)
    {
      time_s[i] = i > 0 ? time_s[i - 1] + g_rand_double_range (dice, 0.2, 2) : 0;
      value[i] = 200 + 30 * sin (time_s[i] / 400) + (i / 3000 % 2 ? 25 : 0)
                 + (i % 5000 < 2500 ? g_rand_double_range (dice, -0.4, 0.4) : 0);
    }

  for (double off = 0.05; off < 10; off *= 3)
    {
      guint n = lw_course_thin (time_s, value, ROWS, off, kept);
      g_autoptr (LwCourse) course = NULL;

      g_assert_cmpuint (n, <, last);
      g_assert_cmpuint (kept[0], ==, 0);
      g_assert_cmpuint (kept[n - 1], ==, ROWS - 1);
      last = n;
      for (guint i = 0; i < n; i++)
        {
          few_s[i] = time_s[kept[i]];
          few[i] = value[kept[i]];
        }
      course = lw_course_new (few_s, few, n);
      for (guint i = 0; i < ROWS; i++)
        assert_within (lw_course_at (course, time_s[i]), value[i], off * (1 + 1e-9), "thinned");
    }

  g_assert_cmpuint (lw_course_thin (time_s, value, 1, 1, kept), ==, 1);
  g_assert_cmpuint (lw_course_thin (time_s, value, 0, 1, kept), ==, 0);
}

/* (transfer full) the end of one step, at a tolerance. */
static LwTrack *
march (const LwLeaf       *leaf,
       const LwConditions *steps,
       guint               n,
       double              tolerance)
{
  g_autoptr (LwMarch) one = lw_march_new ();

  lw_march_set_tolerance (one, tolerance);

  return lw_march_run (one, leaf, steps, n, (LwSampling) { .samples = 40 });
}

static void
assert_same (const LwTrack *a,
             guint          step_a,
             const LwTrack *b,
             guint          step_b,
             double         bound)
{
  for (guint part = 0; part < a->n_parts; part++)
    {
      const double *x = (const double *) lw_track_state (a, step_a, part, a->steps[step_a]->n - 1);
      const double *y = (const double *) lw_track_state (b, step_b, part, b->steps[step_b]->n - 1);

      for (guint k = 0; k < LW_N_STATE; k++)
        assert_within (x[k], y[k], bound * (1 + fabs (y[k])), "state");
    }
}

/* A log that never changes is the setting. Its many points only make the solver's steps shorter. */
static void
test_constant (void)
{
  static const gsize which[] = { SAMPLE_PAN, SAMPLE_HOT_AIR, SAMPLE_WITHER };
  LwLeaf leaf = sample_leaf ();
  LwConditions steps[SAMPLE_STEPS];
  double time_s[101], wall[101], air[101];

  sample_steps (steps);
  for (guint at = 0; at < G_N_ELEMENTS (which); at++)
    {
      LwConditions logged = steps[which[at]];
      g_autoptr (LwTrack) fixed = march (&leaf, &steps[which[at]], 1, 1e-8), followed = NULL;
      g_autoptr (LwCourse) of_wall = NULL, of_air = NULL;

      for (guint i = 0; i <= 100; i++)
        {
          time_s[i] = i * logged.duration_s / 100;
          wall[i] = logged.wall_c;
          air[i] = logged.air_temp_c;
        }
      logged.wall = of_wall = lw_course_new (time_s, wall, 101);
      logged.air = of_air = lw_course_new (time_s, air, 101);
      logged.follow = LW_FOLLOW_WALL | LW_FOLLOW_AIR;
      logged.wall_c = logged.air_temp_c = 0;
      followed = march (&leaf, &logged, 1, 1e-8);
      g_assert_false (fixed->failure.failed || followed->failure.failed);
      assert_same (followed, 0, fixed, 0, 1e-5);
    }
}

/* Nothing but heat from a wall that warms evenly: C dT/dt = w (a + b t - T), solved by
 * T = a + b (t - tau) + (T0 - a + b tau) exp (-t / tau) with tau = C / w. */
static void
test_ramp (void)
{
  const double time_s[] = { 100, 700 }, value[] = { 60, 180 };
  const double a = 60, b = 120.0 / 600;
  g_autoptr (LwCourse) course = lw_course_new (time_s, value, 2);
  const LwPart part = { .share = 1, .exposure = 1, .area = 1, .cuticle = 1 };
  LwLeaf leaf = sample_leaf ();
  LwConditions steps[SAMPLE_STEPS], *pan = &steps[SAMPLE_PAN];
  g_autoptr (LwTrack) track = NULL;
  double heat, w, tau, x = leaf.fresh_water;

  leaf.n_parts = 1;
  leaf.parts = &part;
  sample_steps (steps);
  pan->toss = 1e-12;      /* no leaf in the air: nothing evaporates, no air warms it */
  pan->duration_s = 500;
  pan->wall_c = 999;
  pan->wall = course;
  pan->wall_from_s = 100; /* the log began before the step */
  pan->follow = LW_FOLLOW_WALL;

  track = march (&leaf, pan, 1, 1e-8);
  g_assert_false (track->failure.failed);
  heat = leaf.law.c_dry_j_kgk + x * leaf.law.c_water_j_kgk;
  w = pan->wall_w_m2k * pan->wall_m2 * (1 + x) / pan->load_kg * (x + 0.6) / (x + 0.9);
  tau = heat / w;
  for (guint i = 0; i < track->steps[0]->n; i++)
    {
      double t = track->steps[0]->time_s[i];

      assert_within (lw_track_state (track, 0, 0, i)->temp_c,
                     a + b * (t - tau) + (22 - a + b * tau) * exp (-t / tau), 1e-4, "leaf temperature");
    }
  g_assert_cmpfloat (lw_track_state (track, 0, 0, track->steps[0]->n - 1)->temp_c, >, 60);
}

/* An hour of calm with one minute of heat: a solver that only looked at the ends of its steps would miss it. */
static void
test_peak (void)
{
  LwLeaf leaf = sample_leaf ();
  LwConditions steps[SAMPLE_STEPS], three[3], *one;
  const double begin = 3 * 3600, time_s[] = { 0, begin, begin + 1, begin + 60, begin + 61, 18 * 3600 };
  const double value[] = { 22, 22, 90, 90, 22, 22 };
  g_autoptr (LwCourse) course = lw_course_new (time_s, value, G_N_ELEMENTS (time_s));
  g_autoptr (LwTrack) plain = NULL, whole = NULL, split = NULL;
  double warmest = 0;

  sample_steps (steps);
  one = &steps[SAMPLE_WITHER];
  one->humidity = 0;      /* heated air keeps its vapour */
  one->vapour_pa = 1800;
  plain = march (&leaf, one, 1, 3e-6);
  one->air = course;
  one->follow = LW_FOLLOW_AIR;
  whole = march (&leaf, one, 1, 3e-6);

  /* The same in three steps, which the solver starts anew. */
  for (guint i = 0; i < 3; i++)
    three[i] = *one;
  three[0].duration_s = begin;
  three[1].duration_s = 61;
  three[1].air_from_s = begin;
  three[2].duration_s = one->duration_s - begin - 61;
  three[2].air_from_s = begin + 61;
  split = march (&leaf, three, 3, 1e-9);

  assert_same (whole, 0, split, 2, 3e-4);
  for (guint i = 0; i < split->steps[1]->n; i++)
    warmest = MAX (warmest, lw_track_state (split, 1, 1, i)->temp_c);
  g_assert_cmpfloat (warmest, >, 40);
  /* And it is told from no peak at all. */
  g_assert_cmpfloat (lw_track_end (plain, 0, -1).moisture_wb_pct - lw_track_end (whole, 0, -1).moisture_wb_pct, >, 0.05);
}

/* The same where the states jump, by nothing, before the peak and on it: the solver begins anew there and still stops
 * where the log bends. */
static void
test_peak_and_jump (void)
{
  LwConditions steps[SAMPLE_STEPS], *one;
  LwLeaf leaf = sample_leaf ();
  const double begin = 3 * 3600, time_s[] = { 0, begin, begin + 1, begin + 60, begin + 61, 18 * 3600 };
  const double value[] = { 22, 22, 90, 90, 22, 22 };
  const double jumps_s[] = { begin - 600, begin + 30, begin + 600 };
  g_autoptr (LwCourse) course = lw_course_new (time_s, value, G_N_ELEMENTS (time_s));
  g_autofree LwState *nothing = g_new0 (LwState, leaf.n_parts);
  g_autoptr (LwTrack) whole = NULL;

  sample_steps (steps);
  one = &steps[SAMPLE_WITHER];
  one->air = course;
  one->follow = LW_FOLLOW_AIR;
  whole = march (&leaf, one, 1, 3e-6);
  for (guint i = 0; i < G_N_ELEMENTS (jumps_s); i++)
    {
      g_autoptr (LwJump) jump = lw_jump_new (jumps_s[i], nothing, leaf.n_parts);
      g_autoptr (LwTrack) jumped = NULL;

      one->jump = jump;
      jumped = march (&leaf, one, 1, 3e-6);
      assert_same (whole, 0, jumped, 0, 3e-4);
    }
}

/* The ends of steps are remembered by what they were made from, the logs too. */
static void
test_memory (void)
{
  const double time_s[] = { 0, 1500 }, hot[] = { 200, 300 }, cool[] = { 200, 250 };
  g_autoptr (LwCourse) one = lw_course_new (time_s, hot, 2), other = lw_course_new (time_s, cool, 2);
  g_autoptr (LwMarch) marching = lw_march_new ();
  LwLeaf leaf = sample_leaf ();
  LwConditions steps[SAMPLE_STEPS];
  const LwCourse *courses[] = { one, one, other, one };
  static const guint run[] = { 2, 0, 2, 2 };

  sample_steps (steps);
  for (guint i = 0; i < G_N_ELEMENTS (courses); i++)
    {
      g_autoptr (LwTrack) track = NULL;

      steps[SAMPLE_PAN].wall = courses[i];
      steps[SAMPLE_PAN].follow = LW_FOLLOW_WALL;
      track = lw_march_run (marching, &leaf, &steps[SAMPLE_PAN], 2, (LwSampling) { .samples = 10 });
      g_assert_cmpuint (lw_march_cost (marching)->steps_run, ==, run[i]);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/course/lines", test_lines);
  g_test_add_func ("/course/thinned", test_thinned);
  g_test_add_func ("/course/constant", test_constant);
  g_test_add_func ("/course/ramp", test_ramp);
  g_test_add_func ("/course/peak", test_peak);
  g_test_add_func ("/course/peak-and-jump", test_peak_and_jump);
  g_test_add_func ("/course/memory", test_memory);

  return g_test_run ();
}

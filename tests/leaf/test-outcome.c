/* What a maker would say of the leaf: the shares that are nearly dry and roasted, and unevenness, against
 * values worked out by hand, and smooth where a setting moves the leaf past a bound. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "near.h"
#include "sample.h"

static const LwPart halves[] = {
  { .share = 0.75, .exposure = 1, .area = 1, .cuticle = 1 },
  { .share = 0.25, .exposure = 1, .area = 1, .cuticle = 1 },
};

static LwOutcome
mean_of (double wet_basis_a,
         double wet_basis_b,
         double roast_a,
         double roast_b)
{
  LwLeaf leaf = sample_leaf ();
  LwState states[G_N_ELEMENTS (halves)] = {
    { .water = lw_dry_basis (wet_basis_a), .roast_min = roast_a },
    { .water = lw_dry_basis (wet_basis_b), .roast_min = roast_b },
  };

  leaf.parts = halves;
  leaf.n_parts = G_N_ELEMENTS (halves);

  return lw_outcome_mean (&leaf, states);
}

static void
test_by_hand (void)
{
  LwOutcome o = mean_of (60, 8, 0, 40);

  assert_within (o.uneven_pct, sqrt (0.75 * 0.25) * 52, 1e-9, "unevenness");
  assert_within (o.nearly_dry_pct, 25, 1e-3, "a quarter is dry");
  assert_within (o.roasted_pct, 25, 0.01, "a quarter is roasted");

  o = mean_of (20, 20, 10, 10);
  assert_within (o.nearly_dry_pct, 50, 1e-9, "half counts at the bound");
  assert_within (o.roasted_pct, 50, 1e-9, "half counts at the bound");

  o = mean_of (18, 18, 10 * exp (0.3), 10 * exp (0.3));
  assert_within (o.nearly_dry_pct, 100 / (1 + exp (-2)), 1e-9, "two widths past the bound");
  assert_within (o.roasted_pct, 100 / (1 + exp (-2)), 1e-9, "two widths past the bound");
}

static void
test_ends (void)
{
  LwOutcome fresh = mean_of (77, 77, 0, 0), made = mean_of (0, 4, 1e5, 1e6);

  assert_within (fresh.nearly_dry_pct, 0, 1e-12, "fresh leaf");
  assert_within (fresh.roasted_pct, 0, 0, "leaf never heated");
  assert_within (made.nearly_dry_pct, 100, 1e-4, "dry leaf");
  assert_within (made.roasted_pct, 100, 1e-9, "leaf roasted long");
  g_assert_cmpfloat (made.nearly_dry_pct, <=, 100);
  g_assert_cmpfloat (made.roasted_pct, <=, 100);
}

/* Both only rise as the leaf dries and roasts, and never by a jump. */
static void
test_smooth (void)
{
  double dry_before = 0, roasted_before = 0;

  for (int i = 0; i <= 6000; i++)
    {
      double at = i / 100.0;
      LwOutcome o = mean_of (60 - at, 60 - at, at, at);

      g_assert_cmpfloat (o.nearly_dry_pct, >=, dry_before);
      g_assert_cmpfloat (o.roasted_pct, >=, roasted_before);
      g_assert_cmpfloat (o.nearly_dry_pct - dry_before, <, 0.26);
      g_assert_cmpfloat (o.roasted_pct - roasted_before, <, 0.26);
      dry_before = o.nearly_dry_pct;
      roasted_before = o.roasted_pct;
    }
  g_assert_cmpfloat (dry_before, >, 99.9);
  g_assert_cmpfloat (roasted_before, >, 99.9);
}

static LwOutcome
after_pan (LwMarch *march,
           double   duration_s)
{
  LwConditions steps[SAMPLE_STEPS];
  LwLeaf leaf = sample_leaf ();
  g_autoptr (LwTrack) track = NULL;

  sample_steps (steps);
  steps[SAMPLE_PAN].duration_s = duration_s;
  track = lw_march_run (march, &leaf, steps, 2, (LwSampling) { .samples = 1 });
  g_assert_false (track->failure.failed);

  return lw_track_end (track, 1, -1);
}

/* Time in the pan takes the parts past both bounds one after the other; halving the change halves the effect. */
static void
test_in_time (void)
{
  g_autoptr (LwMarch) march = lw_march_new ();
  double most = 0;

  lw_march_set_tolerance (march, 1e-9);
  for (guint i = 0; i < 12; i++)
    {
      double at_s = 900 + 300 * i;
      LwOutcome from = after_pan (march, at_s);
      LwOutcome half = after_pan (march, at_s + 5), whole = after_pan (march, at_s + 10);

      assert_within (half.nearly_dry_pct - from.nearly_dry_pct, whole.nearly_dry_pct - half.nearly_dry_pct,
                     0.3, "nearly dry");
      assert_within (half.roasted_pct - from.roasted_pct, whole.roasted_pct - half.roasted_pct, 0.3, "roasted");
      most = MAX (most, whole.nearly_dry_pct - from.nearly_dry_pct);
    }
  g_assert_cmpfloat (most, >, 0.1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/outcome/by-hand", test_by_hand);
  g_test_add_func ("/outcome/ends", test_ends);
  g_test_add_func ("/outcome/smooth", test_smooth);
  g_test_add_func ("/outcome/in-time", test_in_time);

  return g_test_run ();
}

/* Which steps and moments of two batches belong together. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>

#include "made.h"
#include "study/compare.h"

/* A batch computed, with a batch of its own season. */
typedef struct
{
  LwSeason *season;
  LwPlan *plan;
  LwTrack *track;
} Made;

static void
made_init (Made         *made,
           const LwKind *kinds,
           guint         n,
           double        minutes,
           gint64        when_s)
{
  g_autoptr (LwMarch) march = lw_march_new ();

  made->season = made_season (kinds, n);
  for (guint i = 0; i < n; i++)
    made_set (&made->season, i, LW_SET_MINUTES, minutes);
  made->season->batches[0]->when_s = when_s;
  made->plan = lw_plan_new (made->season, 0);
  made->track = lw_plan_march (made->plan, march, (LwSampling) { .samples = 20 });
}

static void
made_clear (Made *made)
{
  lw_track_unref (made->track);
  lw_plan_free (made->plan);
  lw_season_unref (made->season);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Made, made_clear)

static LwSide
side_of (const Made *made)
{
  return (LwSide) { made->season->batches[0], made->track };
}

/* `expect`: a step from 0 of each, -1 for a gap. */
static void
assert_pairs (const LwKind *a,
              guint         n_a,
              const LwKind *b,
              guint         n_b,
              const int     expect[][2],
              guint         n)
{
  g_auto (Made) one = { 0 }, other = { 0 };
  g_autoptr (GArray) rows = NULL;

  made_init (&one, a, n_a, 5, 0);
  made_init (&other, b, n_b, 5, 0);
  rows = lw_compare_steps ((LwSide[2]) { side_of (&one), side_of (&other) });
  g_assert_cmpuint (rows->len, ==, n);
  for (guint i = 0; i < n; i++)
    {
      const LwCompareRow *row = &g_array_index (rows, LwCompareRow, i);

      g_assert_true (isnan (row->clock_s));
      for (guint k = 0; k < 2; k++)
        {
          g_assert_cmpint (row->of[k].there, ==, expect[i][k] >= 0);
          if (expect[i][k] >= 0)
            g_assert_cmpint ((int) row->of[k].step, ==, expect[i][k]);
        }
    }
}

static void
test_steps (void)
{
  static const LwKind green[] = { LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  static const LwKind rolled[] = { LW_KIND_WITHER, LW_KIND_ROLL, LW_KIND_REST, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  static const int pairs[][2] = { { 0, -1 }, { -1, 0 }, { 1, 1 }, { -1, 2 }, { -1, 3 }, { 2, 4 } };
  static const int same[][2] = { { 0, 0 }, { 1, 1 }, { 2, 2 } };
  static const int gone[][2] = { { 0, -1 }, { 1, -1 }, { 2, -1 } };

  assert_pairs (green, 3, rolled, 5, pairs, G_N_ELEMENTS (pairs));
  assert_pairs (green, 3, green, 3, same, G_N_ELEMENTS (same));
  assert_pairs (green, 3, green, 0, gone, G_N_ELEMENTS (gone));
  assert_pairs (green, 0, green, 0, NULL, 0);
}

/* Each of the other's steps has the column of its match; where the last steps are no match, the finished teas do have
 * a row together. */
static void
test_columns (void)
{
  static const LwKind green[] = { LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  static const LwKind sunned[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_DRY_SUN };
  static const int pairs[][2] = { { -1, 0 }, { 0, 1 }, { 1, -1 }, { 2, -1 }, { -1, 2 }, { 2, 2 } };
  static const LwKind twice[] = { LW_KIND_ROLL, LW_KIND_ROLL };
  static const int again[][2] = { { 0, 0 }, { 1, -1 }, { 1, 0 } };
  static const int expect[] = { -1, 0, -1 };
  g_auto (Made) one = { 0 }, other = { 0 };
  int columns[G_N_ELEMENTS (sunned)];

  made_init (&one, green, 3, 5, 0);
  made_init (&other, sunned, 3, 5, 0);
  lw_compare_columns (one.season->batches[0], other.season->batches[0], columns);
  for (guint i = 0; i < G_N_ELEMENTS (expect); i++)
    g_assert_cmpint (columns[i], ==, expect[i]);
  assert_pairs (green, 3, sunned, 3, pairs, G_N_ELEMENTS (pairs));
  /* The last steps are of one kind, but the first has taken the match. */
  assert_pairs (twice, 2, twice, 1, again, G_N_ELEMENTS (again));
}

/* What stands in a row is the batch's own outcome. */
static void
test_values (void)
{
  static const LwKind kinds[] = { LW_KIND_FIX_PAN, LW_KIND_ROLL };
  g_auto (Made) one = { 0 }, other = { 0 };
  g_autoptr (GArray) rows = NULL;

  made_init (&one, kinds, 2, 5, 0);
  made_init (&other, kinds, 2, 8, 0);
  rows = lw_compare_steps ((LwSide[2]) { side_of (&one), side_of (&other) });
  for (guint i = 0; i < 2; i++)
    {
      const LwCompareRow *row = &g_array_index (rows, LwCompareRow, i);
      LwOutcome a = made_end (one.season, i, 0), b = made_end (other.season, i, 0);

      g_assert_cmpfloat (row->of[0].is.moisture_wb_pct, ==, a.moisture_wb_pct);
      g_assert_cmpfloat (row->of[1].is.moisture_wb_pct, ==, b.moisture_wb_pct);
      g_assert_cmpfloat (row->of[1].minute, ==, 8);
    }
}

/* One starts at 8:00 with two steps of an hour, the other on another day at 8:30 with one of two hours. */
static void
test_clock (void)
{
  static const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_REST };
  g_auto (Made) one = { 0 }, other = { 0 };
  g_autoptr (GArray) rows = NULL;
  const double clocks[] = { 9, 10, 10.5 };
  LwOutcome end;

  made_init (&one, kinds, 2, 60, 8 * 3600);
  made_init (&other, kinds, 1, 120, 86400 * 400 + 8 * 3600 + 1800);
  rows = lw_compare_clock ((LwSide[2]) { side_of (&one), side_of (&other) });
  g_assert_cmpuint (rows->len, ==, G_N_ELEMENTS (clocks));
  for (guint i = 0; i < rows->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (rows, LwCompareRow, i).clock_s, clocks[i] * 3600, 1e-6);

  g_assert_cmpuint (g_array_index (rows, LwCompareRow, 0).of[0].step, ==, 0);
  g_assert_cmpfloat (g_array_index (rows, LwCompareRow, 0).of[0].minute, ==, 60);
  g_assert_cmpfloat_with_epsilon (g_array_index (rows, LwCompareRow, 0).of[1].minute, 30, 1e-6);
  g_assert_cmpuint (g_array_index (rows, LwCompareRow, 1).of[0].step, ==, 1);
  end = made_end (one.season, 1, 0);
  g_assert_cmpfloat (g_array_index (rows, LwCompareRow, 1).of[0].is.oxidation_pct, ==, end.oxidation_pct);
  g_assert_false (g_array_index (rows, LwCompareRow, 2).of[0].there);
  g_assert_true (g_array_index (rows, LwCompareRow, 2).of[1].there);
}

/* Before a batch begins it is not there; batches of equal times have no row twice; before 1970 too. */
static void
test_clock_edges (void)
{
  static const LwKind kinds[] = { LW_KIND_FIX_PAN };
  g_auto (Made) early = { 0 }, late = { 0 }, old = { 0 };
  g_autoptr (GArray) rows = NULL, same = NULL;

  made_init (&early, kinds, 1, 5, 8 * 3600);
  made_init (&late, kinds, 1, 5, 20 * 3600);
  made_init (&old, kinds, 1, 5, -16 * 3600);
  rows = lw_compare_clock ((LwSide[2]) { side_of (&early), side_of (&late) });
  g_assert_cmpuint (rows->len, ==, 2);
  g_assert_false (g_array_index (rows, LwCompareRow, 0).of[1].there);
  g_assert_false (g_array_index (rows, LwCompareRow, 1).of[0].there);

  same = lw_compare_clock ((LwSide[2]) { side_of (&early), side_of (&old) });
  g_assert_cmpuint (same->len, ==, 1);
  g_assert_true (g_array_index (same, LwCompareRow, 0).of[0].there);
  g_assert_true (g_array_index (same, LwCompareRow, 0).of[1].there);
}

/* Starts on both sides of midnight are near, in either order; times count from the midnight before the first. */
static void
test_midnight (void)
{
  static const LwKind kinds[] = { LW_KIND_FIX_PAN };
  static const double clocks[] = { 23.5 + 1. / 12, 24.5 + 1. / 12 };
  g_auto (Made) late = { 0 }, early = { 0 };

  made_init (&late, kinds, 1, 5, 23 * 3600 + 1800);
  made_init (&early, kinds, 1, 5, 86400 * 365 + 1800);
  g_assert_cmpfloat (lw_compare_begins (late.season->batches[0], early.season->batches[0]), ==, 3600);
  g_assert_cmpfloat (lw_compare_begins (early.season->batches[0], late.season->batches[0]), ==, -3600);
  for (guint turned = 0; turned < 2; turned++)
    {
      g_autoptr (GArray) rows = lw_compare_clock ((LwSide[2]) { side_of (turned ? &early : &late),
                                                                side_of (turned ? &late : &early) });

      g_assert_cmpuint (rows->len, ==, 2);
      for (guint i = 0; i < 2; i++)
        {
          g_assert_cmpfloat_with_epsilon (g_array_index (rows, LwCompareRow, i).clock_s, clocks[i] * 3600, 1e-6);
          g_assert_true (g_array_index (rows, LwCompareRow, i).of[i ^ turned].there);
          g_assert_false (g_array_index (rows, LwCompareRow, i).of[!i ^ turned].there);
        }
    }
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/compare/steps", test_steps);
  g_test_add_func ("/compare/columns", test_columns);
  g_test_add_func ("/compare/values", test_values);
  g_test_add_func ("/compare/clock", test_clock);
  g_test_add_func ("/compare/clock-edges", test_clock_edges);
  g_test_add_func ("/compare/midnight", test_midnight);

  return g_test_run ();
}

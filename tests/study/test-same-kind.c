/* Which batch of last year is of the same kind. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/same-kind.h"

#define DAY_S 86400
#define APRIL_2026_S 1775001600 /* 2026-04-01T00:00 */
#define YEAR_S (365 * DAY_S)

static void
add (LwSeason   *season,
     const char *name,
     const char *tea,
     gint64      when_s,
     LwKind      last)
{
  LwBatch *batch = lw_batch_new (name);

  batch->tea = g_strdup (tea);
  batch->when_s = when_s;
  lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_WITHER));
  lw_batch_insert_step (batch, 1, lw_step_new (last));
  lw_season_insert_batch (season, season->n_batches, batch);
}

static LwSeason *
last_year (void)
{
  LwSeason *season = lw_season_new ("last");

  add (season, "early", "White", APRIL_2026_S - YEAR_S - 9 * DAY_S, LW_KIND_DRY_SUN);
  add (season, "near", "white", APRIL_2026_S - YEAR_S + 2 * DAY_S, LW_KIND_DRY_SUN);
  add (season, "also near", "white", APRIL_2026_S - YEAR_S - 2 * DAY_S, LW_KIND_DRY_AIR);
  add (season, "roasted", "other", APRIL_2026_S - YEAR_S + 20 * DAY_S, LW_KIND_ROAST);
  add (season, "two years", "white", APRIL_2026_S - 2 * YEAR_S, LW_KIND_ROAST);

  return season;
}

static const char *
found_of (LwSeason   *this_year,
          LwSeason   *last,
          LwSameKind *found)
{
  LwSeason *seasons[] = { this_year, last };

  if (!lw_same_kind (this_year->batches[0], seasons, G_N_ELEMENTS (seasons), found))
    return NULL;

  return seasons[found->season]->batches[found->batch]->name;
}

static void
test_tea (void)
{
  g_autoptr (LwSeason) now = lw_season_new ("now"), last = last_year ();
  LwSameKind found;

  /* Another batch of this year is not last year's. */
  add (now, "mine", "white", APRIL_2026_S, LW_KIND_ROAST);
  add (now, "same day", "white", APRIL_2026_S, LW_KIND_ROAST);
  g_assert_cmpstr (found_of (now, last, &found), ==, "near");
  g_assert_true (found.by_tea);
  g_assert_cmpuint (found.n, ==, 3);
  g_assert_cmpuint (found.n_near, ==, 2);
  g_assert_cmpint (found.days, ==, 2);
}

/* Last year's batch may be in the same file, and has to be nearer than those of others; the last day of a year and the
 * first are of two years. */
static void
test_same_file (void)
{
  g_autoptr (LwSeason) now = lw_season_new ("now"), last = last_year ();
  LwSameKind found;

  add (now, "mine", "white", APRIL_2026_S, LW_KIND_ROAST);
  add (now, "mine last year", "white", APRIL_2026_S - YEAR_S + DAY_S, LW_KIND_ROAST);
  g_assert_cmpstr (found_of (now, last, &found), ==, "mine last year");
  g_assert_cmpuint (found.season, ==, 0);
  g_assert_cmpuint (found.n, ==, 4);
  g_assert_cmpuint (found.n_near, ==, 1);

  now->batches[1]->when_s = APRIL_2026_S - 90 * DAY_S;
  g_assert_cmpstr (found_of (now, last, &found), ==, "near");
  now->batches[1]->when_s = APRIL_2026_S - 91 * DAY_S;
  g_assert_cmpstr (found_of (now, last, &found), ==, "near");
  g_assert_cmpuint (found.n, ==, 4);
}

static void
test_steps (void)
{
  g_autoptr (LwSeason) now = lw_season_new ("now"), bare = lw_season_new ("bare"), last = last_year ();
  LwSameKind found;

  add (now, "mine", "no such tea", APRIL_2026_S, LW_KIND_ROAST);
  g_assert_cmpstr (found_of (now, last, &found), ==, "roasted");
  g_assert_false (found.by_tea);
  g_assert_cmpint (found.days, ==, 20);

  add (bare, "mine", NULL, APRIL_2026_S, LW_KIND_DRY_AIR);
  g_assert_cmpstr (found_of (bare, last, &found), ==, "also near");
}

static void
test_none (void)
{
  g_autoptr (LwSeason) now = lw_season_new ("now"), last = last_year ();
  LwSameKind found;

  add (now, "mine", "no such tea", APRIL_2026_S, LW_KIND_REST);
  g_assert_null (found_of (now, last, &found));
  g_assert_cmpuint (found.n, ==, 0);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/same-kind/tea", test_tea);
  g_test_add_func ("/same-kind/same-file", test_same_file);
  g_test_add_func ("/same-kind/steps", test_steps);
  g_test_add_func ("/same-kind/none", test_none);

  return g_test_run ();
}

/* Searching and sorting heads of batches. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/find.h"

#include <math.h>
#include <string.h>

#define DAY_S G_GINT64_CONSTANT (86400)
#define APRIL_12_S G_GINT64_CONSTANT (1775952000) /* 2026-04-12T00:00 */

static const struct
{
  const char *name;
  const char *tea;
  gint64 when_s;
  gboolean made;
  double fresh_kg;
  double moisture;
  double ratio;
} batches[] = {
  { "2 Drum", "green", APRIL_12_S, TRUE, 10, 5, 0.2 },
  { "10 pan", "green", APRIL_12_S + DAY_S - 1, FALSE, 20, 7, 0.3 },
  { "1 Éclair", NULL, APRIL_12_S + DAY_S, TRUE, 5, 6, 0.25 },
  { "3 pan", "black", APRIL_12_S - 1, FALSE, 8, NAN, NAN }, /* not known */
};

#define N G_N_ELEMENTS (batches)

static LwHead *heads[N];
static LwOutcome outcomes[N];

static void
make_heads (void)
{
  g_autoptr (LwSeason) season = lw_season_new ("S");
  g_autoptr (GPtrArray) all = NULL;
  LwProfile *leaf = lw_profile_start ();

  g_free (leaf->name);
  leaf->name = g_strdup ("Brook Side");
  lw_season_add_profile (season, leaf);
  for (guint i = 0; i < N; i++)
    {
      LwBatch *batch = lw_batch_new (batches[i].name);

      g_free (batch->leaf);
      batch->leaf = g_strdup (leaf->id);
      batch->tea = g_strdup (batches[i].tea);
      batch->when_s = batches[i].when_s;
      batch->made = batches[i].made;
      batch->fresh_kg = batches[i].fresh_kg;
      batch->note = g_strdup (i == 0 ? "Smelled of HONEY." : NULL);
      lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_ROLL));
      batch->steps[0].note = g_strdup (i == 1 ? "too firm" : NULL);
      lw_season_insert_batch (season, i, batch);
      outcomes[i] = (LwOutcome) { .moisture_wb_pct = batches[i].moisture, .kg_per_kg_fresh = batches[i].ratio };
    }

  all = lw_heads_new (season);
  for (guint i = 0; i < N; i++)
    heads[i] = lw_head_ref (g_ptr_array_index (all, i));
}

static const LwOutcome *
outcome_of (guint i)
{
  return isnan (batches[i].moisture) ? NULL : &outcomes[i];
}

/* `answers` has a letter for each batch: y, n, or l for later. Clears `find`. */
static void
assert_found (LwFind     *find,
              const char *answers)
{
  char said[N + 1] = "";

  for (guint i = 0; i < N; i++)
    said[i] = "nyl"[lw_find_match (find, heads[i], outcome_of (i))];
  g_assert_cmpstr (said, ==, answers);
  lw_find_clear (find);
}

static void
assert_words (const char *words,
              const char *leaf,
              const char *tea,
              const char *answers)
{
  LwFind find;

  lw_find_init (&find);
  lw_find_set (&find, words, leaf, tea);
  assert_found (&find, answers);
}

static void
test_words (void)
{
  assert_words ("", "", "", "yyyy");
  assert_words ("pan", "", "", "nyny");
  assert_words ("  PAN  10 ", "", "", "nynn");
  assert_words ("honey", "", "", "ynnn");
  assert_words ("firm", "", "", "nynn");
  assert_words ("e\xcc\x81" "CLAIR", "", "", "nnyn"); /* the accent as a letter of its own */
  assert_words ("brook 2026", "", "", "yyyy");
  assert_words ("nothing", "", "", "nnnn");
  assert_words ("", "brook", "", "yyyy");
  assert_words ("", "upper", "", "nnnn");
  assert_words ("", "", "GREEN", "yynn");
  assert_words ("pan", "side", "black", "nnny");
}

static void
test_filters (void)
{
  LwFind find;

  lw_find_init (&find);
  assert_found (&find, "yyyy");
  find.from_s = APRIL_12_S;
  assert_found (&find, "yyyn");
  find.until_s = APRIL_12_S + DAY_S;
  assert_found (&find, "yyny");
  find.made = 1;
  assert_found (&find, "ynyn");
  find.made = 0;
  assert_found (&find, "nyny");
  find.outcome = LW_MOISTURE;
  assert_found (&find, "yyyy");
  find.outcome = LW_MOISTURE, find.low = 6;
  assert_found (&find, "nyyl");
  find.outcome = LW_MOISTURE, find.low = 5, find.high = 6;
  assert_found (&find, "ynyl");
  find.outcome = LW_FINISHED_KG, find.high = 2;
  assert_found (&find, "ynyl");
  /* What is ruled out otherwise need not be known. */
  find.outcome = LW_FINISHED_KG, find.high = 2, find.made = 1;
  assert_found (&find, "ynyn");
}

static int
compare (gconstpointer a,
         gconstpointer b,
         gpointer      sort)
{
  guint one = *(const guint *) a, other = *(const guint *) b;

  return lw_find_compare (sort, heads[one], outcome_of (one), heads[other], outcome_of (other));
}

static void
assert_order (LwSortBy    by,
              int         outcome,
              gboolean    downwards,
              const char *order)
{
  LwSort sort = { by, outcome, downwards };
  guint at[N] = { 0, 1, 2, 3 };
  char said[N + 1] = "";

  g_qsort_with_data (at, N, sizeof *at, compare, &sort);
  for (guint i = 0; i < N; i++)
    said[i] = (char) ('0' + at[i]);
  g_assert_cmpstr (said, ==, order);
}

/* Equal ones stay in their order, whichever way; unknown ones come last. */
static void
test_order (void)
{
  assert_order (LW_SORT_DATE, -1, FALSE, "3012");
  assert_order (LW_SORT_DATE, -1, TRUE, "2103");
  assert_order (LW_SORT_NAME, -1, FALSE, "2031");
  assert_order (LW_SORT_TEA, -1, FALSE, "2301");
  assert_order (LW_SORT_TEA, -1, TRUE, "0132");
  assert_order (LW_SORT_LEAF, -1, FALSE, "0123");
  assert_order (LW_SORT_LEAF, -1, TRUE, "0123");
  assert_order (LW_SORT_MADE, -1, FALSE, "1302");
  assert_order (LW_SORT_MADE, -1, TRUE, "0213");
  assert_order (LW_SORT_OUTCOME, LW_MOISTURE, FALSE, "0213");
  assert_order (LW_SORT_OUTCOME, LW_MOISTURE, TRUE, "1203");
  assert_order (LW_SORT_OUTCOME, LW_FINISHED_KG, FALSE, "2013");
}

static void
test_dates (void)
{
  static const struct { const char *text; gint64 days; } good[] = {
    { "2026-04-12", 1 }, { " 2026-4-12 ", 1 }, { "2026-04", 30 }, { "2026-12", 31 }, { "2026", 365 }, { "2024", 366 },
    { "2024-02-29", 1 },
  };
  static const char *const bad[] = {
    "", "26", "12.4.2026", "2026-13", "2026-02-30", "2026-04-12-1", "2026-", "2026-04-12x", "-2026", "0000", "9999",
  };
  gint64 from_s, until_s;

  for (guint i = 0; i < G_N_ELEMENTS (good); i++)
    {
      g_assert_true (lw_find_date (good[i].text, &from_s, &until_s));
      g_assert_cmpint (until_s - from_s, ==, good[i].days * DAY_S);
    }
  g_assert_true (lw_find_date ("2026-04-12", &from_s, &until_s));
  g_assert_cmpint (from_s, ==, APRIL_12_S);
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    g_assert_false (lw_find_date (bad[i], &from_s, &until_s));
}

/* What makes an outcome, and nothing else, makes the digest. */
static void
test_digest (void)
{
  g_autoptr (LwSeason) season = lw_season_new ("S");
  LwProfile *leaf = lw_profile_start ();
  LwBatch *batch = lw_batch_new ("1");
  g_autofree char *first = NULL, *renamed = NULL, *longer = NULL, *higher = NULL, *other_leaf = NULL;

  g_free (batch->leaf);
  batch->leaf = g_strdup (leaf->id);
  lw_batch_insert_step (batch, 0, lw_step_new (LW_KIND_ROLL));
  lw_season_add_profile (season, leaf);
  lw_season_insert_batch (season, 0, batch);
  first = lw_head_digest (season, 0);

  g_free (batch->name);
  batch->name = g_strdup ("2");
  batch->note = g_strdup ("A note.");
  renamed = lw_head_digest (season, 0);
  g_assert_cmpstr (renamed, ==, first);

  lw_step_set (&batch->steps[0], LW_SET_MINUTES, 99);
  longer = lw_head_digest (season, 0);
  g_assert_cmpstr (longer, !=, first);
  season->altitude_m += 1;
  higher = lw_head_digest (season, 0);
  g_assert_cmpstr (higher, !=, longer);
  leaf->parts[0].area += 0.1;
  other_leaf = lw_head_digest (season, 0);
  g_assert_cmpstr (other_leaf, !=, higher);
}

int
main (int    argc,
      char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  make_heads ();

  g_test_add_func ("/find/words", test_words);
  g_test_add_func ("/find/filters", test_filters);
  g_test_add_func ("/find/order", test_order);
  g_test_add_func ("/find/dates", test_dates);
  g_test_add_func ("/find/digest", test_digest);
  status = g_test_run ();
  for (guint i = 0; i < N; i++)
    lw_head_unref (heads[i]);

  return status;
}

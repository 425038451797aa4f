/* What the knock-on table says and in which order, without a window. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "bench/knock-list.h"
#include "draw/words.h"
#include "study/knock-csv.h"
#include "study/reach.h"
#include "../plain-season.h"

static LwSeason *
season_new (void)
{
  static const LwKind kinds[] = { LW_KIND_WITHER, LW_KIND_FIX_PAN, LW_KIND_ROLL };

  return plain_season (kinds, G_N_ELEMENTS (kinds));
}

/* Three rows with made-up effects: on oxidation 0.1, -6 and 1.5; none on moisture; the third not to be computed for
 * roast. */
static LwKnockList *
list_new (int at)
{
  static const LwHandle handles[] = { { 0, LW_SET_COVER_PCT }, { 1, LW_SET_WALL_C }, { 1, LW_SET_MINUTES } };
  static const double notches[] = { -5, 5, 0.5 }, oxidation[] = { 0.1, -6, 1.5 };
  g_autoptr (LwSeason) season = season_new ();
  GArray *knocks = g_array_new (FALSE, TRUE, sizeof (LwKnock));

  g_array_set_size (knocks, G_N_ELEMENTS (handles));
  for (guint i = 0; i < knocks->len; i++)
    {
      LwKnock *knock = &g_array_index (knocks, LwKnock, i);

      knock->handle = handles[i];
      knock->notch = notches[i];
      knock->effect[LW_OXIDATION] = oxidation[i];
    }
  g_array_index (knocks, LwKnock, 0).effect[LW_ROAST] = -2;
  g_array_index (knocks, LwKnock, 1).effect[LW_ROAST] = 0.01;
  g_array_index (knocks, LwKnock, 2).effect[LW_ROAST] = NAN;

  return lw_knock_list_new (season, 0, at, knocks);
}

static void
check_change (LwQuantity  of,
              double      change,
              const char *words)
{
  g_autofree char *said = lw_words_change (of, change);

  g_assert_cmpstr (said, ==, words);
}

static void
test_numbers (void)
{
  check_change (LW_OXIDATION, 0.44, "+0.4");
  check_change (LW_OXIDATION, -1.16, "−1.2");
  check_change (LW_OXIDATION, 0.05, "+0.1");
  check_change (LW_OXIDATION, -0.04, "0.0");
  check_change (LW_OXIDATION, 0, "0");
  check_change (LW_OXIDATION, NAN, "–");
  check_change (LW_WEIGHT, -0.0123, "−0.012");
  check_change (LW_LEAF_TEMP, 3.2, "+3");
  g_assert_cmpstr (lw_words_change_unit (LW_MOISTURE), ==, "% points");
  g_assert_cmpstr (lw_words_change_unit (LW_UNEVEN), ==, "% points");
  g_assert_cmpstr (lw_words_change_unit (LW_LEAF_TEMP), ==, "°C");
  g_assert_cmpstr (lw_words_change_unit (LW_GREEN), ==, "");
}

static void
check_tell (const LwKnockList *list,
            guint              row,
            LwQuantity         of,
            const char        *words)
{
  g_autofree char *said = lw_knock_list_tell (list, row, of);

  g_assert_cmpstr (said, ==, words);
}

static void
test_words (void)
{
  g_autoptr (LwKnockList) list = list_new (-1), second = list_new (1);
  g_autofree char *step = lw_knock_list_step (list, 1), *notch = lw_knock_list_notch (list, 1);
  g_autofree char *down = lw_knock_list_notch (list, 0), *time = lw_knock_list_notch (list, 2);
  g_autofree char *whole = lw_knock_list_heading (list), *part = lw_knock_list_heading (second);

  g_assert_cmpstr (step, ==, "2 fix in pan");
  g_assert_cmpstr (lw_knock_list_setting (list, 1), ==, "wall");
  g_assert_cmpstr (notch, ==, "+5 °C");
  g_assert_cmpstr (down, ==, "−5 %");
  g_assert_cmpstr (time, ==, "+30 s");
  g_assert_cmpstr (whole, ==, "Knock-on at the batch's end");
  g_assert_cmpstr (part, ==, "Knock-on at the end of step 2, fix in pan");

  check_tell (list, 1, LW_OXIDATION, "wall of step 2, plus 5 °C: Oxidation minus 6.0 % points");
  check_tell (list, 0, LW_OXIDATION, "cover of step 1, minus 5 %: Oxidation plus 0.1 % points, hardly noticed");
  check_tell (list, 2, LW_MOISTURE, "time of step 2, plus 30 s: Moisture no change");
  check_tell (list, 1, LW_ROAST, "wall of step 2, plus 5 °C: Roast next to no change");
  check_tell (list, 2, LW_ROAST, "time of step 2, plus 30 s: Roast cannot be computed");
}

/* The largest effect has the full shade, what nobody notices none, and the sign is the effect's. */
static void
test_shares (void)
{
  g_autoptr (LwKnockList) list = list_new (-1);

  g_assert_cmpfloat (lw_knock_list_share (list, 1, LW_OXIDATION), ==, -1);
  g_assert_cmpfloat (lw_knock_list_share (list, 2, LW_OXIDATION), ==, 0.5);
  g_assert_cmpfloat (lw_knock_list_share (list, 0, LW_OXIDATION), ==, 0);
  g_assert_cmpfloat (lw_want_tolerance (LW_OXIDATION), >, 0.1);
  g_assert_true (lw_knock_list_is_faint (list, 0, LW_OXIDATION));
  g_assert_false (lw_knock_list_is_faint (list, 2, LW_OXIDATION));
  g_assert_true (lw_knock_list_is_faint (list, 2, LW_MOISTURE));
  g_assert_cmpfloat (lw_knock_list_share (list, 2, LW_MOISTURE), ==, 0);
  g_assert_cmpfloat (lw_knock_list_share (list, 0, LW_ROAST), ==, -1);
  g_assert_cmpfloat (lw_knock_list_share (list, 2, LW_ROAST), ==, 0);
}

static void
check_order (const LwKnockList *list,
             LwSetting          first,
             LwSetting          second,
             LwSetting          third)
{
  g_assert_cmpint (lw_knock_list_row (list, 0)->handle.setting, ==, first);
  g_assert_cmpint (lw_knock_list_row (list, 1)->handle.setting, ==, second);
  g_assert_cmpint (lw_knock_list_row (list, 2)->handle.setting, ==, third);
}

/* By size whatever the sign; what cannot be computed last; equal ones as in the batch; and back. */
static void
test_order (void)
{
  g_autoptr (LwKnockList) list = list_new (-1);
  const LwHandle wall = { 1, LW_SET_WALL_C }, none = { 2, LW_SET_WALL_C };

  lw_knock_list_sort (list, LW_OXIDATION);
  check_order (list, LW_SET_WALL_C, LW_SET_MINUTES, LW_SET_COVER_PCT);
  g_assert_cmpint (lw_knock_list_find (list, &wall), ==, 0);
  g_assert_cmpint (lw_knock_list_find (list, &none), ==, -1);
  lw_knock_list_sort (list, LW_ROAST);
  check_order (list, LW_SET_COVER_PCT, LW_SET_WALL_C, LW_SET_MINUTES);
  lw_knock_list_sort (list, LW_OXIDATION);
  lw_knock_list_sort (list, LW_MOISTURE);
  check_order (list, LW_SET_COVER_PCT, LW_SET_WALL_C, LW_SET_MINUTES);
  lw_knock_list_sort (list, LW_OXIDATION);
  lw_knock_list_sort (list, -1);
  check_order (list, LW_SET_COVER_PCT, LW_SET_WALL_C, LW_SET_MINUTES);
}

static void
test_csv (void)
{
  g_autoptr (LwKnockList) list = list_new (-1);
  g_autofree char *whole = lw_knock_csv (list->season->batches[0], list->knocks), *same = lw_knock_list_csv (list);
  g_autofree char *sorted = NULL;
  g_auto (GStrv) lines = NULL;

  g_assert_cmpstr (same, ==, whole);
  lw_knock_list_sort (list, LW_OXIDATION);
  sorted = lw_knock_list_csv (list);
  lines = g_strsplit (sorted, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, 5);
  g_assert_true (g_str_has_prefix (lines[0], "step,kind,setting,unit,value,notch,moisture,oxidation,"));
  g_assert_true (g_str_has_prefix (lines[1], "2,fix-pan,wall-c,°C,"));
  g_assert_nonnull (strstr (lines[1], ",5,0,-6,"));
  g_assert_true (g_str_has_prefix (lines[3], "1,wither,cover-pct,%,"));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/knock-list/numbers", test_numbers);
  g_test_add_func ("/knock-list/words", test_words);
  g_test_add_func ("/knock-list/shares", test_shares);
  g_test_add_func ("/knock-list/order", test_order);
  g_test_add_func ("/knock-list/csv", test_csv);

  return g_test_run ();
}

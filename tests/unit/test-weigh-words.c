/* Words of weigh-ins: one key for each measure, and what a weight means. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "bench/weigh-words.h"

static void
test_letters (void)
{
  for (int a = 0; a < LW_N_MEASURES; a++)
    {
      const char *letter = strchr (lw_weigh_name ((LwMeasure) a), '_');
      g_autofree char *title = lw_weigh_title ((LwMeasure) a);

      g_assert_nonnull (letter);
      g_assert_null (strchr (title, '_'));
      for (int b = 0; b < a; b++)
        g_assert_cmpint (g_ascii_tolower (letter[1]), !=,
                         g_ascii_tolower (strchr (lw_weigh_name ((LwMeasure) b), '_')[1]));
    }
}

/* 10 kg of leaf at 75 % hold 2.5 kg of dry leaf; of 6.75 kg that is 63.0 % of water. */
static void
test_meaning (void)
{
  const LwWeighIn tared = { 5, LW_WEIGHED_KG, 7.1, 0.02, 0.35, NULL }, bare = { 5, LW_WEIGHED_KG, 5, 0.05, 0, NULL };
  const LwWeighIn warm = { 5, LW_LEAF_C, 60, 2, 0, NULL };
  g_autofree char *less = lw_weigh_meaning (&tared, 10, 75), *half = lw_weigh_meaning (&bare, 10, 75);

  g_assert_cmpstr (less, ==, "7.1 kg less 0.35 kg tare = 6.75 kg of 10 kg fresh at 75.0 %: 63.0 % ± 0.1 wet basis");
  g_assert_cmpstr (half, ==, "5 kg of 10 kg fresh at 75.0 %: 50.0 % ± 0.5 wet basis");
  g_assert_null (lw_weigh_meaning (&warm, 10, 75));
}

/* 10 kg of leaf at 75 % cannot weigh 12 kg, nor 2 kg. */
static void
test_doubt (void)
{
  const struct { double kg, tare_kg; const char *says; } rows[] = {
    { 12, 0, "more than the fresh leaf" }, { 12, 2, NULL }, { 10.5, 0, NULL }, { 2.5, 0, NULL },
    { 2, 0, "without water" }, { 5, 3, "without water" },
  };
  const LwWeighIn warm = { 5, LW_LEAF_C, 60, 2, 0, NULL };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const LwWeighIn weighed = { 5, LW_WEIGHED_KG, rows[i].kg, 0.02, rows[i].tare_kg, NULL };
      const char *doubt = lw_weigh_doubt (&weighed, 10, 75);

      g_assert_true ((doubt != NULL) == (rows[i].says != NULL));
      g_assert_true (doubt == NULL || strstr (doubt, rows[i].says) != NULL);
    }
  g_assert_null (lw_weigh_doubt (&warm, 10, 75));
}

static void
test_value (void)
{
  char said[] = "bends";
  const LwWeighIn tared = { 5, LW_WEIGHED_KG, 7.1, 0.02, 0.35, NULL }, warm = { 5, LW_LEAF_C, 60.5, 2, 0, NULL };
  const LwWeighIn noted = { 5, LW_NOTED, 0, 0, 0, said };
  g_autofree char *weight = lw_weigh_value (&tared), *leaf = lw_weigh_value (&warm), *note = lw_weigh_value (&noted);

  g_assert_cmpstr (weight, ==, "7.1 kg ± 0.02, tare 0.35 kg");
  g_assert_cmpstr (leaf, ==, "60.5 °C ± 2");
  g_assert_cmpstr (note, ==, "Note");
}

static void
test_beside (void)
{
  g_autofree char *above = lw_weigh_beside (&(LwBeside) { LW_MOISTURE, 63.3, 1, 62.1, 1.2 });
  g_autofree char *below = lw_weigh_beside (&(LwBeside) { LW_LEAF_TEMP, 80, 2, 84, -2 });
  g_autofree char *same = lw_weigh_beside (&(LwBeside) { LW_MOISTURE, 63.3, 1, 63.3, 0.01 });
  g_autofree char *wall = lw_weigh_beside (&(LwBeside) { -1, 255, 5, 260, -1 });

  g_assert_cmpstr (above, ==, "63.3 % measured, 62.1 % by the model: 1.2 standard deviations above");
  g_assert_cmpstr (below, ==, "80 °C measured, 84 °C by the model: 2.0 standard deviations below");
  g_assert_cmpstr (same, ==, "63.3 % measured, 63.3 % by the model");
  g_assert_cmpstr (wall, ==, "255 °C measured, set to 260 °C");
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/weigh-words/letters", test_letters);
  g_test_add_func ("/weigh-words/meaning", test_meaning);
  g_test_add_func ("/weigh-words/doubt", test_doubt);
  g_test_add_func ("/weigh-words/value", test_value);
  g_test_add_func ("/weigh-words/beside", test_beside);

  return g_test_run ();
}

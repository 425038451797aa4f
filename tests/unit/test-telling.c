/* What the window tells in words: changes of a setting, and an outcome with its aim and where that comes from. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/telling.h"

#include <math.h>
#include <string.h>

static void
assert_change (LwSetting   setting,
               double      from,
               double      to,
               const char *told)
{
  LwStep before = lw_step_new (LW_KIND_FIX_PAN), now = lw_step_new (LW_KIND_FIX_PAN);
  g_autofree char *words = NULL;

  lw_step_set (&before, setting, from);
  lw_step_set (&now, setting, to);
  words = lw_tell_change (&before, &now, setting);
  g_assert_cmpstr (words, ==, told);
  lw_step_clear (&before);
  lw_step_clear (&now);
}

/* A unit is said once where both have the same one alone. */
static void
test_changes (void)
{
  assert_change (LW_SET_MINUTES, 32, 35, "32 → 35 min");
  assert_change (LW_SET_MINUTES, 32, 60, "32 min → 1 h");
  assert_change (LW_SET_MINUTES, 8, 7.5, "8 min → 7 min 30 s");
  assert_change (LW_SET_MINUTES, 80, 85, "1 h 20 min → 1 h 25 min");
  assert_change (LW_SET_WALL_C, 200, 230, "200 → 230 °C");
  assert_change (LW_SET_COVER_PCT, 20, 25, "cover 20 → 25 %");
  assert_change (LW_SET_WALL_C, 200, 200, NULL);
}

/* Why belongs to an aim. */
static void
test_why (void)
{
  LwOutcomeLook look = {
    .quantity = LW_ROAST, .value = 2, .change = NAN, .held = NAN, .low = -INFINITY, .high = 5, .why = "Our own.",
  };
  g_autofree char *without = lw_tell_outcome (&look), *with = NULL;

  g_assert_null (strstr (without, "Our own."));
  look.aimed = TRUE;
  with = lw_tell_outcome (&look);
  g_assert_nonnull (strstr (with, "Aim: at most 5.0. within. Why: Our own."));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/telling/changes", test_changes);
  g_test_add_func ("/telling/why", test_why);

  return g_test_run ();
}

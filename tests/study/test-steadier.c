/* Settings that are steadier: better for luck that the search has not met, or none. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <gsl/gsl_errno.h>
#include <math.h>

#include "made.h"
#include "study/steadier.h"

/* A batch at the edge of its window is brought to its middle; the answer holds for luck that nobody has seen, stands on
 * notches and within ranges, and is the same by any number of threads. */
static void
test_steadier (void)
{
  g_autoptr (LwSeason) season = made_aimed ();
  g_autoptr (GArray) free = lw_reach_free (season, 0, 0);
  g_autoptr (LwSteadier) steadier = NULL, again = NULL;
  g_autoptr (LwSpread) before = NULL, after = NULL;
  LwSpreadAsk ask;

  /* The pan's time and wall. */
  g_array_set_size (free, 2);
  made_set (&season, 0, LW_SET_MINUTES, 23);
  lw_spread_ask_init (&ask);
  ask.threads = 1;
  steadier = lw_steadier_new (season, 0, &ask, free, NULL);
  ask.threads = 3;
  again = lw_steadier_new (season, 0, &ask, free, NULL);
  g_test_message ("%.3f to %.3f ± %.3f, %u looked at", steadier->before, steadier->after, steadier->gain_se,
                  steadier->looked);
  g_assert_true (steadier->better);
  g_assert_cmpuint (steadier->looked, <=, LW_STEADIER_MOST);
  g_assert_cmpfloat (steadier->after, >, steadier->before + 0.1);
  g_assert_cmpfloat (steadier->after, ==, again->after);

  ask.seed = 99;
  ask.rows = 0;
  ask.samples = 512;
  before = lw_spread_new (season, 0, &ask, NULL);
  after = lw_spread_new (steadier->season, 0, &ask, NULL);
  g_assert_cmpfloat_with_epsilon (before->share, steadier->before, 0.07);
  g_assert_cmpfloat_with_epsilon (after->share, steadier->after, 0.07);

  for (guint i = 0; i < free->len; i++)
    {
      const LwHandle *handle = &g_array_index (free, LwHandle, i);
      double value = made_get (steadier->season, handle->step, handle->setting);

      g_assert_cmpfloat (made_get (again->season, handle->step, handle->setting), ==, value);
      g_assert_cmpfloat (lw_kind_snap (made_two[handle->step], handle->setting, value, TRUE), ==, value);
    }
}

/* Where all is well, or nothing may be turned, that is said and the batch left alone. */
static void
test_steadier_nothing (void)
{
  g_autoptr (LwSeason) season = made_season (made_two, 2);
  g_autoptr (GArray) free = lw_reach_free (season, 0, 0), none = g_array_new (FALSE, FALSE, sizeof (LwHandle));
  g_autoptr (LwSteadier) well = NULL, stuck = NULL;
  LwSpreadAsk ask;

  lw_spread_ask_init (&ask);
  made_aim (&season, -1, LW_RUPTURE, 1, 100);
  well = lw_steadier_new (season, 0, &ask, free, NULL);
  g_assert_false (well->better);
  g_assert_true (well->season == season);
  g_assert_cmpfloat (well->before, ==, 1);
  g_assert_cmpfloat (well->after, ==, 1);

  made_aim (&season, -1, LW_RUPTURE, 99, 100);
  stuck = lw_steadier_new (season, 0, &ask, none, NULL);
  g_assert_false (stuck->better);
  g_assert_true (stuck->season == season);
  g_assert_cmpfloat (stuck->before, ==, 0);
}

static void
cancel_soon (guint    done,
             guint    total,
             gpointer cancellable)
{
  g_assert_cmpuint (done, <=, 10);
  if (done == 10)
    g_cancellable_cancel (cancellable);
}

/* In the midst of the search; and there is no answer where there is no aim. */
static void
test_steadier_cancel (void)
{
  g_autoptr (LwSeason) season = made_aimed (), aimless = made_season (made_two, 2);
  g_autoptr (GArray) free = lw_reach_free (season, 0, 0);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  LwSpreadAsk ask;

  lw_spread_ask_init (&ask);
  g_assert_null (lw_steadier_new (aimless, 0, &ask, free, NULL));
  ask.progress = cancel_soon;
  ask.progress_data = cancellable;
  g_assert_null (lw_steadier_new (season, 0, &ask, free, cancellable));
  g_assert_true (g_cancellable_is_cancelled (cancellable));
}

int
main (int    argc,
      char **argv)
{
  gsl_set_error_handler_off ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/steadier/finds", test_steadier);
  g_test_add_func ("/steadier/nothing", test_steadier_nothing);
  g_test_add_func ("/steadier/cancel", test_steadier_cancel);

  return g_test_run ();
}

/* How long the finder takes over 1,000 season files with 10,000 batches, and for how long at most it keeps the main loop
 * from turning; and the same at the next start of the program. Asserts nothing on time. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <libxml/parser.h>
#include <math.h>
#include <stdio.h>
#include <time.h>

#include "bench/finder.h"
#include "many.h"

#define FILES 1000
#define BATCHES 10
#define SHOWN_US 500000

/* Runs the loop until nothing is under way; tells how long that took, and the longest turn of the loop. */
static void
run (LwFinder   *finder,
     const char *what)
{
  gint64 begin = g_get_monotonic_time (), turn = begin, longest = 0, took;
  clock_t spent = clock ();
  LwFinderState state;

  do
    {
      g_main_context_iteration (NULL, TRUE);
      longest = MAX (longest, g_get_monotonic_time () - turn);
      state = lw_finder_state (finder);
      turn = g_get_monotonic_time ();
    }
  while (state.listing || state.read < state.files || state.asked > 0 || state.batches == 0);
  took = g_get_monotonic_time () - begin;

  /* What came last is shown a moment later. */
  while (g_get_monotonic_time () - begin < took + SHOWN_US)
    g_main_context_iteration (NULL, TRUE);

  printf ("%s: %.0f ms, %.0f ms of processor, longest turn of the loop %.1f ms, %u of %u found\n", what,
          (double) took / 1000, (double) (clock () - spent) * 1000 / CLOCKS_PER_SEC,
          (double) longest / 1000,
          g_list_model_get_n_items (lw_finder_found (finder)), state.batches);
}

static gboolean
tick_cb (gpointer data)
{
  return G_SOURCE_CONTINUE;
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("leafwend-many-XXXXXX", NULL);
  g_autofree char *caches = g_dir_make_tmp ("leafwend-caches-XXXXXX", NULL);
  g_autoptr (LwFinder) finder = NULL, next = NULL;
  const LwSort sort = { .by = LW_SORT_DATE };
  LwFind find;
  gint64 begin;

  g_setenv ("XDG_CACHE_HOME", caches, TRUE);
  xmlInitParser ();
  many_write (folder, FILES, BATCHES);
  finder = lw_finder_new ();
  lw_find_init (&find);
  lw_finder_ask (finder, &find, &sort);
  g_timeout_add (5, tick_cb, NULL); /* so that a turn is never a wait */

  lw_finder_folder (finder, folder);
  run (finder, "the first time");
  lw_finder_folder (finder, folder);
  run (finder, "the second time");

  begin = g_get_monotonic_time ();
  lw_find_set (&find, "green", "", "");
  lw_finder_ask (finder, &find, &sort);
  printf ("words: %.1f ms, %u found\n", (double) (g_get_monotonic_time () - begin) / 1000,
          g_list_model_get_n_items (lw_finder_found (finder)));

  find.outcome = LW_MOISTURE;
  find.high = 6;
  lw_finder_ask (finder, &find, &sort);
  run (finder, "outcomes of all");
  begin = g_get_monotonic_time ();
  g_object_run_dispose (G_OBJECT (finder));
  printf ("written down at the end: %.1f ms\n", (double) (g_get_monotonic_time () - begin) / 1000);

  /* As the next start of the program does it. */
  next = lw_finder_new ();
  find.outcome = LW_MOISTURE;
  find.high = 6;
  lw_finder_ask (next, &find, &sort);
  lw_finder_folder (next, folder);
  run (next, "outcomes of all, at the next start");
  g_object_run_dispose (G_OBJECT (next));
  many_remove (folder);
  many_remove (caches);

  return 0;
}

/* The finder over folders that change, and what it computes in the background. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/finder.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <sys/stat.h>

#include "many.h"
#include "study/finished.h"
#include "study/outcome-cache.h"

#define FILES 20
#define BATCHES 2
#define PATIENCE_S 60

typedef struct
{
  char *folder;
  LwFinder *finder;
} Desk;

static gboolean
late_cb (gpointer data)
{
  g_error ("waited in vain");

  return G_SOURCE_REMOVE;
}

/* Until nothing is under way. */
static void
settle (LwFinder *finder)
{
  guint late = g_timeout_add_seconds (PATIENCE_S, late_cb, NULL);
  LwFinderState state;
  guint quiet = 0;

  while (quiet < 3)
    {
      gint64 begin = g_get_monotonic_time ();

      while (g_get_monotonic_time () - begin < 100000)
        g_main_context_iteration (NULL, FALSE);
      state = lw_finder_state (finder);
      quiet = state.listing || state.read < state.files || state.asked > 0 ? 0 : quiet + 1;
    }
  g_source_remove (late);
}

static void
ask (LwFinder   *finder,
     const char *words,
     int         outcome,
     double      low,
     double      high)
{
  const LwSort sort = { .by = LW_SORT_DATE };
  LwFind find;

  lw_find_init (&find);
  lw_find_set (&find, words, "", "");
  find.outcome = outcome;
  find.low = low;
  find.high = high;
  lw_finder_ask (finder, &find, &sort);
}

static guint
n_found (LwFinder *finder)
{
  return g_list_model_get_n_items (lw_finder_found (finder));
}

static char *
path_of (const Desk *desk,
         guint       file)
{
  return g_strdup_printf ("%s/f%04u.leafwend", desk->folder, file);
}

static void
set_up (Desk         *desk,
        gconstpointer data)
{
  g_autofree char *cache = lw_outcome_cache_path ();

  g_unlink (cache);
  desk->folder = g_dir_make_tmp ("leafwend-finder-XXXXXX", NULL);
  many_write (desk->folder, FILES, BATCHES);
  desk->finder = lw_finder_new ();
  ask (desk->finder, "", -1, -INFINITY, INFINITY);
}

static void
tear_down (Desk         *desk,
           gconstpointer data)
{
  g_object_run_dispose (G_OBJECT (desk->finder));
  g_object_unref (desk->finder);
  many_remove (desk->folder);
  g_free (desk->folder);
}

static void
test_folder (Desk         *desk,
             gconstpointer data)
{
  GListModel *found = lw_finder_found (desk->finder);

  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  g_assert_cmpuint (n_found (desk->finder), ==, FILES * BATCHES);
  for (guint i = 0; i < FILES * BATCHES; i++)
    {
      g_autoptr (LwFound) of = g_list_model_get_item (found, i);
      g_autofree char *name = g_strdup_printf ("%u-%u", i / BATCHES, i % BATCHES);

      g_assert_cmpstr (lw_found_head (of)->name, ==, name);
      g_assert_cmpint (lw_found_state (of), ==, LW_FOUND_LATER); /* nobody asked for it */
    }

  ask (desk->finder, "7-", -1, -INFINITY, INFINITY);
  g_assert_cmpuint (n_found (desk->finder), ==, 2 * BATCHES); /* 7 and 17, at once */
}

/* Files come, go and change between two looks; what is the same stays the same object, so a selection stays, too. */
static void
test_changing (Desk         *desk,
               gconstpointer data)
{
  g_autofree char *gone = path_of (desk, 3), *broken = path_of (desk, 4), *more = path_of (desk, 99), *text = NULL;
  g_auto (GStrv) problems = NULL;
  g_autoptr (LwFound) first = NULL, still = NULL;

  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  first = g_list_model_get_item (lw_finder_found (desk->finder), 0);
  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  still = g_list_model_get_item (lw_finder_found (desk->finder), 0);
  g_assert_true (first == still);

  g_assert_true (g_file_get_contents (gone, &text, NULL, NULL));
  g_assert_cmpint (g_remove (gone), ==, 0);
  g_assert_true (g_file_set_contents (broken, "<season", -1, NULL));
  g_assert_true (g_file_set_contents (more, text, -1, NULL));
  lw_finder_folder (desk->finder, desk->folder);
  g_assert_cmpint (g_remove (more), ==, 0); /* while it is looked through */
  settle (desk->finder);

  problems = lw_finder_problems (desk->finder);
  g_assert_cmpuint (n_found (desk->finder), ==, (FILES - 2) * BATCHES);
  g_assert_nonnull (problems[0]);
  g_assert_nonnull (strstr (problems[0], "f0004.leafwend:1: "));
  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  g_assert_cmpuint (lw_finder_state (desk->finder).broken, ==, 1);
}

/* A file that is the same by place, size and time is not read again, even after other searches. */
static void
test_kept (Desk         *desk,
           gconstpointer data)
{
  g_autofree char *path = path_of (desk, 5);
  g_autoptr (LwSeason) season = lw_season_new ("S");
  struct stat about;
  FILE *file;

  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  lw_finder_season (desk->finder, season);
  settle (desk->finder);
  g_assert_cmpuint (n_found (desk->finder), ==, 0);

  g_assert_cmpint (stat (path, &about), ==, 0);
  file = g_fopen (path, "r+");
  g_assert_cmpint (fputs ("no season", file), >=, 0);
  g_assert_cmpint (fclose (file), ==, 0);
  g_assert_cmpint (utimensat (AT_FDCWD, path, (struct timespec[]) { about.st_atim, about.st_mtim }, 0), ==, 0);
  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  g_assert_cmpuint (n_found (desk->finder), ==, FILES * BATCHES);
}

/* The moisture of the finished tea, computed the plain way. */
static double
moisture_of (LwFound *found)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_load (lw_found_path (found), problems);
  g_autoptr (LwMarch) march = lw_march_new ();
  LwOutcome outcome;

  g_assert_true (lw_finished (season, lw_found_head (found)->index, march, &outcome));

  return outcome.moisture_wb_pct;
}

static void
test_outcomes (Desk         *desk,
               gconstpointer data)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (g_object_unref);
  guint right = 0;

  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  for (guint i = 0; i < FILES * BATCHES; i++)
    g_ptr_array_add (all, g_list_model_get_item (lw_finder_found (desk->finder), i));

  /* Only one that is looked at is computed. */
  lw_finder_want (desk->finder, g_ptr_array_index (all, 9), TRUE);
  settle (desk->finder);
  for (guint i = 0; i < all->len; i++)
    g_assert_cmpint (lw_found_state (g_ptr_array_index (all, i)), ==, i == 9 ? LW_FOUND_KNOWN : LW_FOUND_LATER);

  ask (desk->finder, "", LW_MOISTURE, 5, 8);
  g_assert_cmpuint (lw_finder_state (desk->finder).asked, >, 0);
  settle (desk->finder);
  for (guint i = 0; i < all->len; i++)
    {
      double moisture = moisture_of (g_ptr_array_index (all, i));
      const LwOutcome *outcome = lw_found_outcome (g_ptr_array_index (all, i));

      g_assert_nonnull (outcome);
      g_assert_cmpfloat (outcome->moisture_wb_pct, ==, moisture);
      right += moisture >= 5 && moisture <= 8;
    }
  g_assert_cmpuint (n_found (desk->finder), ==, right);
  g_assert_cmpuint (right, >, 0);
  g_assert_cmpuint (right, <, all->len);
}

/* Stopped, or sent elsewhere, in the midst of it: the rest stays undone and nothing waits for it. */
static void
test_stopped (Desk         *desk,
              gconstpointer data)
{
  g_autofree char *path = path_of (desk, 0);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_load (path, problems);

  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  ask (desk->finder, "", LW_MOISTURE, 0, 100);
  lw_finder_stop (desk->finder);
  settle (desk->finder);
  g_assert_cmpuint (lw_finder_state (desk->finder).later, >, 0);

  ask (desk->finder, "", LW_MOISTURE, 0, 100);
  lw_finder_season (desk->finder, season);
  settle (desk->finder);
  g_assert_cmpuint (n_found (desk->finder), ==, BATCHES);

  lw_finder_folder (desk->finder, desk->folder);
  settle (desk->finder);
  g_assert_cmpuint (n_found (desk->finder), ==, FILES * BATCHES);
}

static void
know_all (Desk *desk)
{
  lw_finder_folder (desk->finder, desk->folder);
  ask (desk->finder, "", LW_MOISTURE, 0, 100);
  settle (desk->finder);
}

/* As if the program had ended, and begun anew. */
static void
begin_anew (Desk *desk)
{
  g_object_run_dispose (G_OBJECT (desk->finder));
  g_object_unref (desk->finder);
  desk->finder = lw_finder_new ();
  know_all (desk);
}

static void
assert_right (Desk *desk)
{
  for (guint i = 0; i < FILES * BATCHES; i++)
    {
      g_autoptr (LwFound) found = g_list_model_get_item (lw_finder_found (desk->finder), i);

      g_assert_cmpfloat (lw_found_outcome (found)->moisture_wb_pct, ==, moisture_of (found));
    }
}

/* What was computed is known at the next start, and is taken from the disk: there one is made another. */
static void
test_next_start (Desk         *desk,
                 gconstpointer data)
{
  g_autofree char *path = lw_outcome_cache_path (), *digest = NULL;
  g_autoptr (LwOutcomeCache) cache = lw_outcome_cache_new (path);
  g_autoptr (LwFound) seventh = NULL;
  LwOutcome outcome;

  know_all (desk);
  assert_right (desk);
  seventh = g_list_model_get_item (lw_finder_found (desk->finder), 7);
  digest = g_strdup (lw_found_head (seventh)->digest);
  begin_anew (desk);
  lw_outcome_cache_load (cache);
  g_assert_true (lw_outcome_cache_find (cache, digest, &outcome));
  outcome.moisture_wb_pct = 77;
  lw_outcome_cache_add (cache, digest, &outcome);
  g_assert_true (lw_outcome_cache_save (cache));

  begin_anew (desk);
  for (guint i = 0; i < FILES * BATCHES; i++)
    {
      g_autoptr (LwFound) found = g_list_model_get_item (lw_finder_found (desk->finder), i);

      g_assert_cmpfloat (lw_found_outcome (found)->moisture_wb_pct, ==, i == 7 ? 77 : moisture_of (found));
    }
}

/* A cache that is none, and one that cannot be. */
static void
test_no_cache (Desk         *desk,
               gconstpointer data)
{
  g_autofree char *path = lw_outcome_cache_path (), *folder = g_path_get_dirname (path);

  g_assert_cmpint (g_mkdir_with_parents (folder, 0700), ==, 0);
  g_assert_true (g_file_set_contents (path, "nonsense", -1, NULL));
  begin_anew (desk);
  assert_right (desk);
  g_object_run_dispose (G_OBJECT (desk->finder));
  many_remove (folder);

  g_assert_true (g_file_set_contents (folder, "no folder", -1, NULL));
  begin_anew (desk);
  assert_right (desk);
  g_object_run_dispose (G_OBJECT (desk->finder));
  g_assert_cmpint (g_remove (folder), ==, 0);
}

#define ADD(name, test) g_test_add ("/finder/" name, Desk, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_autofree char *home = g_dir_make_tmp ("finder-XXXXXX", NULL), *cache = NULL, *below = NULL;
  int failed;

  /* Not G_TEST_OPTION_ISOLATE_DIRS, which in GLib 2.74 leaks. */
  g_setenv ("XDG_CACHE_HOME", home, TRUE);
  g_test_init (&argc, &argv, NULL);

  ADD ("folder", test_folder);
  ADD ("changing", test_changing);
  ADD ("kept", test_kept);
  ADD ("outcomes", test_outcomes);
  ADD ("stopped", test_stopped);
  ADD ("next-start", test_next_start);
  ADD ("no-cache", test_no_cache);

  failed = g_test_run ();
  cache = lw_outcome_cache_path ();
  below = g_path_get_dirname (cache);
  g_unlink (cache);
  g_rmdir (below);
  g_rmdir (home);

  return failed;
}

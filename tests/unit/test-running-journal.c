/* The running batch's journal as the window keeps it, without a window: no journal is lost behind another. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <string.h>

#include "bench/run-left.h"
#include "season/document.h"
#include "season/journal-file.h"
#include "season/weigh-in.h"

/* A season with one planned batch in a file, opened as by a window. */
typedef struct
{
  char *folder;
  char *path;
  LwSession *session;
  LwRunning *running;
  guint asked;
  char *told;
} Desk;

static void
asks_cb (Desk *desk)
{
  desk->asked++;
}

static void
told_cb (Desk       *desk,
         const char *words)
{
  g_free (desk->told);
  desk->told = g_strdup (words);
}

/* As another start of the program. */
static void
start_anew (Desk *desk)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_load (desk->path, problems);

  g_clear_object (&desk->running);
  g_clear_object (&desk->session);
  desk->asked = 0;
  desk->session = lw_session_new ();
  desk->running = lw_running_new (desk->session);
  g_signal_connect_swapped (desk->running, "asks", G_CALLBACK (asks_cb), desk);
  g_signal_connect_swapped (desk->running, "told", G_CALLBACK (told_cb), desk);
  g_assert_nonnull (season);
  lw_session_open (desk->session, season, desk->path);
}

static void
set_up (Desk         *desk,
        gconstpointer data)
{
  g_autoptr (LwSeason) season = lw_edit_new_season (1777000000);

  desk->folder = g_dir_make_tmp ("running.XXXXXX", NULL);
  desk->path = g_build_filename (desk->folder, "a.leafwend", NULL);
  g_assert_true (lw_document_save (season, desk->path, NULL));
  start_anew (desk);
}

static GStrv
journals (Desk *desk)
{
  g_autofree char *any = lw_journal_file_path (NULL, "/"), *folder = g_path_get_dirname (any);
  g_autoptr (GStrvBuilder) found = g_strv_builder_new ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      g_strv_builder_add (found, path);
    }

  return g_strv_builder_end (found);
}

static void
tear_down (Desk         *desk,
           gconstpointer data)
{
  g_auto (GStrv) left = NULL;
  g_autoptr (GDir) dir = g_dir_open (desk->folder, 0, NULL);
  const char *name;

  g_clear_object (&desk->running);
  g_clear_object (&desk->session);
  left = journals (desk);
  for (guint i = 0; left[i] != NULL; i++)
    g_unlink (left[i]);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (desk->folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (desk->folder);
  g_free (desk->folder);
  g_free (desk->path);
  g_free (desk->told);
}

static void
enter (Desk  *desk,
       double value)
{
  lw_session_edit (desk->session,
                   lw_edit_add_weigh_in (lw_session_base (desk->session), 0, 0,
                                         (LwWeighIn) { 0, LW_LEAF_C, value, 2, 0, NULL }),
                   "enter", NULL);
}

static guint
n_entries (Desk *desk)
{
  return lw_session_base (desk->session)->batches[0]->steps[0].n_weigh_ins;
}

/* Saved, and ended before the journal was told of it. */
static void
test_saved_before_the_journal (Desk         *desk,
                               gconstpointer data)
{
  g_assert_true (lw_running_start (desk->running, NULL));
  enter (desk, 61);
  g_assert_true (lw_document_save (lw_session_base (desk->session), desk->path, NULL));
  start_anew (desk);
  g_assert_cmpuint (desk->asked, ==, 0);
  g_assert_cmpuint (n_entries (desk), ==, 1);
  g_assert_true (lw_session_is_saved (desk->session));
  g_assert_cmpint (lw_running_batch (desk->running), ==, 0);
}

/* After a save somebody puts an older file in its place: that is not what was saved here, and it is asked. */
static void
test_older_file (Desk         *desk,
                 gconstpointer data)
{
  g_autofree char *old = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (desk->path, &old, &length, NULL));
  g_assert_true (lw_running_start (desk->running, NULL));
  enter (desk, 61);
  g_assert_true (lw_session_save (desk->session, desk->path, NULL));
  g_assert_true (g_file_set_contents (desk->path, old, (gssize) length, NULL));
  start_anew (desk);
  g_assert_cmpuint (desk->asked, ==, 1);
  g_assert_cmpint (lw_running_left (desk->running)->why, ==, LW_LEFT_APART);
}

/* Somebody changed the batch; nobody answers, and another run is begun: the first one's journal is there still. */
static void
test_unanswered_is_kept (Desk         *desk,
                         gconstpointer data)
{
  g_autoptr (LwSeason) theirs = NULL;
  g_auto (GStrv) found = NULL;
  guint aside = 0;

  g_assert_true (lw_running_start (desk->running, NULL));
  enter (desk, 61);
  theirs = lw_edit_set (lw_session_filed (desk->session), 0, 1, LW_SET_MINUTES, 17);
  g_assert_true (lw_document_save (theirs, desk->path, NULL));
  start_anew (desk);
  g_assert_cmpuint (desk->asked, ==, 1);
  g_assert_cmpint (lw_running_left (desk->running)->why, ==, LW_LEFT_APART);
  g_assert_cmpuint (lw_running_left (desk->running)->n_entries, ==, 1);
  g_assert_true (lw_running_left (desk->running)->joins);
  lw_running_take_left (desk->running, LW_TAKE_NOTHING);
  g_assert_cmpint (lw_running_batch (desk->running), ==, -1);
  g_assert_cmpuint (n_entries (desk), ==, 0);

  g_assert_true (lw_running_start (desk->running, NULL));
  found = journals (desk);
  g_assert_cmpuint (g_strv_length (found), ==, 2);
  for (guint i = 0; i < 2; i++)
    if (g_str_has_suffix (found[i], ".1"))
      {
        g_autofree char *text = NULL;

        g_assert_true (g_file_get_contents (found[i], &text, NULL, NULL));
        g_assert_nonnull (strstr (text, "value=\\\"61\\\""));
        aside++;
      }
  g_assert_cmpuint (aside, ==, 1);
}

/* A running season is saved over another one, whose own run was cut short. */
static void
test_saved_over_another (Desk         *desk,
                         gconstpointer data)
{
  g_autofree char *first = g_strdup (desk->path);
  g_auto (GStrv) found = NULL;

  g_assert_true (lw_running_start (desk->running, NULL));
  enter (desk, 61);
  g_free (desk->path);
  desk->path = g_build_filename (desk->folder, "b.leafwend", NULL);
  g_assert_true (lw_document_save (lw_session_filed (desk->session), desk->path, NULL));
  start_anew (desk);
  g_assert_cmpint (lw_running_batch (desk->running), ==, -1);
  g_assert_true (lw_running_start (desk->running, NULL));
  enter (desk, 62);

  g_assert_true (lw_session_save (desk->session, first, NULL));
  enter (desk, 63);
  found = journals (desk);
  g_assert_cmpuint (g_strv_length (found), ==, 2);
  g_free (desk->path);
  desk->path = g_steal_pointer (&first);
  start_anew (desk);
  g_assert_cmpuint (desk->asked, ==, 0);
  g_assert_cmpuint (n_entries (desk), ==, 2);
}

/* The file is gone, and its season is opened elsewhere: refused, it is asked again; set aside, it is not, and is there still;
 * taken, the journal is that of the new place. */
static void
test_moved (Desk         *desk,
            gconstpointer data)
{
  g_autofree char *old = g_strdup (desk->path), *was = lw_journal_file_path (NULL, old), *aside = NULL, *now = NULL;

  g_assert_true (lw_running_start (desk->running, NULL));
  enter (desk, 61);
  g_free (desk->path);
  desk->path = g_build_filename (desk->folder, "b.leafwend", NULL);
  now = lw_journal_file_path (NULL, desk->path);
  g_assert_cmpint (g_rename (old, desk->path), ==, 0);
  for (guint i = 0; i < 2; i++)
    {
      start_anew (desk);
      g_assert_cmpuint (desk->asked, ==, 1);
      g_assert_cmpint (lw_running_left (desk->running)->why, ==, LW_LEFT_MOVED);
      g_assert_cmpstr (lw_running_left (desk->running)->file, ==, old);
      lw_running_take_left (desk->running, LW_TAKE_NOTHING);
    }

  start_anew (desk);
  lw_running_take_left (desk->running, LW_TAKE_FILE);
  aside = g_strconcat (was, ".1", NULL);
  g_assert_true (g_file_test (aside, G_FILE_TEST_EXISTS));
  start_anew (desk);
  g_assert_cmpuint (desk->asked, ==, 0);

  g_assert_cmpint (g_rename (aside, was), ==, 0);
  start_anew (desk);
  lw_running_take_left (desk->running, LW_TAKE_RUN);
  g_assert_cmpuint (n_entries (desk), ==, 1);
  g_assert_true (g_file_test (now, G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test (was, G_FILE_TEST_EXISTS));
}

/* Moved, and the batch changed in it, too: asked one after the other, and what is said counts. */
static void
test_moved_and_apart (Desk         *desk,
                      gconstpointer data)
{
  g_autofree char *old = g_strdup (desk->path), *was = lw_journal_file_path (NULL, old);
  g_autoptr (LwSeason) theirs = NULL;

  g_assert_true (lw_running_start (desk->running, NULL));
  enter (desk, 61);
  theirs = lw_edit_set (lw_session_filed (desk->session), 0, 1, LW_SET_MINUTES, 17);
  g_free (desk->path);
  desk->path = g_build_filename (desk->folder, "b.leafwend", NULL);
  g_assert_true (lw_document_save (theirs, desk->path, NULL));
  g_unlink (old);
  start_anew (desk);
  lw_running_take_left (desk->running, LW_TAKE_RUN);
  g_assert_cmpuint (desk->asked, ==, 2);
  g_assert_cmpint (lw_running_left (desk->running)->why, ==, LW_LEFT_APART);
  g_assert_true (g_file_test (was, G_FILE_TEST_EXISTS));
  lw_running_take_left (desk->running, LW_TAKE_BOTH);
  g_assert_null (lw_running_left (desk->running));
  g_assert_cmpuint (n_entries (desk), ==, 1);
  g_assert_cmpfloat (lw_step_get (&lw_session_base (desk->session)->batches[0]->steps[1], LW_SET_MINUTES), ==, 17);
  g_assert_false (g_file_test (was, G_FILE_TEST_EXISTS));
  start_anew (desk);
  g_assert_cmpuint (desk->asked, ==, 0);
  g_assert_cmpuint (n_entries (desk), ==, 1);
}

/* More than a step can hold is not told to be on the disk. */
static void
test_what_no_file_holds (Desk         *desk,
                         gconstpointer data)
{
  LwSeason *full = lw_season_ref (lw_session_base (desk->session));

  for (guint i = 0; i < LW_MAX_WEIGH_INS; i++)
    {
      LwSeason *next = lw_edit_add_weigh_in (full, 0, 0, (LwWeighIn) { 0, LW_LEAF_C, 20, 2, 0, NULL });

      lw_season_unref (full);
      full = next;
    }
  lw_session_edit (desk->session, full, "fill", NULL);
  g_assert_true (lw_running_start (desk->running, NULL));
  g_assert_null (lw_running_trouble (desk->running));
  enter (desk, 61);
  g_assert_nonnull (strstr (lw_running_trouble (desk->running), "no file can hold"));
  lw_session_undo (desk->session);
  g_assert_null (lw_running_trouble (desk->running));
}

#define ADD(name, test) g_test_add ("/running-journal/" name, Desk, NULL, set_up, test, tear_down)

int
main (int   argc,
      char *argv[])
{
  g_autofree char *home = g_dir_make_tmp ("running-home.XXXXXX", NULL);
  int failed;

  g_setenv ("XDG_DATA_HOME", home, TRUE);
  g_test_init (&argc, &argv, NULL);

  ADD ("saved-before-the-journal", test_saved_before_the_journal);
  ADD ("older-file", test_older_file);
  ADD ("unanswered-is-kept", test_unanswered_is_kept);
  ADD ("saved-over-another", test_saved_over_another);
  ADD ("moved", test_moved);
  ADD ("moved-and-apart", test_moved_and_apart);
  ADD ("what-no-file-holds", test_what_no_file_holds);

  failed = g_test_run ();
  for (guint up = 0; up < 2; up++)
    {
      g_autofree char *below = g_build_filename (home, "leafwend", up == 0 ? "running" : NULL, NULL);

      g_rmdir (below);
    }
  g_rmdir (home);

  return failed;
}

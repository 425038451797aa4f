/* The journal's file: nothing that was told to be there is lost, and what cannot be written is told. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "season/journal-file.h"

typedef struct
{
  char *folder;
  char *path;
} Place;

static void
place_init (Place *place)
{
  place->folder = g_dir_make_tmp ("journal.XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "deeper", "a.journal", NULL);
}

static void
place_clear (Place *place)
{
  g_autofree char *deeper = g_path_get_dirname (place->path);

  g_unlink (place->path);
  g_rmdir (deeper);
  g_rmdir (place->folder);
  g_free (place->folder);
  g_free (place->path);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Place, place_clear)

static void
assert_holds (LwJournalFile *file,
              const char    *expected)
{
  gsize length;
  g_autofree char *text = lw_journal_file_load (file, &length, NULL);

  g_assert_cmpstr (text, ==, expected);
  g_assert_cmpuint (length, ==, strlen (expected));
}

static void
test_add (void)
{
  g_auto (Place) place = { 0 };
  LwJournalFile *file;

  place_init (&place);
  file = lw_journal_file_open (place.path, NULL);
  g_assert_nonnull (file);
  assert_holds (file, "");
  g_assert_true (lw_journal_file_add (file, "\none\n", NULL));
  lw_journal_file_close (file);

  file = lw_journal_file_open (place.path, NULL);
  g_assert_true (lw_journal_file_add (file, "\ntwo\n", NULL));
  assert_holds (file, "\none\n\ntwo\n");
  lw_journal_file_remove (file);
  g_assert_false (g_file_test (place.path, G_FILE_TEST_EXISTS));
}

/* One journal for one file, wherever it is asked from. */
static void
test_path (void)
{
  g_autofree char *one = lw_journal_file_path ("/x", "/season/a.leafwend");
  g_autofree char *same = lw_journal_file_path ("/x", "/season/../season/a.leafwend");
  g_autofree char *other = lw_journal_file_path ("/x", "/season/b.leafwend");
  g_autofree char *usual = lw_journal_file_path (NULL, "/season/a.leafwend");

  g_assert_cmpstr (one, ==, same);
  g_assert_cmpstr (one, !=, other);
  g_assert_true (g_str_has_prefix (usual, g_get_user_data_dir ()));
}

static void
test_two_windows (void)
{
  g_auto (Place) place = { 0 };
  g_autoptr (LwJournalFile) file = NULL, again = NULL;
  g_autoptr (GError) error = NULL;

  place_init (&place);
  file = lw_journal_file_open (place.path, NULL);
  g_assert_null (lw_journal_file_open (place.path, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_AGAIN);
  g_clear_pointer (&file, lw_journal_file_close);
  again = lw_journal_file_open (place.path, NULL);
  g_assert_nonnull (again);
}

static void
test_no_folder (void)
{
  g_auto (Place) place = { 0 };
  g_autofree char *in_file = NULL;
  g_autoptr (LwJournalFile) file = NULL;
  g_autoptr (GError) error = NULL;

  place_init (&place);
  file = lw_journal_file_open (place.path, NULL);
  in_file = g_build_filename (place.path, "below", "b.journal", NULL);
  g_assert_null (lw_journal_file_open (in_file, &error));
  g_assert_nonnull (error);
  g_assert_nonnull (strstr (error->message, "below"));
}

static void
test_taken_away (void)
{
  g_auto (Place) place = { 0 };
  g_autoptr (LwJournalFile) file = NULL;
  g_autoptr (GError) error = NULL;

  place_init (&place);
  file = lw_journal_file_open (place.path, NULL);
  g_unlink (place.path);
  g_assert_false (lw_journal_file_add (file, "\none\n", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

/* A disk without room, as a limit on the size of files: what was there is whole, and when there is room it goes on. */
static void
test_no_room (void)
{
  g_auto (Place) place = { 0 };
  g_autoptr (LwJournalFile) file = NULL;
  g_autoptr (GError) error = NULL;
  struct rlimit before, little;

  place_init (&place);
  signal (SIGXFSZ, SIG_IGN);
  file = lw_journal_file_open (place.path, NULL);
  g_assert_true (lw_journal_file_add (file, "\none\n", NULL));
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &before), ==, 0);
  little = before;
  little.rlim_cur = 8;
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &little), ==, 0);
  g_assert_false (lw_journal_file_add (file, "\na longer line\n", &error));
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &before), ==, 0);
  g_assert_nonnull (error);
  assert_holds (file, "\none\n");
  g_assert_true (lw_journal_file_add (file, "\ntwo\n", NULL));
  assert_holds (file, "\none\n\ntwo\n");
}

/* Killed in the middle of many lines: every line that was said to be there is there. */
static void
test_killed (void)
{
  g_auto (Place) place = { 0 };
  g_autofree char *text = NULL;
  g_autoptr (LwJournalFile) file = NULL;
  int said[2], last = -1, n;
  gsize length;
  pid_t child;

  place_init (&place);
  g_assert_cmpint (pipe (said), ==, 0);
  child = fork ();
  if (child == 0)
    {
      LwJournalFile *own = lw_journal_file_open (place.path, NULL);

      for (int i = 0;; i++)
        {
          g_autofree char *line = g_strdup_printf ("\nline %d.\n", i);

          if (!lw_journal_file_add (own, line, NULL) || write (said[1], &i, sizeof i) != sizeof i)
            _exit (1);
        }
    }
  close (said[1]);
  while (last < 20 && read (said[0], &n, sizeof n) == sizeof n)
    last = n;
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
  while (read (said[0], &n, sizeof n) == sizeof n)
    last = n;
  close (said[0]);

  g_assert_cmpint (last, >=, 20);
  file = lw_journal_file_open (place.path, NULL);
  text = lw_journal_file_load (file, &length, NULL);
  for (int i = 0; i <= last; i++)
    {
      g_autofree char *line = g_strdup_printf ("\nline %d.\n", i);

      g_assert_nonnull (strstr (text, line));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/journal-file/add", test_add);
  g_test_add_func ("/journal-file/path", test_path);
  g_test_add_func ("/journal-file/two-windows", test_two_windows);
  g_test_add_func ("/journal-file/no-folder", test_no_folder);
  g_test_add_func ("/journal-file/taken-away", test_taken_away);
  g_test_add_func ("/journal-file/no-room", test_no_room);
  g_test_add_func ("/journal-file/killed", test_killed);

  return g_test_run ();
}

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
  g_autofree char *deeper = g_path_get_dirname (place->path), *beside = g_strconcat (place->path, ".new", NULL);

  g_unlink (place->path);
  g_unlink (beside);
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
  little = (struct rlimit) { 8, before.rlim_max };
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &little), ==, 0);
  g_assert_false (lw_journal_file_add (file, "\na longer line\n", &error));
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &before), ==, 0);
  g_assert_nonnull (error);
  assert_holds (file, "\none\n");
  g_assert_true (lw_journal_file_add (file, "\ntwo\n", NULL));
  assert_holds (file, "\none\n\ntwo\n");
}

/* Killed in the middle of many lines, each behind `body`: the last that was said to be there is there; `all`: so is every. */
static void
kill_among_lines (const char *body,
                  int         least,
                  gboolean    all)
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
          g_autofree char *line = g_strdup_printf ("\n%sline %d.\n", body, i);

          if (!lw_journal_file_add (own, line, NULL) || write (said[1], &i, sizeof i) != sizeof i)
            _exit (1);
        }
    }
  close (said[1]);
  while (last < least && read (said[0], &n, sizeof n) == sizeof n)
    last = n;
  kill (child, SIGKILL);
  waitpid (child, NULL, 0);
  while (read (said[0], &n, sizeof n) == sizeof n)
    last = n;
  close (said[0]);

  g_assert_cmpint (last, >=, least);
  file = lw_journal_file_open (place.path, NULL);
  text = lw_journal_file_load (file, &length, NULL);
  for (int i = all ? 0 : last; i <= last; i++)
    {
      g_autofree char *line = g_strdup_printf ("line %d.\n", i);

      g_assert_nonnull (strstr (text, line));
    }
}

static void
test_killed (void)
{
  kill_among_lines ("", 20, TRUE);
}

/* About when a file that has grown long gives place to a new one, after the 8th line or so and then again and again. */
static void
test_killed_long (void)
{
  g_autofree char *body = g_strnfill (1000 * 1000, 'x');

  for (int least = 7; least < 27; least += 3)
    kill_among_lines (body, least, FALSE);
}

/* One journal for one season, also by way of a link to it or to its folder; and once it is gone. */
static void
test_links (void)
{
  g_auto (Place) place = { 0 };
  g_autofree char *season = NULL, *link = NULL, *aside = NULL, *by_folder = NULL;
  g_autofree char *straight = NULL, *by_link = NULL, *over = NULL, *gone = NULL;

  place_init (&place);
  season = g_build_filename (place.folder, "a.leafwend", NULL);
  link = g_build_filename (place.folder, "link.leafwend", NULL);
  aside = g_build_filename (place.folder, "link", NULL);
  by_folder = g_build_filename (aside, "a.leafwend", NULL);
  g_assert_true (g_file_set_contents (season, "", 0, NULL));
  g_assert_cmpint (symlink ("a.leafwend", link), ==, 0);
  g_assert_cmpint (symlink (".", aside), ==, 0);

  straight = lw_journal_file_path ("/x", season);
  by_link = lw_journal_file_path ("/x", link);
  over = lw_journal_file_path ("/x", by_folder);
  g_assert_cmpstr (straight, ==, by_link);
  g_assert_cmpstr (straight, ==, over);
  g_unlink (season);
  g_clear_pointer (&over, g_free);
  over = lw_journal_file_path ("/x", by_folder);
  gone = lw_journal_file_path ("/x", season);
  g_assert_cmpstr (straight, ==, gone);
  g_assert_cmpstr (straight, ==, over);
  g_unlink (link);
  g_unlink (aside);
}

/* Lines of `each` bytes, the last of which ends in its number. */
static void
add_long (LwJournalFile *file,
          gsize          each,
          int            number)
{
  g_autofree char *body = g_strnfill (each, 'x'), *line = g_strdup_printf ("\n%s %d.\n", body, number);

  g_assert_true (lw_journal_file_add (file, line, NULL));
}

/* A batch with long logs has long lines: the file does not grow without end, and the last line is there whatever came
 * before, for another window too. */
static void
test_long (void)
{
  g_auto (Place) place = { 0 };
  g_autofree char *text = NULL;
  LwJournalFile *file;
  gsize length;

  place_init (&place);
  file = lw_journal_file_open (place.path, NULL);
  for (int i = 0; i < 100; i++)
    add_long (file, 400000, i);
  g_assert_null (lw_journal_file_open (place.path, NULL));
  lw_journal_file_close (file);

  file = lw_journal_file_open (place.path, NULL);
  text = lw_journal_file_load (file, &length, NULL);
  g_assert_cmpuint (length, <, 16 * 1024 * 1024);
  g_assert_true (g_str_has_suffix (text, " 99.\n"));
  lw_journal_file_remove (file);
}

/* No room for a second file: the line goes behind the others. */
static void
test_long_without_room (void)
{
  g_auto (Place) place = { 0 };
  g_autofree char *text = NULL, *in_the_way = NULL;
  LwJournalFile *file;
  gsize length;

  place_init (&place);
  file = lw_journal_file_open (place.path, NULL);
  in_the_way = g_strconcat (place.path, ".new", NULL);
  g_assert_cmpint (g_mkdir (in_the_way, 0700), ==, 0);
  for (int i = 0; i < 30; i++)
    add_long (file, 400000, i);
  text = lw_journal_file_load (file, &length, NULL);
  g_assert_cmpuint (length, >, 30 * 400000);
  g_assert_true (g_str_has_suffix (text, " 29.\n"));
  lw_journal_file_remove (file);
  g_rmdir (in_the_way);
}

/* Whatever its size, it is the end of it that is read. */
static void
test_end_of_a_giant (void)
{
  g_auto (Place) place = { 0 };
  g_autofree char *text = NULL, *in_the_way = NULL;
  LwJournalFile *file;
  gsize length;

  place_init (&place);
  file = lw_journal_file_open (place.path, NULL);
  in_the_way = g_strconcat (place.path, ".new", NULL);
  g_assert_cmpint (g_mkdir (in_the_way, 0700), ==, 0);
  g_assert_cmpint (truncate (place.path, 300 * 1024 * 1024), ==, 0); /* takes no room on the disk */
  g_assert_true (lw_journal_file_add (file, "\none\n", NULL));
  text = lw_journal_file_load (file, &length, NULL);
  g_assert_cmpmem (text + length - 5, 5, "\none\n", 5);
  lw_journal_file_remove (file);
  g_rmdir (in_the_way);
}

static void
test_set_aside (void)
{
  g_auto (Place) place = { 0 };

  place_init (&place);
  for (int i = 1; i <= 2; i++)
    {
      LwJournalFile *file = lw_journal_file_open (place.path, NULL);
      g_autofree char *expected = g_strdup_printf ("%s.%d", place.path, i), *aside = NULL, *text = NULL;
      g_autofree char *line = g_strdup_printf ("\n%d\n", i);

      lw_journal_file_add (file, line, NULL);
      aside = lw_journal_file_set_aside (file);
      g_assert_cmpstr (aside, ==, expected);
      g_assert_false (g_file_test (place.path, G_FILE_TEST_EXISTS));
      g_assert_true (g_file_get_contents (aside, &text, NULL, NULL));
      g_assert_cmpstr (text, ==, line);
    }
  for (int i = 1; i <= 2; i++)
    {
      g_autofree char *aside = g_strdup_printf ("%s.%d", place.path, i);

      g_unlink (aside);
    }
}

/* Others are the journals of other seasons, not what was set aside. */
static void
test_others (void)
{
  g_auto (Place) place = { 0 };
  g_autofree char *other = NULL, *aside = NULL;
  g_autoptr (LwJournalFile) file = NULL, second = NULL;
  g_auto (GStrv) others = NULL;

  place_init (&place);
  file = lw_journal_file_open (place.path, NULL);
  other = g_strconcat (place.path, "-b.journal", NULL);
  aside = g_strconcat (place.path, ".1", NULL);
  second = lw_journal_file_open (other, NULL);
  g_assert_true (g_file_set_contents (aside, "", 0, NULL));
  others = lw_journal_file_others (place.path);
  g_assert_cmpuint (g_strv_length (others), ==, 1);
  g_assert_cmpstr (others[0], ==, other);
  g_unlink (other);
  g_unlink (aside);
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
  g_test_add_func ("/journal-file/killed-long", test_killed_long);
  g_test_add_func ("/journal-file/links", test_links);
  g_test_add_func ("/journal-file/long", test_long);
  g_test_add_func ("/journal-file/long-without-room", test_long_without_room);
  g_test_add_func ("/journal-file/end-of-a-giant", test_end_of_a_giant);
  g_test_add_func ("/journal-file/set-aside", test_set_aside);
  g_test_add_func ("/journal-file/others", test_others);

  return g_test_run ();
}

/* Saving: what is on the disk is always a whole season, whatever goes wrong. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#define NOBODY 65534

/* A folder with the sample season in "a.leafwend", gone with all in it at the end. */
typedef struct
{
  char *folder;
  char *path;
  char *text; /* what "a.leafwend" holds */
  LwSeason *season;
} Desk;

static void
set_up (Desk         *desk,
        gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  gsize length;

  desk->folder = g_dir_make_tmp ("leafwend-save-XXXXXX", &error);
  g_assert_no_error (error);
  g_assert_cmpint (g_chmod (desk->folder, 0755), ==, 0);
  desk->path = g_build_filename (desk->folder, "a.leafwend", NULL);
  desk->season = sample_season ();
  desk->text = lw_document_write (desk->season, &length);
  g_assert_true (lw_document_save (desk->season, desk->path, &error));
  g_assert_no_error (error);
}

static void
tear_down (Desk         *desk,
           gconstpointer data)
{
  g_autoptr (GDir) folder = g_dir_open (desk->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *path = g_build_filename (desk->folder, name, NULL);

      g_assert_cmpint (g_remove (path), ==, 0);
    }

  g_assert_cmpint (g_rmdir (desk->folder), ==, 0);
  g_free (desk->folder);
  g_free (desk->path);
  g_free (desk->text);
  lw_season_unref (desk->season);
}

static void
assert_holds (const char *path,
              const char *text)
{
  g_autofree char *found = NULL;

  g_assert_true (g_file_get_contents (path, &found, NULL, NULL));
  g_assert_cmpstr (found, ==, text);
}

/* Nothing else lies beside the season, as a file half written would. */
static void
assert_files (const Desk *desk,
              guint       n)
{
  g_autoptr (GDir) folder = g_dir_open (desk->folder, 0, NULL);
  guint found = 0;

  while (g_dir_read_name (folder) != NULL)
    found++;

  g_assert_cmpuint (found, ==, n);
}

/* Saving to `path` fails, says `phrase`, and "a.leafwend" is as it was. */
static void
assert_fails (const Desk *desk,
              const char *path,
              const char *phrase)
{
  g_autoptr (LwSeason) other = lw_season_new ("Other");
  g_autoptr (GError) error = NULL;

  g_assert_false (lw_document_save (other, path, &error));
  g_assert_nonnull (error);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, phrase));
  assert_holds (desk->path, desk->text);
}

static void
test_new (Desk         *desk,
          gconstpointer data)
{
  mode_t mask = umask (0);
  struct stat about;

  umask (mask);
  assert_holds (desk->path, desk->text);
  assert_files (desk, 1);
  g_assert_cmpint (stat (desk->path, &about), ==, 0);
  g_assert_cmpuint (about.st_mode & 07777, ==, 0666 & ~mask);
}

static void
test_replace (Desk         *desk,
              gconstpointer data)
{
  static const mode_t modes[] = { 0600, 0640, 0664, 0666, 0644 };
  g_autoptr (GError) error = NULL;
  struct stat about;

  for (guint i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      g_assert_cmpint (g_chmod (desk->path, (int) modes[i]), ==, 0);
      g_assert_true (lw_document_save (desk->season, desk->path, &error));
      g_assert_no_error (error);
      g_assert_cmpint (stat (desk->path, &about), ==, 0);
      g_assert_cmpuint (about.st_mode & 07777, ==, modes[i]);
    }

  assert_holds (desk->path, desk->text);
  assert_files (desk, 1);
}

static void
test_owner (Desk         *desk,
            gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  struct stat about;

  if (geteuid () != 0)
    {
      g_test_skip ("only the superuser can give a file away");
      return;
    }

  g_assert_cmpint (chown (desk->path, NOBODY, NOBODY), ==, 0);
  g_assert_true (lw_document_save (desk->season, desk->path, &error));
  g_assert_cmpint (stat (desk->path, &about), ==, 0);
  g_assert_cmpuint (about.st_uid, ==, NOBODY);
}

static void
test_links (Desk         *desk,
            gconstpointer data)
{
  g_autofree char *one = g_build_filename (desk->folder, "one.leafwend", NULL);
  g_autofree char *two = g_build_filename (desk->folder, "two.leafwend", NULL);
  g_autofree char *dangling = g_build_filename (desk->folder, "dangling.leafwend", NULL);
  g_autofree char *late = g_build_filename (desk->folder, "late.leafwend", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (LwSeason) other = lw_season_new ("Other");
  g_autofree char *text = NULL;
  gsize length;

  g_assert_cmpint (symlink ("a.leafwend", one), ==, 0);
  g_assert_cmpint (symlink (one, two), ==, 0);
  g_assert_cmpint (symlink ("late.leafwend", dangling), ==, 0);
  text = lw_document_write (other, &length);

  g_assert_true (lw_document_save (other, two, &error));
  g_assert_true (lw_document_save (other, dangling, &error));
  g_assert_no_error (error);

  g_assert_true (g_file_test (one, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_test (two, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_test (dangling, G_FILE_TEST_IS_SYMLINK));
  g_assert_false (g_file_test (desk->path, G_FILE_TEST_IS_SYMLINK));
  assert_holds (desk->path, text);
  assert_holds (late, text);
  assert_files (desk, 5);
}

static void
test_link_loop (Desk         *desk,
                gconstpointer data)
{
  g_autofree char *loop = g_build_filename (desk->folder, "loop.leafwend", NULL);

  g_assert_cmpint (symlink ("loop.leafwend", loop), ==, 0);
  assert_fails (desk, loop, "leads nowhere");
}

/* Each fails for the superuser too. */
static void
test_impossible (Desk         *desk,
                 gconstpointer data)
{
  g_autofree char *missing = g_build_filename (desk->folder, "no-folder", "a.leafwend", NULL);
  g_autofree char *below_file = g_build_filename (desk->path, "b.leafwend", NULL);
  g_autofree char *letters = g_strnfill (300, 'a');
  g_autofree char *long_name = g_build_filename (desk->folder, letters, NULL);

  assert_fails (desk, missing, "a folder that is there");
  assert_fails (desk, below_file, "a folder that is there");
  assert_fails (desk, long_name, "a shorter name");
  assert_fails (desk, desk->folder, "is a folder");
  assert_fails (desk, "/dev/full", "no plain file");
  assert_fails (desk, "/proc/a.leafwend", "could not be saved");
  g_assert_false (g_file_test ("/dev/full", G_FILE_TEST_IS_REGULAR));
  assert_files (desk, 1);
}

/* The write stops short, as on a full disk. */
static void
test_full (Desk         *desk,
           gconstpointer data)
{
  struct rlimit old, small;

  signal (SIGXFSZ, SIG_IGN);
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &old), ==, 0);
  small = old;

  for (rlim_t bytes = 0; bytes < 150; bytes += 50)
    {
      g_autoptr (LwSeason) other = lw_season_new ("Other");
      g_autoptr (GError) error = NULL;
      gboolean saved;

      small.rlim_cur = bytes;
      g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &small), ==, 0);
      saved = lw_document_save (other, desk->path, &error);
      g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &old), ==, 0);

      g_assert_false (saved);
      g_assert_nonnull (strstr (error->message, "File too large. Save it elsewhere"));
    }

  assert_holds (desk->path, desk->text);
  assert_files (desk, 1);
}

static void
test_protected (Desk         *desk,
                gconstpointer data)
{
  gboolean root = geteuid () == 0;

  g_assert_cmpint (g_chmod (desk->path, 0444), ==, 0);
  g_assert_cmpint (root ? seteuid (NOBODY) : 0, ==, 0);
  assert_fails (desk, desk->path, "is protected against writing");
  g_assert_cmpint (root ? seteuid (0) : 0, ==, 0);

  g_assert_cmpint (g_chmod (desk->path, 0666), ==, 0);
  g_assert_cmpint (g_chmod (desk->folder, 0555), ==, 0);
  g_assert_cmpint (root ? seteuid (NOBODY) : 0, ==, 0);
  assert_fails (desk, desk->path, "a folder that you may write to");
  g_assert_cmpint (root ? seteuid (0) : 0, ==, 0);

  g_assert_cmpint (g_chmod (desk->folder, 0755), ==, 0);
  assert_files (desk, 1);
}

/* A season that could not be opened again never takes the place of one that can. */
static void
test_unreadable (Desk         *desk,
                 gconstpointer data)
{
  g_autoptr (LwSeason) nameless = lw_season_new ("");
  g_autoptr (LwSeason) wrong = lw_season_copy (desk->season);
  g_autoptr (LwSeason) twice = lw_season_copy (desk->season);
  LwSeason *const seasons[] = { nameless, wrong, twice };
  static const char *const phrases[] = {
    "“name” is empty", "“nan” as “altitude-m”", "more than one “batch”",
  };

  wrong->altitude_m = NAN;
  lw_season_insert_batch (twice, 0, lw_batch_ref (twice->batches[0]));

  for (guint i = 0; i < G_N_ELEMENTS (seasons); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (lw_document_save (seasons[i], desk->path, &error));
      g_assert_nonnull (strstr (error->message, "was not saved"));
      g_assert_nonnull (strstr (error->message, phrases[i]));
    }

  assert_holds (desk->path, desk->text);
  assert_files (desk, 1);
}

static gpointer
save_often (gpointer data)
{
  const Desk *desk = data;

  for (int i = 0; i < 100; i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_true (lw_document_save (desk->season, desk->path, &error));
    }

  return NULL;
}

/* Who reads while it is saved sees a whole season. */
static void
test_read_meanwhile (Desk         *desk,
                     gconstpointer data)
{
  GThread *thread = g_thread_new (NULL, save_often, desk);

  for (int i = 0; i < 100; i++)
    {
      g_autoptr (GPtrArray) problems = lw_problems_new ();
      g_autoptr (LwSeason) season = lw_document_load (desk->path, problems);

      g_assert_nonnull (season);
    }

  g_thread_join (thread);
  assert_files (desk, 1);
}

/* A power cut is out of reach here; a program killed at any moment is not. */
static void
test_killed (Desk         *desk,
             gconstpointer data)
{
  for (int i = 0; i < 20; i++)
    {
      pid_t child = fork ();

      g_assert_cmpint (child, >=, 0);
      while (child == 0)
        lw_document_save (desk->season, desk->path, NULL);

      g_usleep ((gulong) (2000 + 700 * i));
      g_assert_cmpint (kill (child, SIGKILL), ==, 0);
      g_assert_cmpint (waitpid (child, NULL, 0), ==, child);
      assert_holds (desk->path, desk->text);
    }
}

#define ADD(name, test) g_test_add ("/save/" name, Desk, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("new", test_new);
  ADD ("replace", test_replace);
  ADD ("owner", test_owner);
  ADD ("links", test_links);
  ADD ("link-loop", test_link_loop);
  ADD ("impossible", test_impossible);
  ADD ("full", test_full);
  ADD ("protected", test_protected);
  ADD ("unreadable", test_unreadable);
  ADD ("read-meanwhile", test_read_meanwhile);
  ADD ("killed", test_killed);

  return g_test_run ();
}

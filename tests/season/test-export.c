/* What is given out replaces a file as a whole, and never a season, a link or a pipe. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "season/document.h"
#include "season/edit.h"
#include "season/export.h"

#define TABLE "step,minute\n1,0\n"

typedef struct
{
  char *folder;
  char *path;
} Place;

static void
set_up (Place        *place,
        gconstpointer data)
{
  place->folder = g_dir_make_tmp ("export-XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "there.csv", NULL);
}

static void
tear_down (Place        *place,
           gconstpointer data)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (place->folder, name, NULL);

      g_unlink (path);
    }
  g_rmdir (place->folder);
  g_free (place->folder);
  g_free (place->path);
}

static void
save (const char *path)
{
  g_autoptr (GError) error = NULL;

  lw_export_save (path, TABLE, strlen (TABLE), &error);
  g_assert_no_error (error);
}

static void
assert_holds (const char *path,
              const char *text)
{
  g_autofree char *held = NULL;

  g_assert_true (g_file_get_contents (path, &held, NULL, NULL));
  g_assert_cmpstr (held, ==, text);
}

static void
test_replaced (Place        *place,
               gconstpointer data)
{
  g_assert_true (g_file_set_contents (place->path, "a longer text than that which follows\n", -1, NULL));
  save (place->path);
  assert_holds (place->path, TABLE);
}

/* By its own name, another, and a link, and even where its end is missing. */
static void
test_season (Place        *place,
             gconstpointer data)
{
  g_autofree char *link = g_build_filename (place->folder, "link.csv", NULL);
  g_autoptr (LwSeason) season = lw_edit_new_season (0);
  const char *paths[] = { place->path, link };
  g_autofree char *text = NULL, *half = NULL;

  g_assert_true (lw_document_save (season, place->path, NULL));
  g_assert_true (g_file_get_contents (place->path, &text, NULL, NULL));
  /* What comes before its root may be long. */
  half = g_strdup_printf ("<?xml version=\"1.0\"?>\n<!--%*s-->%.*s", 70000, "", (int) strlen (text) / 2, strchr (text, '\n'));
  g_assert_true (g_file_set_contents (place->path, half, -1, NULL));
  g_assert_cmpint (symlink ("there.csv", link), ==, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (lw_export_save (paths[i], TABLE, strlen (TABLE), &error));
      g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_EXIST);
      g_assert_nonnull (strstr (error->message, paths[i]));
      g_assert_nonnull (strstr (error->message, "name another file"));
      assert_holds (place->path, half);
    }
}

static void
test_link (Place        *place,
           gconstpointer data)
{
  g_autofree char *link = g_build_filename (place->folder, "link.csv", NULL);

  g_assert_true (g_file_set_contents (place->path, "old", -1, NULL));
  g_assert_cmpint (symlink ("there.csv", link), ==, 0);
  save (link);
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_holds (place->path, TABLE);
}

/* Also one that leads to a place where nothing is yet. */
static void
test_link_to_nothing (Place        *place,
                      gconstpointer data)
{
  g_autofree char *link = g_build_filename (place->folder, "link.csv", NULL);

  g_assert_cmpint (symlink ("there.csv", link), ==, 0);
  save (link);
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_holds (place->path, TABLE);
}

static void
test_mode (Place        *place,
           gconstpointer data)
{
  struct stat about;

  g_assert_true (g_file_set_contents (place->path, "old", -1, NULL));
  g_assert_cmpint (chmod (place->path, 0640), ==, 0);
  save (place->path);
  g_assert_cmpint (stat (place->path, &about), ==, 0);
  g_assert_cmpuint (about.st_mode & 07777, ==, 0640);
}

static void
test_pipe (Place        *place,
           gconstpointer data)
{
  char read_of[sizeof TABLE] = "";
  struct stat about;
  int reader;

  g_assert_cmpint (mkfifo (place->path, 0600), ==, 0);
  reader = open (place->path, O_RDONLY | O_NONBLOCK);
  g_assert_cmpint (reader, >=, 0);
  save (place->path);
  g_assert_cmpint (read (reader, read_of, sizeof read_of - 1), ==, strlen (TABLE));
  g_assert_cmpstr (read_of, ==, TABLE);
  close (reader);
  g_assert_cmpint (stat (place->path, &about), ==, 0);
  g_assert_true (S_ISFIFO (about.st_mode));
}

static void
test_no_folder (Place        *place,
                gconstpointer data)
{
  g_autofree char *path = g_build_filename (place->folder, "none", "a.csv", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_false (lw_export_save (path, TABLE, strlen (TABLE), &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_nonnull (strstr (error->message, path));
  g_assert_nonnull (strstr (error->message, "Choose a folder that is there."));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, test) g_test_add ("/export/" name, Place, NULL, set_up, test, tear_down)
  ADD ("replaced", test_replaced);
  ADD ("season", test_season);
  ADD ("link", test_link);
  ADD ("link-to-nothing", test_link_to_nothing);
  ADD ("mode", test_mode);
  ADD ("pipe", test_pipe);
  ADD ("no-folder", test_no_folder);

  return g_test_run ();
}

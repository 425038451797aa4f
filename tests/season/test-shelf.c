/* Folders of season files: what is listed, what is read, and what cannot be. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "many.h"
#include "season/shelf.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define NOBODY 65534

/* A folder with three seasons of two batches, and a fourth in a folder of it. */
typedef struct
{
  char *folder;
  char *below;
} Desk;

static char *
in (const char *folder,
    const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static void
set_up (Desk         *desk,
        gconstpointer data)
{
  desk->folder = g_dir_make_tmp ("leafwend-shelf-XXXXXX", NULL);
  desk->below = in (desk->folder, "below");
  many_write (desk->folder, 3, 2);
  g_assert_cmpint (g_mkdir (desk->below, 0700), ==, 0);
  many_write (desk->below, 1, 1);
}

static void
tear_down (Desk         *desk,
           gconstpointer data)
{
  many_remove (desk->folder);
  g_free (desk->folder);
  g_free (desk->below);
}

/* The names of the files with "!" behind those that have problems after reading, and their number of batches. */
static void
assert_shelf (const Desk *desk,
              const char *said)
{
  g_autoptr (GPtrArray) files = lw_shelf_list (desk->folder, NULL);
  g_autoptr (GString) got = g_string_new (NULL);

  for (guint i = 0; i < files->len; i++)
    {
      LwShelved *file = g_ptr_array_index (files, i);

      if (file->problems == NULL)
        lw_shelf_read (file);
      g_assert_true ((file->heads == NULL) != (file->problems == NULL));
      g_string_append_printf (got, "%s%s", i > 0 ? " " : "", file->path + strlen (desk->folder) + 1);
      if (file->heads != NULL)
        g_string_append_printf (got, ":%u", file->heads->len);
      else
        g_string_append (got, "!");
    }
  g_assert_cmpstr (got->str, ==, said);
}

static void
test_list (Desk         *desk,
           gconstpointer data)
{
  g_autofree char *other = in (desk->folder, "notes.txt"), *hidden = in (desk->folder, ".leafwend-a1b2c3");

  g_assert_true (g_file_set_contents (other, "x", -1, NULL));
  g_assert_true (g_file_set_contents (hidden, "x", -1, NULL));
  assert_shelf (desk, "below/f0000.leafwend:1 f0000.leafwend:2 f0001.leafwend:2 f0002.leafwend:2");
}

/* A link to a file or folder that is there already lists nothing twice, and not by the link's name; loops end; a link to nowhere is told. */
static void
test_links (Desk         *desk,
            gconstpointer data)
{
  g_autofree char *loop = in (desk->below, "loop"), *self = in (desk->folder, "self.leafwend");
  g_autofree char *twice = in (desk->folder, "a.leafwend"), *nowhere = in (desk->folder, "nowhere.leafwend");
  g_autofree char *other = in (desk->folder, "a-link");

  g_assert_cmpint (symlink (desk->folder, loop), ==, 0);
  g_assert_cmpint (symlink ("self.leafwend", self), ==, 0);
  g_assert_cmpint (symlink ("f0001.leafwend", twice), ==, 0);
  g_assert_cmpint (symlink ("gone.leafwend", nowhere), ==, 0);
  g_assert_cmpint (symlink ("below", other), ==, 0);
  assert_shelf (desk, "below/f0000.leafwend:1 f0000.leafwend:2 f0001.leafwend:2 f0002.leafwend:2 "
                      "nowhere.leafwend! self.leafwend!");
}

/* Damaged, empty, huge, no plain file: each is told, none is in the way. */
static void
test_broken (Desk         *desk,
             gconstpointer data)
{
  g_autofree char *empty = in (desk->folder, "empty.leafwend"), *huge = in (desk->folder, "huge.leafwend");
  g_autofree char *half = in (desk->folder, "half.leafwend"), *first = in (desk->folder, "f0000.leafwend");
  g_autofree char *pipe = in (desk->folder, "pipe.leafwend"), *text = NULL;
  g_autoptr (GPtrArray) files = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (first, &text, &length, NULL));
  g_assert_true (g_file_set_contents (half, text, (gssize) length / 2, NULL));
  g_assert_true (g_file_set_contents (empty, "", 0, NULL));
  g_assert_true (g_file_set_contents (huge, text, (gssize) length, NULL));
  g_assert_cmpint (truncate (huge, (off_t) 1 << 36), ==, 0);
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  assert_shelf (desk, "below/f0000.leafwend:1 empty.leafwend! f0000.leafwend:2 f0001.leafwend:2 f0002.leafwend:2 "
                      "half.leafwend! huge.leafwend! pipe.leafwend!");

  files = lw_shelf_list (desk->folder, NULL);
  lw_shelf_read (g_ptr_array_index (files, 5));
  g_assert_cmpuint (((LwProblem *) g_ptr_array_index (((LwShelved *) g_ptr_array_index (files, 5))->problems, 0))->line,
                    >, 1);
}

static void
test_unreadable (Desk         *desk,
                 gconstpointer data)
{
  g_autofree char *first = in (desk->folder, "f0000.leafwend"), *second = in (desk->folder, "f0001.leafwend");
  g_autofree char *third = in (desk->folder, "f0002.leafwend");
  gboolean root = geteuid () == 0; /* who may read all */

  g_assert_cmpint (g_chmod (desk->folder, 0755), ==, 0);
  g_assert_cmpint (g_chmod (desk->below, 0), ==, 0);
  g_assert_cmpint (g_chmod (first, 0), ==, 0);
  g_assert_cmpint (g_chmod (second, 0644), ==, 0);
  g_assert_cmpint (g_chmod (third, 0644), ==, 0);
  g_assert_cmpint (root ? seteuid (NOBODY) : 0, ==, 0);
  assert_shelf (desk, "below! f0000.leafwend! f0001.leafwend:2 f0002.leafwend:2");
  g_assert_cmpint (root ? seteuid (0) : 0, ==, 0);
  g_assert_cmpint (g_chmod (desk->below, 0700), ==, 0);
}

static void
test_missing (Desk         *desk,
              gconstpointer data)
{
  g_autofree char *missing = in (desk->folder, "missing"), *file = in (desk->folder, "f0000.leafwend");
  const char *const no_folders[] = { missing, file };

  for (guint i = 0; i < G_N_ELEMENTS (no_folders); i++)
    {
      g_autoptr (GPtrArray) files = lw_shelf_list (no_folders[i], NULL);
      const LwShelved *only = g_ptr_array_index (files, 0);

      g_assert_cmpuint (files->len, ==, 1);
      g_assert_cmpstr (only->path, ==, no_folders[i]);
      g_assert_cmpuint (only->problems->len, ==, 1);
    }
}

/* Deeper than is looked, and told. */
static void
test_deep (Desk         *desk,
           gconstpointer data)
{
  g_autoptr (GString) path = g_string_new (desk->below);
  g_autoptr (GPtrArray) files = NULL;
  const LwShelved *first;

  for (guint i = 0; i < LW_SHELF_DEPTH; i++)
    {
      g_string_append (path, "/a");
      g_assert_cmpint (g_mkdir (path->str, 0700), ==, 0);
    }
  files = lw_shelf_list (desk->folder, NULL);
  first = g_ptr_array_index (files, 0);
  g_assert_cmpuint (files->len, ==, 5);
  g_assert_cmpstr (first->path, ==, path->str);
  g_assert_nonnull (first->problems);
}

/* A file is read again just if it is another, or was changed. */
static void
test_same (Desk         *desk,
           gconstpointer data)
{
  g_autofree char *path = in (desk->folder, "f0001.leafwend"), *text = NULL;
  g_autoptr (GPtrArray) before = lw_shelf_list (desk->folder, NULL), again = lw_shelf_list (desk->folder, NULL);
  g_autoptr (GPtrArray) later = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  g_assert_true (g_file_set_contents (path, text, (gssize) length, NULL));
  later = lw_shelf_list (desk->folder, NULL);
  for (guint i = 0; i < before->len; i++)
    {
      g_assert_true (lw_shelved_same (g_ptr_array_index (again, i), g_ptr_array_index (before, i)));
      g_assert_cmpint (lw_shelved_same (g_ptr_array_index (later, i), g_ptr_array_index (before, i)), ==, i != 2);
    }
}

#define ADD(name, test) g_test_add ("/shelf/" name, Desk, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("list", test_list);
  ADD ("links", test_links);
  ADD ("broken", test_broken);
  ADD ("unreadable", test_unreadable);
  ADD ("missing", test_missing);
  ADD ("deep", test_deep);
  ADD ("same", test_same);

  return g_test_run ();
}

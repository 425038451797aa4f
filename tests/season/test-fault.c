/* Saving while the disk fails or the program is killed: the file is always the whole old or the whole new one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fault.h"
#include "sample.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

/* A folder in which "a.leafwend" holds the old season. */
typedef struct
{
  char *folder;
  char *path;
  LwSeason *old;
  LwSeason *new;
  char *old_text;
  char *new_text;
} Desk;

static void
set_up (Desk         *desk,
        gconstpointer data)
{
  gsize length;

  fault_arm (NULL, 0, 0);
  desk->folder = g_dir_make_tmp ("leafwend-fault-XXXXXX", NULL);
  desk->path = g_build_filename (desk->folder, "a.leafwend", NULL);
  desk->old = lw_season_new ("Old");
  desk->new = sample_season ();
  desk->old_text = lw_document_write (desk->old, &length);
  desk->new_text = lw_document_write (desk->new, &length);
  g_assert_true (lw_document_save (desk->old, desk->path, NULL));
}

/* Removes what lies beside the season; returns how much that was. All of it must be hidden and no season by name. */
static guint
sweep (const Desk *desk)
{
  g_autoptr (GDir) folder = g_dir_open (desk->folder, 0, NULL);
  const char *name;
  guint n = 0;

  while ((name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *path = g_build_filename (desk->folder, name, NULL);

      if (g_str_equal (name, "a.leafwend"))
        continue;
      g_assert_cmpint (name[0], ==, '.');
      g_assert_false (g_str_has_suffix (name, LW_SEASON_SUFFIX));
      g_assert_cmpint (g_remove (path), ==, 0);
      n++;
    }

  return n;
}

static void
tear_down (Desk         *desk,
           gconstpointer data)
{
  fault_arm (NULL, 0, 0);
  sweep (desk);
  g_assert_cmpint (g_remove (desk->path), ==, 0);
  g_assert_cmpint (g_rmdir (desk->folder), ==, 0);
  lw_season_unref (desk->old);
  lw_season_unref (desk->new);
  g_free (desk->folder);
  g_free (desk->path);
  g_free (desk->old_text);
  g_free (desk->new_text);
}

static gboolean
holds (const Desk *desk,
       const char *text)
{
  g_autofree char *found = NULL;

  g_assert_true (g_file_get_contents (desk->path, &found, NULL, NULL));

  return g_str_equal (found, text);
}

static void
test_errors (Desk         *desk,
             gconstpointer data)
{
  static const char *const calls[] = { "write", "fsync", "fchmod", "rename" };
  static const struct { int code; const char *remedy; } errors[] = {
    { ENOSPC, "Free some space" },
    { EDQUOT, "Free some space" },
    { EROFS, "a disk that can be written to" },
    { EIO, "Save it elsewhere" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (calls); i++)
    for (guint k = 0; k < G_N_ELEMENTS (errors); k++)
      {
        g_autoptr (GError) error = NULL;
        gboolean saved;

        fault_arm (calls[i], 1, errors[k].code);
        saved = lw_document_save (desk->new, desk->path, &error);
        g_assert_cmpuint (fault_calls (), >, 0);
        fault_arm (NULL, 0, 0);
        g_assert_false (saved);
        g_assert_nonnull (strstr (error->message, errors[k].remedy));
        g_assert_nonnull (strstr (error->message, g_strerror (errors[k].code)));
        g_assert_true (holds (desk, desk->old_text));
        g_assert_cmpuint (sweep (desk), ==, 0);
      }

  g_assert_true (lw_document_save (desk->new, desk->path, NULL));
  g_assert_true (holds (desk, desk->new_text));
}

/* Its disk can only be read, which is not the file's own protection. */
static void
test_read_only (Desk         *desk,
                gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fault_arm ("faccessat", 1, EROFS);
  g_assert_false (lw_document_save (desk->new, desk->path, &error));
  g_assert_cmpuint (fault_calls (), ==, 1);
  fault_arm (NULL, 0, 0);
  g_assert_nonnull (strstr (error->message, "a disk that can be written to"));
  g_assert_true (holds (desk, desk->old_text));
}

/* The disk fills up in the midst of a file that is written in small pieces. */
static void
test_midway (Desk         *desk,
             gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fault_arm ("write", 1, FAULT_SHORT);
  g_assert_true (lw_document_save (desk->new, desk->path, &error));
  g_assert_cmpuint (fault_calls (), >, 100);
  g_assert_true (holds (desk, desk->new_text));
}

/* The folder cannot be made sure of: told, and the file is the whole new one. */
static void
test_folder (Desk         *desk,
             gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fault_arm ("fsync", 2, EIO);
  g_assert_false (lw_document_save (desk->new, desk->path, &error));
  fault_arm (NULL, 0, 0);
  g_assert_nonnull (error);
  g_assert_true (holds (desk, desk->new_text));
}

/* At each call in turn, until one save comes through. */
static void
test_killed (Desk         *desk,
             gconstpointer data)
{
  guint with_old = 0, with_new = 0, left_behind = 0;
  int status = -1;

  for (guint nth = 1; status != 0; nth++)
    {
      pid_t child;

      g_assert_true (lw_document_save (desk->old, desk->path, NULL));
      child = fork ();
      g_assert_cmpint (child, >=, 0);
      if (child == 0)
        {
          fault_arm ("any", nth, FAULT_STOP);
          _exit (lw_document_save (desk->new, desk->path, NULL) ? 0 : 1);
        }

      g_assert_cmpint (waitpid (child, &status, WUNTRACED), ==, child);
      g_assert_true (status == 0 || WIFSTOPPED (status));
      if (status != 0)
        {
          g_assert_cmpint (kill (child, SIGKILL), ==, 0);
          g_assert_cmpint (waitpid (child, &status, 0), ==, child);
          g_assert_true (WIFSIGNALED (status));
        }
      if (holds (desk, desk->old_text))
        with_old++;
      else
        with_new++;
      g_assert_true (holds (desk, desk->old_text) || holds (desk, desk->new_text));
      left_behind += sweep (desk);
      g_assert_cmpuint (nth, <, 100);
    }

  g_test_message ("killed: %u times the old file, %u times the new one, %u pieces beside it", with_old, with_new - 1,
                  left_behind);
  g_assert_cmpuint (with_old, >=, 4);
  g_assert_cmpuint (with_new, >=, 2);
}

#define ADD(name, test) g_test_add ("/fault/" name, Desk, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("errors", test_errors);
  ADD ("read-only", test_read_only);
  ADD ("midway", test_midway);
  ADD ("folder", test_folder);
  ADD ("killed", test_killed);

  return g_test_run ();
}

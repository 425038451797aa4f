/* Whether a file was changed by somebody else: the content decides, not the clock. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/stamp.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct
{
  char *folder;
  char *path;
  LwStamp *stamp;
} Desk;

/* In place, without a new file in its stead. */
static void
put (const char *path,
     const char *text)
{
  FILE *file = g_fopen (path, "w");

  g_assert_nonnull (file);
  g_assert_cmpint (fputs (text, file), >=, 0);
  g_assert_cmpint (fclose (file), ==, 0);
}

static void
set_up (Desk         *desk,
        gconstpointer data)
{
  desk->folder = g_dir_make_tmp ("leafwend-stamp-XXXXXX", NULL);
  desk->path = g_build_filename (desk->folder, "a", NULL);
  put (desk->path, "one");
  desk->stamp = lw_stamp_take (desk->path);
  g_assert_nonnull (desk->stamp);
}

static void
tear_down (Desk         *desk,
           gconstpointer data)
{
  g_chmod (desk->path, 0600);
  g_remove (desk->path);
  g_assert_cmpint (g_rmdir (desk->folder), ==, 0);
  g_free (desk->folder);
  g_free (desk->path);
  lw_stamp_free (desk->stamp);
}

/* Gives the file the time it had, so that only its content tells. */
static void
set_time (const char        *path,
          const struct stat *about)
{
  const struct timespec times[] = { about->st_atim, about->st_mtim };

  g_assert_cmpint (utimensat (AT_FDCWD, path, times, 0), ==, 0);
}

static void
test_untouched (Desk         *desk,
                gconstpointer data)
{
  g_autoptr (LwStamp) of_bytes = lw_stamp_new ("one", 3), of_others = lw_stamp_new ("two", 3);

  for (int thorough = 0; thorough < 2; thorough++)
    {
      g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, thorough), ==, LW_DISK_SAME);
      g_assert_cmpint (lw_stamp_check (of_bytes, desk->path, thorough), ==, LW_DISK_SAME);
      g_assert_cmpint (lw_stamp_check (of_others, desk->path, thorough), ==, LW_DISK_CHANGED);
    }
}

static void
test_changed (Desk         *desk,
              gconstpointer data)
{
  put (desk->path, "one and a half");
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, FALSE), ==, LW_DISK_CHANGED);
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, FALSE), ==, LW_DISK_CHANGED);
  put (desk->path, "one");
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, FALSE), ==, LW_DISK_SAME);
}

/* As long as before and, by the clock, as old. */
static void
test_hidden (Desk         *desk,
             gconstpointer data)
{
  struct stat about;

  g_assert_cmpint (stat (desk->path, &about), ==, 0);
  put (desk->path, "two");
  set_time (desk->path, &about);
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, TRUE), ==, LW_DISK_CHANGED);
}

static void
test_touched (Desk         *desk,
              gconstpointer data)
{
  struct stat about;

  g_assert_cmpint (stat (desk->path, &about), ==, 0);
  about.st_mtim.tv_sec += 100;
  set_time (desk->path, &about);
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, FALSE), ==, LW_DISK_SAME);
}

static void
test_replaced (Desk         *desk,
               gconstpointer data)
{
  g_autofree char *beside = g_build_filename (desk->folder, "b", NULL);

  put (beside, "one");
  g_assert_cmpint (g_rename (beside, desk->path), ==, 0);
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, FALSE), ==, LW_DISK_SAME);
  put (beside, "two");
  g_assert_cmpint (g_rename (beside, desk->path), ==, 0);
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, FALSE), ==, LW_DISK_CHANGED);
}

static void
test_gone (Desk         *desk,
           gconstpointer data)
{
  g_autofree char *below = g_build_filename (desk->path, "c", NULL);

  g_assert_cmpint (lw_stamp_check (desk->stamp, below, FALSE), ==, LW_DISK_GONE);
  g_assert_cmpint (g_remove (desk->path), ==, 0);
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, FALSE), ==, LW_DISK_GONE);
  g_assert_null (lw_stamp_take (desk->path));
  g_assert_cmpint (g_mkdir (desk->path, 0700), ==, 0);
  g_assert_cmpint (lw_stamp_check (desk->stamp, desk->path, FALSE), ==, LW_DISK_CHANGED);
}

#define ADD(name, test) g_test_add ("/stamp/" name, Desk, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("untouched", test_untouched);
  ADD ("changed", test_changed);
  ADD ("hidden", test_hidden);
  ADD ("touched", test_touched);
  ADD ("replaced", test_replaced);
  ADD ("gone", test_gone);

  return g_test_run ();
}

/* Seasons with the weather, leaves and steps of the demo. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "many.h"

#include <glib/gstdio.h>
#include <sys/stat.h>

#include "season/shipped.h"

#define FIRST_DAY_S G_GINT64_CONSTANT (1577836800) /* 2020-01-01 */

static LwSeason *
season_new (const LwSeason *demo,
            guint           file,
            guint           batches)
{
  LwSeason *season = lw_season_copy (demo);

  while (season->n_batches > 0)
    lw_season_remove_batch (season, season->n_batches - 1);
  for (guint k = 0; k < batches; k++)
    {
      LwBatch *batch = lw_batch_copy (demo->batches[(file + k) % demo->n_batches]);
      LwStep *first = &batch->steps[0];
      double minutes = lw_step_get (first, LW_SET_MINUTES);

      g_free (batch->name);
      batch->name = g_strdup_printf ("%u-%u", file, k);
      batch->when_s = FIRST_DAY_S + (gint64) file * 86400 + k * 3600;
      lw_step_set (first, LW_SET_MINUTES, minutes + (file * 10 + k) % 300);
      lw_season_insert_batch (season, k, batch);
    }

  return season;
}

void
many_write (const char *folder,
            guint       files,
            guint       batches)
{
  g_autofree char *path = lw_shipped_path ("ondry-ridge-2026" LW_SEASON_SUFFIX);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) demo = lw_document_load (path, problems);

  g_assert_nonnull (demo);
  for (guint file = 0; file < files; file++)
    {
      g_autoptr (LwSeason) season = season_new (demo, file, batches);
      g_autofree char *name = g_strdup_printf ("%s/f%04u" LW_SEASON_SUFFIX, folder, file);
      g_autofree char *text = NULL;
      gsize length;

      text = lw_document_write (season, &length);
      g_assert_true (g_file_set_contents_full (name, text, (gssize) length, G_FILE_SET_CONTENTS_CONSISTENT, 0600, NULL));
    }
}

void
many_remove (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  struct stat about;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);

      if (lstat (path, &about) == 0 && S_ISDIR (about.st_mode))
        many_remove (path);
      else
        g_remove (path);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

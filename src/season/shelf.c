/* Listing and reading. A folder or file is known by its place on the disk, so that loops of links end. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/shelf.h"

#include <errno.h>
#include <string.h>
#include <sys/stat.h>

#include "season/document.h"
#include "season/text.h"

typedef struct
{
  GPtrArray *found;
  GHashTable *seen; /* "device:inode" */
  GCancellable *cancel;
} Walk;

static void
shelved_clear (LwShelved *shelved)
{
  g_free (shelved->path);
  g_clear_pointer (&shelved->heads, g_ptr_array_unref);
  g_clear_pointer (&shelved->problems, g_ptr_array_unref);
}

LwShelved *
lw_shelved_ref (LwShelved *shelved)
{
  return g_atomic_rc_box_acquire (shelved);
}

void
lw_shelved_unref (LwShelved *shelved)
{
  g_atomic_rc_box_release_full (shelved, (GDestroyNotify) shelved_clear);
}

static LwShelved *
shelved_new (const char        *path,
             const struct stat *about)
{
  LwShelved *shelved = g_atomic_rc_box_new0 (LwShelved);

  shelved->path = g_strdup (path);
  if (about != NULL)
    {
      shelved->device = about->st_dev;
      shelved->inode = about->st_ino;
      shelved->size = (guint64) about->st_size;
      shelved->changed_ns = about->st_mtim.tv_sec * G_GINT64_CONSTANT (1000000000) + about->st_mtim.tv_nsec;
    }

  return shelved;
}

gboolean
lw_shelved_same (const LwShelved *listed,
                 const LwShelved *read)
{
  return listed->device == read->device && listed->inode == read->inode && listed->size == read->size
         && listed->changed_ns == read->changed_ns && g_str_equal (listed->path, read->path);
}

static void
add_trouble (Walk       *walk,
             const char *path,
             const char *remedy,
             const char *what)
{
  LwShelved *shelved = shelved_new (path, NULL);

  shelved->problems = lw_problems_new ();
  /* What the system says ends in no point. */
  lw_problems_add (shelved->problems, 0, remedy, g_str_has_suffix (what, ".") ? "%s" : "%s.", what);
  g_ptr_array_add (walk->found, shelved);
}

/* FALSE if links have led here before. */
static gboolean
is_new (Walk              *walk,
        const struct stat *about)
{
  return g_hash_table_add (walk->seen, g_strdup_printf ("%" G_GUINT64_FORMAT ":%" G_GUINT64_FORMAT,
                                                        (guint64) about->st_dev, (guint64) about->st_ino));
}

static void walk_folder (Walk *walk, const char *folder, guint depth);

static void
walk_entry (Walk       *walk,
            const char *path,
            guint       depth)
{
  gboolean named = g_str_has_suffix (path, LW_SEASON_SUFFIX);
  struct stat about;

  if (stat (path, &about) < 0)
    {
      if (named)
        add_trouble (walk, path, _ ("Check where the link leads."), g_strerror (errno));
    }
  else if (S_ISDIR (about.st_mode))
    {
      if (is_new (walk, &about))
        walk_folder (walk, path, depth + 1);
    }
  else if (named && is_new (walk, &about))
    {
      g_ptr_array_add (walk->found, shelved_new (path, &about));
    }
}

static int
by_name (gconstpointer a,
         gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

static void
walk_folder (Walk       *walk,
             const char *folder,
             guint       depth)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) links = g_ptr_array_new_with_free_func (g_free);
  const char *name;

  if (dir == NULL)
    {
      add_trouble (walk, folder, _ ("Choose another folder, or ask its owner to let you read it."), error->message);
      return;
    }
  if (depth > LW_SHELF_DEPTH)
    {
      add_trouble (walk, folder, _ ("Choose this folder itself."), _ ("The folder lies too deep to be looked into."));
      return;
    }

  while ((name = g_dir_read_name (dir)) != NULL)
    if (name[0] != '.')
      {
        char *path = g_build_filename (folder, name, NULL);

        g_ptr_array_add (g_file_test (path, G_FILE_TEST_IS_SYMLINK) ? links : names, path);
      }

  /* What goes by a link here has its own name if it is here, too. */
  g_ptr_array_sort (names, by_name);
  g_ptr_array_sort (links, by_name);
  g_ptr_array_extend_and_steal (names, g_steal_pointer (&links));
  for (guint i = 0; i < names->len; i++)
    {
      if (g_cancellable_is_cancelled (walk->cancel))
        return;
      if (walk->found->len >= LW_SHELF_FILES)
        {
          add_trouble (walk, folder, _ ("Choose a folder in it."), _ ("There are more files than can be listed."));
          return;
        }
      walk_entry (walk, g_ptr_array_index (names, i), depth);
    }
}

GPtrArray *
lw_shelf_list (const char   *folder,
               GCancellable *cancel)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Walk walk = { g_ptr_array_new_with_free_func ((GDestroyNotify) lw_shelved_unref), seen, cancel };
  struct stat about;

  if (stat (folder, &about) == 0)
    is_new (&walk, &about);
  walk_folder (&walk, folder, 0);

  return walk.found;
}

void
lw_shelf_read (LwShelved *shelved)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_load (shelved->path, problems);

  if (season == NULL)
    {
      shelved->problems = g_steal_pointer (&problems);
      return;
    }

  shelved->heads = lw_heads_new (season);
}

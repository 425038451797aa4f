/* Lists the folder in one thread, then reads what is new or has changed in two, some files at a time. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/finder-private.h"

#include "season/shelf.h"

#define FILES_A_JOB 12
#define READERS 2

static void read_next (LwFinder *self);

/* Takes a file whose heads or problems are known. */
static void
take (LwFinder  *self,
      LwShelved *file)
{
  self->n_read++;
  if (file->heads != NULL)
    lw_finder_add_heads (self, file->heads, file->path);
  else
    self->n_broken++;
  if (file->inode != 0)
    g_hash_table_replace (self->kept, file->path, lw_shelved_ref (file));
}

static void
read_work (GTask        *task,
           gpointer      source,
           gpointer      data,
           GCancellable *cancel)
{
  GPtrArray *files = data;

  for (guint i = 0; i < files->len && !g_cancellable_is_cancelled (cancel); i++)
    lw_shelf_read (g_ptr_array_index (files, i));
  g_task_return_boolean (task, TRUE);
}

static void
read_cb (GObject      *object,
         GAsyncResult *result,
         gpointer      data)
{
  LwFinder *self = LW_FINDER (object);
  GPtrArray *files = g_task_get_task_data (G_TASK (result));

  if (!g_task_propagate_boolean (G_TASK (result), NULL))
    return;

  for (guint i = 0; i < files->len; i++)
    take (self, g_ptr_array_index (files, i));
  lw_finder_turned (self);
  read_next (self);
}

static void
read_next (LwFinder *self)
{
  g_autoptr (GPtrArray) files = NULL;
  g_autoptr (GTask) task = NULL;

  files = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_shelved_unref);
  for (; self->next_file < self->files->len && files->len < FILES_A_JOB; self->next_file++)
    {
      LwShelved *file = g_ptr_array_index (self->files, self->next_file);

      if (file->heads == NULL && file->problems == NULL)
        g_ptr_array_add (files, lw_shelved_ref (file));
    }
  if (files->len == 0)
    return;

  task = g_task_new (self, self->cancel, read_cb, NULL);
  g_task_set_task_data (task, g_ptr_array_ref (files), (GDestroyNotify) g_ptr_array_unref);
  g_task_run_in_thread (task, read_work);
}

/* Whether the listing found just the files that have been read. */
static gboolean
same_as_before (LwFinder        *self,
                const GPtrArray *listed)
{
  if (listed->len != self->files->len || self->n_read != listed->len)
    return FALSE;
  for (guint i = 0; i < listed->len; i++)
    {
      const LwShelved *before = g_ptr_array_index (self->files, i), *now = g_ptr_array_index (listed, i);

      if (!lw_shelved_same (now, before) || (now->problems != NULL) > (before->problems != NULL))
        return FALSE;
    }

  return TRUE;
}

static void
take_list (LwFinder  *self,
           GPtrArray *listed)
{
  lw_finder_clear (self);
  g_ptr_array_set_size (self->files, 0);
  self->n_read = self->n_broken = self->next_file = 0;

  for (guint i = 0; i < listed->len; i++)
    {
      LwShelved *file = g_ptr_array_index (listed, i), *kept = g_hash_table_lookup (self->kept, file->path);

      if (kept != NULL && lw_shelved_same (file, kept))
        file = kept;
      g_ptr_array_add (self->files, lw_shelved_ref (file));
      if (file->heads != NULL || file->problems != NULL)
        take (self, file);
    }
  for (guint i = 0; i < READERS; i++)
    read_next (self);
}

static void
list_work (GTask        *task,
           gpointer      source,
           gpointer      folder,
           GCancellable *cancel)
{
  g_task_return_pointer (task, lw_shelf_list (folder, cancel), (GDestroyNotify) g_ptr_array_unref);
}

static void
list_cb (GObject      *object,
         GAsyncResult *result,
         gpointer      data)
{
  LwFinder *self = LW_FINDER (object);
  g_autoptr (GPtrArray) listed = g_task_propagate_pointer (G_TASK (result), NULL);

  if (listed == NULL)
    return;

  self->listing = FALSE;
  if (!same_as_before (self, listed))
    take_list (self, listed);
  lw_finder_turned (self);
}

void
lw_finder_folder (LwFinder   *self,
                  const char *folder)
{
  gboolean same = g_strcmp0 (folder, self->folder) == 0;
  g_autofree char *kept = g_strdup (folder);
  g_autoptr (GTask) task = NULL;

  lw_finder_leave (self);
  if (!same)
    {
      g_ptr_array_set_size (self->files, 0);
      self->n_read = self->n_broken = 0;
      g_clear_pointer (&self->season, lw_season_unref);
      lw_finder_clear (self);
    }
  g_free (self->folder);
  self->folder = g_steal_pointer (&kept);
  self->cancel = g_cancellable_new ();
  self->listing = TRUE;
  task = g_task_new (self, self->cancel, list_cb, NULL);
  g_task_set_task_data (task, g_strdup (folder), g_free);
  g_task_run_in_thread (task, list_work);
  lw_finder_remember (self);
  lw_finder_turned (self);
}

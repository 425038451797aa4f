/* Watches other seasons' files. A file that is gone or unsound leaves what lies over as it was read. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/over-watch.h"

#include "bench/disk-watch.h"
#include "season/document.h"
#include "season/same-file.h"
#include "season/text.h"

typedef struct
{
  LwOverWatch *owner; /* not owned */
  char *path;
  LwDiskWatch *disk;
} Watched;

struct _LwOverWatch
{
  GObject parent_instance;

  LwOverlays *overlays; /* NULL once it is disposed of */
  GPtrArray *files;     /* Watched, as long as it lives */
};

G_DEFINE_FINAL_TYPE (LwOverWatch, lw_over_watch, G_TYPE_OBJECT)

static guint said_signal;

static void
watched_free (Watched *watched)
{
  lw_disk_watch_free (watched->disk);
  g_free (watched->path);
  g_free (watched);
}

static gboolean
lies_over (LwOverWatch *self,
           const char  *path)
{
  for (guint i = 0; self->overlays != NULL && i < lw_overlays_n (self->overlays); i++)
    if (lw_same_file (lw_overlays_nth (self->overlays, i)->path, path))
      return TRUE;

  return FALSE;
}

/* `words` has one place for the file's name. */
static void
say (LwOverWatch *self,
     const char  *words,
     const char  *path)
{
  g_autofree char *base = g_path_get_basename (path), *name = g_filename_display_name (base);
  GString *all = g_string_new (words);

  g_string_replace (all, "%s", name, 1);
  g_signal_emit (self, said_signal, 0, all->str);
  g_string_free (all, TRUE);
}

static void
load (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();

  g_task_return_pointer (task, lw_document_load (data, problems), (GDestroyNotify) lw_season_unref);
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  LwOverWatch *self = LW_OVER_WATCH (source);
  g_autoptr (LwSeason) season = g_task_propagate_pointer (G_TASK (result), NULL);
  const char *path = g_task_get_task_data (G_TASK (result));

  if (!lies_over (self, path))
    return;

  if (season == NULL)
    say (self, _ ("%s was changed and cannot be read now: what lies over of it is as it was."), path);
  else if (lw_overlays_read_anew (self->overlays, season, path) > 0)
    say (self, _ ("%s was changed: what lies over is as it is there now; what is not there any more, as it was."), path);
  else
    say (self, _ ("%s was changed: what lies over of it is as it is there now."), path);
}

static void
turned_cb (LwDisk   disk,
           gpointer data)
{
  Watched *watched = data;
  LwOverWatch *self = watched->owner;
  g_autoptr (GTask) task = NULL;
  LwStamp *stamp;

  if (disk == LW_DISK_GONE && lies_over (self, watched->path))
    say (self, _ ("%s is gone: what lies over of it is as it was."), watched->path);
  if (disk != LW_DISK_CHANGED)
    return;

  /* Before it is read: what changes from now on is another change. */
  stamp = lw_stamp_take (watched->path);
  lw_disk_watch_set (watched->disk, watched->path, stamp != NULL ? stamp : lw_stamp_new ("", 0));
  task = g_task_new (self, NULL, loaded_cb, NULL);
  g_task_set_task_data (task, g_strdup (watched->path), g_free);
  g_task_run_in_thread (task, load);
}

void
lw_over_watch_file (LwOverWatch *self,
                    const char  *path)
{
  Watched *watched;

  for (guint i = 0; i < self->files->len; i++)
    if (lw_same_file (((Watched *) self->files->pdata[i])->path, path))
      return;

  watched = g_new0 (Watched, 1);
  watched->owner = self;
  watched->path = g_strdup (path);
  watched->disk = lw_disk_watch_new (turned_cb, watched);
  lw_disk_watch_set (watched->disk, path, lw_stamp_take (path));
  g_ptr_array_add (self->files, watched);
}

static void
lw_over_watch_dispose (GObject *object)
{
  LwOverWatch *self = LW_OVER_WATCH (object);

  g_ptr_array_set_size (self->files, 0);
  g_clear_object (&self->overlays);

  G_OBJECT_CLASS (lw_over_watch_parent_class)->dispose (object);
}

static void
lw_over_watch_finalize (GObject *object)
{
  g_ptr_array_unref (LW_OVER_WATCH (object)->files);

  G_OBJECT_CLASS (lw_over_watch_parent_class)->finalize (object);
}

static void
lw_over_watch_class_init (LwOverWatchClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lw_over_watch_dispose;
  G_OBJECT_CLASS (klass)->finalize = lw_over_watch_finalize;
  said_signal = g_signal_new ("said", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                              G_TYPE_STRING);
}

static void
lw_over_watch_init (LwOverWatch *self)
{
  self->files = g_ptr_array_new_with_free_func ((GDestroyNotify) watched_free);
}

LwOverWatch *
lw_over_watch_new (LwOverlays *overlays)
{
  LwOverWatch *self = g_object_new (LW_TYPE_OVER_WATCH, NULL);

  self->overlays = g_object_ref (overlays);

  return self;
}

/* The folder's events only say when to look; what is found decides. Events may be missed, as on a network's disk:
 * the window looks, too, when it is taken up again and before it saves. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/disk-watch.h"

#include <stdlib.h>

#define QUIET_MS 250 /* a program that writes in pieces is left to finish */

struct _LwDiskWatch
{
  LwDiskTurned turned;
  gpointer data;
  char *path;            /* (nullable) */
  LwStamp *stamp;        /* (nullable) */
  LwDisk disk;           /* as told last */
  GFileMonitor *monitor; /* (nullable) */
  guint look;            /* source, 0: none */
};

LwDiskWatch *
lw_disk_watch_new (LwDiskTurned turned,
                   gpointer     data)
{
  LwDiskWatch *watch = g_new0 (LwDiskWatch, 1);

  watch->turned = turned;
  watch->data = data;

  return watch;
}

static void
stop (LwDiskWatch *watch)
{
  if (watch->monitor != NULL)
    {
      g_signal_handlers_disconnect_by_data (watch->monitor, watch);
      g_file_monitor_cancel (watch->monitor);
    }
  g_clear_object (&watch->monitor);
  g_clear_handle_id (&watch->look, g_source_remove);
}

void
lw_disk_watch_free (LwDiskWatch *watch)
{
  stop (watch);
  g_clear_pointer (&watch->stamp, lw_stamp_free);
  g_free (watch->path);
  g_free (watch);
}

static gboolean
look_cb (gpointer data)
{
  LwDiskWatch *watch = data;

  watch->look = 0;
  lw_disk_watch_check (watch, FALSE);

  return G_SOURCE_REMOVE;
}

static void
event_cb (LwDiskWatch *watch)
{
  g_clear_handle_id (&watch->look, g_source_remove);
  watch->look = g_timeout_add (QUIET_MS, look_cb, watch);
}

void
lw_disk_watch_set (LwDiskWatch *watch,
                   const char  *path,
                   LwStamp     *stamp)
{
  /* Not by g_free: realpath's memory is libc's. */
  char *end = path != NULL ? realpath (path, NULL) : NULL;
  g_autoptr (GFile) file = path != NULL ? g_file_new_for_path (end != NULL ? end : path) : NULL;
  g_autofree char *kept = g_strdup (path);

  free (end);
  stop (watch);
  g_free (watch->path);
  g_clear_pointer (&watch->stamp, lw_stamp_free);
  watch->path = g_steal_pointer (&kept);
  watch->stamp = stamp;
  watch->disk = LW_DISK_SAME;
  if (file != NULL)
    watch->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (watch->monitor != NULL)
    g_signal_connect_swapped (watch->monitor, "changed", G_CALLBACK (event_cb), watch);
}

LwDisk
lw_disk_watch_check (LwDiskWatch *watch,
                     gboolean     thorough)
{
  LwDisk disk;

  if (watch->path == NULL || watch->stamp == NULL)
    return LW_DISK_SAME;

  disk = lw_stamp_check (watch->stamp, watch->path, thorough);
  if (disk != watch->disk)
    {
      watch->disk = disk;
      watch->turned (disk, watch->data);
    }

  return disk;
}

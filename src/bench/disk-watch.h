/* Watches the file of the open season, so that nobody's changes are lost: whether it still holds what was last read
 * or written here. Knows no widget. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "season/stamp.h"

typedef struct _LwDiskWatch LwDiskWatch;

/* Called in the main loop when the file has come to stand otherwise than before. */
typedef void (*LwDiskTurned) (LwDisk   disk,
                              gpointer data);

LwDiskWatch *lw_disk_watch_new   (LwDiskTurned turned,
                                  gpointer     data);
void         lw_disk_watch_free  (LwDiskWatch *watch);

/* Watches `path` from now on, which held what `stamp` (transfer full, nullable: nobody knows) says. NULL: no file. */
void         lw_disk_watch_set   (LwDiskWatch *watch,
                                  const char  *path,
                                  LwStamp     *stamp);

/* Looks at once, and tells if it has turned. As lw_stamp_check; without a file LW_DISK_SAME. */
LwDisk       lw_disk_watch_check (LwDiskWatch *watch,
                                  gboolean     thorough);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwDiskWatch, lw_disk_watch_free)

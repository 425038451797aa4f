/* What a file held when it was last read or written here, to see whether somebody else has changed it since. The
 * content decides: a file that was only touched, or put in its place anew with the same bytes, is the same. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

typedef enum
{
  LW_DISK_SAME,
  LW_DISK_CHANGED, /* or what is there cannot be read */
  LW_DISK_GONE,
} LwDisk;

typedef struct _LwStamp LwStamp;

/* The stamp of a file that holds these bytes. */
LwStamp *lw_stamp_new   (const char *data,
                         gsize       length);
/* The stamp of the file as it is now; NULL if it cannot be read. */
LwStamp *lw_stamp_take  (const char *path);
void     lw_stamp_free  (LwStamp    *stamp);

/* How the file stands to the stamp. Size, time and place on the disk that were seen with the same content before are
 * taken for the same again, unless it is to be `thorough`: before the file is overwritten. */
LwDisk   lw_stamp_check (LwStamp    *stamp,
                         const char *path,
                         gboolean    thorough);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (LwStamp, lw_stamp_free)

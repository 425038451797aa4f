/* A digest of the content, and beside it what the file system said when the content was last found to be that. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/stamp.h"

#include <errno.h>
#include <sys/stat.h>

#include "season/document.h"

struct _LwStamp
{
  char *digest;
  gboolean seen; /* `about` is of a file with this content */
  struct stat about;
};

LwStamp *
lw_stamp_new (const char *data,
              gsize       length)
{
  LwStamp *stamp = g_new0 (LwStamp, 1);

  stamp->digest = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) data, length);

  return stamp;
}

void
lw_stamp_free (LwStamp *stamp)
{
  g_free (stamp->digest);
  g_free (stamp);
}

/* (transfer full) (nullable) `about` is taken first: a change that comes between then shows at the next look. */
static char *
digest_of (const char  *path,
           struct stat *about)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (GByteArray) bytes = NULL;

  if (stat (path, about) < 0)
    return NULL;

  bytes = lw_document_bytes (path, problems);

  return bytes != NULL ? g_compute_checksum_for_data (G_CHECKSUM_SHA256, bytes->data, bytes->len) : NULL;
}

LwStamp *
lw_stamp_take (const char *path)
{
  struct stat about;
  char *digest = digest_of (path, &about);
  LwStamp *stamp;

  if (digest == NULL)
    return NULL;

  stamp = g_new0 (LwStamp, 1);
  *stamp = (LwStamp) { .digest = digest, .seen = TRUE, .about = about };

  return stamp;
}

static gboolean
same_file (const struct stat *a,
           const struct stat *b)
{
  return a->st_dev == b->st_dev && a->st_ino == b->st_ino && a->st_size == b->st_size
         && a->st_mtim.tv_sec == b->st_mtim.tv_sec && a->st_mtim.tv_nsec == b->st_mtim.tv_nsec;
}

LwDisk
lw_stamp_check (LwStamp    *stamp,
                const char *path,
                gboolean    thorough)
{
  g_autofree char *digest = NULL;
  struct stat about;

  if (stat (path, &about) < 0)
    return errno == ENOENT || errno == ENOTDIR ? LW_DISK_GONE : LW_DISK_CHANGED;
  if (!thorough && stamp->seen && same_file (&about, &stamp->about))
    return LW_DISK_SAME;

  digest = digest_of (path, &about);
  stamp->seen = g_strcmp0 (digest, stamp->digest) == 0;
  stamp->about = about;

  return stamp->seen ? LW_DISK_SAME : LW_DISK_CHANGED;
}

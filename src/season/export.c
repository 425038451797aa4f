/* Nothing that a maker has is replaced by what can be made anew. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/export.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>

#include "season/document.h"
#include "season/text.h"

#define HEAD_BYTES 4096

/* Whether there is a season's file, sound or not: its namespace is near the beginning. */
static gboolean
is_season (const char *path)
{
  FILE *file = fopen (path, "rb");
  char head[HEAD_BYTES];
  gsize n = file != NULL ? fread (head, 1, sizeof head, file) : 0;

  if (file != NULL)
    fclose (file);

  return g_strstr_len (head, (gssize) n, LW_SEASON_NS) != NULL;
}

/* Into a device or a pipe, which a new file would replace. */
static gboolean
pour (const char *path,
      const char *data,
      gsize       length,
      GError    **error)
{
  FILE *file = fopen (path, "wb");
  gboolean written = file != NULL && fwrite (data, 1, length, file) == length;
  int code = errno;

  if (file != NULL && fclose (file) != 0 && written)
    {
      code = errno;
      written = FALSE;
    }
  if (!written)
    g_set_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (code), _ ("%s could not be written: %s"), path,
                 g_strerror (code));

  return written;
}

gboolean
lw_export_save (const char *path,
                const char *data,
                gsize       length,
                GError    **error)
{
  g_autoptr (GError) trouble = NULL;
  struct stat about;
  gboolean there = stat (path, &about) == 0;
  char *end = there ? realpath (path, NULL) : NULL;
  g_autofree char *target = g_strdup (end != NULL ? end : path);

  free (end); /* realpath's memory is libc's */
  if (there && !S_ISREG (about.st_mode) && !S_ISDIR (about.st_mode))
    return pour (target, data, length, error);

  if (there && is_season (target))
    {
      g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_EXIST,
                   _ ("%s is a season's file, which would be lost: name another file"), path);
      return FALSE;
    }
  if (g_file_set_contents_full (target, data, (gssize) length, G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                0666, &trouble))
    return TRUE;

  g_set_error (error, trouble->domain, trouble->code, _ ("%s could not be written: %s"), path, trouble->message);

  return FALSE;
}

/* No season is replaced by what can be made anew. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/export.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "season/document.h"
#include "season/replace.h"
#include "season/text.h"

#define PIECE_BYTES 65536

/* Whether it is a season's file, sound or not: it holds its namespace. */
static gboolean
is_season (const char *path)
{
  const gsize overlap = strlen (LW_SEASON_NS) - 1;
  FILE *file = fopen (path, "rb");
  g_autofree char *piece = g_malloc (PIECE_BYTES);
  gsize n = 0, more = 0, all = 0;
  gboolean found = FALSE;

  while (file != NULL && !found && all < LW_MAX_FILE_BYTES
         && (more = fread (piece + n, 1, PIECE_BYTES - n, file)) > 0)
    {
      n += more;
      all += more;
      found = g_strstr_len (piece, (gssize) n, LW_SEASON_NS) != NULL;
      if (n > overlap)
        {
          memmove (piece, piece + n - overlap, overlap);
          n = overlap;
        }
    }
  if (file != NULL)
    fclose (file);

  return found;
}

/* Always FALSE, to be returned. */
static gboolean
fail (GError    **error,
      const char *path,
      int         code)
{
  g_set_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (code), _ ("%s could not be written: %s"), path,
               g_strerror (code));

  return FALSE;
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

  return written || fail (error, path, code);
}

gboolean
lw_export_save (const char *path,
                const char *data,
                gsize       length,
                GError    **error)
{
  struct stat about;
  gboolean there = stat (path, &about) == 0;

  if (there && !S_ISREG (about.st_mode) && !S_ISDIR (about.st_mode))
    return pour (path, data, length, error);

  /* What cannot be looked into may be one. */
  if (there && S_ISREG (about.st_mode) && access (path, R_OK) < 0)
    return fail (error, path, errno);
  if (there && S_ISREG (about.st_mode) && is_season (path))
    {
      g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_EXIST,
                   _ ("%s is a season's file, which would be lost: name another file"), path);
      return FALSE;
    }

  return lw_replace_file (path, data, length, error);
}

/* Loading a document from a file. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/document.h"

#include <errno.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "season/text.h"

static void
tell (GPtrArray *problems,
      int        error)
{
  const char *remedy = error == ENOENT   ? _ ("Check the name, or open another file.")
                       : error == EACCES ? _ ("Ask its owner to let you read it, or open a copy.")
                                         : _ ("Open another file, or the last good copy.");

  lw_problems_add (problems, 0, remedy, _ ("The file cannot be read: %s."), g_strerror (error));
}

/* Opens `path` if it is a plain file: a pipe or a device could hold the program up for ever. */
static int
open_plain (const char *path,
            GPtrArray  *problems)
{
  int fd = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
  struct stat about;

  if (fd < 0 || fstat (fd, &about) < 0)
    {
      tell (problems, errno);
    }
  else if (!S_ISREG (about.st_mode))
    {
      lw_problems_add (problems, 0, _ ("Open another file."),
                       S_ISDIR (about.st_mode) ? _ ("This is a folder, not a file.")
                                               : _ ("This is a device, not a file."));
    }
  else
    {
      return fd;
    }

  if (fd >= 0)
    close (fd);

  return -1;
}

/* At most one byte more than may be: that is enough for the reader to see that it is too large. */
static GByteArray *
read_all (int        fd,
          GPtrArray *problems)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  guint8 part[65536];
  gssize n;

  while (bytes->len <= LW_MAX_FILE_BYTES)
    {
      n = read (fd, part, sizeof part);
      if (n > 0)
        g_byte_array_append (bytes, part, (guint) n);
      else if (n == 0)
        break;
      else if (errno != EINTR)
        {
          tell (problems, errno);
          return NULL;
        }
    }

  return g_steal_pointer (&bytes);
}

GByteArray *
lw_document_bytes (const char *path,
                   GPtrArray  *problems)
{
  int fd = open_plain (path, problems);
  GByteArray *bytes = NULL;

  if (fd < 0)
    return NULL;

  bytes = read_all (fd, problems);
  close (fd);

  return bytes;
}

LwSeason *
lw_document_load (const char *path,
                  GPtrArray  *problems)
{
  g_autoptr (GByteArray) bytes = lw_document_bytes (path, problems);

  return bytes != NULL ? lw_document_read ((const char *) bytes->data, bytes->len, problems) : NULL;
}

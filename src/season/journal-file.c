/* Appending to a file so that nothing that was told to be there is ever lost. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/journal-file.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "season/text.h"

#define FOLDER "leafwend", "running"
#define SUFFIX ".journal"
#define MOST_BYTES (256 * 1024 * 1024) /* more was written by no maker */

struct _LwJournalFile
{
  char *path;
  int fd;
};

char *
lw_journal_file_path (const char *folder,
                      const char *path)
{
  g_autofree char *whole = g_canonicalize_filename (path, NULL);
  g_autofree char *sum = g_compute_checksum_for_string (G_CHECKSUM_SHA256, whole, -1);
  g_autofree char *name = g_strconcat (sum, SUFFIX, NULL);

  return folder != NULL ? g_build_filename (folder, name, NULL)
                        : g_build_filename (g_get_user_data_dir (), FOLDER, name, NULL);
}

/* Always FALSE, to be returned. */
static gboolean
fail (GError    **error,
      const char *path,
      int         code)
{
  g_autofree char *folder = g_path_get_dirname (path), *shown = g_filename_display_name (folder);

  if (code == EWOULDBLOCK)
    g_set_error_literal (error, G_FILE_ERROR, G_FILE_ERROR_AGAIN,
                         _ ("Another window has the running batch of this season. Go on there, or close it."));
  else if (code == ENOSPC || code == EDQUOT)
    g_set_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (code),
                 _ ("The disk is full: the journal in “%s” could not be written. Free some space."), shown);
  else
    g_set_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (code),
                 _ ("The journal in “%s” could not be written: %s. Make that a folder that you may write to."), shown,
                 g_strerror (code));

  return FALSE;
}

static gboolean
sync_folder_of (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  gboolean synced = fd >= 0 && (fsync (fd) == 0 || errno == EINVAL);

  if (fd >= 0)
    close (fd);

  return synced;
}

LwJournalFile *
lw_journal_file_open (const char *journal,
                      GError    **error)
{
  g_autofree char *folder = g_path_get_dirname (journal);
  LwJournalFile *self;
  int fd = -1, code;

  if (g_mkdir_with_parents (folder, 0700) == 0)
    fd = open (journal, O_RDWR | O_CREAT | O_APPEND | O_CLOEXEC | O_NOFOLLOW, 0600);
  code = errno;
  if (fd >= 0 && (flock (fd, LOCK_EX | LOCK_NB) < 0 || !sync_folder_of (journal)))
    {
      code = errno;
      close (fd);
      fd = -1;
    }
  if (fd < 0)
    {
      fail (error, journal, code);
      return NULL;
    }

  self = g_new (LwJournalFile, 1);
  *self = (LwJournalFile) { g_strdup (journal), fd };

  return self;
}

void
lw_journal_file_close (LwJournalFile *self)
{
  close (self->fd);
  g_free (self->path);
  g_free (self);
}

char *
lw_journal_file_load (LwJournalFile *self,
                      gsize         *length,
                      GError       **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  char part[65536];

  while (text->len < MOST_BYTES)
    {
      ssize_t n = pread (self->fd, part, sizeof part, (off_t) text->len);

      if (n > 0)
        g_string_append_len (text, part, n);
      else if (n == 0)
        break;
      else if (errno != EINTR)
        {
          fail (error, self->path, errno);
          return NULL;
        }
    }

  *length = text->len;

  return g_string_free (g_steal_pointer (&text), FALSE);
}

static gboolean
write_all (int         fd,
           const char *data,
           gsize       length)
{
  while (length > 0)
    {
      ssize_t n = write (fd, data, length);

      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        return FALSE;

      data += n;
      length -= (gsize) n;
    }

  return TRUE;
}

gboolean
lw_journal_file_add (LwJournalFile *self,
                     const char    *line,
                     GError       **error)
{
  struct stat before;
  int code;

  if (fstat (self->fd, &before) < 0)
    return fail (error, self->path, errno);
  /* Somebody took it away: what is written now would be nowhere. */
  if (before.st_nlink == 0)
    return fail (error, self->path, ENOENT);
  if (write_all (self->fd, line, strlen (line)) && fsync (self->fd) == 0)
    return TRUE;

  code = errno;
  /* What is left of it would be passed over, but takes the room that is short. */
  if (ftruncate (self->fd, before.st_size) < 0)
    code = errno;

  return fail (error, self->path, code);
}

void
lw_journal_file_remove (LwJournalFile *self)
{
  unlink (self->path);
  sync_folder_of (self->path);
  lw_journal_file_close (self);
}

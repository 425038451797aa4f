/* Appending to a file so that nothing that was told to be there is ever lost. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/journal-file.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "season/text.h"
#include "season/write-all.h"

#define FOLDER "leafwend", "running"
#define SUFFIX ".journal"
#define MOST_BYTES (256 * 1024 * 1024) /* of the end, which counts */
#define RENEW_BYTES (8 * 1024 * 1024)
#define RENEW_LINES 8                  /* and it would have at least so many like the next */

struct _LwJournalFile
{
  char *path;
  int fd;
};

/* (transfer full) links resolved, so that a season has one journal by whatever way it is opened; also of a file that is
 * not there, where its folder is. */
static char *
whole_path (const char *path)
{
  g_autofree char *canonical = g_canonicalize_filename (path, NULL), *folder = g_path_get_dirname (canonical);
  g_autofree char *name = g_path_get_basename (canonical), *whole = NULL;
  /* By realpath, whose memory is libc's. */
  char *end = realpath (canonical, NULL), *at = end == NULL ? realpath (folder, NULL) : NULL;

  if (end != NULL)
    whole = g_strdup (end);
  else if (at != NULL)
    whole = g_build_filename (at, name, NULL);
  free (end);
  free (at);

  return whole != NULL ? g_steal_pointer (&whole) : g_steal_pointer (&canonical);
}

char *
lw_journal_file_path (const char *folder,
                      const char *path)
{
  g_autofree char *whole = whole_path (path);
  g_autofree char *sum = g_compute_checksum_for_string (G_CHECKSUM_SHA256, whole, -1);
  g_autofree char *name = g_strconcat (sum, SUFFIX, NULL);

  return folder != NULL ? g_build_filename (folder, name, NULL)
                        : g_build_filename (g_get_user_data_dir (), FOLDER, name, NULL);
}

GStrv
lw_journal_file_others (const char *journal)
{
  g_autofree char *folder = g_path_get_dirname (journal), *own = g_path_get_basename (journal);
  g_autoptr (GStrvBuilder) others = g_strv_builder_new ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, SUFFIX) && !g_str_equal (name, own))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);

        g_strv_builder_add (others, path);
      }

  return g_strv_builder_end (others);
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

/* For this program alone; FALSE and an errno if that cannot be. A file that its last owner has just taken away, set aside or
 * put another in the place of is still his. */
static gboolean
lock (int         fd,
      const char *path)
{
  struct stat about, there;

  if (flock (fd, LOCK_EX | LOCK_NB) < 0 || fstat (fd, &about) < 0)
    return FALSE;

  errno = EWOULDBLOCK;

  return stat (path, &there) == 0 && there.st_dev == about.st_dev && there.st_ino == about.st_ino;
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
  if (fd >= 0 && (!lock (fd, journal) || !sync_folder_of (journal)))
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

gboolean
lw_journal_file_is_empty (LwJournalFile *self)
{
  struct stat about;

  return fstat (self->fd, &about) == 0 && about.st_size == 0;
}

char *
lw_journal_file_load (LwJournalFile *self,
                      gsize         *length,
                      GError       **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  char part[65536];
  struct stat about;
  off_t from = fstat (self->fd, &about) == 0 ? MAX (about.st_size - MOST_BYTES, 0) : 0;

  while (text->len < MOST_BYTES)
    {
      ssize_t n = pread (self->fd, part, sizeof part, from + (off_t) text->len);

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

/* Puts a file with this line alone in the place of one that has grown long. FALSE if that cannot be; then nothing has
 * changed. Held from before it is there, so that no other program comes between. */
static gboolean
renew (LwJournalFile *self,
       const char    *line)
{
  g_autofree char *beside = g_strconcat (self->path, ".new", NULL);
  int fd = open (beside, O_RDWR | O_CREAT | O_TRUNC | O_APPEND | O_CLOEXEC | O_NOFOLLOW, 0600);

  if (fd < 0)
    return FALSE;
  if (!lock (fd, beside) || !lw_write_all (fd, line, strlen (line)) || fsync (fd) < 0 || rename (beside, self->path) < 0)
    {
      unlink (beside);
      close (fd);
      return FALSE;
    }

  sync_folder_of (self->path);
  close (self->fd);
  self->fd = fd;

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
  if (before.st_size > RENEW_BYTES && (gsize) before.st_size / RENEW_LINES > strlen (line) && renew (self, line))
    return TRUE;
  if (lw_write_all (self->fd, line, strlen (line)) && fsync (self->fd) == 0)
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

char *
lw_journal_file_set_aside (LwJournalFile *self)
{
  g_autofree char *aside = g_strconcat (self->path, ".1", NULL);

  for (guint i = 2; g_file_test (aside, G_FILE_TEST_EXISTS); i++)
    {
      g_free (aside);
      aside = g_strdup_printf ("%s.%u", self->path, i);
    }
  if (rename (self->path, aside) < 0)
    g_clear_pointer (&aside, g_free);
  sync_folder_of (self->path);
  lw_journal_file_close (self);

  return g_steal_pointer (&aside);
}

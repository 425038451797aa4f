/* Written beside the old file, made sure on the disk, and only then put in its place. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/replace.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include "season/text.h"
#include "season/write-all.h"

#define MOST_LINKS 40

/* What a save is about. `path` is the file itself, links resolved. */
typedef struct
{
  char *path;
  char *folder;
  gboolean exists;
  struct stat old;
} Target;

static void
target_clear (Target *target)
{
  g_free (target->path);
  g_free (target->folder);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Target, target_clear)

static const char *
remedy_for (int code)
{
  static const struct
  {
    int code;
    const char *remedy;
  } remedies[] = {
    { ENOSPC, N_ ("Free some space, or save it elsewhere.") },
    { EDQUOT, N_ ("Free some space, or save it elsewhere.") },
    { EFBIG, N_ ("Save it elsewhere, where larger files are let in.") },
    { EACCES, N_ ("Choose a folder that you may write to.") },
    { EPERM, N_ ("Choose a folder that you may write to.") },
    { EROFS, N_ ("Choose a folder on a disk that can be written to.") },
    { ENOENT, N_ ("Choose a folder that is there.") },
    { ENOTDIR, N_ ("Choose a folder that is there.") },
    { ENAMETOOLONG, N_ ("Choose a shorter name.") },
    { ELOOP, N_ ("Save it under another name: this link leads nowhere.") },
    { EISDIR, N_ ("Save it under another name: this one is a folder.") },
    { EINVAL, N_ ("Save it under another name: this one is no plain file.") },
  };

  for (guint i = 0; i < G_N_ELEMENTS (remedies); i++)
    if (remedies[i].code == code)
      return _ (remedies[i].remedy);

  return _ ("Save it elsewhere.");
}

/* Always FALSE, to be returned. */
static gboolean
fail (GError    **error,
      const char *path,
      int         code)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, G_FILE_ERROR, (int) g_file_error_from_errno (code),
               _ ("“%s” could not be saved: %s. %s"), shown, g_strerror (code), remedy_for (code));

  return FALSE;
}

/* Always FALSE, to be returned. */
static gboolean
refuse_protected (GError    **error,
                  const char *path)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_ACCES,
               _ ("“%s” could not be saved: the file is protected against writing. "
                  "Allow it to be written to, or save it under another name."), shown);

  return FALSE;
}

/* (transfer full) the file at the end of the chain of links; NULL if there is no end. */
static char *
follow_links (const char *path)
{
  g_autofree char *here = g_strdup (path);

  for (int i = 0; i < MOST_LINKS; i++)
    {
      g_autofree char *next = g_file_read_link (here, NULL);
      g_autofree char *folder = g_path_get_dirname (here);

      if (next == NULL)
        return g_steal_pointer (&here);

      g_free (here);
      here = g_path_is_absolute (next) ? g_steal_pointer (&next)
                                       : g_build_filename (folder, next, NULL);
    }

  return NULL;
}

static gboolean
find_target (Target     *target,
             const char *path,
             GError    **error)
{
  target->path = follow_links (path);
  if (target->path == NULL)
    return fail (error, path, ELOOP);

  target->folder = g_path_get_dirname (target->path);
  target->exists = stat (target->path, &target->old) == 0;

  if (!target->exists && errno != ENOENT)
    return fail (error, path, errno);
  if (target->exists && !S_ISREG (target->old.st_mode))
    return fail (error, path, S_ISDIR (target->old.st_mode) ? EISDIR : EINVAL);
  /* A rename would get past the protection of a file that its owner has made read-only. */
  if (target->exists && faccessat (AT_FDCWD, target->path, W_OK, AT_EACCESS) < 0)
    return errno == EROFS ? fail (error, path, EROFS) : refuse_protected (error, path);

  return TRUE;
}

/* The owner is kept where the system lets us; the mode always. */
static gboolean
keep_mode (int           fd,
           const Target *target)
{
  if (!target->exists)
    return TRUE;

  if (fchown (fd, target->old.st_uid, target->old.st_gid) < 0 && errno != EPERM && errno != EINVAL)
    return FALSE;

  return fchmod (fd, target->old.st_mode & 07777) == 0;
}

/* Fills the file that `fd` is of, makes it sure on the disk and closes `fd`. 0 or an errno. */
static int
fill (int           fd,
      const Target *target,
      const char   *data,
      gsize         length)
{
  int code = 0;

  if (!lw_write_all (fd, data, length) || !keep_mode (fd, target) || fsync (fd) < 0)
    code = errno;
  if (close (fd) < 0 && code == 0)
    code = errno;

  return code;
}

/* The new name is in the folder; some file systems cannot make that sure, and need not. */
static int
sync_folder (const char *folder)
{
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  int code = fd >= 0 && fsync (fd) < 0 && errno == EIO ? EIO : 0;

  if (fd >= 0)
    close (fd);

  return code;
}

static gboolean
replace (const Target *target,
         const char   *path,
         const char   *data,
         gsize         length,
         GError      **error)
{
  g_autofree char *beside = g_build_filename (target->folder, ".leafwend-XXXXXX", NULL);
  int fd = g_mkstemp_full (beside, O_RDWR | O_CLOEXEC, target->exists ? 0600 : 0666);
  int code;

  if (fd < 0)
    return fail (error, path, errno);

  code = fill (fd, target, data, length);
  if (code == 0 && rename (beside, target->path) < 0)
    code = errno;
  if (code != 0)
    {
      unlink (beside);
      return fail (error, path, code);
    }

  code = sync_folder (target->folder);

  return code == 0 || fail (error, path, code);
}

gboolean
lw_replace_file (const char *path,
                 const char *data,
                 gsize       length,
                 GError    **error)
{
  g_auto (Target) target = { NULL };

  return find_target (&target, path, error) && replace (&target, path, data, length, error);
}

/* Only writes to plain files count: a program's talk with the screen goes on. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fault.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/time.h>
#include <time.h>
#include <unistd.h>

#define SHORT_BYTES 7

static struct
{
  const char *call;
  guint nth;
  int code;
  guint calls;
} armed;

void
fault_arm (const char *call,
           guint       nth,
           int         code)
{
  armed.call = call;
  armed.nth = nth;
  armed.code = code;
  armed.calls = 0;
}

guint
fault_calls (void)
{
  return armed.calls;
}

/* 0, or the error that the file names for this call. */
static int
told_by_file (const char *call)
{
  const char *path = getenv ("FAULT_FILE");
  FILE *file = path != NULL ? fopen (path, "r") : NULL;
  char name[16];
  int code = 0;

  if (file == NULL)
    return 0;
  if (fscanf (file, "%15s %d", name, &code) != 2 || strcmp (name, call) != 0)
    code = 0;
  fclose (file);

  return code;
}

static int
due (const char *call)
{
  if (armed.call != NULL && (strcmp (armed.call, call) == 0 || strcmp (armed.call, "any") == 0)
      && ++armed.calls >= armed.nth)
    {
      if (armed.code == FAULT_STOP)
        kill (getpid (), SIGSTOP);
      return armed.code;
    }

  return told_by_file (call);
}

ssize_t
write (int         fd,
       const void *data,
       size_t      length)
{
  struct stat about;
  int code = fstat (fd, &about) == 0 && S_ISREG (about.st_mode) ? due ("write") : 0;

  if (code == FAULT_SHORT)
    return syscall (SYS_write, fd, data, MIN (length, SHORT_BYTES));
  if (code > 0)
    {
      errno = code;
      return -1;
    }

  return syscall (SYS_write, fd, data, length);
}

int
fsync (int fd)
{
  int code = due ("fsync");

  if (code > 0)
    {
      errno = code;
      return -1;
    }

  return (int) syscall (SYS_fsync, fd);
}

int
fchmod (int    fd,
        mode_t mode)
{
  int code = due ("fchmod");

  if (code > 0)
    {
      errno = code;
      return -1;
    }

  return (int) syscall (SYS_fchmod, fd, mode);
}

int
rename (const char *from,
        const char *to)
{
  int code = due ("rename");

  if (code > 0)
    {
      errno = code;
      return -1;
    }

  return (int) syscall (SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0);
}

int
faccessat (int         folder,
           const char *path,
           int         mode,
           int         flags)
{
  int code = due ("faccessat");

  if (code > 0)
    {
      errno = code;
      return -1;
    }

  return (int) syscall (SYS_faccessat2, folder, path, mode, flags);
}

/* The wall clock, for those who ask by either call: "clock -3600" is an hour back. */
int
clock_gettime (clockid_t        which,
               struct timespec *at)
{
  int result = (int) syscall (SYS_clock_gettime, which, at);

  if (which == CLOCK_REALTIME)
    at->tv_sec += told_by_file ("clock");

  return result;
}

int
gettimeofday (struct timeval *at,
              void           *zone)
{
  int result = (int) syscall (SYS_gettimeofday, at, zone);

  at->tv_sec += told_by_file ("clock");

  return result;
}

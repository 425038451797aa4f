/* Writing to a file that is open. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/write-all.h"

#include <errno.h>
#include <unistd.h>

gboolean
lw_write_all (int         fd,
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

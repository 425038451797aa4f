/* Whether two paths lead to one file. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/same-file.h"

#include <glib/gstdio.h>

gboolean
lw_same_file (const char *a,
              const char *b)
{
  g_autofree char *one = a != NULL ? g_canonicalize_filename (a, NULL) : NULL;
  g_autofree char *other = b != NULL ? g_canonicalize_filename (b, NULL) : NULL;
  GStatBuf at, there;

  if (one == NULL || other == NULL)
    return FALSE;
  if (g_str_equal (one, other))
    return TRUE;

  return g_stat (one, &at) == 0 && g_stat (other, &there) == 0 && at.st_dev == there.st_dev && at.st_ino == there.st_ino;
}

/* Nearness by edits of one letter: put in, left out, changed, or two swapped. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/nearest.h"

#include <string.h>

#define LONGEST 64

/* Bytes, not characters: names known here are ASCII but for people's own. */
static guint
distance (const char *a,
          const char *b)
{
  gsize n = strlen (a), m = strlen (b);
  guint rows[3][LONGEST + 1];

  for (guint j = 0; j <= m; j++)
    rows[0][j] = j;

  for (guint i = 1; i <= n; i++)
    {
      guint *now = rows[i % 3], *last = rows[(i - 1) % 3], *older = rows[(i + 1) % 3];

      now[0] = i;
      for (guint j = 1; j <= m; j++)
        {
          now[j] = MIN (last[j - 1] + (a[i - 1] != b[j - 1]), MIN (last[j], now[j - 1]) + 1);
          if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
            now[j] = MIN (now[j], older[j - 2] + 1);
        }
    }

  return rows[n % 3][m];
}

const char *
lw_nearest (const char *typed,
            GPtrArray  *names)
{
  gsize length = strlen (typed);
  guint best = (guint) MIN (length / 3, 3) + 1;
  const char *found = NULL;

  if (length > LONGEST)
    return NULL;

  for (guint i = 0; i < names->len; i++)
    {
      const char *name = g_ptr_array_index (names, i);
      guint far = strlen (name) <= LONGEST ? distance (typed, name) : G_MAXUINT;

      if (far < best)
        {
          best = far;
          found = name;
        }
    }

  return found;
}

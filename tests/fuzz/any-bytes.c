/* Ends the program by abort, as engines want it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "any-bytes.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define SEED 20260412

void
demand (gboolean    holds,
        const char *what)
{
  if (holds)
    return;

  fprintf (stderr, "%s\n", what);
  abort ();
}

void
demand_told (GPtrArray *problems)
{
  for (guint i = 0; i < problems->len; i++)
    {
      g_autofree char *told = lw_problem_text (g_ptr_array_index (problems, i), "file");

      demand (g_utf8_validate (told, -1, NULL), "a problem is no text");
    }
}

static void
change (GString           *bytes,
        const char *const *scraps,
        GRand             *random)
{
  int n = 1 << g_rand_int_range (random, 0, 4), n_scraps = (int) g_strv_length ((char **) scraps);

  for (int i = 0; i < n; i++)
    {
      gsize at = (gsize) g_rand_int_range (random, 0, (gint32) bytes->len + 1);
      gsize gone = (gsize) g_rand_int_range (random, 0, 6);

      if (g_rand_boolean (random) && at < bytes->len)
        {
          bytes->str[at] = (char) g_rand_int_range (random, g_rand_boolean (random) ? '0' : 0, 58);
          continue;
        }
      g_string_erase (bytes, (gssize) at, (gssize) MIN (gone, bytes->len - at));
      g_string_insert (bytes, (gssize) at, scraps[g_rand_int_range (random, 0, n_scraps)]);
    }
}

gboolean
give_changed_tables (const char *const *tables,
                     const char *const *scraps,
                     guint              n_changed,
                     const guint       *kept,
                     const char        *what)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (SEED);
  guint n_tables = g_strv_length ((char **) tables), sound;

  for (guint i = 0; i < n_tables; i++)
    LLVMFuzzerTestOneInput ((const guint8 *) tables[i], strlen (tables[i]));
  sound = *kept;

  for (guint i = 0; i < n_changed; i++)
    {
      g_autoptr (GString) bytes = g_string_new (tables[i % n_tables]);

      change (bytes, scraps, random);
      LLVMFuzzerTestOneInput ((const guint8 *) bytes->str, bytes->len);
    }

  printf ("%u tables; of %u changed ones %u are %s\n", sound, n_changed, *kept - sound, what);

  return sound == n_tables && *kept > sound && *kept - sound < n_changed;
}

/* How long 1,000 season files with 10,000 batches take to be listed, read, searched and sorted. Asserts nothing on time. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <libxml/parser.h>
#include <stdio.h>
#include <time.h>

#include "many.h"
#include "season/find.h"
#include "season/shelf.h"

#define FILES 1000
#define BATCHES 10

static void
read_cb (gpointer shelved,
         gpointer data)
{
  lw_shelf_read (shelved);
}

static double
since_ms (gint64 begin_us)
{
  return (double) (g_get_monotonic_time () - begin_us) / 1000;
}

static int
compare (gconstpointer a,
         gconstpointer b,
         gpointer      sort)
{
  return lw_find_compare (sort, *(LwHead *const *) a, NULL, *(LwHead *const *) b, NULL);
}

static void
search (const GPtrArray *files)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  LwSort sort = { .by = LW_SORT_NAME };
  gint64 begin = g_get_monotonic_time ();
  LwFind find;

  lw_find_init (&find);
  lw_find_set (&find, "green", "", "");
  for (guint i = 0; i < files->len; i++)
    {
      const LwShelved *file = g_ptr_array_index (files, i);

      for (guint k = 0; k < file->heads->len; k++)
        if (lw_find_match (&find, g_ptr_array_index (file->heads, k), NULL) == LW_FIND_YES)
          g_ptr_array_add (found, g_ptr_array_index (file->heads, k));
    }
  g_ptr_array_sort_with_data (found, compare, &sort);
  printf ("searched and sorted, %u found: %.1f ms\n", found->len, since_ms (begin));
  lw_find_clear (&find);
}

int
main (void)
{
  g_autofree char *folder = g_dir_make_tmp ("leafwend-many-XXXXXX", NULL);

  xmlInitParser ();
  many_write (folder, FILES, BATCHES);
  for (int threads = 1; threads <= 2; threads++)
    {
      gint64 begin = g_get_monotonic_time ();
      g_autoptr (GPtrArray) files = lw_shelf_list (folder, NULL);
      GThreadPool *pool = g_thread_pool_new (read_cb, NULL, threads, FALSE, NULL);
      double listed = since_ms (begin);
      clock_t spent = clock ();

      for (guint i = 0; i < files->len; i++)
        g_thread_pool_push (pool, g_ptr_array_index (files, i), NULL);
      g_thread_pool_free (pool, FALSE, TRUE);
      printf ("%.0f ms of processor; ", (double) (clock () - spent) * 1000 / CLOCKS_PER_SEC);
      printf ("%u files, %d threads: listed %.1f ms, read %.1f ms\n", files->len, threads, listed, since_ms (begin));
      search (files);
    }
  many_remove (folder);

  return 0;
}

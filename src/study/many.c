/* Threads that take the next item until there is none. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/many.h"

#define MOST_THREADS 64u

typedef struct
{
  const LwMany *many;
  guint n;
  LwItem item;
  gpointer data;
  GCancellable *cancellable;
  gint next;  /* atomic, as is `done` */
  gint done;
} Work;

static void
work_on (Work      *work,
         LwProgress progress)
{
  g_autoptr (LwMarch) march = lw_march_new ();
  guint total = work->many->total > 0 ? work->many->total : work->n;

  if (march != NULL && work->many->tolerance > 0)
    lw_march_set_tolerance (march, work->many->tolerance);

  while (march != NULL && !g_cancellable_is_cancelled (work->cancellable))
    {
      guint i = (guint) g_atomic_int_add (&work->next, 1);

      if (i >= work->n)
        break;

      work->item (i, march, work->data);
      g_atomic_int_inc (&work->done);
      if (progress != NULL)
        progress (work->many->done + (guint) g_atomic_int_get (&work->done), total, work->many->progress_data);
    }
}

static gpointer
thread_run (gpointer data)
{
  work_on (data, NULL);

  return NULL;
}

gboolean
lw_many_run (const LwMany *many,
             guint         n,
             LwItem        item,
             gpointer      data,
             GCancellable *cancellable)
{
  guint wanted = many->threads > 0 ? many->threads : g_get_num_processors ();
  guint threads = CLAMP (wanted, 1, MIN (MAX (n, 1), MOST_THREADS));
  Work work = { .many = many, .n = n, .item = item, .data = data, .cancellable = cancellable };
  GThread *others[MOST_THREADS];

  for (guint i = 1; i < threads; i++)
    others[i] = g_thread_new ("many", thread_run, &work);
  work_on (&work, many->progress);
  for (guint i = 1; i < threads; i++)
    g_thread_join (others[i]);

  if ((guint) work.done < n)
    return FALSE;

  if (many->progress != NULL)
    many->progress (many->done + n, many->total > 0 ? many->total : many->done + n, many->progress_data);

  return TRUE;
}

/* Many marches on all cores. Each item is computed by one thread with a march of its own, and
 * its result does not depend on which: the same items give the same bytes on any number of threads. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "leaf/march.h"

/* Called in the thread that asked, now and then, and last with done == total. */
typedef void (*LwProgress) (guint done, guint total, gpointer data);

/* Computes item `i`; called in any thread. */
typedef void (*LwItem) (guint i, LwMarch *march, gpointer data);

typedef struct
{
  guint threads;       /* 0: one for each processor */
  double tolerance;    /* relative, of the marches; 0: the usual one */
  LwProgress progress; /* (nullable) */
  gpointer progress_data;
  guint done;          /* items before these, for `progress` */
  guint total;         /* items at all; 0: `n` */
} LwMany;

/* FALSE if cancelled or if no march can be had. */
gboolean lw_many_run (const LwMany *many,
                      guint         n,
                      LwItem        item,
                      gpointer      data,
                      GCancellable *cancellable);

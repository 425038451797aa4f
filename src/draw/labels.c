/* Names that touch are a run, which stands where the mean of its wishes is; runs that meet become one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/labels.h"

#include <math.h>

/* Names in a row without a gap. */
typedef struct
{
  guint first;
  guint n;
  double wish;  /* sum of where its top should be for each name to have its own way */
  double top;
} Run;

typedef struct
{
  double top;
  double bottom;
  double height;
} Room;

static int
by_want (const void *a,
         const void *b,
         gpointer    data)
{
  const LwLabel *labels = data;
  guint i = *(const guint *) a, k = *(const guint *) b;

  if (labels[i].want != labels[k].want)
    return labels[i].want < labels[k].want ? -1 : 1;

  return i < k ? -1 : i > k;
}

static void
settle (Run        *run,
        const Room *room)
{
  run->top = CLAMP (run->wish / run->n, room->top, room->bottom - run->n * room->height);
}

/* One column of names, `order` being those in it from the top. */
static void
place_lane (LwLabel     *labels,
            const guint *order,
            guint        n,
            const Room  *room)
{
  g_autofree Run *runs = g_new (Run, MAX (n, 1));
  guint n_runs = 0;

  for (guint i = 0; i < n; i++)
    {
      Run *run = &runs[n_runs++];

      *run = (Run) { .first = i, .n = 1, .wish = labels[order[i]].want - room->height / 2 };
      settle (run, room);
      while (n_runs > 1 && runs[n_runs - 2].top + runs[n_runs - 2].n * room->height > runs[n_runs - 1].top)
        {
          Run *above = &runs[n_runs - 2], *below = &runs[n_runs - 1];

          above->wish += below->wish - below->n * (above->n * room->height);
          above->n += below->n;
          settle (above, room);
          n_runs--;
        }
    }

  for (guint i = 0; i < n_runs; i++)
    for (guint k = 0; k < runs[i].n; k++)
      labels[order[runs[i].first + k]].y = runs[i].top + (k + 0.5) * room->height;
}

guint
lw_labels_place (LwLabel *labels,
                 guint    n,
                 double   top,
                 double   bottom,
                 double   height)
{
  Room room = { top, bottom, height };
  guint rows = bottom > top ? (guint) floor ((bottom - top) / height + 1e-9) : 0;
  guint lanes = rows > 0 ? (n + rows - 1) / rows : 0;
  g_autofree guint *order = g_new (guint, MAX (n, 1)), *lane = g_new (guint, MAX (n, 1));

  for (guint i = 0; i < n; i++)
    order[i] = i;
  g_qsort_with_data (order, (int) n, sizeof *order, by_want, labels);

  for (guint l = 0; l < lanes; l++)
    {
      guint in_lane = 0;

      for (guint i = l; i < n; i += lanes)
        {
          labels[order[i]].lane = l;
          lane[in_lane++] = order[i];
        }
      place_lane (labels, lane, in_lane, &room);
    }

  return lanes;
}

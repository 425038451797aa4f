/* By kind of tea first, else by the kinds of step; the nearest in date. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/same-kind.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define DAY_S 86400
#define YEAR_DAYS 365.2425 /* Gregorian, on average */

int
lw_year_of (gint64 when_s)
{
  g_autoptr (GDateTime) when = g_date_time_new_from_unix_utc (when_s);

  return when != NULL ? g_date_time_get_year (when) : 0;
}

static gboolean
same_tea (const LwBatch *a,
          const LwBatch *b)
{
  g_autofree char *one = NULL, *other = NULL;

  if (a->tea == NULL || b->tea == NULL || a->tea[0] == '\0')
    return FALSE;

  one = g_utf8_casefold (a->tea, -1);
  other = g_utf8_casefold (b->tea, -1);

  return strcmp (one, other) == 0;
}

static gboolean
same_steps (const LwBatch *a,
            const LwBatch *b)
{
  for (guint i = 0; a->n_steps == b->n_steps && i < a->n_steps; i++)
    if (a->steps[i].kind != b->steps[i].kind)
      return FALSE;

  return a->n_steps == b->n_steps;
}

static int
days_later (const LwBatch *batch,
            const LwBatch *other)
{
  return (int) lround ((double) (other->when_s - batch->when_s) / DAY_S + YEAR_DAYS);
}

static void
weigh (const LwBatch *batch,
       const LwBatch *other,
       LwSameKind     at,
       LwSameKind    *found)
{
  gboolean as_near;

  at.days = days_later (batch, other);
  at.n = found->n + 1;
  at.n_near = 1;
  as_near = found->n > 0 && abs (at.days) == abs (found->days);
  if (found->n == 0 || abs (at.days) < abs (found->days))
    {
      *found = at;
      return;
    }
  found->n++;
  found->n_near += as_near;
}

gboolean
lw_same_kind (const LwBatch   *batch,
              LwSeason *const *seasons,
              guint            n,
              LwSameKind      *found)
{
  int year = lw_year_of (batch->when_s) - 1;

  *found = (LwSameKind) { 0 };
  for (int by_tea = 1; by_tea >= 0 && found->n == 0; by_tea--)
    for (guint i = 0; i < n; i++)
      for (guint k = 0; k < seasons[i]->n_batches; k++)
        {
          const LwBatch *other = seasons[i]->batches[k];

          if (other->n_steps > 0 && lw_year_of (other->when_s) == year
              && (by_tea ? same_tea (batch, other) : same_steps (batch, other)))
            weigh (batch, other, (LwSameKind) { .season = i, .batch = k, .by_tea = by_tea }, found);
        }

  return found->n > 0;
}

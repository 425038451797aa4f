/* Near the exact settings the wants are taken to be straight in them, so that thousands of choices can be
 * weighed without a march: one setting moves by a notch, or two at once, while that helps. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/notches.h"

#include <math.h>
#include <string.h>

#define MOST_SWEEPS 50
#define SERVES 0.6      /* tolerances: what rounding may add to a miss; the rest is left for bends of the curve */
#define WORTH 1e-9      /* of a gain, so that rounding errors do not turn settings to and fro */

void
lw_notches_init (LwNotches      *notches,
                 const LwSearch *search,
                 const double   *exact,
                 double         *stands,
                 double         *slopes,
                 gboolean        goal)
{
  *notches = (LwNotches) { .search = search, .exact = exact, .stands = stands, .slopes = slopes, .goal = goal };
}

static const LwStep *
step_of (const LwNotches *notches,
         guint            k)
{
  const LwSearch *search = notches->search;

  return &search->season->batches[search->batch]->steps[search->x[k].handle.step];
}

static double
snap (const LwNotches *notches,
      guint            k,
      double           value)
{
  return fmax (lw_kind_snap (step_of (notches, k)->kind, notches->search->x[k].handle.setting, value, notches->fine[k]),
               notches->search->x[k].least);
}

/* The next notch on that side of the choice; at the end of the range, that end. */
static double
neighbour (const LwNotches *notches,
           guint            k,
           int              side)
{
  LwSetting setting = notches->search->x[k].handle.setting;
  double value = notches->values[k];
  double notch = setting == LW_SET_MINUTES ? lw_minutes_notch (value, notches->fine[k])
                                           : lw_setting_row (setting)->notch / (notches->fine[k] ? 10 : 1);

  return snap (notches, k, value + side * notch);
}

/* The nearest notch, or where the maker has it if that is as near as a notch. */
static double
nearest (const LwNotches *notches,
         guint            k)
{
  const LwUnknown *unknown = &notches->search->x[k];
  double exact = notches->exact[k];

  if (fabs (exact - unknown->start) < 0.5 * unknown->notch)
    return lw_step_get (step_of (notches, k), unknown->handle.setting);

  return snap (notches, k, lw_search_value (unknown, exact));
}

/* Where the wants stand with the choice. */
static void
stands_with (const LwNotches *notches,
             double          *stands)
{
  const LwSearch *search = notches->search;

  for (guint i = 0; i < search->wants->len; i++)
    {
      stands[i] = notches->stands[i];
      for (guint k = 0; k < search->n_x; k++)
        stands[i] += notches->slopes[i * search->n_x + k]
                     * (lw_search_measure (&search->x[k], notches->values[k]) - notches->exact[k]);
    }
}

static double
pull_of (const LwNotches *notches,
         guint            k,
         double           value)
{
  const LwUnknown *unknown = &notches->search->x[k];
  double pull = lw_unknown_pull (unknown, lw_search_measure (unknown, value));

  return pull * pull;
}

/* What the wants and the pull come to if settings `a` and `b` are put to these values; `a` may be `b`. */
static double
weigh (const LwNotches *notches,
       const double    *stands,
       guint            a,
       double           value_a,
       guint            b,
       double           value_b)
{
  const LwSearch *search = notches->search;
  double by_a = lw_search_measure (&search->x[a], value_a) - lw_search_measure (&search->x[a], notches->values[a]);
  double by_b = a == b ? 0 : lw_search_measure (&search->x[b], value_b)
                             - lw_search_measure (&search->x[b], notches->values[b]);
  double sum = pull_of (notches, a, value_a) - pull_of (notches, a, notches->values[a]);

  if (a != b)
    sum += pull_of (notches, b, value_b) - pull_of (notches, b, notches->values[b]);
  for (guint i = 0; i < search->wants->len; i++)
    {
      const double *slopes = &notches->slopes[i * search->n_x];
      double missed = lw_target_missed (&search->targets[i], stands[i] + slopes[a] * by_a + slopes[b] * by_b);

      sum += missed * missed;
    }

  return sum;
}

/* The best move of one setting, or of two, by one notch each. FALSE if none gains. */
static gboolean
move_best (LwNotches *notches)
{
  guint n = notches->search->n_x, best_a = 0, best_b = 0;
  g_autofree double *stands = g_new (double, notches->search->wants->len);
  double best, to_a = 0, to_b = 0, kept;
  gboolean found = FALSE;

  stands_with (notches, stands);
  kept = best = weigh (notches, stands, 0, notches->values[0], 0, notches->values[0]);
  for (guint a = 0; a < n; a++)
    for (int side_a = -1; side_a <= 1; side_a += 2)
      for (guint b = a; b < n; b++)
        for (int side_b = -1; side_b <= (a == b ? -1 : 1); side_b += 2)
          {
            double a_to = neighbour (notches, a, side_a);
            double b_to = a == b ? a_to : neighbour (notches, b, side_b);
            double sum = weigh (notches, stands, a, a_to, b, b_to);

            if (sum >= best - WORTH * (1 + kept))
              continue;
            best = sum;
            best_a = a;
            best_b = b;
            to_a = a_to;
            to_b = b_to;
            found = TRUE;
          }

  if (found)
    {
      notches->values[best_a] = to_a;
      notches->values[best_b] = to_b;
    }

  return found;
}

static double
descend (LwNotches *notches)
{
  g_autofree double *stands = g_new (double, notches->search->wants->len);
  double sum;

  for (guint i = 0; i < MOST_SWEEPS && move_best (notches); i++)
    continue;

  stands_with (notches, stands);
  sum = weigh (notches, stands, 0, notches->values[0], 0, notches->values[0]);
  for (guint k = 0; k < notches->search->n_x; k++)
    sum += pull_of (notches, k, notches->values[k]);

  return sum;
}

gboolean
lw_notches_choose (LwNotches *notches)
{
  LwNotches before = *notches;

  for (guint k = 0; k < notches->search->n_x; k++)
    notches->values[k] = nearest (notches, k);
  descend (notches);

  return memcmp (before.values, notches->values, sizeof before.values) != 0;
}

gboolean
lw_notches_refine (LwNotches *notches)
{
  LwNotches best = *notches;
  double least = INFINITY;

  for (guint k = 0; k < notches->search->n_x; k++)
    {
      LwNotches with = *notches;
      double sum;

      if (notches->fine[k])
        continue;
      with.fine[k] = TRUE;
      with.values[k] = nearest (&with, k);
      sum = descend (&with);
      if (sum < least)
        {
          least = sum;
          best = with;
        }
    }
  *notches = best;

  return isfinite (least);
}

gboolean
lw_notches_serve (const LwNotches *notches)
{
  const LwSearch *search = notches->search;
  g_autofree double *stands = g_new (double, search->wants->len);

  stands_with (notches, stands);
  for (guint i = 0; i < search->wants->len; i++)
    {
      const LwTarget *target = &search->targets[i];
      double allowed = notches->goal ? 0 : fabs (lw_target_missed (target, notches->stands[i]));

      if (fabs (lw_target_missed (target, stands[i])) > allowed + SERVES)
        return FALSE;
    }

  return TRUE;
}

void
lw_notches_learn (LwNotches    *notches,
                  const double *stands)
{
  g_autofree double *thought = g_new (double, notches->search->wants->len);

  stands_with (notches, thought);
  for (guint i = 0; i < notches->search->wants->len; i++)
    notches->stands[i] += stands[i] - thought[i];
}

/* Least squares over the wants, with a light pull to where each setting was. Times
 * are turned by their logarithm: a minute is much in a pan and nothing in a wither. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/search.h"

#include <math.h>
#include <string.h>

#include "season/edit.h"
#include "study/squares.h"

/* All of these are choices, no source. */
#define TOLERANCE 1e-5   /* of the marches: moves no outcome by a hundredth of what a maker would notice */
#define ROUNDS 20
#define PULL 0.02        /* a notch away from the start weighs as much as this share of a tolerance */
#define NUDGE 0.2        /* notches, for slopes */
#define SMALL 0.25       /* of the nudge: a shorter step ends the search */
#define ENOUGH 1e-3      /* tolerances squared */
#define INSET 0.5        /* tolerances by which a window is narrowed, where it is wide enough */
#define ELSEWHERE 1.4    /* other starts are up to this far in the logarithm of times: four times as long */

/* Every LW_SEARCH_SHARES-th setting, for one thread. */
typedef struct
{
  LwSearch *search;
  guint first;
  const double *x;
  const double *stands;
  double *slopes;
  gboolean done;
} Share;

static LwTarget
target_of (const LwWant *want)
{
  double per_unit = want->weight / lw_want_tolerance (want->of);
  double width = want->high - want->low;
  double inset = fmin (INSET / per_unit, width / 4);

  return (LwTarget) { per_unit, per_unit * (want->low + inset), per_unit * (want->high - inset) };
}

static LwUnknown
unknown_of (const LwBatch  *batch,
            const LwHandle *handle)
{
  LwUnknown unknown = { .handle = *handle, .least = -INFINITY };
  const LwStep *step = &batch->steps[handle->step];
  const LwKindSetting *range = lw_kind_setting (step->kind, handle->setting);
  gboolean minutes = handle->setting == LW_SET_MINUTES;
  double value = lw_step_get (step, handle->setting);

  unknown.start = lw_search_measure (&unknown, value);
  unknown.notch = minutes ? lw_minutes_notch (value, FALSE) / value : lw_setting_row (handle->setting)->notch;
  unknown.low = lw_search_measure (&unknown, range->low);
  unknown.high = lw_search_measure (&unknown, range->high);

  return unknown;
}

LwSearch *
lw_search_new (LwSeason     *season,
               guint         batch,
               const GArray *wants,
               const GArray *free,
               GCancellable *cancellable)
{
  g_autoptr (LwSearch) search = g_new0 (LwSearch, 1);

  search->season = season;
  search->batch = batch;
  search->wants = wants;
  search->cancellable = cancellable;
  search->targets = g_new (LwTarget, wants->len);
  for (guint i = 0; i < wants->len; i++)
    {
      const LwWant *want = &g_array_index (wants, LwWant, i);

      search->last_step = MAX (search->last_step, want->step);
      search->targets[i] = target_of (want);
    }

  search->n_x = free->len;
  for (guint i = 0; i < free->len; i++)
    search->x[i] = unknown_of (season->batches[batch], &g_array_index (free, LwHandle, i));

  for (guint i = 0; i < LW_SEARCH_SHARES; i++)
    {
      search->marches[i] = lw_march_new ();
      if (search->marches[i] == NULL)
        return NULL;
      lw_march_set_tolerance (search->marches[i], TOLERANCE);
    }

  return g_steal_pointer (&search);
}

void
lw_search_free (LwSearch *search)
{
  for (guint i = 0; i < LW_SEARCH_SHARES; i++)
    g_clear_pointer (&search->marches[i], lw_march_free);
  g_free (search->targets);
  g_free (search);
}

void
lw_search_pass (LwSearch *search,
                LwInstant  now)
{
  for (guint i = 0; i < search->n_x; i++)
    {
      LwUnknown *unknown = &search->x[i];

      if (unknown->handle.step != now.step || unknown->handle.setting != LW_SET_MINUTES || !(now.minute > 0))
        continue;
      unknown->least = now.minute;
      unknown->low = fmax (unknown->low, lw_search_measure (unknown, now.minute));
    }
}

double
lw_search_measure (const LwUnknown *unknown,
                   double           value)
{
  return unknown->handle.setting == LW_SET_MINUTES ? log (value) : value;
}

double
lw_search_value (const LwUnknown *unknown,
                 double           x)
{
  return fmax (unknown->handle.setting == LW_SET_MINUTES ? exp (x) : x, unknown->least);
}

LwSeason *
lw_search_season (const LwSearch *search,
                  const double   *values)
{
  const LwBatch *batch = search->season->batches[search->batch];
  LwChange changes[LW_REACH_FREE];
  guint n = 0;

  for (guint i = 0; i < search->n_x; i++)
    {
      const LwHandle *handle = &search->x[i].handle;

      if (values[i] != lw_step_get (&batch->steps[handle->step], handle->setting))
        changes[n++] = (LwChange) { handle->step, handle->setting, values[i] };
    }

  return lw_edit_set_all (search->season, search->batch, changes, n);
}

static gboolean
look_with (LwSearch     *search,
           LwMarch      *march,
           const double *x,
           double       *stands)
{
  double values[LW_REACH_FREE];
  g_autoptr (LwSeason) season = NULL;
  g_autoptr (LwPlan) plan = NULL;
  g_autoptr (LwTrack) track = NULL;

  for (guint i = 0; i < search->n_x; i++)
    values[i] = lw_search_value (&search->x[i], x[i]);
  season = lw_search_season (search, values);
  plan = lw_plan_new (season, search->batch);
  if (plan == NULL || search->last_step >= plan->n_steps)
    return FALSE;

  plan->n_steps = search->last_step + 1;
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });
  if (track->failure.failed)
    return FALSE;

  for (guint i = 0; i < search->wants->len; i++)
    {
      const LwWant *want = &g_array_index (search->wants, LwWant, i);
      LwOutcome outcome = lw_track_end (track, want->step, -1);

      stands[i] = search->targets[i].per_unit * lw_quantity_of (want->of, &outcome);
    }

  return TRUE;
}

gboolean
lw_search_look (LwSearch     *search,
                const double *x,
                double       *stands)
{
  return look_with (search, search->marches[0], x, stands);
}

/* From the last setting backwards: what the march remembers of the steps before then still holds. */
static gpointer
share_run (gpointer data)
{
  Share *share = data;
  LwSearch *search = share->search;
  guint n = search->wants->len;
  g_autofree double *there = g_new (double, n);
  double at[LW_REACH_FREE];

  memcpy (at, share->x, search->n_x * sizeof *at);
  for (guint k = search->n_x; k-- > 0;)
    {
      const LwUnknown *unknown = &search->x[k];
      double by = NUDGE * unknown->notch;

      if (k % LW_SEARCH_SHARES != share->first)
        continue;
      if (at[k] + by > unknown->high)
        by = -by;

      at[k] = share->x[k] + by;
      if (g_cancellable_is_cancelled (search->cancellable)
          || !look_with (search, search->marches[share->first], at, there))
        return NULL;
      at[k] = share->x[k];
      for (guint i = 0; i < n; i++)
        share->slopes[i * search->n_x + k] = (there[i] - share->stands[i]) / by;
    }
  share->done = TRUE;

  return NULL;
}

gboolean
lw_search_slopes (LwSearch     *search,
                  const double *x,
                  const double *stands,
                  double       *slopes)
{
  Share shares[LW_SEARCH_SHARES];
  GThread *threads[LW_SEARCH_SHARES];
  gboolean done = TRUE;

  for (guint i = 0; i < LW_SEARCH_SHARES; i++)
    shares[i] = (Share) { search, i, x, stands, slopes, FALSE };
  for (guint i = 1; i < LW_SEARCH_SHARES; i++)
    threads[i] = g_thread_new ("reach", share_run, &shares[i]);
  share_run (&shares[0]);
  for (guint i = 1; i < LW_SEARCH_SHARES; i++)
    g_thread_join (threads[i]);
  for (guint i = 0; i < LW_SEARCH_SHARES; i++)
    done &= shares[i].done;

  return done;
}

double
lw_target_missed (const LwTarget *target,
                  double          stands)
{
  return stands > target->high ? stands - target->high : stands < target->low ? stands - target->low : 0;
}

double
lw_unknown_pull (const LwUnknown *unknown,
                 double           x)
{
  return PULL * (x - unknown->start) / unknown->notch;
}

static gboolean
residuals_cb (const double *x,
              double       *r,
              gpointer      data)
{
  LwSearch *search = data;
  guint n = search->wants->len;

  if (!lw_search_look (search, x, r))
    return FALSE;

  for (guint i = 0; i < n; i++)
    r[i] = lw_target_missed (&search->targets[i], r[i]);
  for (guint k = 0; k < search->n_x; k++)
    r[n + k] = lw_unknown_pull (&search->x[k], x[k]);

  return TRUE;
}

/* A want within its window has no slope; one outside has that of the outcome, and stands where its residual says. */
static gboolean
slopes_cb (const double *x,
           const double *r,
           double       *slopes,
           gpointer      data)
{
  LwSearch *search = data;
  guint n = search->wants->len, n_x = search->n_x;
  g_autofree double *stands = g_new (double, n);

  for (guint i = 0; i < n; i++)
    stands[i] = r[i] + (r[i] > 0 ? search->targets[i].high : search->targets[i].low);
  if (!lw_search_slopes (search, x, stands, slopes))
    return FALSE;

  for (guint i = 0; i < n; i++)
    if (r[i] == 0)
      memset (&slopes[(gsize) i * n_x], 0, n_x * sizeof *slopes);
  for (guint k = 0; k < n_x; k++)
    {
      memset (&slopes[(gsize) (n + k) * n_x], 0, n_x * sizeof *slopes);
      slopes[(gsize) (n + k) * n_x + k] = PULL / search->x[k].notch;
    }

  return TRUE;
}

/* Sum of squares of all residuals; `met`: whether every want is within a tolerance of its narrowed window. */
static double
sum_at (LwSearch     *search,
        const double *x,
        gboolean     *met)
{
  g_autofree double *r = g_new (double, search->wants->len + search->n_x);
  double sum = 0;

  *met = residuals_cb (x, r, search);
  if (!*met)
    return INFINITY;

  for (guint i = 0; i < search->wants->len + search->n_x; i++)
    {
      sum += r[i] * r[i];
      *met &= i >= search->wants->len || fabs (r[i]) <= INSET;
    }

  return sum;
}

/* The `try`-th start elsewhere, spread evenly over the settings by the multiples of irrational numbers. */
static void
go_elsewhere (const LwSearch *search,
              guint           try,
              double         *x)
{
  for (guint k = 0; k < search->n_x; k++)
    {
      const LwUnknown *unknown = &search->x[k];
      double far = unknown->handle.setting == LW_SET_MINUTES ? ELSEWHERE : (unknown->high - unknown->low) / 3;
      double share = fmod (try * sqrt (2 + 3 * k), 1);

      x[k] = CLAMP (unknown->start + far * (2 * share - 1), unknown->low, unknown->high);
    }
}

gboolean
lw_search_run (LwSearch *search,
               double   *x,
               guint     tries)
{
  double low[LW_REACH_FREE], high[LW_REACH_FREE], scale[LW_REACH_FREE], at[LW_REACH_FREE], best = INFINITY;
  LwSquares squares = {
    .n_x = search->n_x, .n_r = search->wants->len + search->n_x, .low = low, .high = high, .scale = scale,
    .residuals = residuals_cb, .slopes = slopes_cb, .data = search,
    .most_rounds = ROUNDS, .enough = ENOUGH, .small = SMALL,
  };
  gboolean met = FALSE;

  for (guint k = 0; k < search->n_x; k++)
    {
      low[k] = search->x[k].low;
      high[k] = search->x[k].high;
      scale[k] = NUDGE * search->x[k].notch;
    }

  memcpy (at, x, search->n_x * sizeof *at);
  for (guint try = 0; try <= tries && !met; try++)
    {
      double sum;

      if (try > 0)
        go_elsewhere (search, try, at);
      if (lw_squares_solve (&squares, at, NULL, search->cancellable) == LW_SQUARES_CANCELLED)
        return FALSE;

      sum = sum_at (search, at, &met);
      if (sum < best)
        {
          best = sum;
          memcpy (x, at, search->n_x * sizeof *x);
        }
    }

  return isfinite (best);
}

/* One setting is moved at a time, by eight notches, then four, two and one, while more samples come inside; where
 * as many do, by how far the others miss. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/steadier.h"

#include <math.h>

#include "season/edit.h"
#include "study/design.h"

#define WIDEST 8.0     /* notches of the first moves */
#define SURE 2.0       /* standard errors */
#define NEARER 0.99    /* how much less must be missed, to be worth a move */
#define MOST_MISSED 1e12

/* How the samples of one choice of settings came out. */
typedef struct
{
  guint inside;
  double missed;       /* mean over the samples of log (1 + sum of squares in tolerances) */
} Score;

typedef struct
{
  guint batch;
  const LwSpreadAsk *ask;
  const GArray *wants;
  GCancellable *cancellable;
  guint n;
  double *luck;
  guint n_dims;
  guint looked;
} Search;

/* The samples of one choice, while they are computed. */
typedef struct
{
  const Search *search;
  LwChance chance;
  gboolean *inside;
  double *missed;
} Look;

static void
look_one (guint    i,
          LwMarch *march,
          gpointer data)
{
  Look *look = data;
  const GArray *wants = look->search->wants;
  g_autoptr (LwPlan) plan = lw_chance_plan (&look->chance, look->search->luck + i * look->search->n_dims);
  g_autoptr (LwTrack) track = NULL;
  double sum = 0;

  look->inside[i] = FALSE;
  look->missed[i] = log1p (MOST_MISSED);
  if (plan == NULL)
    return;
  track = lw_plan_march (plan, march, (LwSampling) { .samples = 1 });
  if (track->failure.failed)
    return;

  look->inside[i] = TRUE;
  for (guint k = 0; k < wants->len; k++)
    {
      const LwWant *want = &g_array_index (wants, LwWant, k);
      LwOutcome end = lw_track_end (track, want->step, -1);
      double value = lw_quantity_of (want->of, &end);
      double off = fmax (fmax (value - want->high, want->low - value), 0) / lw_want_tolerance (want->of);

      look->inside[i] &= lw_want_holds (want, value);
      sum += want->weight * want->weight * off * off;
    }
  look->missed[i] = log1p (fmin (sum, MOST_MISSED));
}

/* Marches the samples of `season`'s batch; fills `inside` of n. FALSE if cancelled. */
static gboolean
look_at (Search   *search,
         LwSeason *season,
         gboolean *inside,
         Score    *score)
{
  LwMany many = { .threads = search->ask->threads, .tolerance = LW_SPREAD_TOLERANCE };
  g_autofree double *missed = g_new (double, search->n);
  Look look = { .search = search, .inside = inside, .missed = missed };
  gboolean done;

  lw_chance_init (&look.chance, season, search->batch, search->ask->varies);
  /* A choice that takes away a source, such as the sun, would meet other luck. */
  done = look.chance.n_dims == search->n_dims && lw_many_run (&many, search->n, look_one, &look, search->cancellable);
  lw_chance_clear (&look.chance);

  *score = (Score) { 0 };
  for (guint i = 0; done && i < search->n; i++)
    {
      score->inside += inside[i];
      score->missed += missed[i] / search->n;
    }

  return done;
}

static gboolean
is_better (const Score *a,
           const Score *b)
{
  if (a->inside != b->inside)
    return a->inside > b->inside;

  return a->missed < NEARER * b->missed;
}

/* Looks at `next` (transfer full) (nullable) and keeps it where it is better. */
static gboolean
try_season (Search    *search,
            LwSeason  *next,
            LwSeason **best,
            Score     *score)
{
  g_autofree gboolean *inside = g_new (gboolean, search->n);
  g_autoptr (LwSeason) season = next;
  Score now;

  if (season == NULL || search->looked >= LW_STEADIER_MOST || g_cancellable_is_cancelled (search->cancellable))
    return FALSE;

  search->looked++;
  if (search->ask->progress != NULL)
    search->ask->progress (search->looked, LW_STEADIER_MOST, search->ask->progress_data);
  if (!look_at (search, season, inside, &now) || !is_better (&now, score))
    return FALSE;

  *score = now;
  lw_season_unref (*best);
  *best = g_steal_pointer (&season);

  return TRUE;
}

/* (transfer full) NULL where there is no room for it. */
static LwSeason *
moved (LwSeason       *season,
       guint           batch,
       const LwHandle *handle,
       double          notches)
{
  const LwStep *step = &season->batches[batch]->steps[handle->step];
  double value = lw_step_get (step, handle->setting);
  double notch = handle->setting == LW_SET_MINUTES ? lw_minutes_notch (value, FALSE)
                                                   : lw_setting_row (handle->setting)->notch;
  double next = lw_kind_snap (step->kind, handle->setting, value + notches * notch, FALSE);

  return next != value ? lw_edit_set (season, batch, handle->step, handle->setting, next) : NULL;
}

/* One round over all settings; whether any was moved. */
static gboolean
round_by (Search       *search,
          const GArray *free,
          double        notches,
          LwSeason    **best,
          Score        *score)
{
  gboolean any = FALSE;

  for (guint i = 0; i < free->len; i++)
    for (int way = 0; way < 2; way++)
      {
        const LwHandle *handle = &g_array_index (free, LwHandle, i);
        gboolean gone = FALSE;

        while (try_season (search, moved (*best, search->batch, handle, way == 0 ? notches : -notches), best, score))
          gone = TRUE;
        any |= gone;
        if (gone)
          break;
      }

  return any;
}

/* (transfer full) NULL if cancelled. */
static LwSeason *
search_from (Search       *search,
             LwSeason     *season,
             const GArray *free)
{
  g_autofree gboolean *inside = g_new (gboolean, search->n);
  g_autoptr (LwSeason) best = lw_season_ref (season);
  Score score;

  if (!look_at (search, season, inside, &score))
    return NULL;

  /* Where the aims are missed by the batch as planned, that is mended first. */
  if (free->len <= LW_REACH_FREE)
    {
      g_autoptr (LwReached) reached = lw_reach (season, search->batch, search->wants, free, NULL, search->cancellable);

      if (reached != NULL && reached->season != season)
        try_season (search, lw_season_ref (reached->season), &best, &score);
    }

  for (double notches = WIDEST; notches >= 1; notches /= 2)
    while (score.inside < search->n && round_by (search, free, notches, &best, &score))
      continue;

  return g_cancellable_is_cancelled (search->cancellable) ? NULL : g_steal_pointer (&best);
}

/* Both on the same fresh luck. FALSE if cancelled. */
static gboolean
judge (Search     *search,
       LwSeason   *before,
       LwSeason   *after,
       LwSteadier *steadier)
{
  g_autofree gboolean *was = g_new (gboolean, search->n), *is = g_new (gboolean, search->n);
  Score old, new;
  guint changed = 0;
  double gain;

  if (!look_at (search, before, was, &old) || !look_at (search, after, is, &new))
    return FALSE;

  for (guint i = 0; i < search->n; i++)
    changed += was[i] != is[i];
  steadier->samples = search->n;
  steadier->before = (double) old.inside / search->n;
  steadier->after = (double) new.inside / search->n;
  gain = steadier->after - steadier->before;
  steadier->gain_se = sqrt (fmax ((double) changed / search->n - gain * gain, 0) / search->n);
  steadier->better = gain > SURE * steadier->gain_se && gain > 0;

  return TRUE;
}

static void
take_luck (Search *search,
           guint   n,
           guint32 seed)
{
  g_free (search->luck);
  search->n = n;
  search->luck = lw_design_new (n, search->n_dims, seed);
}

LwSteadier *
lw_steadier_new (LwSeason          *season,
                 guint              batch,
                 const LwSpreadAsk *ask,
                 const GArray      *free,
                 GCancellable      *cancellable)
{
  g_autoptr (GArray) wants = lw_wants_of_aims (season->batches[batch]);
  g_autoptr (LwReached) nominal = NULL;
  g_autoptr (LwSteadier) steadier = g_new0 (LwSteadier, 1);
  g_autoptr (LwSeason) found = NULL;
  Search search = { .batch = batch, .ask = ask, .wants = wants, .cancellable = cancellable };
  LwChance chance;
  gboolean judged;

  steadier->season = lw_season_ref (season);
  nominal = wants->len > 0 ? lw_reach_judge (season, batch, wants) : NULL;
  if (nominal == NULL)
    return NULL;

  lw_chance_init (&chance, season, batch, ask->varies);
  search.n_dims = chance.n_dims;
  lw_chance_clear (&chance);

  take_luck (&search, LW_STEADIER_SAMPLES, ask->seed);
  found = search_from (&search, season, free);
  take_luck (&search, LW_STEADIER_FRESH, ask->seed ^ 0x55555555u);
  judged = found != NULL && judge (&search, season, found, steadier);
  g_free (search.luck);
  if (!judged)
    return NULL;

  steadier->looked = search.looked;
  if (steadier->better)
    {
      lw_season_unref (steadier->season);
      steadier->season = g_steal_pointer (&found);
    }
  if (ask->progress != NULL)
    ask->progress (LW_STEADIER_MOST, LW_STEADIER_MOST, ask->progress_data);

  return g_steal_pointer (&steadier);
}

void
lw_steadier_free (LwSteadier *steadier)
{
  lw_season_unref (steadier->season);
  g_free (steadier);
}

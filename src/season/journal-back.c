/* What a journal has put back into its season: how the two stand to each other, and how they come together. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/journal.h"

#include "season/correction.h"
#include "season/document.h"
#include "season/lesson.h"
#include "season/weigh-in.h"

static int
place_of (const LwSeason       *season,
          const LwJournalEntry *entry)
{
  int at = lw_season_batch (season, entry->name);

  return at >= 0 ? at : lw_season_batch (season, entry->kept->batches[0]->name);
}

/* Whether the document says the same of the two. */
static gboolean
is_same (const LwBatch *a,
         const LwBatch *b)
{
  g_autofree char *one = lw_journal_digest (a), *two = lw_journal_digest (b);

  return g_str_equal (one, two);
}

LwJournalStand
lw_journal_stand (const LwSeason       *season,
                  const LwJournalEntry *entry)
{
  int at = place_of (season, entry);
  g_autofree char *digest = at >= 0 ? lw_journal_digest (season->batches[at]) : NULL;

  if (at >= 0 && is_same (season->batches[at], entry->kept->batches[0]))
    return LW_JOURNAL_SAME;
  if (g_strcmp0 (digest, entry->base) == 0)
    return LW_JOURNAL_AHEAD;

  return at >= 0 ? LW_JOURNAL_APART : LW_JOURNAL_NO_BATCH;
}

static gboolean
has (const LwBatch   *batch,
     guint            step,
     const LwWeighIn *weigh_in)
{
  for (guint i = 0; batch != NULL && step < batch->n_steps && i < batch->steps[step].n_weigh_ins; i++)
    if (lw_weigh_in_same (&batch->steps[step].weigh_ins[i], weigh_in))
      return TRUE;

  return FALSE;
}

static guint
count_new (const LwBatch *batch,
           const LwBatch *kept)
{
  guint n = 0;

  for (guint step = 0; step < kept->n_steps; step++)
    for (guint i = 0; i < kept->steps[step].n_weigh_ins; i++)
      n += !has (batch, step, &kept->steps[step].weigh_ins[i]);

  return n;
}

/* A correction is of so many parts as the leaf had; one of another leaf could not be saved. */
static void
drop_unfit (LwBatch        *own,
            const LwSeason *season)
{
  const LwProfile *leaf = lw_season_profile (season, own->leaf);

  for (guint i = 0; i < own->n_steps; i++)
    if (own->steps[i].correction != NULL && (leaf == NULL || own->steps[i].correction->jump->n_parts != leaf->n_parts))
      lw_batch_set_correction (own, i, NULL);
}

LwSeason *
lw_journal_put_back (const LwSeason       *season,
                     const LwJournalEntry *entry,
                     guint                *batch,
                     guint                *n_entries,
                     gboolean             *no_weather,
                     gboolean             *changed)
{
  LwSeason *next = lw_season_copy (season);
  LwBatch *own = lw_batch_copy (entry->kept->batches[0]);
  int at = place_of (season, entry);

  if (lw_season_profile (season, own->leaf) == NULL)
    for (guint i = 0; i < entry->kept->n_profiles; i++)
      lw_season_put_profile (next, lw_profile_ref (entry->kept->profiles[i]));
  *no_weather = own->weather != NULL && lw_season_weather (season, own->weather) == NULL;
  if (*no_weather)
    g_clear_pointer (&own->weather, g_free);

  drop_unfit (own, next);

  /* Another batch may have that name by now. */
  if (at >= 0 && lw_season_batch (season, own->name) >= 0 && lw_season_batch (season, own->name) != at)
    {
      g_free (own->name);
      own->name = g_strdup (season->batches[at]->name);
    }

  *n_entries = count_new (at >= 0 ? season->batches[at] : NULL, own);
  *batch = at >= 0 ? (guint) at : season->n_batches;
  if (at >= 0 && !g_str_equal (season->batches[at]->name, own->name))
    lw_season_lessons_follow (next, season->batches[at]->name, own->name);
  if (at >= 0)
    lw_season_put_batch (next, *batch, own);
  else
    lw_season_insert_batch (next, *batch, own);
  *changed = at < 0 || !is_same (season->batches[at], own);

  return next;
}

/* Steps that have begun, and the one under way. */
static guint
count_begun (const LwJournalEntry *entry)
{
  return MIN (entry->run.step + 1, entry->kept->batches[0]->n_steps);
}

/* Whether what was done and measured has a place in the steps of `batch`. */
static gboolean
has_place (const LwBatch        *batch,
           const LwJournalEntry *entry)
{
  const LwBatch *kept = entry->kept->batches[0];

  for (guint i = 0; i < kept->n_steps; i++)
    if ((i < count_begun (entry) || kept->steps[i].n_weigh_ins > 0)
        && (i >= batch->n_steps || batch->steps[i].kind != kept->steps[i].kind))
      return FALSE;

  return TRUE;
}

static double
last_minute (const LwStep *step)
{
  return step->n_weigh_ins > 0 ? step->weigh_ins[step->n_weigh_ins - 1].minute : 0;
}

/* The step as it was done so far: its time once it has ended, or where more was measured than it would last. */
static void
take_step (LwBatch              *own,
           const LwJournalEntry *entry,
           guint                 step)
{
  const LwStep *kept = &entry->kept->batches[0]->steps[step];
  double minutes = lw_step_get (kept, LW_SET_MINUTES);
  gboolean ended = step < entry->run.step || (!entry->run.on && step < count_begun (entry));

  if (ended || last_minute (kept) > lw_step_get (&own->steps[step], LW_SET_MINUTES))
    lw_step_set (&own->steps[step], LW_SET_MINUTES, minutes);
  for (guint i = 0; i < kept->n_weigh_ins; i++)
    if (!has (own, step, &kept->weigh_ins[i]))
      lw_batch_place_weigh_in (own, step, &kept->weigh_ins[i]);
  if (kept->correction != NULL)
    lw_batch_set_correction (own, step, lw_correction_ref (kept->correction));
}

/* A batch has one correction at most: the run's takes the place of the file's. */
static void
make_way (LwBatch       *own,
          const LwBatch *kept)
{
  for (guint i = 0; i < kept->n_steps; i++)
    if (kept->steps[i].correction != NULL)
      {
        lw_batch_drop_corrections (own);
        return;
      }
}

/* Whether a file can hold it. */
static gboolean
is_in_bounds (const LwBatch *own)
{
  for (guint i = 0; i < own->n_steps; i++)
    if (own->steps[i].n_weigh_ins > LW_MAX_WEIGH_INS)
      return FALSE;

  return own->n_logs <= LW_MAX_LOGS;
}

LwSeason *
lw_journal_join (const LwSeason       *season,
                 const LwJournalEntry *entry,
                 guint                *batch,
                 guint                *n_entries)
{
  const LwBatch *kept = entry->kept->batches[0];
  int at = place_of (season, entry);
  g_autoptr (LwSeason) next = NULL;
  LwBatch *own;

  if (at < 0 || !has_place (season->batches[at], entry))
    return NULL;

  next = lw_season_own_batch (season, (guint) at, &own);
  *batch = (guint) at;
  *n_entries = count_new (season->batches[at], kept);
  own->when_s = kept->when_s;
  own->made = kept->made;
  if (own->plan == NULL && kept->plan != NULL)
    own->plan = lw_batch_ref (kept->plan);
  make_way (own, kept);
  for (guint i = 0; i < kept->n_steps; i++)
    if (i < count_begun (entry) || kept->steps[i].n_weigh_ins > 0)
      take_step (own, entry, i);
  while (!entry->run.on && own->n_steps > kept->n_steps)
    lw_batch_remove_step (own, own->n_steps - 1);
  for (guint i = 0; i < kept->n_logs; i++)
    if (lw_batch_log (own, kept->logs[i].log->id) == NULL && kept->logs[i].step < (int) own->n_steps)
      lw_batch_add_log (own, (LwBatchLog) { lw_log_ref (kept->logs[i].log), kept->logs[i].step, kept->logs[i].minute });
  drop_unfit (own, next);

  return is_in_bounds (own) ? g_steal_pointer (&next) : NULL;
}

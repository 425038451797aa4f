/* A batch laid over. Five have a colour each; after that lines are thin and grey, and dash and letter tell them apart. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/laid.h"

#include "season/text.h"
#include "study/compare.h"
#include "study/same-kind.h"

LwLaid *
lw_laid_new (LwSeason   *season,
             const char *path,
             guint       at,
             guint       number)
{
  LwLaid *laid = g_new0 (LwLaid, 1);
  const LwBatch *batch = season->batches[at];

  laid->refs = 1;
  laid->number = number;
  laid->path = g_strdup (path);
  laid->season = lw_season_ref (season);
  laid->at = at;
  laid->minutes = g_new (double, MAX (batch->n_steps, 1));
  for (guint i = 0; i < batch->n_steps; i++)
    laid->minutes[i] = lw_step_get (&batch->steps[i], LW_SET_MINUTES);
  laid->columns = g_new (int, MAX (batch->n_steps, 1));

  return laid;
}

LwLaid *
lw_laid_ref (LwLaid *laid)
{
  laid->refs++;

  return laid;
}

void
lw_laid_unref (LwLaid *laid)
{
  if (--laid->refs > 0)
    return;

  for (guint i = 0; i < LW_N_QUANTITIES; i++)
    g_clear_pointer (&laid->curves[i], lw_curves_unref);
  g_clear_pointer (&laid->track, lw_track_unref);
  lw_season_unref (laid->season);
  g_free (laid->path);
  g_free (laid->failure);
  g_free (laid->minutes);
  g_free (laid->columns);
  g_free (laid);
}

const LwBatch *
lw_laid_batch (const LwLaid *laid)
{
  return laid->season->batches[laid->at];
}

gboolean
lw_laid_is (const LwLaid   *laid,
            const LwSeason *season,
            guint           at)
{
  const LwBatch *mine = lw_laid_batch (laid), *batch = season->batches[at];

  return mine == batch && laid->season->altitude_m == season->altitude_m
         && laid->season->latitude_deg == season->latitude_deg
         && lw_season_profile (laid->season, mine->leaf) == lw_season_profile (season, batch->leaf)
         && (mine->weather == NULL
             || lw_season_weather (laid->season, mine->weather) == lw_season_weather (season, batch->weather));
}

gboolean
lw_laid_take (LwLaid       *laid,
              const LwLaid *from)
{
  if (!lw_laid_is (from, laid->season, laid->at) || (from->track == NULL && from->failure == NULL))
    return FALSE;

  laid->track = from->track != NULL ? lw_track_ref (from->track) : NULL;
  laid->failure = g_strdup (from->failure);
  for (guint i = 0; i < LW_N_QUANTITIES; i++)
    laid->curves[i] = from->curves[i] != NULL ? lw_curves_ref (from->curves[i]) : NULL;

  return TRUE;
}

typedef struct
{
  LwSeason *season;
  guint at;
  LwTrack *track;
  char *failure;
  LwLaid *laid; /* the main thread's */
  void (*done) (LwLaid *laid, gpointer data);
} Work;

static void
work_free (Work *work)
{
  lw_season_unref (work->season);
  g_clear_pointer (&work->track, lw_track_unref);
  g_free (work->failure);
  g_free (work);
}

static void
compute (GTask        *task,
         gpointer      source,
         gpointer      data,
         GCancellable *cancellable)
{
  Work *work = data;

  work->track = lw_compare_track (work->season, work->at, &work->failure);
  g_task_return_boolean (task, TRUE);
}

static void
computed_cb (GObject      *source,
             GAsyncResult *result,
             gpointer      data)
{
  Work *work = g_task_get_task_data (G_TASK (result));
  g_autoptr (LwLaid) laid = g_steal_pointer (&work->laid);

  laid->track = g_steal_pointer (&work->track);
  laid->failure = g_steal_pointer (&work->failure);
  work->done (laid, source);
}

void
lw_laid_compute (LwLaid  *laid,
                 void   (*done) (LwLaid *laid, gpointer data),
                 GObject *data)
{
  g_autoptr (GTask) task = g_task_new (data, NULL, computed_cb, NULL);
  Work *work = g_new0 (Work, 1);

  *work = (Work) { .season = lw_season_ref (laid->season), .at = laid->at, .laid = lw_laid_ref (laid), .done = done };
  g_task_set_task_data (task, work, (GDestroyNotify) work_free);
  g_task_run_in_thread (task, compute);
}

void
lw_laid_match (LwLaid        *laid,
               const LwBatch *in_hand)
{
  const LwBatch *batch = lw_laid_batch (laid);

  for (guint i = 0; in_hand == NULL && i < batch->n_steps; i++)
    laid->columns[i] = -1;
  if (in_hand != NULL)
    lw_compare_columns (in_hand, batch, laid->columns);
}

const LwCurves *
lw_laid_curves (LwLaid    *laid,
                LwQuantity of)
{
  if (laid->track != NULL && laid->curves[of] == NULL)
    laid->curves[of] = lw_curves_new (laid->track, of);

  return laid->curves[of];
}

char *
lw_laid_tag (const LwLaid *laid)
{
  return laid->number < 26 ? g_strdup_printf ("%c", 'A' + laid->number) : g_strdup_printf ("%u", laid->number + 1);
}

char *
lw_laid_name (const LwLaid *laid)
{
  const LwBatch *batch = lw_laid_batch (laid);

  /* Translators: the year of another season, and a batch of it */
  return laid->path != NULL ? g_strdup_printf (_ ("%d · %s"), lw_year_of (batch->when_s), batch->name)
                            : g_strdup (batch->name);
}

gboolean
lw_laid_is_thin (const LwLaid *laid)
{
  return laid->number >= LW_N_OVER;
}

LwInk
lw_laid_ink (const LwLaid    *laid,
             const LwPalette *palette)
{
  return lw_laid_is_thin (laid) ? palette->faint : palette->over[laid->number];
}

guint
lw_laid_dash (const LwLaid *laid)
{
  return laid->number + 1;
}

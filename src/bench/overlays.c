/* Which batches lie over. Those of the season in hand are followed through its edits. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/overlays.h"

#include "study/compare.h"

#define DAY_S 86400

struct _LwOverlays
{
  GObject parent_instance;

  LwSession *session;  /* weak: it owns this; NULL when it is gone and a thread still holds on */
  char *path;          /* (nullable) of the season that is followed */
  guint n_batches;     /* it had */
  GPtrArray *chosen;   /* LwLaid */
  GPtrArray *shown;    /* LwLaid */
  GArray *kinds;       /* LwKind of the batch in hand, to which they are matched */
  gint64 when_s;       /* its begin */
  guint stamp;
  gboolean due;        /* a change is to be told when the session's track is that of its season again */
};

G_DEFINE_FINAL_TYPE (LwOverlays, lw_overlays, G_TYPE_OBJECT)

static guint changed_signal;

static gboolean
is_shown (LwOverlays   *self,
          const LwLaid *laid)
{
  return laid->path != NULL || (int) laid->at != lw_session_batch_index (self->session);
}

/* What is shown, and that it is another. */
static void
change (LwOverlays *self)
{
  g_ptr_array_set_size (self->shown, 0);
  for (guint i = 0; i < self->chosen->len; i++)
    if (is_shown (self, self->chosen->pdata[i]))
      g_ptr_array_add (self->shown, lw_laid_ref (self->chosen->pdata[i]));
  g_array_set_size (self->kinds, 0);
  self->stamp++;
  g_signal_emit (self, changed_signal, 0);
}

/* Computing */

typedef struct
{
  LwSeason *season;
  guint at;
  LwTrack *track;
  char *failure;
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
  LwOverlays *self = LW_OVERLAYS (source);
  g_autoptr (LwLaid) laid = data;
  Work *work = g_task_get_task_data (G_TASK (result));

  laid->track = g_steal_pointer (&work->track);
  laid->failure = g_steal_pointer (&work->failure);
  if (self->session != NULL && g_ptr_array_find (self->chosen, laid, NULL))
    change (self);
}

static void
start (LwOverlays *self,
       LwLaid     *laid)
{
  g_autoptr (GTask) task = g_task_new (self, NULL, computed_cb, lw_laid_ref (laid));
  Work *work = g_new0 (Work, 1);

  work->season = lw_season_ref (laid->season);
  work->at = laid->at;
  g_task_set_task_data (task, work, (GDestroyNotify) work_free);
  g_task_run_in_thread (task, compute);
}

/* Choosing */

static int
find (LwOverlays *self,
      const char *path,
      const char *name)
{
  for (guint i = 0; i < self->chosen->len; i++)
    {
      const LwLaid *laid = self->chosen->pdata[i];

      if (g_strcmp0 (laid->path, path) == 0 && g_strcmp0 (lw_laid_batch (laid)->name, name) == 0)
        return (int) i;
    }

  return -1;
}

/* The least number that none has. */
static guint
free_number (LwOverlays *self)
{
  for (guint number = 0;; number++)
    {
      gboolean taken = FALSE;

      for (guint i = 0; i < self->chosen->len; i++)
        taken |= ((const LwLaid *) self->chosen->pdata[i])->number == number;
      if (!taken)
        return number;
    }
}

static int
by_number (const void *a,
           const void *b)
{
  const LwLaid *one = *(LwLaid *const *) a, *other = *(LwLaid *const *) b;

  return one->number < other->number ? -1 : one->number > other->number;
}

void
lw_overlays_lay (LwOverlays *self,
                 LwSeason   *season,
                 const char *path,
                 guint       at,
                 gboolean    on)
{
  int found;

  /* A row of the list may be of an earlier moment of the season. */
  if (path == NULL)
    season = lw_session_season (self->session);
  if (at >= season->n_batches)
    return;
  found = find (self, path, season->batches[at]->name);
  if (on == (found >= 0))
    return;

  if (on)
    {
      LwLaid *laid = lw_laid_new (season, path, at, free_number (self));

      g_ptr_array_add (self->chosen, laid);
      g_ptr_array_sort (self->chosen, by_number);
      start (self, laid);
    }
  else
    {
      g_ptr_array_remove_index (self->chosen, (guint) found);
    }
  change (self);
}

gboolean
lw_overlays_has (LwOverlays *self,
                 const char *path,
                 const char *name)
{
  return find (self, path, name) >= 0;
}

LwLaid *
lw_overlays_get (LwOverlays *self,
                 const char *path,
                 const char *name)
{
  int found = find (self, path, name);

  return found >= 0 ? self->chosen->pdata[found] : NULL;
}

void
lw_overlays_clear (LwOverlays *self)
{
  if (self->chosen->len == 0)
    return;

  g_ptr_array_set_size (self->chosen, 0);
  change (self);
}

guint
lw_overlays_chosen (LwOverlays *self)
{
  return self->chosen->len;
}

guint
lw_overlays_n (LwOverlays *self)
{
  return self->shown->len;
}

LwLaid *
lw_overlays_nth (LwOverlays *self,
                 guint       i)
{
  return self->shown->pdata[i];
}

/* Following the season in hand */

static gboolean
same_kinds (LwOverlays    *self,
            const LwBatch *batch)
{
  if (batch == NULL || self->kinds->len != batch->n_steps || self->when_s != batch->when_s)
    return FALSE;

  for (guint i = 0; i < batch->n_steps; i++)
    if (g_array_index (self->kinds, LwKind, i) != batch->steps[i].kind)
      return FALSE;

  return TRUE;
}

guint
lw_overlays_stamp (LwOverlays *self)
{
  const LwBatch *batch = lw_session_batch (self->session);

  if (self->shown->len == 0 || same_kinds (self, batch))
    return self->stamp;

  g_array_set_size (self->kinds, 0);
  for (guint i = 0; batch != NULL && i < batch->n_steps; i++)
    g_array_append_val (self->kinds, batch->steps[i].kind);
  self->when_s = batch != NULL ? batch->when_s : 0;
  for (guint i = 0; i < self->shown->len; i++)
    lw_laid_match (self->shown->pdata[i], batch);

  return ++self->stamp;
}

static gint64
time_of_day (gint64 when_s)
{
  return ((when_s % DAY_S) + DAY_S) % DAY_S;
}

double
lw_overlays_begins (LwOverlays *self,
                    LwLaid     *laid)
{
  const LwBatch *batch = lw_session_batch (self->session);

  return batch == NULL ? 0 : (double) (time_of_day (lw_laid_batch (laid)->when_s) - time_of_day (batch->when_s)) / 60;
}

/* Where the batch is in the season now: as it was, by its name, or, renamed, in its place; -1 if it is gone. */
static int
place_now (LwOverlays     *self,
           const LwLaid   *laid,
           const LwSeason *season,
           gboolean        same_file)
{
  const LwBatch *batch = lw_laid_batch (laid);

  for (guint i = 0; i < season->n_batches; i++)
    if (season->batches[i] == batch)
      return (int) i;
  if (!same_file)
    return -1;
  if (lw_season_batch (season, batch->name) >= 0)
    return lw_season_batch (season, batch->name);

  return season->n_batches == self->n_batches ? (int) laid->at : -1;
}

/* The track stays where it is still that of the batch. */
static LwLaid *
renewed (LwOverlays *self,
         LwLaid     *laid,
         LwSeason   *season,
         guint       at)
{
  LwLaid *now = lw_laid_new (season, NULL, at, laid->number);

  if (lw_laid_is (laid, season, at) && (laid->track != NULL || laid->failure != NULL))
    {
      now->track = laid->track != NULL ? lw_track_ref (laid->track) : NULL;
      now->failure = g_strdup (laid->failure);
      for (guint i = 0; i < LW_N_QUANTITIES; i++)
        now->curves[i] = laid->curves[i] != NULL ? lw_curves_ref (laid->curves[i]) : NULL;
    }
  else
    {
      start (self, now);
    }

  return now;
}

static void
season_cb (LwOverlays *self)
{
  LwSeason *season = lw_session_season (self->session);
  const char *path = lw_session_path (self->session);
  gboolean same_file = g_strcmp0 (path, self->path) == 0;
  g_autoptr (GPtrArray) before = g_steal_pointer (&self->chosen);

  self->chosen = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_laid_unref);
  for (guint i = 0; i < before->len; i++)
    {
      LwLaid *laid = before->pdata[i];
      int at = laid->path == NULL ? place_now (self, laid, season, same_file) : -1;

      if (laid->path != NULL || (at >= 0 && laid->season == season))
        g_ptr_array_add (self->chosen, lw_laid_ref (laid));
      else if (at >= 0)
        g_ptr_array_add (self->chosen, renewed (self, laid, season, (guint) at));
    }
  if (!same_file)
    {
      g_free (self->path);
      self->path = g_strdup (path);
    }
  self->n_batches = season->n_batches;
  self->due |= before->len > 0;
}

static void
track_cb (LwOverlays *self)
{
  if (!self->due)
    return;

  self->due = FALSE;
  change (self);
}

static void
lw_overlays_finalize (GObject *object)
{
  LwOverlays *self = LW_OVERLAYS (object);

  g_clear_weak_pointer (&self->session);
  g_free (self->path);
  g_ptr_array_unref (self->chosen);
  g_ptr_array_unref (self->shown);
  g_array_unref (self->kinds);

  G_OBJECT_CLASS (lw_overlays_parent_class)->finalize (object);
}

static void
lw_overlays_class_init (LwOverlaysClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = lw_overlays_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
lw_overlays_init (LwOverlays *self)
{
  self->chosen = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_laid_unref);
  self->shown = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_laid_unref);
  self->kinds = g_array_new (FALSE, FALSE, sizeof (LwKind));
}

LwOverlays *
lw_overlays_of (LwSession *session)
{
  LwOverlays *self = g_object_get_data (G_OBJECT (session), "overlays");

  if (self != NULL)
    return self;

  self = g_object_new (LW_TYPE_OVERLAYS, NULL);
  g_set_weak_pointer (&self->session, session);
  g_object_set_data_full (G_OBJECT (session), "overlays", self, g_object_unref);
  g_signal_connect_object (session, "season", G_CALLBACK (season_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);

  return self;
}

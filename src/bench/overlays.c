/* Which batches lie over: choosing, computing, matching. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/overlays-private.h"

#include "season/same-file.h"
#include "study/compare.h"

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

static void
computed_cb (LwLaid  *laid,
             gpointer data)
{
  LwOverlays *self = LW_OVERLAYS (data);

  if (self->session != NULL && g_ptr_array_find (self->chosen, laid, NULL))
    change (self);
}

void
lw_overlays_start (LwOverlays *self,
                   LwLaid     *laid)
{
  lw_laid_compute (laid, computed_cb, G_OBJECT (self));
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

      if ((path == NULL ? laid->path == NULL : lw_same_file (laid->path, path)) && g_strcmp0 (lw_laid_batch (laid)->name, name) == 0)
        return (int) i;
    }

  return -1;
}

guint
lw_overlays_number (LwOverlays *self,
                    guint       number)
{
  for (guint next = 0;; number = next++)
    {
      gboolean taken = FALSE;

      for (guint i = 0; i < self->chosen->len; i++)
        taken |= ((const LwLaid *) self->chosen->pdata[i])->number == number;
      if (!taken)
        return number;
    }
}

int
lw_overlays_by_number (const void *a,
                       const void *b)
{
  const LwLaid *one = *(LwLaid *const *) a, *other = *(LwLaid *const *) b;

  return one->number < other->number ? -1 : one->number > other->number;
}

/* Whether it was read when `season` was; the season in hand is followed anyway. */
static gboolean
is_of (const LwLaid   *laid,
       const LwSeason *season)
{
  return laid->path == NULL || laid->season == season;
}

/* Its file was read again meanwhile. */
static void
read_anew (LwOverlays *self,
           guint       i,
           LwSeason   *season,
           guint       at)
{
  const LwLaid *before = self->chosen->pdata[i];
  LwLaid *laid = lw_laid_new (season, before->path, at, before->number);

  lw_laid_unref (self->chosen->pdata[i]);
  self->chosen->pdata[i] = laid;
  lw_overlays_start (self, laid);
}

guint
lw_overlays_read_anew (LwOverlays *self,
                       LwSeason   *season,
                       const char *path)
{
  guint missed = 0;

  for (guint i = 0; self->session != NULL && i < self->chosen->len; i++)
    {
      const LwLaid *laid = self->chosen->pdata[i];
      int at = lw_same_file (laid->path, path) ? lw_season_batch (season, lw_laid_batch (laid)->name) : -1;

      if (at >= 0)
        read_anew (self, i, season, (guint) at);
      else
        missed += lw_same_file (laid->path, path);
    }
  if (self->session != NULL)
    change (self);

  return missed;
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
  if (on ? found >= 0 && is_of (self->chosen->pdata[found], season) : found < 0)
    return;

  if (on && found >= 0)
    {
      read_anew (self, (guint) found, season, at);
    }
  else if (on)
    {
      LwLaid *laid = lw_laid_new (season, path, at, lw_overlays_number (self, 0));

      g_ptr_array_add (self->chosen, laid);
      g_ptr_array_sort (self->chosen, lw_overlays_by_number);
      lw_overlays_start (self, laid);
    }
  else
    {
      g_ptr_array_remove_index (self->chosen, (guint) found);
    }
  change (self);
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
  g_ptr_array_set_size (self->gone, 0);
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

double
lw_overlays_begins (LwOverlays *self,
                    LwLaid     *laid)
{
  const LwBatch *batch = lw_session_batch (self->session);

  return batch == NULL ? 0 : lw_compare_begins (batch, lw_laid_batch (laid)) / 60;
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
  g_ptr_array_unref (self->gone);
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
  self->gone = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_laid_unref);
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
  g_signal_connect_object (session, "season", G_CALLBACK (lw_overlays_follow), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "track", G_CALLBACK (track_cb), self, G_CONNECT_SWAPPED);

  return self;
}

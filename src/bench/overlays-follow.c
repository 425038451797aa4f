/* What lies over of the season in hand stays with its batch: when that is edited, renamed, moved, removed, or brought
 * back by undo, and when the season itself is another. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/overlays-private.h"

#include "season/same-file.h"

/* Its very batch; -1: none. */
static int
place_of (const LwSeason *season,
          const LwBatch  *batch)
{
  for (guint i = 0; i < season->n_batches; i++)
    if (season->batches[i] == batch)
      return (int) i;

  return -1;
}

/* Where the batch is in the season now: as it was, by its name, or, renamed, in its place; -1 if it is gone. */
static int
place_now (LwOverlays     *self,
           const LwLaid   *laid,
           const LwSeason *season,
           gboolean        same_file)
{
  int at = place_of (season, lw_laid_batch (laid));

  if (at >= 0 || !same_file)
    return at;
  if (lw_season_batch (season, lw_laid_batch (laid)->name) >= 0)
    return lw_season_batch (season, lw_laid_batch (laid)->name);

  return season->n_batches == self->n_batches ? (int) laid->at : -1;
}

/* The track stays where it is still that of the batch. */
static LwLaid *
renewed (LwOverlays *self,
         LwLaid     *laid,
         LwSeason   *season,
         guint       at)
{
  LwLaid *now = lw_laid_new (season, NULL, at, lw_overlays_number (self, laid->number));

  if (!lw_laid_take (now, laid))
    lw_overlays_start (self, now);

  return now;
}

/* One of those that lay over, in the season as it is now. */
static void
follow (LwOverlays *self,
        LwLaid     *laid,
        LwSeason   *season,
        gboolean    same_file)
{
  /* The other season may have been opened. */
  gboolean other = laid->path != NULL && !lw_same_file (laid->path, self->path);
  int at = laid->path == NULL ? place_now (self, laid, season, same_file)
                              : lw_season_batch (season, lw_laid_batch (laid)->name);

  if (other || (at >= 0 && laid->path == NULL && laid->season == season))
    g_ptr_array_add (self->chosen, lw_laid_ref (laid));
  else if (at >= 0)
    g_ptr_array_add (self->chosen, renewed (self, laid, season, (guint) at));
  else if (same_file)
    g_ptr_array_add (self->gone, lw_laid_ref (laid));
}

static void
bring_back (LwOverlays *self,
            LwSeason   *season)
{
  for (guint i = self->gone->len; i-- > 0;)
    {
      LwLaid *laid = self->gone->pdata[i];
      int at = place_of (season, lw_laid_batch (laid));

      if (at < 0)
        continue;

      g_ptr_array_add (self->chosen, renewed (self, laid, season, (guint) at));
      g_ptr_array_remove_index (self->gone, i);
    }
}

/* Without a file, one that nothing was done in has just been opened. */
static gboolean
is_same_season (LwOverlays *self)
{
  const char *path = lw_session_path (self->session);

  return g_strcmp0 (path, self->path) == 0
         && (path != NULL || lw_session_undo_label (self->session) != NULL || lw_session_redo_label (self->session) != NULL);
}

void
lw_overlays_follow (LwOverlays *self)
{
  LwSeason *season = lw_session_season (self->session);
  const char *path = lw_session_path (self->session);
  gboolean same_file = is_same_season (self);
  g_autoptr (GPtrArray) before = g_steal_pointer (&self->chosen);

  if (!same_file)
    {
      g_free (self->path);
      self->path = g_strdup (path);
      g_ptr_array_set_size (self->gone, 0);
    }
  self->chosen = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_laid_unref);
  self->due |= before->len > 0 || self->gone->len > 0;
  for (guint i = 0; i < before->len; i++)
    follow (self, before->pdata[i], season, same_file);
  bring_back (self, season);
  g_ptr_array_sort (self->chosen, lw_overlays_by_number);
  self->n_batches = season->n_batches;
}

/* The finder. Its threads get values and give values back; only the main loop touches the finder itself. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/finder-private.h"

#include "season/shelf.h"

#define REFILL_MS 150 /* between pictures of a search under way, */
#define REST 4        /* or so many times what the last one took: the window is not only for pictures */

G_DEFINE_FINAL_TYPE (LwFinder, lw_finder, G_TYPE_OBJECT)

static guint changed_signal;

static void
lw_finder_dispose (GObject *object)
{
  LwFinder *self = LW_FINDER (object);

  if (self->cancel != NULL)
    lw_finder_leave (self);
  if (self->outcomes != NULL)
    lw_finder_keep_now (self);
  g_clear_handle_id (&self->refill, g_source_remove);
  g_clear_pointer (&self->all, g_ptr_array_unref);
  g_clear_pointer (&self->files, g_ptr_array_unref);
  g_clear_pointer (&self->kept, g_hash_table_unref);
  g_clear_pointer (&self->outcomes, lw_outcome_cache_unref);
  g_clear_pointer (&self->wanted, g_hash_table_unref);
  g_clear_pointer (&self->season, lw_season_unref);
  g_clear_pointer (&self->folder, g_free);
  g_clear_object (&self->shown);
  lw_find_clear (&self->find);

  G_OBJECT_CLASS (lw_finder_parent_class)->dispose (object);
}

static void
lw_finder_class_init (LwFinderClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = lw_finder_dispose;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
lw_finder_init (LwFinder *self)
{
  g_autofree char *path = lw_outcome_cache_path ();

  self->all = g_ptr_array_new_with_free_func (g_object_unref);
  self->files = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_shelved_unref);
  self->kept = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify) lw_shelved_unref);
  self->outcomes = lw_outcome_cache_new (path);
  self->wanted = g_hash_table_new (NULL, NULL);
  self->shown = g_list_store_new (LW_TYPE_FOUND);
  self->cancel = g_cancellable_new ();
  lw_find_init (&self->find);
}

LwFinder *
lw_finder_new (void)
{
  return g_object_new (LW_TYPE_FINDER, NULL);
}

static int
compare (gconstpointer a,
         gconstpointer b,
         gpointer      data)
{
  LwFound *one = *(LwFound *const *) a, *other = *(LwFound *const *) b;
  const LwHead *head = lw_found_head (one), *other_head = lw_found_head (other);
  int way = lw_find_compare (data, head, lw_found_outcome (one), other_head, lw_found_outcome (other));

  /* Else as they lie in the folder, whichever thread was first. */
  if (way == 0)
    way = g_strcmp0 (lw_found_path (one), lw_found_path (other));

  return way != 0 ? way : (head->index > other_head->index) - (head->index < other_head->index);
}

static gboolean
shows_at (LwFinder *self,
          guint     at,
          gpointer  found)
{
  g_autoptr (LwFound) there = g_list_model_get_item (G_LIST_MODEL (self->shown), at);

  return there == found;
}

/* What is the same at the beginning and at the end stays as it is: rows in view are dear. */
static void
show (LwFinder        *self,
      const GPtrArray *found)
{
  guint n = g_list_model_get_n_items (G_LIST_MODEL (self->shown)), both = MIN (n, found->len), first = 0, last = 0;

  while (first < both && shows_at (self, first, g_ptr_array_index (found, first)))
    first++;
  while (first + last < both && shows_at (self, n - 1 - last, g_ptr_array_index (found, found->len - 1 - last)))
    last++;
  if (first + last < MAX (n, found->len))
    g_list_store_splice (self->shown, first, n - first - last, found->pdata + first, found->len - first - last);
}

static gboolean
refill_cb (gpointer data)
{
  LwFinder *self = data;
  g_autoptr (GPtrArray) found = g_ptr_array_sized_new (self->all->len);
  gint64 begin = g_get_monotonic_time ();

  self->refill = 0;
  self->later = 0;
  for (guint i = 0; i < self->all->len; i++)
    {
      LwFound *of = g_ptr_array_index (self->all, i);
      LwFindAnswer answer = lw_find_match (&self->find, lw_found_head (of), lw_found_outcome (of));

      if (answer == LW_FIND_YES)
        g_ptr_array_add (found, of);
      self->later += answer == LW_FIND_LATER && lw_found_state (of) != LW_FOUND_FAILED;
    }
  g_ptr_array_sort_with_data (found, compare, &self->sort);
  show (self, found);
  g_signal_emit (self, changed_signal, 0);
  self->refill_ms = (guint) ((g_get_monotonic_time () - begin) / 1000);
  lw_finder_compute (self);

  return G_SOURCE_REMOVE;
}

void
lw_finder_turned (LwFinder *self)
{
  if (self->refill == 0)
    self->refill = g_timeout_add (MAX (REFILL_MS, REST * self->refill_ms), refill_cb, self);
}

static void
refill_now (LwFinder *self)
{
  g_clear_handle_id (&self->refill, g_source_remove);
  refill_cb (self);
}

void
lw_finder_add_heads (LwFinder        *self,
                     const GPtrArray *heads,
                     const char      *path)
{
  for (guint i = 0; i < heads->len; i++)
    {
      LwFound *found = lw_found_new (g_ptr_array_index (heads, i), path);

      lw_finder_recall (self, found);
      g_ptr_array_add (self->all, found);
    }
}

void
lw_finder_leave (LwFinder *self)
{
  g_cancellable_cancel (self->cancel);
  g_clear_object (&self->cancel);
  self->listing = FALSE;
  for (guint i = 0; self->computing > 0 && i < self->all->len; i++)
    if (lw_found_state (g_ptr_array_index (self->all, i)) == LW_FOUND_ASKED)
      lw_found_tell (g_ptr_array_index (self->all, i), LW_FOUND_LATER, NULL);
  self->computing = 0;
  self->cursor = 0;
}

void
lw_finder_clear (LwFinder *self)
{
  g_hash_table_remove_all (self->wanted);
  g_ptr_array_set_size (self->all, 0);
  self->cursor = 0;
}

void
lw_finder_season (LwFinder *self,
                  LwSeason *season)
{
  g_autoptr (GPtrArray) heads = lw_heads_new (season);

  lw_finder_leave (self);
  self->cancel = g_cancellable_new ();
  lw_season_ref (season);
  g_clear_pointer (&self->season, lw_season_unref);
  self->season = season;
  g_clear_pointer (&self->folder, g_free);
  g_ptr_array_set_size (self->files, 0);
  self->n_read = self->n_broken = 0;
  lw_finder_clear (self);
  lw_finder_add_heads (self, heads, NULL);
  lw_finder_remember (self);
  refill_now (self);
}

void
lw_finder_ask (LwFinder     *self,
               LwFind       *find,
               const LwSort *sort)
{
  lw_find_clear (&self->find);
  self->find = *find;
  lw_find_init (find);
  self->sort = *sort;
  self->stopped = FALSE;
  self->cursor = 0;
  refill_now (self);
}

const char *
lw_finder_where (LwFinder *self)
{
  return self->folder;
}

GListModel *
lw_finder_found (LwFinder *self)
{
  return G_LIST_MODEL (self->shown);
}

LwFinderState
lw_finder_state (LwFinder *self)
{
  LwFinderState state = {
    .listing = self->listing, .files = self->files->len, .read = self->n_read, .broken = self->n_broken,
    .batches = self->all->len, .later = self->later,
  };

  for (guint i = 0; i < self->all->len; i++)
    state.asked += lw_finder_wants (self, g_ptr_array_index (self->all, i));

  return state;
}

GStrv
lw_finder_problems (LwFinder *self)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  for (guint i = 0; i < self->files->len; i++)
    {
      const LwShelved *file = g_ptr_array_index (self->files, i);
      g_autofree char *shown = g_filename_display_name (file->path), *line = NULL;

      if (file->problems == NULL)
        continue;
      line = lw_problem_text (g_ptr_array_index (file->problems, 0), shown);
      g_strv_builder_add (lines, line);
    }

  return g_strv_builder_end (lines);
}

void
lw_finder_stop (LwFinder *self)
{
  self->stopped = TRUE;
  lw_finder_turned (self);
}

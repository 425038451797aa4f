/* Last year's batch of the same kind. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/last-year.h"

#include <string.h>

#include "season/document.h"
#include "season/same-file.h"
#include "season/shipped.h"
#include "season/text.h"
#include "season/wording.h"

#define MOST_FILES 200 /* of a folder */

typedef struct
{
  LwSeason *season;
  guint batch;
  char *path; /* (nullable) */
} Asked;

static void
asked_free (Asked *asked)
{
  lw_season_unref (asked->season);
  g_free (asked->path);
  g_free (asked);
}

void
lw_last_year_free (LwLastYear *last)
{
  g_clear_pointer (&last->season, lw_season_unref);
  g_free (last->path);
  g_free (last);
}

static int
by_name (const void *a,
         const void *b)
{
  return strcmp (*(char *const *) a, *(char *const *) b);
}

/* (transfer full) paths of the season files in the folder, by name. */
static GPtrArray *
files_in (const char *folder)
{
  GPtrArray *paths = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && paths->len < MOST_FILES && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, LW_SEASON_SUFFIX))
      g_ptr_array_add (paths, g_build_filename (folder, name, NULL));
  g_ptr_array_sort (paths, by_name);

  return paths;
}

/* A season that is in no file yet has nothing beside it; if it began as the demo, the demo's other seasons are. */
static gboolean
belongs (const Asked    *asked,
         const LwSeason *season)
{
  return asked->path != NULL || (season->place != NULL && g_strcmp0 (season->place, asked->season->place) == 0);
}

static void
look (GTask        *task,
      gpointer      source,
      gpointer      data,
      GCancellable *cancellable)
{
  const Asked *asked = data;
  LwLastYear *last = g_new0 (LwLastYear, 1);
  g_autofree char *shipped = lw_shipped_path (LW_SHIPPED_TEAS);
  g_autofree char *folder = g_path_get_dirname (asked->path != NULL ? asked->path : shipped);
  g_autoptr (GPtrArray) files = files_in (folder), of = g_ptr_array_new ();
  g_autoptr (GPtrArray) seasons = g_ptr_array_new_with_free_func ((GDestroyNotify) lw_season_unref);

  g_ptr_array_add (seasons, lw_season_ref (asked->season));
  g_ptr_array_add (of, NULL);
  for (guint i = 0; i < files->len; i++)
    {
      g_autoptr (GPtrArray) problems = lw_problems_new ();
      g_autoptr (LwSeason) season = NULL;

      if (lw_same_file (asked->path, files->pdata[i]))
        continue;
      season = lw_document_load (files->pdata[i], problems);
      if (season == NULL)
        last->n_unsound++;
      else if (belongs (asked, season))
        {
          last->n_files++;
          g_ptr_array_add (seasons, g_steal_pointer (&season));
          g_ptr_array_add (of, files->pdata[i]);
        }
    }

  if (lw_same_kind (asked->season->batches[asked->batch], (LwSeason *const *) seasons->pdata, seasons->len, &last->found))
    {
      last->season = lw_season_ref (seasons->pdata[last->found.season]);
      last->path = g_strdup (of->pdata[last->found.season]);
    }
  g_task_return_pointer (task, last, (GDestroyNotify) lw_last_year_free);
}

void
lw_last_year_find (LwSeason           *season,
                   guint               batch,
                   const char         *path,
                   GObject            *source,
                   GAsyncReadyCallback done,
                   gpointer            data)
{
  g_autoptr (GTask) task = g_task_new (source, NULL, done, data);
  Asked *asked = g_new (Asked, 1);

  *asked = (Asked) { lw_season_ref (season), batch, g_strdup (path) };
  g_task_set_task_data (task, asked, (GDestroyNotify) asked_free);
  g_task_run_in_thread (task, look);
}

LwLastYear *
lw_last_year_finish (GAsyncResult *result)
{
  return g_task_propagate_pointer (G_TASK (result), NULL);
}

static char *
say_none (const LwLastYear *last,
          const LwBatch    *batch)
{
  /* Translators: a year; how many other season files were looked through */
  g_autofree char *none = g_strdup_printf (ngettext ("No batch of %d is this kind of tea or has the same steps; %u other "
                                                     "season looked through.",
                                                     "No batch of %d is this kind of tea or has the same steps; %u other "
                                                     "seasons looked through.", last->n_files),
                                           lw_year_of (batch->when_s) - 1, last->n_files);
  g_autofree char *unsound = g_strdup_printf (ngettext ("%u file could not be read.", "%u files could not be read.",
                                                        last->n_unsound), last->n_unsound);

  return last->n_unsound > 0 ? g_strjoin (" ", none, unsound, NULL) : g_steal_pointer (&none);
}

static char *
say_why (const LwLastYear *last,
         const LwBatch    *batch)
{
  guint n = last->found.n, near = last->found.n_near;

  if (near > 1 && last->found.by_tea)
    /* Translators: how many batches are equally near, of how many, and their kind of tea */
    return g_strdup_printf (ngettext ("the first of %u equally near in date, of %u “%s”",
                                      "the first of %u equally near in date, of %u “%s”", near), near, n, batch->tea);
  if (near > 1)
    /* Translators: how many batches are equally near, of how many */
    return g_strdup_printf (ngettext ("the first of %u equally near in date, of %u with the same steps",
                                      "the first of %u equally near in date, of %u with the same steps", near), near, n);
  if (!last->found.by_tea)
    return n == 1 ? g_strdup (_ ("the only one with the same steps"))
                  : g_strdup_printf (ngettext ("nearest in date of %u with the same steps",
                                               "nearest in date of %u with the same steps", n), n);
  if (n == 1)
    return g_strdup_printf (_ ("the only “%s” of that year"), batch->tea);

  /* Translators: how many batches of last year are of this kind of tea, and the kind */
  return g_strdup_printf (ngettext ("nearest in date of %u “%s”", "nearest in date of %u “%s”", n), n, batch->tea);
}

char *
lw_last_year_say (const LwLastYear *last,
                  const LwBatch    *batch)
{
  const LwBatch *found = last->season != NULL ? last->season->batches[last->found.batch] : NULL;
  g_autofree char *date = NULL, *why = NULL;

  if (found == NULL)
    return say_none (last, batch);

  date = lw_say_date (found->when_s);
  why = say_why (last, batch);

  /* Translators: a batch, its date, why it was chosen */
  return g_strdup_printf (_ ("Laid over: %s (%s), %s."), found->name, date, why);
}

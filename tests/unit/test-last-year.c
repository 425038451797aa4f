/* The same kind last year, looked for in a folder of seasons: in another file, in the season in hand, among several
 * equally near, nowhere; and what is said of it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>

#include "bench/last-year.h"
#include "season/document.h"
#include "../plain-season.h"

#define APRIL_2026_S 1775001600 /* 2026-04-01T00:00 */
#define DAY_S 86400
#define YEAR_S (365 * DAY_S)

typedef struct
{
  char *folder;
  LwSeason *season;
  char *path;
} Made;

/* One more batch like the first, of that kind of tea and start. */
static void
add (LwSeason   *season,
     const char *name,
     const char *tea,
     gint64      when_s)
{
  LwBatch *batch = lw_batch_copy (season->batches[0]);

  g_free (batch->name);
  g_free (batch->tea);
  batch->name = g_strdup (name);
  batch->tea = g_strdup (tea);
  batch->when_s = when_s;
  lw_season_insert_batch (season, season->n_batches, batch);
}

static LwSeason *
season_new (void)
{
  static const LwKind kinds[] = { LW_KIND_FIX_PAN, LW_KIND_ROLL };
  LwSeason *season = plain_season (kinds, G_N_ELEMENTS (kinds));

  season->batches[0]->when_s = APRIL_2026_S;
  g_clear_pointer (&season->batches[0]->tea, g_free);
  season->batches[0]->tea = g_strdup ("white");

  return season;
}

static void
made_init (Made *made)
{
  made->folder = g_dir_make_tmp ("last-year.XXXXXX", NULL);
  made->path = g_build_filename (made->folder, "now" LW_SEASON_SUFFIX, NULL);
  made->season = season_new ();
}

static void
made_clear (Made *made)
{
  g_autoptr (GDir) dir = g_dir_open (made->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (made->folder, name, NULL);

      g_assert_cmpint (g_unlink (path), ==, 0);
    }
  g_assert_cmpint (g_rmdir (made->folder), ==, 0);
  lw_season_unref (made->season);
  g_free (made->path);
  g_free (made->folder);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Made, made_clear)

static void
put (const Made *made,
     const char *name,
     LwSeason   *season)
{
  g_autofree char *path = g_build_filename (made->folder, name, NULL);
  g_autoptr (GError) error = NULL;

  lw_document_save (season, path, &error);
  g_assert_no_error (error);
}

static void
done_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  *(LwLastYear **) data = lw_last_year_finish (result);
}

/* (transfer full) what is said of it. */
static char *
look (const Made  *made,
      LwLastYear **last)
{
  g_autoptr (GObject) source = g_object_new (G_TYPE_OBJECT, NULL);

  *last = NULL;
  lw_last_year_find (made->season, 0, made->path, source, done_cb, last);
  while (*last == NULL)
    g_main_context_iteration (NULL, TRUE);

  return lw_last_year_say (*last, made->season->batches[0]);
}

static void
test_none (void)
{
  g_auto (Made) made = { 0 };
  g_autoptr (LwLastYear) last = NULL;
  g_autofree char *said = NULL, *broken = NULL;

  made_init (&made);
  put (&made, "now" LW_SEASON_SUFFIX, made.season);
  put (&made, "also" LW_SEASON_SUFFIX, made.season);
  broken = g_build_filename (made.folder, "broken" LW_SEASON_SUFFIX, NULL);
  g_assert_true (g_file_set_contents (broken, "<season", -1, NULL));
  said = look (&made, &last);
  g_assert_null (last->season);
  g_assert_cmpstr (said, ==, "No batch of 2025 is this kind of tea or has the same steps; 1 other season looked through. "
                             "1 file could not be read.");
}

/* Of the season in hand, then it has no file of its own to be read again. */
static void
test_same_file (void)
{
  g_auto (Made) made = { 0 };
  g_autoptr (LwLastYear) last = NULL;
  g_autofree char *said = NULL;

  made_init (&made);
  add (made.season, "before", "white", APRIL_2026_S - YEAR_S + DAY_S);
  put (&made, "now" LW_SEASON_SUFFIX, made.season);
  said = look (&made, &last);
  g_assert_true (last->season == made.season);
  g_assert_null (last->path);
  g_assert_cmpstr (said, ==, "Laid over: before (2 Apr 2025), the only “white” of that year.");
}

static void
test_near (void)
{
  g_auto (Made) made = { 0 };
  g_autoptr (LwSeason) last_season = NULL;
  g_autoptr (LwLastYear) near = NULL, equal = NULL, steps = NULL;
  g_autofree char *said_near = NULL, *said_equal = NULL, *said_steps = NULL;

  made_init (&made);
  last_season = season_new ();
  last_season->batches[0]->when_s = APRIL_2026_S - YEAR_S - 30 * DAY_S;
  add (last_season, "later", "white", APRIL_2026_S - YEAR_S + 3 * DAY_S);
  put (&made, "last" LW_SEASON_SUFFIX, last_season);
  said_near = look (&made, &near);
  g_assert_true (g_str_has_suffix (near->path, "last" LW_SEASON_SUFFIX));
  g_assert_cmpstr (said_near, ==, "Laid over: later (4 Apr 2025), nearest in date of 2 “white”.");

  add (last_season, "earlier", "white", APRIL_2026_S - YEAR_S - 3 * DAY_S);
  put (&made, "last" LW_SEASON_SUFFIX, last_season);
  said_equal = look (&made, &equal);
  g_assert_cmpstr (said_equal, ==, "Laid over: later (4 Apr 2025), the first of 2 equally near in date, of 3 “white”.");

  g_free (made.season->batches[0]->tea);
  made.season->batches[0]->tea = g_strdup ("green");
  said_steps = look (&made, &steps);
  g_assert_cmpstr (said_steps, ==,
                   "Laid over: later (4 Apr 2025), the first of 2 equally near in date, of 3 with the same steps.");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/last-year/none", test_none);
  g_test_add_func ("/last-year/same-file", test_same_file);
  g_test_add_func ("/last-year/near", test_near);

  return g_test_run ();
}

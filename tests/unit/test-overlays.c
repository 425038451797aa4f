/* Which batches lie over: their letters, how they follow the season's edits, and that a drag computes none anew. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib/gstdio.h>
#include <unistd.h>

#include "bench/over-row-words.h"
#include "bench/overlays.h"
#include "../plain-season.h"

typedef struct
{
  LwSession *session;
  LwOverlays *overlays;
} Made;

/* Batches "1", "2", "3" of three, three and two steps. */
static LwSeason *
season_new (void)
{
  static const LwKind kinds[] = { LW_KIND_FIX_PAN, LW_KIND_ROLL, LW_KIND_DRY_AIR };
  LwSeason *season = plain_season (kinds, G_N_ELEMENTS (kinds));

  for (guint i = 1; i < 3; i++)
    {
      LwBatch *batch = lw_batch_copy (season->batches[0]);

      g_free (batch->name);
      batch->name = g_strdup_printf ("%u", i + 1);
      if (i == 2)
        lw_batch_remove_step (batch, 1);
      lw_season_insert_batch (season, i, batch);
    }

  return season;
}

static void
made_init (Made *made)
{
  g_autoptr (LwSeason) season = season_new ();

  made->session = lw_session_new ();
  made->overlays = lw_overlays_of (made->session);
  lw_session_open (made->session, season, NULL);
  lw_session_compute (made->session);
}

static void
made_clear (Made *made)
{
  g_clear_object (&made->session);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Made, made_clear)

static void
lay (Made    *made,
     guint    at,
     gboolean on)
{
  lw_overlays_lay (made->overlays, lw_session_season (made->session), NULL, at, on);
}

/* Until all that lie over are computed. */
static void
await (Made *made)
{
  for (guint i = 0; i < lw_overlays_n (made->overlays); i++)
    while (lw_overlays_nth (made->overlays, i)->track == NULL)
      g_main_context_iteration (NULL, TRUE);
}

static void
assert_shown (Made       *made,
              const char *expect)
{
  g_autoptr (GString) shown = g_string_new (NULL);

  for (guint i = 0; i < lw_overlays_n (made->overlays); i++)
    {
      LwLaid *laid = lw_overlays_nth (made->overlays, i);
      g_autofree char *tag = lw_laid_tag (laid), *name = lw_laid_name (laid);

      g_string_append_printf (shown, "%s%s=%s", i > 0 ? " " : "", tag, name);
    }
  g_assert_cmpstr (shown->str, ==, expect);
}

static void
test_letters (void)
{
  g_auto (Made) made = { 0 };
  g_autoptr (LwSeason) other = season_new ();

  made_init (&made);
  lay (&made, 1, TRUE);
  lay (&made, 2, TRUE);
  lw_overlays_lay (made.overlays, other, "/other", 1, TRUE);
  assert_shown (&made, "A=2 B=3 C=1970 · 2");
  g_assert_nonnull (lw_overlays_get (made.overlays, "/other", "2"));
  g_assert_null (lw_overlays_get (made.overlays, "/other", "3"));

  /* The others keep their letters; the next takes the free one. */
  lay (&made, 1, FALSE);
  assert_shown (&made, "B=3 C=1970 · 2");
  lay (&made, 0, TRUE);
  assert_shown (&made, "B=3 C=1970 · 2");
  g_assert_cmpuint (lw_overlays_chosen (made.overlays), ==, 3);
  lw_session_choose (made.session, 2);
  lw_session_compute (made.session);
  assert_shown (&made, "A=1 C=1970 · 2");
  lw_overlays_clear (made.overlays);
  assert_shown (&made, "");
}

static void
test_edits (void)
{
  g_auto (Made) made = { 0 };
  LwTrack *track;

  made_init (&made);
  lay (&made, 1, TRUE);
  lay (&made, 2, TRUE);
  await (&made);
  track = lw_overlays_nth (made.overlays, 1)->track;

  /* An edit of another batch leaves a track; one of its own makes it anew. */
  lw_session_edit (made.session, lw_edit_set (lw_session_base (made.session), 1, 0, LW_SET_MINUTES, 4), "edit", NULL);
  lw_session_compute (made.session);
  assert_shown (&made, "A=2 B=3");
  g_assert_true (lw_overlays_nth (made.overlays, 1)->track == track);
  await (&made);
  g_assert_cmpfloat_with_epsilon (lw_overlays_nth (made.overlays, 0)->track->steps[0]->duration_s, 240, 1e-6);

  lw_session_edit (made.session, lw_edit_rename_batch (lw_session_base (made.session), 1, "two"), "edit", NULL);
  lw_session_compute (made.session);
  assert_shown (&made, "A=two B=3");
  lw_session_edit (made.session, lw_edit_remove_batch (lw_session_base (made.session), 1), "edit", NULL);
  lw_session_compute (made.session);
  assert_shown (&made, "B=3");
  await (&made);
}

/* A batch that was removed while it lay over lies over again after undo, by its letter if that is free; not after all
 * were taken off, nor one that was taken off before. */
static void
test_removed (void)
{
  g_auto (Made) made = { 0 };

  made_init (&made);
  lay (&made, 1, TRUE);
  lay (&made, 2, TRUE);
  await (&made);
  lw_session_edit (made.session, lw_edit_remove_batch (lw_session_base (made.session), 1), "edit", NULL);
  lw_session_compute (made.session);
  assert_shown (&made, "B=3");
  lw_session_undo (made.session);
  lw_session_compute (made.session);
  assert_shown (&made, "A=2 B=3");
  lw_session_redo (made.session);
  lw_session_compute (made.session);
  assert_shown (&made, "B=3");
  lay (&made, 0, TRUE);
  lw_session_choose (made.session, 1);
  lw_session_compute (made.session);
  assert_shown (&made, "A=1");
  lw_session_undo (made.session);
  lw_session_choose (made.session, 2);
  lw_session_compute (made.session);
  assert_shown (&made, "A=1 C=2");

  lay (&made, 1, FALSE);
  lw_session_redo (made.session);
  lw_session_undo (made.session);
  lw_session_choose (made.session, 2);
  lw_session_compute (made.session);
  assert_shown (&made, "A=1");
  lay (&made, 1, TRUE);
  lw_session_redo (made.session);
  lw_overlays_clear (made.overlays);
  lw_session_undo (made.session);
  lw_session_compute (made.session);
  assert_shown (&made, "");
}

/* A season of another file: it lies over once by whatever path; read again it is as it is then; opened, its batches are
 * those in hand. */
static void
test_files (void)
{
  g_autofree char *folder = g_dir_make_tmp ("overlays.XXXXXX", NULL), *path = g_build_filename (folder, "a", NULL);
  g_autofree char *link = g_build_filename (folder, "b", NULL), *roundabout = g_strdup_printf ("%s/./a", folder);
  g_autoptr (LwSeason) first = season_new (), again = season_new (), fewer = season_new ();
  g_auto (Made) made = { 0 };

  g_assert_true (g_file_set_contents (path, "", 0, NULL));
  g_assert_cmpint (symlink (path, link), ==, 0);
  made_init (&made);
  lw_overlays_lay (made.overlays, first, path, 1, TRUE);
  lw_overlays_lay (made.overlays, first, link, 1, TRUE);
  lw_overlays_lay (made.overlays, first, roundabout, 1, TRUE);
  lw_overlays_lay (made.overlays, first, path, 2, TRUE);
  assert_shown (&made, "A=1970 · 2 B=1970 · 3");
  await (&made);

  /* As by the same kind last year: one batch of a season that was read anew. */
  lw_step_set (&again->batches[1]->steps[0], LW_SET_MINUTES, 2);
  lw_overlays_lay (made.overlays, again, path, 1, TRUE);
  assert_shown (&made, "A=1970 · 2 B=1970 · 3");
  g_assert_true (lw_overlays_nth (made.overlays, 0)->season == again);
  g_assert_true (lw_overlays_nth (made.overlays, 1)->season == first);
  await (&made);

  g_free (fewer->batches[2]->name);
  fewer->batches[2]->name = g_strdup ("9");
  g_assert_cmpuint (lw_overlays_read_anew (made.overlays, fewer, link), ==, 1);
  assert_shown (&made, "A=1970 · 2 B=1970 · 3");
  g_assert_true (lw_overlays_nth (made.overlays, 0)->season == fewer);
  g_assert_true (lw_overlays_nth (made.overlays, 1)->season == first);
  await (&made);

  lw_session_open (made.session, fewer, path);
  lw_session_compute (made.session);
  assert_shown (&made, "A=2");
  lw_session_choose (made.session, 1);
  lw_session_compute (made.session);
  assert_shown (&made, "");
  g_assert_cmpint (g_unlink (link), ==, 0);
  g_assert_cmpint (g_unlink (path), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

/* What of its time is not shown, by the clock: it lasts 30 min beside a batch of `shown` min. */
static void
test_beyond (void)
{
  static const struct
  {
    double begins, shown;
    const char *said;
  } cases[] = {
    { 0, 30, "" },
    { 5, 40, "" },
    { -5, 40, "By the clock it begins 5 min before the batch in hand." },
    { 15, 40, "By the clock it ends 5 min after the batch in hand." },
    { -10, 15, "By the clock it begins 10 min before the batch in hand and ends 5 min after it." },
    { -30, 15, "By the clock it is over when the batch in hand begins." },
    { 15, 15, "By the clock it begins when the batch in hand ends." },
    { -90, 15, "By the clock it is over 1 h before the batch in hand begins." },
    { 75, 15, "By the clock it begins 1 h after the batch in hand ends." },
  };
  g_autoptr (LwSeason) season = season_new ();
  g_autoptr (LwLaid) laid = NULL;

  for (guint i = 0; i < 3; i++)
    lw_step_set (&season->batches[0]->steps[i], LW_SET_MINUTES, 10);
  laid = lw_laid_new (season, NULL, 0, 0);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *said = lw_over_say_beyond (laid, cases[i].begins, cases[i].shown);

      g_assert_cmpstr (said, ==, cases[i].said);
    }
}

/* While dragged nothing is computed or matched anew, unless kinds of step change places. */
static void
test_drag (void)
{
  g_auto (Made) made = { 0 };
  LwTrack *track;
  guint stamp;

  made_init (&made);
  lay (&made, 2, TRUE);
  await (&made);
  stamp = lw_overlays_stamp (made.overlays);
  track = lw_overlays_nth (made.overlays, 0)->track;
  g_assert_cmpint (lw_overlays_nth (made.overlays, 0)->columns[1], ==, 2);

  lw_session_drag_begin (made.session);
  for (guint i = 1; i < 4; i++)
    {
      lw_session_preview (made.session, lw_edit_set (lw_session_base (made.session), 0, 0, LW_SET_MINUTES, i));
      lw_session_compute (made.session);
      g_assert_cmpuint (lw_overlays_stamp (made.overlays), ==, stamp);
      g_assert_true (lw_overlays_nth (made.overlays, 0)->track == track);
    }
  lw_session_preview (made.session, lw_edit_move_step (lw_session_base (made.session), 0, 2, 1));
  lw_session_compute (made.session);
  g_assert_cmpuint (lw_overlays_stamp (made.overlays), !=, stamp);
  g_assert_cmpint (lw_overlays_nth (made.overlays, 0)->columns[1], ==, 1);
  lw_session_drag_cancel (made.session);
}

/* The session may end while a thread computes for it. */
static void
test_end (void)
{
  Made made;

  made_init (&made);
  lay (&made, 1, TRUE);
  made_clear (&made);
  for (guint i = 0; i < 200; i++)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (1000);
    }
}

/* A new season after another that has no file either: what lay over was the other's. */
static void
test_new_after_new (void)
{
  g_auto (Made) made = { 0 };
  g_autoptr (LwSeason) next = season_new ();

  made_init (&made);
  lay (&made, 1, TRUE);
  lay (&made, 2, TRUE);
  assert_shown (&made, "A=2 B=3");
  lw_session_edit (made.session, lw_edit_remove_batch (lw_session_base (made.session), 2), "Remove", NULL);
  lw_session_compute (made.session);
  assert_shown (&made, "A=2");
  lw_session_open (made.session, next, NULL);
  lw_session_compute (made.session);
  assert_shown (&made, "");
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/overlays/letters", test_letters);
  g_test_add_func ("/overlays/edits", test_edits);
  g_test_add_func ("/overlays/removed", test_removed);
  g_test_add_func ("/overlays/files", test_files);
  g_test_add_func ("/overlays/beyond", test_beyond);
  g_test_add_func ("/overlays/drag", test_drag);
  g_test_add_func ("/overlays/new-after-new", test_new_after_new);
  g_test_add_func ("/overlays/end", test_end);

  return g_test_run ();
}

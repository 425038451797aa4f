/* The journal of a running batch: what a line holds, damage at every byte, taking it up twice. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sample.h"

#include <gio/gio.h>
#include <math.h>
#include <string.h>

#include "season/edit.h"
#include "season/journal.h"
#include "season/weigh-in.h"

#define NOW_S 1795630000.25
#define FULL 0 /* of the sample; its second step has three weigh-ins */
#define PAN 1
#define SEASON_FILE "/seasons/a.leafwend"

static char written[] = "tab\tand \"line\"\nand leaf 嫩叶 \\ done";

static LwSeason *
with_entry (const LwSeason *season,
            double          minute,
            double          value)
{
  return lw_edit_add_weigh_in (season, FULL, PAN, (LwWeighIn) { minute, LW_LEAF_C, value, 2, 0, written });
}

/* One batch of the season in hand, so that a line is short. */
static LwSeason *
small_season (void)
{
  LwSeason *season = lw_edit_new_season (1777000000);
  LwBatch *batch = lw_batch_copy (season->batches[0]);

  while (batch->n_steps > 2)
    lw_batch_remove_step (batch, 2);
  lw_season_put_batch (season, 0, batch);

  return season;
}

static void
test_line (void)
{
  g_autoptr (LwSeason) season = sample_season (), more = with_entry (season, 3, 71);
  g_auto (LwJournalEntry) entry = { 0 };
  LwRun run = lw_run_start (1795628475);
  g_autofree char *line = NULL;
  g_autoptr (LwSeason) back = NULL;
  guint damaged, batch, n;
  gboolean no_weather, changed;

  lw_run_next (&run, 1795628999);
  lw_run_pause (&run, 1795629100.5);
  run.planned = 23;
  line = lw_journal_line (&run, NOW_S, "/a\tb/嫩.leafwend", season, "in the file\tso\nnamed", more, FULL);
  g_assert_cmpint (line[0], ==, '\n');
  g_assert_true (g_str_has_suffix (line, "\n"));
  g_assert_null (memchr (line + 1, '\n', strlen (line) - 2));

  g_assert_true (lw_journal_read (line, strlen (line), &entry, &damaged));
  g_assert_cmpuint (damaged, ==, 0);
  g_assert_true (lw_run_same (&entry.run, &run));
  g_assert_cmpstr (entry.name, ==, "in the file\tso\nnamed");
  g_assert_cmpstr (entry.file, ==, "/a\tb/嫩.leafwend");
  g_assert_null (entry.base);
  g_assert_cmpfloat (entry.written_s, ==, NOW_S);

  back = lw_journal_put_back (season, &entry, &batch, &n, &no_weather, &changed);
  g_assert_cmpuint (batch, ==, FULL);
  g_assert_cmpuint (n, ==, 1);
  g_assert_true (changed);
  sample_assert_same (back, more);
}

/* To take it up twice, or after a save, is to take it up once. */
static void
test_twice (void)
{
  g_autoptr (LwSeason) season = sample_season (), one = with_entry (season, 3, 71), two = with_entry (one, 4, 75);
  g_auto (LwJournalEntry) entry = { 0 };
  LwRun run = lw_run_start (0);
  g_autofree char *first = lw_journal_line (&run, NOW_S, SEASON_FILE, season, season->batches[FULL]->name, one, FULL);
  g_autofree char *second = lw_journal_line (&run, NOW_S, SEASON_FILE, season, season->batches[FULL]->name, two, FULL);
  g_autofree char *all = g_strconcat (first, second, NULL);
  g_autoptr (LwSeason) back = NULL, again = NULL, after_save = NULL;
  guint damaged, batch, n;
  gboolean no_weather, changed;

  g_assert_true (lw_journal_read (all, strlen (all), &entry, &damaged));
  back = lw_journal_put_back (season, &entry, &batch, &n, &no_weather, &changed);
  g_assert_cmpuint (n, ==, 2);
  sample_assert_same (back, two);
  again = lw_journal_put_back (back, &entry, &batch, &n, &no_weather, &changed);
  g_assert_cmpuint (n, ==, 0);
  g_assert_false (changed);
  sample_assert_same (again, two);
  after_save = lw_journal_put_back (two, &entry, &batch, &n, &no_weather, &changed);
  g_assert_false (changed);
  sample_assert_same (after_save, two);
}

/* What was removed stays removed. */
static void
test_removed (void)
{
  g_autoptr (LwSeason) season = sample_season (), less = lw_edit_remove_weigh_in (season, FULL, PAN, 0), back = NULL;
  g_auto (LwJournalEntry) entry = { 0 };
  LwRun run = lw_run_start (0);
  g_autofree char *line = lw_journal_line (&run, NOW_S, SEASON_FILE, season, season->batches[FULL]->name, less, FULL);
  guint damaged, batch, n;
  gboolean no_weather, changed;

  g_assert_true (lw_journal_read (line, strlen (line), &entry, &damaged));
  back = lw_journal_put_back (season, &entry, &batch, &n, &no_weather, &changed);
  g_assert_cmpuint (n, ==, 0);
  g_assert_true (changed);
  sample_assert_same (back, less);
}

/* A batch that the file does not have, of a leaf that it does not have, under a weather that is gone. */
static void
test_stranger (void)
{
  g_autoptr (LwSeason) season = sample_season (), other = small_season (), back = NULL;
  g_auto (LwJournalEntry) entry = { 0 };
  LwRun run = lw_run_start (0);
  g_autofree char *line = lw_journal_line (&run, NOW_S, SEASON_FILE, season, season->batches[FULL]->name, season, FULL);
  guint damaged, batch, n;
  gboolean no_weather, changed;

  g_assert_true (lw_journal_read (line, strlen (line), &entry, &damaged));
  back = lw_journal_put_back (other, &entry, &batch, &n, &no_weather, &changed);
  g_assert_cmpuint (batch, ==, 1);
  g_assert_cmpuint (back->n_batches, ==, 2);
  g_assert_cmpuint (n, ==, 3);
  g_assert_nonnull (lw_season_profile (back, back->batches[1]->leaf));
  g_assert_null (back->batches[1]->weather);
  g_assert_true (no_weather);
}

/* The batch has another name than in the file, and yet another has that one. */
static void
test_renamed (void)
{
  g_autoptr (LwSeason) season = sample_season ();
  g_autoptr (LwSeason) renamed = lw_edit_rename_batch (season, FULL, "new name"), back = NULL, twin = NULL;
  g_auto (LwJournalEntry) entry = { 0 };
  LwRun run = lw_run_start (0);
  g_autofree char *line = lw_journal_line (&run, NOW_S, SEASON_FILE, season, season->batches[FULL]->name, renamed, FULL);
  guint damaged, batch, n;
  gboolean no_weather, changed;

  g_assert_true (lw_journal_read (line, strlen (line), &entry, &damaged));
  back = lw_journal_put_back (season, &entry, &batch, &n, &no_weather, &changed);
  g_assert_cmpuint (batch, ==, FULL);
  sample_assert_same (back, renamed);

  g_clear_pointer (&back, lw_season_unref);
  twin = lw_edit_rename_batch (season, 1, "new name");
  back = lw_journal_put_back (twin, &entry, &batch, &n, &no_weather, &changed);
  g_assert_cmpuint (batch, ==, FULL);
  g_assert_cmpstr (back->batches[FULL]->name, ==, season->batches[FULL]->name);
}

/* Three lines, and the step of the run tells which of them was found; -1: none. */
typedef struct
{
  char *all;
  gsize length;
  gsize last; /* where the third begins */
} Three;

static void
three_init (Three *three)
{
  g_autoptr (LwSeason) season = small_season ();
  LwRun run = lw_run_start (1795628475);
  GString *all = g_string_new (NULL);

  for (run.step = 0; run.step < 3; run.step++)
    {
      g_autofree char *line = lw_journal_line (&run, NOW_S, SEASON_FILE, NULL, "a", season, 0);

      three->last = all->len;
      g_string_append (all, line);
    }
  three->length = all->len;
  three->all = g_string_free (all, FALSE);
}

static int
found (const char *data,
       gsize       length)
{
  g_auto (LwJournalEntry) entry = { 0 };
  guint damaged;

  return lw_journal_read (data, length, &entry, &damaged) ? (int) entry.run.step : -1;
}

static void
test_every_byte (void)
{
  static const char put[] = { '\0', '\n', 'x', (char) 0xff };
  Three three;

  three_init (&three);
  for (gsize i = 0; i < three.length; i++)
    {
      char was = three.all[i];
      int seen;

      three.all[i] = put[i % G_N_ELEMENTS (put)];
      seen = found (three.all, three.length);
      /* Damage before the last line costs nothing, damage in it that line alone. */
      if (i < three.last || three.all[i] == was)
        g_assert_cmpint (seen, ==, 2);
      else if (i > three.last && i + 1 < three.length)
        g_assert_cmpint (seen, ==, 1);
      else
        g_assert_cmpint (seen, >=, 1);
      three.all[i] = was;
    }
  g_free (three.all);
}

static void
test_cut_anywhere (void)
{
  Three three;
  int least = -1;

  three_init (&three);
  for (gsize length = 0; length <= three.length; length++)
    {
      int seen = found (three.all, length);

      /* Never less than before. */
      g_assert_cmpint (seen, >=, least);
      least = seen;
      if (length >= three.last && length + 1 < three.length)
        g_assert_cmpint (seen, ==, 1);
    }
  g_assert_cmpint (least, ==, 2);
  g_free (three.all);
}

/* After a write that was cut short, what comes next is whole. */
static void
test_goes_on_after_a_cut (void)
{
  g_autoptr (LwSeason) season = small_season ();
  LwRun run = lw_run_start (0);
  g_autofree char *line = lw_journal_line (&run, NOW_S, SEASON_FILE, NULL, "a", season, 0), *next = NULL;

  run.step = 1;
  next = lw_journal_line (&run, NOW_S, SEASON_FILE, NULL, "a", season, 0);
  for (gsize cut = 0; cut < strlen (line); cut += 7)
    {
      g_autofree char *start = g_strndup (line, cut), *all = g_strconcat (start, next, NULL);

      g_assert_cmpint (found (all, strlen (all)), ==, 1);
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/journal/line", test_line);
  g_test_add_func ("/journal/twice", test_twice);
  g_test_add_func ("/journal/removed", test_removed);
  g_test_add_func ("/journal/stranger", test_stranger);
  g_test_add_func ("/journal/renamed", test_renamed);
  g_test_add_func ("/journal/every-byte", test_every_byte);
  g_test_add_func ("/journal/cut-anywhere", test_cut_anywhere);
  g_test_add_func ("/journal/goes-on-after-a-cut", test_goes_on_after_a_cut);

  return g_test_run ();
}

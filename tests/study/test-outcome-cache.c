/* The cache of outcomes: kept from run to run, never wrong whatever lies there in its place, and no larger than told. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "study/outcome-cache.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define HEAD 32      /* bytes of the model's digest, and of the one at the end */
#define RECORD 160

typedef struct
{
  char *folder;
  char *path;
} Place;

static void
set_up (Place        *place,
        gconstpointer data)
{
  place->folder = g_dir_make_tmp ("leafwend-cache-XXXXXX", NULL);
  place->path = g_build_filename (place->folder, "below", "outcomes", NULL);
}

static void
tear_down (Place        *place,
           gconstpointer data)
{
  g_autofree char *below = g_path_get_dirname (place->path), *beside = g_strconcat (place->path, ".new", NULL);

  g_remove (beside);
  g_remove (place->path);
  g_remove (below);
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_free (place->path);
  g_free (place->folder);
}

static char *
digest_of (guint number)
{
  g_autofree char *text = g_strdup_printf ("%u", number);

  return g_compute_checksum_for_string (G_CHECKSUM_SHA256, text, -1);
}

/* Something else in every number. */
static LwOutcome
outcome_of (guint number)
{
  LwOutcome outcome;

  for (gsize i = 0; i < sizeof outcome / sizeof (double); i++)
    ((double *) &outcome)[i] = number + (double) i / 7;

  return outcome;
}

static void
add (LwOutcomeCache *cache,
     guint           from,
     guint           n)
{
  for (guint i = from; i < from + n; i++)
    {
      g_autofree char *digest = digest_of (i);
      LwOutcome outcome = outcome_of (i);

      lw_outcome_cache_add (cache, digest, &outcome);
    }
}

/* How many of them are known; none of these is wrong. */
static guint
known (LwOutcomeCache *cache,
       guint           from,
       guint           n)
{
  guint found = 0;

  for (guint i = from; i < from + n; i++)
    {
      g_autofree char *digest = digest_of (i);
      LwOutcome right = outcome_of (i), outcome;

      if (!lw_outcome_cache_find (cache, digest, &outcome))
        continue;
      g_assert_cmpmem (&outcome, sizeof outcome, &right, sizeof right);
      found++;
    }

  return found;
}

static guint
known_on_disk (const Place *place,
               guint        from,
               guint        n)
{
  g_autoptr (LwOutcomeCache) cache = lw_outcome_cache_new (place->path);

  lw_outcome_cache_load (cache);

  return known (cache, from, n);
}

static void
keep (const Place *place,
      guint        from,
      guint        n)
{
  g_autoptr (LwOutcomeCache) cache = lw_outcome_cache_new (place->path);

  add (cache, from, n);
  g_assert_true (lw_outcome_cache_save (cache));
}

static void
test_kept (Place        *place,
           gconstpointer data)
{
  g_autoptr (LwOutcomeCache) cache = lw_outcome_cache_new (place->path);
  g_autofree char *beside = g_strconcat (place->path, ".new", NULL);
  LwOutcome none;

  lw_outcome_cache_load (cache); /* there is nothing yet */
  g_assert_true (lw_outcome_cache_save (cache));
  g_assert_false (g_file_test (place->path, G_FILE_TEST_EXISTS)); /* and nothing to keep */
  add (cache, 0, 100);
  g_assert_cmpuint (known (cache, 0, 101), ==, 100);
  g_assert_false (lw_outcome_cache_find (cache, "no digest", &none));
  g_assert_true (lw_outcome_cache_save (cache));
  g_assert_cmpuint (known_on_disk (place, 0, 101), ==, 100);
  g_assert_false (g_file_test (beside, G_FILE_TEST_EXISTS));
}

/* What another program has kept meanwhile stays. */
static void
test_two (Place        *place,
          gconstpointer data)
{
  g_autoptr (LwOutcomeCache) one = lw_outcome_cache_new (place->path), other = lw_outcome_cache_new (place->path);

  add (one, 0, 100);
  add (other, 50, 100);
  g_assert_true (lw_outcome_cache_save (one));
  g_assert_true (lw_outcome_cache_save (other));
  g_assert_cmpuint (known_on_disk (place, 0, 200), ==, 150);
  add (one, 500, 1);
  g_assert_true (lw_outcome_cache_save (one));
  g_assert_cmpuint (known_on_disk (place, 0, 200), ==, 150);
  g_assert_cmpuint (known_on_disk (place, 500, 1), ==, 1);
}

static gpointer
keep_many (gpointer place)
{
  static int next; /* (atomic) */
  guint from = 1000 * (guint) g_atomic_int_add (&next, 1);

  for (guint i = 0; i < 20; i++)
    keep (place, from + 50 * i, 50);

  return NULL;
}

/* Both write as fast as they can, and one more reads: it never sees anything but whole files. */
static void
test_at_once (Place        *place,
              gconstpointer data)
{
  GThread *one = g_thread_new ("one", keep_many, place), *other = g_thread_new ("other", keep_many, place);
  guint seen = 0;

  while (seen < 2000)
    {
      guint now = known_on_disk (place, 0, 2000);

      g_assert_cmpuint (now, >=, seen);
      seen = now;
    }
  g_thread_join (one);
  g_thread_join (other);
}

static char *
bytes_of (const Place *place,
          gsize       *length)
{
  char *bytes;

  g_assert_true (g_file_get_contents (place->path, &bytes, length, NULL));

  return bytes;
}

static void
write_bytes (const Place *place,
             const char  *bytes,
             gsize        length)
{
  g_remove (place->path);
  g_assert_true (g_file_set_contents_full (place->path, bytes, (gssize) length, G_FILE_SET_CONTENTS_NONE, 0600, NULL));
}

/* Whichever byte is another, and wherever it ends: nothing of it counts. Then it is written anew. */
static void
test_damaged (Place        *place,
              gconstpointer data)
{
  g_autofree char *bytes = NULL;
  gsize length;

  keep (place, 0, 3);
  bytes = bytes_of (place, &length);
  g_assert_cmpuint (length, ==, 2 * HEAD + 3 * RECORD);
  for (gsize i = 0; i < length; i++)
    {
      bytes[i] ^= 0x10;
      write_bytes (place, bytes, length);
      g_assert_cmpuint (known_on_disk (place, 0, 3), ==, 0);
      bytes[i] ^= 0x10;
      write_bytes (place, bytes, i);
      g_assert_cmpuint (known_on_disk (place, 0, 3), ==, 0);
    }
  write_bytes (place, bytes, length);
  g_assert_cmpuint (known_on_disk (place, 0, 3), ==, 3);

  write_bytes (place, bytes, length - 1);
  keep (place, 10, 2);
  g_assert_cmpuint (known_on_disk (place, 0, 3), ==, 0);
  g_assert_cmpuint (known_on_disk (place, 10, 2), ==, 2);
}

/* A sound file of another model. */
static void
test_model (Place        *place,
            gconstpointer data)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
  g_autofree char *bytes = NULL;
  gsize length, digits = HEAD;

  keep (place, 0, 3);
  bytes = bytes_of (place, &length);
  bytes[0] ^= 1;
  g_checksum_update (sum, (const guchar *) bytes, (gssize) (length - HEAD));
  g_checksum_get_digest (sum, (guint8 *) bytes + length - HEAD, &digits);
  write_bytes (place, bytes, length);
  g_assert_cmpuint (known_on_disk (place, 0, 3), ==, 0);
  keep (place, 10, 2);
  g_assert_cmpuint (known_on_disk (place, 0, 3), ==, 0);
  g_assert_cmpuint (known_on_disk (place, 10, 2), ==, 2);
}

/* What is in the way is no error but that nothing is kept; what was left of a save that was cut off is. */
static void
test_in_the_way (Place        *place,
                 gconstpointer data)
{
  g_autoptr (LwOutcomeCache) cache = lw_outcome_cache_new (place->path);
  g_autofree char *below = g_path_get_dirname (place->path), *beside = g_strconcat (place->path, ".new", NULL);
  const char half[5000] = "";

  g_assert_true (g_file_set_contents (below, "no folder", -1, NULL));
  add (cache, 0, 3);
  lw_outcome_cache_load (cache);
  g_assert_false (lw_outcome_cache_save (cache));
  g_assert_cmpuint (known (cache, 0, 3), ==, 3);
  g_remove (below);

  g_assert_cmpint (g_mkdir_with_parents (place->path, 0700), ==, 0); /* a folder */
  add (cache, 3, 1);
  g_assert_false (lw_outcome_cache_save (cache));
  g_assert_cmpuint (known_on_disk (place, 0, 4), ==, 0);
  g_assert_cmpint (g_rmdir (place->path), ==, 0);
  g_assert_cmpint (mkfifo (place->path, 0600), ==, 0); /* nobody writes in it, ever */
  g_assert_cmpuint (known_on_disk (place, 0, 4), ==, 0);

  g_assert_true (g_file_set_contents_full (beside, half, sizeof half, G_FILE_SET_CONTENTS_NONE, 0600, NULL));
  add (cache, 4, 1);
  g_assert_true (lw_outcome_cache_save (cache));
  g_assert_cmpuint (known_on_disk (place, 0, 5), ==, 5);
  if (geteuid () == 0)
    return; /* who may write everywhere */

  g_assert_cmpint (g_chmod (below, 0500), ==, 0);
  add (cache, 5, 1);
  g_assert_false (lw_outcome_cache_save (cache));
  g_assert_cmpuint (known_on_disk (place, 0, 6), ==, 5);
  g_assert_cmpint (g_chmod (below, 0700), ==, 0);
}

/* There is room for so many; those of this run stay. A file that is larger is none of ours. */
static void
test_bounded (Place        *place,
              gconstpointer data)
{
  g_autoptr (LwOutcomeCache) cache = lw_outcome_cache_new (place->path);
  g_autofree char *bytes = NULL;
  gsize length;

  keep (place, 0, LW_OUTCOME_CACHE_MOST);
  lw_outcome_cache_load (cache);
  g_assert_cmpuint (known (cache, 0, 1000), ==, 1000); /* asked for */
  add (cache, LW_OUTCOME_CACHE_MOST, 500);
  g_assert_true (lw_outcome_cache_save (cache));
  g_assert_cmpuint (known_on_disk (place, 0, LW_OUTCOME_CACHE_MOST + 500), ==, LW_OUTCOME_CACHE_MOST);
  g_assert_cmpuint (known_on_disk (place, 0, 1000), ==, 1000);
  g_assert_cmpuint (known_on_disk (place, LW_OUTCOME_CACHE_MOST, 500), ==, 500);
  bytes = bytes_of (place, &length);
  g_assert_cmpuint (length, ==, 2 * HEAD + (gsize) LW_OUTCOME_CACHE_MOST * RECORD);

  add (cache, LW_OUTCOME_CACHE_MOST, LW_OUTCOME_CACHE_MOST + 1); /* more than there is room for */
  g_assert_true (lw_outcome_cache_save (cache));
  g_free (bytes);
  bytes = bytes_of (place, &length);
  g_assert_cmpuint (length, ==, 2 * HEAD + (gsize) LW_OUTCOME_CACHE_MOST * RECORD);
}

#define ADD(name, test) g_test_add ("/outcome-cache/" name, Place, NULL, set_up, test, tear_down)

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  ADD ("kept", test_kept);
  ADD ("two", test_two);
  ADD ("at-once", test_at_once);
  ADD ("damaged", test_damaged);
  ADD ("model", test_model);
  ADD ("in-the-way", test_in_the_way);
  ADD ("bounded", test_bounded);

  return g_test_run ();
}

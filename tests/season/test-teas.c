/* The kinds of tea that ship: a sound season in the writer's own bytes, whose aims all tell where
 * they come from. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/shipped.h"

#include <math.h>
#include <string.h>

static char *
teas_path (void)
{
  return g_test_build_filename (G_TEST_DIST, "..", "..", "data", LW_SHIPPED_TEAS, NULL);
}

static LwSeason *
teas_load (void)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autofree char *path = teas_path ();
  LwSeason *teas = lw_document_load (path, problems);

  for (guint i = 0; i < problems->len; i++)
    g_test_message ("%s", ((LwProblem *) problems->pdata[i])->what);
  g_assert_nonnull (teas);

  return teas;
}

static void
test_own_bytes (void)
{
  g_autoptr (LwSeason) teas = teas_load ();
  g_autofree char *path = teas_path (), *shipped = NULL, *again = NULL;
  gsize shipped_length, again_length;

  g_assert_true (g_file_get_contents (path, &shipped, &shipped_length, NULL));
  again = lw_document_write (teas, &again_length);
  g_assert_cmpmem (shipped, shipped_length, again, again_length);
}

/* A kind is what it is and what it aims at, and nothing about how. */
static void
test_kinds (void)
{
  g_autoptr (LwSeason) teas = teas_load ();

  g_assert_cmpuint (teas->n_batches, >=, 8);
  for (guint i = 0; i < teas->n_batches; i++)
    {
      const LwBatch *kind = teas->batches[i];

      g_assert_nonnull (kind->note);
      g_assert_null (kind->tea);
      g_assert_cmpuint (kind->n_steps, ==, 0);
      g_assert_cmpuint (kind->n_aims, >, 0);
      g_assert_nonnull (lw_batch_aim (kind, -1, LW_MOISTURE));
    }
}

/* Every window says that it has a standard or page behind it, or that it has none. */
static gboolean
tells_source (const char *note)
{
  static const char *const words[] = { "GB/T ", "econd-hand", "rom memory", "ommon practice, no source" };

  for (guint i = 0; note != NULL && i < G_N_ELEMENTS (words); i++)
    if (strstr (note, words[i]) != NULL)
      return TRUE;

  return FALSE;
}

static void
test_aims (void)
{
  g_autoptr (LwSeason) teas = teas_load ();

  for (guint i = 0; i < teas->n_batches; i++)
    for (guint k = 0; k < teas->batches[i]->n_aims; k++)
      {
        const LwAim *aim = &teas->batches[i]->aims[k];
        const LwQuantityRow *row = lw_quantity_row (aim->of);

        g_test_message ("%s, %s", teas->batches[i]->name, row->id);
        g_assert_true (tells_source (aim->note));
        g_assert_cmpfloat (aim->weight, ==, 1);
        g_assert_true (isfinite (aim->low) || isfinite (aim->high));
        g_assert_true (!isfinite (aim->low) || (aim->low >= row->low && aim->low <= row->high));
        g_assert_true (!isfinite (aim->high) || (aim->high >= row->low && aim->high <= row->high));
        g_assert_cmpfloat (aim->low, <, aim->high);
        g_assert_true (lw_batch_aim (teas->batches[i], -1, aim->of) == aim); /* one for each outcome */
      }
}

static void
test_same (void)
{
  g_autoptr (LwSeason) teas = teas_load ();
  const LwBatch *a = teas->batches[0], *b = teas->batches[1];
  guint n = a->n_aims;
  LwAim *copy = lw_aims_copy (a->aims, n);

  g_assert_true (lw_aims_same (NULL, 0, NULL, 0));
  g_assert_true (lw_aims_same (a->aims, a->n_aims, copy, n));
  g_assert_false (lw_aims_same (a->aims, a->n_aims, copy, n - 1));
  g_assert_false (lw_aims_same (a->aims, a->n_aims, b->aims, b->n_aims));

  copy[0].high += 0.5;
  g_assert_false (lw_aims_same (a->aims, a->n_aims, copy, n));
  copy[0].high = a->aims[0].high;
  copy[0].weight = 2;
  g_assert_false (lw_aims_same (a->aims, a->n_aims, copy, n));
  copy[0].weight = 1;
  g_clear_pointer (&copy[0].note, g_free);
  g_assert_false (lw_aims_same (a->aims, a->n_aims, copy, n));

  lw_aims_clear (&copy, &n);
}

static void
test_path (void)
{
  g_autofree char *elsewhere = NULL, *installed = NULL;

  g_setenv ("LEAFWEND_DATA", "/some/where", TRUE);
  elsewhere = lw_shipped_path ("a.leafwend");
  g_assert_cmpstr (elsewhere, ==, "/some/where/a.leafwend");

  g_unsetenv ("LEAFWEND_DATA");
  installed = lw_shipped_path ("a.leafwend");
  g_assert_true (g_str_has_suffix (installed, "/leafwend/a.leafwend"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/teas/own-bytes", test_own_bytes);
  g_test_add_func ("/teas/kinds", test_kinds);
  g_test_add_func ("/teas/aims", test_aims);
  g_test_add_func ("/teas/same", test_same);
  g_test_add_func ("/teas/path", test_path);

  return g_test_run ();
}

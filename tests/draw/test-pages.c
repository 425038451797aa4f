/* Pages: places from the right, words that wrap. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/pages.h"
#include "draw/paragraph.h"

/* Where reading begins at the right, places are mirrored, and words of either direction begin at the right of theirs. */
static void
test_from_right (void)
{
  static const char *const texts[] = { "left to right", "\u05d2\u05dc\u05d9\u05dc\u05d4", "3. \u05d2\u05dc\u05d9\u05dc\u05d4", "1 / 2" };

  for (guint i = 0; i < 2 * G_N_ELEMENTS (texts); i++)
    {
      LwPages *pages = lw_pages_new (600, 800, TRUE);
      gboolean at_end = i % 2;
      cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (surface);
      LwParagraph paragraph = { .text = texts[i / 2], .width = 300, .size = 12, .at_end = at_end, .rtl = TRUE };
      double x, y, width, height;

      lw_pages_words (pages, 40, 50, 300, 12, FALSE, texts[i / 2]);
      lw_pages_turn (pages);
      g_assert_cmpfloat (g_array_index (pages->pieces, LwPiece, 0).place.x, ==, 260);

      lw_paragraph_draw (cr, &paragraph, 260, 50);
      cairo_recording_surface_ink_extents (surface, &x, &y, &width, &height);
      if (at_end)
        g_assert_cmpfloat (x, <, 264);
      else
        g_assert_cmpfloat (x + width, >, 556);
      cairo_destroy (cr);
      cairo_surface_destroy (surface);
      lw_pages_free (pages);
    }
}

/* Words take more lines where there is less room, even one long word; no words take none. */
static void
test_wrap (void)
{
  static const char *const texts[] = { "the stem bends and does not break", "Rolltischwiederholungsrundenrollen" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      double line = lw_pages_words (NULL, 0, 0, 400, 10, FALSE, texts[i]);
      double narrow = lw_pages_words (NULL, 0, 0, 60, 10, FALSE, texts[i]);

      g_assert_cmpfloat (line, >, 10);
      g_assert_cmpfloat (narrow, >=, 2.9 * line);
    }
  g_assert_cmpfloat (lw_pages_words (NULL, 0, 0, 60, 10, FALSE, ""), ==, 0);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/pages/from-right", test_from_right);
  g_test_add_func ("/draw/pages/wrap", test_wrap);

  return g_test_run ();
}

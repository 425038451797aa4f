/* Night and rain in a panel: each is seen where it is, on paper and in the dark, and nowhere else. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/panel.h"

#include <math.h>

enum { WIDTH = 400, HEIGHT = 120 };

/* (transfer full) the panel's pixels. */
static guint32 *
draw (const LwSpell *spells,
      guint          n,
      gboolean       rtl,
      gboolean       dark)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  const double minutes[] = { 600, 600 };
  LwScale scale;
  LwPanelLook look = { .quantity = LW_MOISTURE, .scale = &scale, .spells = spells, .n_spells = n };
  LwLetter letter = { .base_px = 13 };
  LwAxis axis = lw_panel_axis (&look);
  guint32 *pixels;

  lw_scale_fill (&scale, minutes, 2, 0, WIDTH, rtl);
  lw_panel_draw (cr, WIDTH, HEIGHT, &look, &axis, &letter, lw_palette (dark));
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  pixels = g_memdup2 (cairo_image_surface_get_data (surface), WIDTH * HEIGHT * 4);
  cairo_surface_destroy (surface);

  return pixels;
}

static double
light (guint32 pixel)
{
  return 0.2126 * (pixel >> 16 & 255) + 0.7152 * (pixel >> 8 & 255) + 0.0722 * (pixel & 255);
}

/* Columns of pixels from `left` to `right` that differ below the head; the greatest difference in light. */
static guint
columns_changed (const guint32 *before,
                 const guint32 *now,
                 int            left,
                 int            right,
                 double        *most)
{
  guint n = 0;

  *most = 0;
  for (int x = left; x < right; x++)
    {
      gboolean changed = FALSE;

      for (int y = 0; y < HEIGHT; y++)
        {
          changed |= before[y * WIDTH + x] != now[y * WIDTH + x];
          *most = MAX (*most, fabs (light (before[y * WIDTH + x]) - light (now[y * WIDTH + x])));
        }
      n += changed;
    }

  return n;
}

/* Half of the second column's time, as `kind`. */
static void
test_spell (gconstpointer data)
{
  LwSpellKind kind = (LwSpellKind) GPOINTER_TO_INT (data);
  const LwSpell spell = { 1, kind, 150, 450 };

  for (int rtl = 0; rtl < 2; rtl++)
    for (int dark = 0; dark < 2; dark++)
      {
        g_autofree guint32 *plain = draw (NULL, 0, rtl, dark), *now = draw (&spell, 1, rtl, dark);
        int begin = rtl ? 50 : 250, end = begin + 100;
        double most;

        g_assert_cmpuint (columns_changed (plain, now, 0, begin - 3, &most), ==, 0);
        g_assert_cmpuint (columns_changed (plain, now, end + 3, WIDTH, &most), ==, 0);
        g_assert_cmpuint (columns_changed (plain, now, begin, end, &most), >, kind == LW_SPELL_NIGHT ? 98 : 40);
        g_assert_cmpfloat (most, >, 40);
      }
}

/* Night's ground is quiet: words and curves on it keep their contrast. */
static void
test_quiet (void)
{
  const LwSpell spell = { 1, LW_SPELL_NIGHT, 150, 450 };

  for (int dark = 0; dark < 2; dark++)
    {
      g_autofree guint32 *plain = draw (NULL, 0, FALSE, dark), *now = draw (&spell, 1, FALSE, dark);
      int at = (HEIGHT - 20) * WIDTH + 300;
      double off = fabs (light (plain[at]) - light (now[at]));

      g_assert_cmpfloat (off, >, 3);
      g_assert_cmpfloat (off, <, 24);
    }
}

/* Spells of steps that are not there, or longer than the step, do no harm. */
static void
test_beyond (void)
{
  const LwSpell spells[] = { { 7, LW_SPELL_NIGHT, 0, 60 }, { 1, LW_SPELL_RAIN, 500, 5000 }, { 0, LW_SPELL_NIGHT, 700, 900 } };
  g_autofree guint32 *plain = draw (NULL, 0, FALSE, FALSE), *now = draw (spells, 3, FALSE, FALSE);
  double most;

  g_assert_cmpuint (columns_changed (plain, now, 0, 360, &most), ==, 0);
  g_assert_cmpuint (columns_changed (plain, now, 360, WIDTH, &most), >, 10);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_data_func ("/spells/night", GINT_TO_POINTER (LW_SPELL_NIGHT), test_spell);
  g_test_add_data_func ("/spells/rain", GINT_TO_POINTER (LW_SPELL_RAIN), test_spell);
  g_test_add_func ("/spells/quiet", test_quiet);
  g_test_add_func ("/spells/beyond", test_beyond);

  return g_test_run ();
}

/* Contrast by W3C, Web Content Accessibility Guidelines 2.1: words 4.5:1 (1.4.3), lines and marks
 * that carry meaning 3:1 (1.4.11). Relative luminance as defined there. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "draw/palette.h"

#define WORDS 4.5
#define MARKS 3.0

static double
linear (double channel)
{
  return channel <= 0.03928 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

static double
luminance (LwInk ink)
{
  return 0.2126 * linear (ink.r) + 0.7152 * linear (ink.g) + 0.0722 * linear (ink.b);
}

static double
contrast (LwInk a,
          LwInk b)
{
  double one = luminance (a), two = luminance (b);

  return (MAX (one, two) + 0.05) / (MIN (one, two) + 0.05);
}

static const LwPalette *
palette_at (guint i)
{
  return i == 2 ? lw_palette_print () : lw_palette (i == 1);
}

static void
test_formula (void)
{
  LwInk black = { 0, 0, 0, 1 }, white = { 1, 1, 1, 1 };

  g_assert_cmpfloat_with_epsilon (contrast (black, white), 21, 1e-9);
}

static void
test_words (void)
{
  for (guint i = 0; i < 3; i++)
    {
      const LwPalette *p = palette_at (i);
      const LwInk grounds[] = { p->card, p->desk, p->hatch };

      for (guint g = 0; g < G_N_ELEMENTS (grounds); g++)
        {
          g_assert_cmpfloat (contrast (p->ink, grounds[g]), >=, WORDS);
          g_assert_cmpfloat (contrast (p->faint, grounds[g]), >=, WORDS);
          g_assert_cmpfloat (contrast (p->heat, grounds[g]), >=, WORDS);
          g_assert_cmpfloat (contrast (p->press, grounds[g]), >=, WORDS);
          g_assert_cmpfloat (contrast (p->choice, grounds[g]), >=, WORDS);
          g_assert_cmpfloat (contrast (p->warning, grounds[g]), >=, WORDS);
        }
    }
}

static void
test_curves (void)
{
  for (guint i = 0; i < 3; i++)
    {
      const LwPalette *p = palette_at (i);

      g_assert_cmpfloat (contrast (p->ghost, p->card), >=, MARKS);
      for (guint k = 0; k < LW_N_OVER; k++)
        {
          g_assert_cmpfloat (contrast (p->over[k], p->card), >=, MARKS);
          g_assert_cmpfloat (contrast (lw_ink_mix (p->over[k], p->ink, 0.35), p->card), >=, WORDS);
        }
      for (guint q = 0; q < LW_N_QUANTITIES; q++)
        {
          LwInk band = lw_ink_mix (p->card, p->curve[q], LW_BAND_TINT);

          g_assert_cmpfloat (contrast (p->curve[q], p->card), >=, MARKS);
          g_assert_cmpfloat (contrast (p->curve[q], band), >=, MARKS);
          g_assert_cmpfloat (contrast (lw_ink_of_words (p, q), p->card), >=, WORDS);
          g_assert_cmpfloat (contrast (lw_ink_of_words (p, q), band), >=, WORDS);
          g_assert_cmpfloat (contrast (p->ink, band), >=, WORDS);
          g_assert_cmpfloat (contrast (p->faint, band), >=, WORDS);
        }
    }
}

/* The three panels that are always there must not look alike. */
static void
test_apart (void)
{
  for (guint i = 0; i < 2; i++)
    {
      const LwInk *curve = lw_palette (i == 1)->curve;

      for (guint a = LW_MOISTURE; a <= LW_RUPTURE; a++)
        for (guint b = a + 1; b <= LW_RUPTURE; b++)
          g_assert_cmpfloat (hypot (hypot (curve[a].r - curve[b].r, curve[a].g - curve[b].g),
                                    curve[a].b - curve[b].b), >, 0.3);
    }
}

/* A colour-blind eye that lacks one kind of cone still sees the blue channel of one end and not of the other; the
 * number printed on it is read at every strength, and stronger is further from the card. */
static void
test_changes (void)
{
  for (guint i = 0; i < 2; i++)
    {
      const LwPalette *p = lw_palette (i == 1);
      LwInk less = lw_ink_of_change (p, -1), more = lw_ink_of_change (p, 1), none = lw_ink_of_change (p, 0);

      for (double share = -1; share <= 1; share += 0.125)
        g_assert_cmpfloat (contrast (p->ink, lw_ink_of_change (p, share)), >=, WORDS);
      g_assert_cmpfloat (contrast (p->faint, none), >=, WORDS);
      g_assert_cmpfloat (less.b - more.b, >, 0.3);
      for (int side = -1; side <= 1; side += 2)
        g_assert_cmpfloat (contrast (p->card, lw_ink_of_change (p, side)), >,
                           contrast (p->card, lw_ink_of_change (p, 0.5 * side)));
    }
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/palette/formula", test_formula);
  g_test_add_func ("/draw/palette/words", test_words);
  g_test_add_func ("/draw/palette/curves", test_curves);
  g_test_add_func ("/draw/palette/apart", test_apart);
  g_test_add_func ("/draw/palette/changes", test_changes);

  return g_test_run ();
}

/* The colours of the window's style are those of the pictures. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <string.h>

#include "draw/palette.h"

static const struct
{
  const char *name;
  gsize offset;
} inks[] = {
  { "desk", offsetof (LwPalette, desk) },       { "card", offsetof (LwPalette, card) },
  { "ink", offsetof (LwPalette, ink) },         { "faint", offsetof (LwPalette, faint) },
  { "rule", offsetof (LwPalette, rule) },       { "hatch", offsetof (LwPalette, hatch) },
  { "ghost", offsetof (LwPalette, ghost) },     { "heat", offsetof (LwPalette, heat) },
  { "press", offsetof (LwPalette, press) },     { "choice", offsetof (LwPalette, choice) },
  { "warning", offsetof (LwPalette, warning) },
};

/* What the style cannot do without. */
static const char *const needed[] = { "desk", "card", "ink", "faint", "rule", "choice", "warning" };

static const LwInk *
find_ink (const LwPalette *palette,
          const char      *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (inks); i++)
    if (strcmp (inks[i].name, name) == 0)
      return (const LwInk *) ((const char *) palette + inks[i].offset);

  g_error ("the palette has no “%s”", name);
}

/* (transfer full) "#rrggbb". */
static char *
hex_of (const LwInk *ink)
{
  return g_strdup_printf ("#%02x%02x%02x", (guint) lround (ink->r * 255), (guint) lround (ink->g * 255),
                          (guint) lround (ink->b * 255));
}

static void
check_style (const char      *file,
             const LwPalette *palette)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "ui", file, NULL);
  g_autofree char *css = NULL;
  g_autoptr (GRegex) regex = g_regex_new ("@define-color\\s+(\\S+)\\s+([^;]*?)\\s*;", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  g_assert_true (g_file_get_contents (path, &css, NULL, NULL));
  for (g_regex_match (regex, css, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      char *name = g_match_info_fetch (match, 1);
      g_autofree char *value = g_match_info_fetch (match, 2);
      g_autofree char *hex = hex_of (find_ink (palette, name));

      if (g_ascii_strcasecmp (value, hex) != 0)
        g_error ("%s has %s as “%s”, the palette %s", file, value, name, hex);
      g_hash_table_add (seen, name);
    }

  for (guint i = 0; i < G_N_ELEMENTS (needed); i++)
    if (!g_hash_table_contains (seen, needed[i]))
      g_error ("%s defines no “%s”", file, needed[i]);
}

static void
test_paper (void)
{
  check_style ("paper.css", lw_palette (FALSE));
}

static void
test_dark (void)
{
  check_style ("dark.css", lw_palette (TRUE));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/style/paper", test_paper);
  g_test_add_func ("/style/dark", test_dark);

  return g_test_run ();
}

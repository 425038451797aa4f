/* Words end where Unicode says so, as Pango knows it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/elide.h"

#include <string.h>

#define LEAST_LETTERS 2 /* of the first word, a number aside */

static gboolean
fits (cairo_t        *cr,
      const LwLetter *letter,
      double          size,
      gboolean        bold,
      double          room,
      const char     *text)
{
  double width;

  lw_letter_size (cr, letter, size, bold, text, &width, NULL);

  return width <= room;
}

/* Whether somebody would know it again: "2025 · 4" could be any. */
static gboolean
tells (const char *text,
       const char *end)
{
  guint letters = 0;

  for (; text < end; text = g_utf8_next_char (text))
    if (g_unichar_isalpha (g_utf8_get_char (text)) && ++letters >= LEAST_LETTERS)
      return TRUE;

  return FALSE;
}

char *
lw_elide_name (cairo_t        *cr,
               const LwLetter *letter,
               double          size,
               gboolean        bold,
               double          room,
               const char     *name)
{
  int n = (int) g_utf8_strlen (name, -1);
  g_autofree PangoLogAttr *attrs = g_new0 (PangoLogAttr, n + 1);
  g_autofree char *best = NULL;

  if (fits (cr, letter, size, bold, room, name))
    return g_strdup (name);

  pango_get_log_attrs (name, (int) strlen (name), -1, NULL, attrs, n + 1);
  for (int i = 1; i < n; i++)
    {
      const char *end = g_utf8_offset_to_pointer (name, i);
      g_autofree char *words = NULL;

      if (!attrs[i].is_word_end || !tells (name, end))
        continue;
      words = g_strdup_printf ("%.*s…", (int) (end - name), name);
      if (!fits (cr, letter, size, bold, room, words))
        break;
      g_free (best);
      best = g_steal_pointer (&words);
    }

  return g_steal_pointer (&best);
}

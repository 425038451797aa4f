/* Words end where Unicode says so, as Pango knows it. Finding them costs more than measuring, and the same names come at
 * every picture: their beginnings are kept, and all dropped when they are too many. For one thread. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/elide.h"

#include <string.h>

#define LEAST_LETTERS 2 /* of what is left, a number aside */
#define MOST_KEPT 256

static GHashTable *kept; /* of names, to GPtrArray of what they may be cut to, the longest first */

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

static GPtrArray *
find_cuts (const char *name)
{
  GPtrArray *cuts = g_ptr_array_new_with_free_func (g_free);
  int n = (int) g_utf8_strlen (name, -1);
  g_autofree PangoLogAttr *attrs = g_new0 (PangoLogAttr, n + 1);

  pango_get_log_attrs (name, (int) strlen (name), -1, NULL, attrs, n + 1);
  for (int i = n - 1; i > 0; i--)
    {
      const char *end = g_utf8_offset_to_pointer (name, i);

      if (attrs[i].is_word_end && tells (name, end))
        g_ptr_array_add (cuts, g_strdup_printf ("%.*s…", (int) (end - name), name));
    }

  return cuts;
}

/* (transfer none) */
static const GPtrArray *
cuts_of (const char *name)
{
  GPtrArray *cuts;

  if (kept == NULL)
    kept = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_ptr_array_unref);
  cuts = g_hash_table_lookup (kept, name);
  if (cuts != NULL)
    return cuts;

  if (g_hash_table_size (kept) >= MOST_KEPT)
    g_hash_table_remove_all (kept);
  cuts = find_cuts (name);
  g_hash_table_insert (kept, g_strdup (name), cuts);

  return cuts;
}

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

char *
lw_elide_name (cairo_t        *cr,
               const LwLetter *letter,
               double          size,
               gboolean        bold,
               double          room,
               const char     *name)
{
  const GPtrArray *cuts;

  if (fits (cr, letter, size, bold, room, name))
    return g_strdup (name);

  cuts = cuts_of (name);
  for (guint i = 0; i < cuts->len; i++)
    if (fits (cr, letter, size, bold, room, cuts->pdata[i]))
      return g_strdup (cuts->pdata[i]);

  return NULL;
}

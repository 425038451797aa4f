/* The checks that all elements share. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/reader.h"

#include <string.h>

#include "season/document.h"
#include "season/gate.h"
#include "season/nearest.h"
#include "season/text.h"

#define MOST_PROBLEMS 200
#define MOST_QUOTED 60

static gboolean
is_full (const LwReader *reader)
{
  return reader->problems->len > MOST_PROBLEMS;
}

void
lw_reader_tell (LwReader   *reader,
                guint       line,
                const char *remedy,
                const char *format,
                ...)
{
  g_autofree char *what = NULL;
  va_list args;

  if (is_full (reader))
    return;
  if (reader->problems->len == MOST_PROBLEMS)
    {
      lw_problems_add (reader->problems, line, _ ("Mend the ones above first."),
                       _ ("There are more problems from here on."));
      return;
    }

  va_start (args, format);
  what = g_strdup_vprintf (format, args);
  va_end (args);
  lw_problems_add (reader->problems, line, remedy, "%s", what);
}

char *
lw_reader_quote (const char *text)
{
  g_autofree char *start = g_utf8_substring (text, 0, MIN (g_utf8_strlen (text, -1), MOST_QUOTED));

  for (char *at = start; *at != '\0'; at++)
    if (g_ascii_iscntrl (*at))
      *at = ' ';

  return g_strconcat (start, strlen (start) < strlen (text) ? "…" : "", NULL);
}

char *
lw_reader_advice (const char *typed,
                  GPtrArray  *names,
                  const char *otherwise)
{
  const char *near = lw_nearest (typed, names);

  if (near == NULL)
    return g_strdup (otherwise);

  return g_strdup_printf (_ ("Did you mean “%s”?"), near);
}

static gboolean
is_ours (const xmlNode *node)
{
  return node->ns != NULL && strcmp ((const char *) node->ns->href, LW_SEASON_NS) == 0;
}

/* The place of `node` among the children that `shape` may have, -1: none. */
static int
find_child (const LwShape *shape,
            const xmlNode *node)
{
  for (guint i = 0; is_ours (node) && i < shape->n_children; i++)
    if (strcmp (lw_shape (shape->children[i].element)->name, (const char *) node->name) == 0)
      return (int) i;

  return -1;
}

static void
tell_unknown_child (LwReader      *reader,
                    const LwShape *shape,
                    const xmlNode *node)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *quoted = lw_reader_quote ((const char *) node->name);
  g_autofree char *advice = NULL;

  for (guint i = 0; is_ours (node) && i < shape->n_children; i++)
    g_ptr_array_add (names, (gpointer) lw_shape (shape->children[i].element)->name);

  advice = lw_reader_advice ((const char *) node->name, names,
                             _ ("Remove it, or write what it says in a note."));
  lw_reader_tell (reader, lw_gate_line (node), advice, _ ("“%s” holds no element “%s”."),
                  shape->name, quoted);
}

/* Whether the child at `place` may follow one at `last` and is not one too many. */
static gboolean
check_child (LwReader      *reader,
             const LwShape *shape,
             const xmlNode *node,
             int            place,
             int            last,
             guint          count)
{
  const LwChildRow *row = &shape->children[place];
  const char *name = lw_shape (row->element)->name;
  g_autofree char *remedy = NULL;

  if (place < last)
    {
      remedy = g_strdup_printf (_ ("Put it before the first “%s”."),
                                lw_shape (shape->children[last].element)->name);
      lw_reader_tell (reader, lw_gate_line (node), remedy,
                      _ ("“%s” stands too late in “%s”."), name, shape->name);
    }

  if (count == row->most + 1)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Remove what is too much, or split it in two."),
                    _ ("“%s” holds more than %u of “%s”."), shape->name, row->most, name);

  return count <= row->most;
}

void
lw_reader_children (LwReader *reader,
                    xmlNode  *node,
                    LwElement element,
                    LwTake    take,
                    gpointer  into)
{
  const LwShape *shape = lw_shape (element);
  guint counts[LW_N_ELEMENTS] = { 0 };
  int last = 0;

  /* Past the last problem that is told, nothing is left to do. */
  for (xmlNode *child = node->children; child != NULL && !is_full (reader); child = child->next)
    {
      int place = child->type == XML_ELEMENT_NODE ? find_child (shape, child) : -1;

      if (place >= 0)
        {
          if (check_child (reader, shape, child, place, last, ++counts[place]) && take != NULL)
            take (reader, child, shape->children[place].element, into);
          last = MAX (last, place);
        }
      else if (child->type == XML_ELEMENT_NODE)
        {
          tell_unknown_child (reader, shape, child);
        }
    }

  for (guint i = 0; i < shape->n_children; i++)
    if (counts[i] < shape->children[i].least)
      lw_reader_tell (reader, lw_gate_line (node), _ ("Add one."),
                      _ ("“%s” lacks an element “%s”."), shape->name,
                      lw_shape (shape->children[i].element)->name);
}

char *
lw_reader_text (LwReader *reader,
                xmlNode  *node)
{
  g_autoptr (xmlChar) text = xmlNodeListGetString (node->doc, node->children, 1);

  if (text == NULL || *text == '\0')
    return NULL;

  if (g_utf8_strlen ((const char *) text, -1) > LW_MAX_TEXT)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Shorten it."),
                    _ ("“%s” is longer than %d characters."), (const char *) node->name,
                    LW_MAX_TEXT);

  return g_strdup ((const char *) text);
}

char *
lw_reader_note (LwReader *reader,
                xmlNode  *node,
                LwElement element,
                char     *old)
{
  LwValue values[LW_MAX_ATTRS];

  g_free (old);
  lw_reader_attrs (reader, node, element, values);

  return lw_reader_text (reader, node);
}

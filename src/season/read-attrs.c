/* Reading attributes: each type of value, and an element's attributes as its rows say. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/reader.h"

#include <string.h>

#include "season/document.h"
#include "season/gate.h"
#include "season/notation.h"
#include "season/text.h"

static void
tell_word (LwReader        *reader,
           guint            line,
           const LwAttrRow *row,
           const char      *text)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  g_autoptr (GString) list = g_string_new (NULL);
  g_autofree char *quoted = lw_reader_quote (text);
  g_autofree char *otherwise = NULL, *remedy = NULL;

  for (guint i = 0; row->word (i) != NULL; i++)
    {
      g_ptr_array_add (words, (gpointer) row->word (i));
      g_string_append_printf (list, "%s%s", i > 0 ? ", " : "", row->word (i));
    }

  otherwise = g_strdup_printf (_ ("Write one of: %s."), list->str);
  remedy = lw_reader_advice (text, words, otherwise);
  lw_reader_tell (reader, line, remedy, _ ("There is no “%s” called “%s”."), row->name, quoted);
}

static void
read_word (LwReader        *reader,
           guint            line,
           const LwAttrRow *row,
           const char      *text,
           LwValue         *value)
{
  value->word = lw_attr_word (row, text);
  value->given = value->word >= 0;
  if (!value->given)
    tell_word (reader, line, row, text);
}

static void
tell_number (LwReader        *reader,
             guint            line,
             const LwAttrRow *row,
             const char      *text,
             gboolean         is_number)
{
  g_autofree char *quoted = lw_reader_quote (text);
  g_autofree char *low = lw_number_text (row->low), *high = lw_number_text (row->high);
  g_autofree char *range = g_strdup_printf (_ ("Write a number from %s to %s."), low, high);

  if (is_number)
    lw_reader_tell (reader, line, range, _ ("%s is out of range as “%s”."), quoted, row->name);
  else
    lw_reader_tell (reader, line,
                    strchr (text, ',') == NULL ? range
                                               : _ ("Write digits with a point: 12.5, not 12,5."),
                    _ ("“%s” as “%s” is not a number."), quoted, row->name);
}

static void
read_number (LwReader        *reader,
             guint            line,
             const LwAttrRow *row,
             const char      *text,
             LwValue         *value)
{
  gboolean is_number = lw_number_parse (text, &value->number);

  value->given = is_number && value->number >= row->low && value->number <= row->high;
  if (!value->given)
    tell_number (reader, line, row, text, is_number);
}

static void
read_time (LwReader        *reader,
           guint            line,
           const LwAttrRow *row,
           const char      *text,
           LwValue         *value)
{
  g_autofree char *quoted = NULL;

  value->given = lw_time_parse (text, &value->time_s);
  if (value->given)
    return;

  quoted = lw_reader_quote (text);
  lw_reader_tell (reader, line, _ ("Write the day and the time of day as in 2026-04-12T10:30."),
                  _ ("“%s” as “%s” is not a date and time."), quoted, row->name);
}

static void
read_id (LwReader        *reader,
         guint            line,
         const LwAttrRow *row,
         const char      *text,
         LwValue         *value)
{
  gsize length = strspn (text, "abcdefghijklmnopqrstuvwxyz0123456789-");
  g_autofree char *quoted = NULL;

  value->given = length >= 1 && length <= LW_MAX_ID && text[length] == '\0';
  if (value->given)
    return;

  quoted = lw_reader_quote (text);
  lw_reader_tell (reader, line,
                  _ ("Write lower-case letters, digits and hyphens, at most 64 of them."),
                  _ ("“%s” cannot be used as “%s”."), quoted, row->name);
}

static void
read_text (LwReader        *reader,
           guint            line,
           const LwAttrRow *row,
           const char      *text,
           LwValue         *value)
{
  value->given = *text != '\0' && g_utf8_strlen (text, -1) <= LW_MAX_TEXT;

  if (*text == '\0')
    lw_reader_tell (reader, line,
                    row->needed ? _ ("Write a name.") : _ ("Write something, or remove it."),
                    _ ("“%s” is empty."), row->name);
  else if (!value->given)
    lw_reader_tell (reader, line, _ ("Shorten it."), _ ("“%s” is longer than %d characters."),
                    row->name, LW_MAX_TEXT);
}

/* (transfer none) (nullable) lives as long as the reader. */
static const char *
attr_text (LwReader   *reader,
           xmlNode    *node,
           const char *name)
{
  g_autoptr (xmlChar) text = xmlGetNoNsProp (node, (const xmlChar *) name);

  return text != NULL ? g_string_chunk_insert (reader->strings, (const char *) text) : NULL;
}

static void
read_attr (LwReader        *reader,
           xmlNode         *node,
           const LwAttrRow *row,
           LwValue         *value)
{
  static void (*const readers[]) (LwReader *, guint, const LwAttrRow *, const char *, LwValue *) = {
    [LW_ATTR_TEXT] = read_text,
    [LW_ATTR_ID] = read_id,
    [LW_ATTR_TIME] = read_time,
    [LW_ATTR_NUMBER] = read_number,
    [LW_ATTR_WORD] = read_word,
  };
  guint line = lw_gate_line (node);

  *value = (LwValue) { .word = -1, .text = attr_text (reader, node, row->name) };

  if (value->text != NULL)
    readers[row->type] (reader, line, row, value->text, value);
  else if (row->needed)
    lw_reader_tell (reader, line, _ ("Add it."), _ ("“%s” lacks “%s”."),
                    (const char *) node->name, row->name);
}

/* Of a pair one must be there. Quiet where a value is wrong: that has been told. */
static void
check_pair (LwReader        *reader,
            xmlNode         *node,
            const LwAttrRow *rows,
            const LwValue   *values)
{
  if (!rows[1].instead || (values[0].text == NULL) != (values[1].text == NULL))
    return;

  if (values[0].text == NULL)
    lw_reader_tell (reader, lw_gate_line (node), _ ("Add one of them."), _ ("“%s” lacks “%s” or “%s”."),
                    (const char *) node->name, rows[0].name, rows[1].name);
  else
    lw_reader_tell (reader, lw_gate_line (node), _ ("Keep one of them."), _ ("“%s” has both “%s” and “%s”."),
                    (const char *) node->name, rows[0].name, rows[1].name);
}

static void
tell_unknown_attr (LwReader        *reader,
                   xmlNode         *node,
                   const xmlAttr   *attr,
                   const LwAttrRow *rows,
                   guint            n,
                   const char      *whose)
{
  const char *name = (const char *) attr->name;
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  g_autofree char *quoted = lw_reader_quote (name);
  g_autofree char *advice = NULL;

  for (guint i = 0; i < n; i++)
    if (!xmlHasNsProp (node, (const xmlChar *) rows[i].name, NULL))
      g_ptr_array_add (names, (gpointer) rows[i].name);

  advice = lw_reader_advice (name, names, _ ("Remove it, or write what it says in a note."));
  lw_reader_tell (reader, lw_gate_line (node), advice, _ ("“%s” has no “%s”."), whose, quoted);
}

static gboolean
is_known_attr (const xmlAttr   *attr,
               const LwAttrRow *rows,
               guint            n)
{
  for (guint i = 0; attr->ns == NULL && i < n; i++)
    if (strcmp (rows[i].name, (const char *) attr->name) == 0)
      return TRUE;

  return FALSE;
}

void
lw_reader_attrs (LwReader *reader,
                 xmlNode  *node,
                 LwElement element,
                 LwValue   values[LW_MAX_ATTRS])
{
  const LwShape *shape = lw_shape (element);
  LwAttrRow rows[LW_MAX_ATTRS];
  const char *whose = shape->name;
  guint n = shape->n_attrs;

  if (shape->n_children == 0)
    lw_reader_children (reader, node, element, NULL, NULL);

  memset (values, 0, LW_MAX_ATTRS * sizeof *values);
  for (guint i = 0; i < n; i++)
    read_attr (reader, node, &shape->attrs[i], &values[i]);
  for (guint i = 1; i < n; i++)
    check_pair (reader, node, &shape->attrs[i - 1], &values[i - 1]);

  /* What else it may have is not known while its kind is not. */
  if (shape->choice >= 0 && !values[shape->choice].given)
    return;
  if (shape->choice >= 0)
    whose = values[shape->choice].text;

  n = lw_shape_attrs (element, shape->choice >= 0 ? values[shape->choice].word : -1, rows);
  for (guint i = shape->n_attrs; i < n; i++)
    read_attr (reader, node, &rows[i], &values[i]);

  for (const xmlAttr *attr = node->properties; attr != NULL; attr = attr->next)
    if (!is_known_attr (attr, rows, n))
      tell_unknown_attr (reader, node, attr, rows, n, whose);
}

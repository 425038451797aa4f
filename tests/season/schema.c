/* Writes the schema. What a schema cannot express (sums, references, names used once,
 * at most so many) stands in it as a comment. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "schema.h"

#include <stdarg.h>

#include "season/document.h"
#include "season/notation.h"
#include "season/shape.h"

#define YEAR "([0-9]{3}[1-9]|[0-9]{2}[1-9]0|[0-9][1-9]00|[1-9]000)"
#define DAY                                           \
  "((0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])"        \
  "|(0[469]|11)-(0[1-9]|[12][0-9]|30)"                \
  "|02-(0[1-9]|[12][0-9]))"
#define CLOCK "([01][0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9])?"

typedef struct
{
  GString *text;
  int depth;
} Out;

static void G_GNUC_PRINTF (2, 3)
put (Out        *out,
     const char *format,
     ...)
{
  va_list args;

  g_string_append_printf (out->text, "%*s", 2 * out->depth, "");
  va_start (args, format);
  g_string_append_vprintf (out->text, format, args);
  va_end (args);
  g_string_append_c (out->text, '\n');
}

static void
put_open (Out        *out,
          const char *tag)
{
  put (out, "<%s>", tag);
  out->depth++;
}

static void
put_close (Out        *out,
           const char *tag)
{
  out->depth--;
  put (out, "</%s>", tag);
}

/* (transfer full) what stands in the attribute, indented below it where it is long. */
static char *
value_text (const Out       *out,
            const LwAttrRow *row)
{
  static const char *const references[] = {
    [LW_ATTR_TEXT] = "name",
    [LW_ATTR_ID] = "id",
    [LW_ATTR_TIME] = "time",
  };
  g_autofree char *low = lw_number_text (row->low), *high = lw_number_text (row->high);
  GString *text;

  if (row->type == LW_ATTR_NUMBER)
    return g_strdup_printf ("<data type=\"double\">\n%*s"
                            "<param name=\"minInclusive\">%s</param>"
                            "<param name=\"maxInclusive\">%s</param>"
                            "<param name=\"pattern\">%s</param>\n%*s</data>",
                            2 * out->depth + 2, "", low, high, LW_NUMBER_PATTERN,
                            2 * out->depth, "");
  if (row->type != LW_ATTR_WORD)
    return g_strdup_printf ("<ref name=\"%s\"/>", references[row->type]);

  text = g_string_new ("<choice>");
  for (guint i = 0; row->word (i) != NULL; i++)
    g_string_append_printf (text, "<value>%s</value>", row->word (i));
  g_string_append (text, "</choice>");

  return g_string_free (text, FALSE);
}

static void
put_attr (Out             *out,
          const LwAttrRow *row)
{
  g_autofree char *value = value_text (out, row);

  if (row->needed)
    put (out, "<attribute name=\"%s\">%s</attribute>", row->name, value);
  else
    put (out, "<optional><attribute name=\"%s\">%s</attribute></optional>", row->name, value);
}

/* The attribute that chooses, as this one word. */
static void
put_chosen (Out             *out,
            const LwAttrRow *row,
            guint            word)
{
  put (out, "<attribute name=\"%s\"><value>%s</value></attribute>", row->name, row->word (word));
}

/* An aim has a lower side, an upper one, or both. */
static void
put_sides (Out             *out,
           const LwAttrRow *low,
           const LwAttrRow *high)
{
  LwAttrRow needed[] = { *low, *high };

  needed[0].needed = needed[1].needed = TRUE;
  put_open (out, "choice");
  put_open (out, "group");
  put_attr (out, &needed[0]);
  put_attr (out, high);
  put_close (out, "group");
  put_attr (out, &needed[1]);
  put_close (out, "choice");
}

/* One of the two. */
static void
put_pair (Out             *out,
          const LwAttrRow *one,
          const LwAttrRow *other)
{
  LwAttrRow needed[] = { *one, *other };

  needed[0].needed = needed[1].needed = TRUE;
  put_open (out, "choice");
  put_attr (out, &needed[0]);
  put_attr (out, &needed[1]);
  put_close (out, "choice");
}

static void
put_attrs (Out      *out,
           LwElement element,
           int       word)
{
  const LwShape *shape = lw_shape (element);
  LwAttrRow rows[LW_MAX_ATTRS];
  guint n = lw_shape_attrs (element, word, rows);

  for (guint i = 0; i < n; i++)
    {
      if ((int) i == shape->choice)
        {
          put_chosen (out, &rows[i], (guint) word);
        }
      else if (element == LW_E_AIM && i == (guint) shape->choice + 1)
        {
          put_sides (out, &rows[i], &rows[i + 1]);
          i++;
        }
      else if (i + 1 < n && rows[i + 1].instead)
        {
          put_pair (out, &rows[i], &rows[i + 1]);
          i++;
        }
      else
        {
          put_attr (out, &rows[i]);
        }
    }
}

/* One group of attributes for each word of the choice. */
static void
put_choice (Out      *out,
            LwElement element)
{
  const LwShape *shape = lw_shape (element);
  const LwAttrRow *choice = &shape->attrs[shape->choice];

  put_open (out, "choice");
  for (guint i = 0; choice->word (i) != NULL; i++)
    {
      put_open (out, "group");
      put_attrs (out, element, (int) i);
      put_close (out, "group");
    }
  put_close (out, "choice");
}

static void
put_child (Out              *out,
           const LwChildRow *row)
{
  const char *name = lw_shape (row->element)->name;
  const char *many = row->most == 1 ? "optional" : row->least == 0 ? "zeroOrMore" : "oneOrMore";

  if (row->most > 1)
    put (out, "<!-- at most %u -->", row->most);
  if (row->least == 1 && row->most == 1)
    put (out, "<ref name=\"%s\"/>", name);
  else
    put (out, "<%s><ref name=\"%s\"/></%s>", many, name, many);
}

/* Weather: its name, then one of its forms. Only the last, the record of hours, has a start. */
static void
put_weather (Out *out)
{
  const LwShape *shape = lw_shape (LW_E_WEATHER);
  LwAttrRow start = shape->attrs[shape->n_attrs - 1];
  LwChildRow hours = shape->children[shape->n_children - 1];

  for (guint i = 0; i + 1 < shape->n_attrs; i++)
    put_attr (out, &shape->attrs[i]);
  put_child (out, &shape->children[0]);

  put_open (out, "choice");
  for (guint i = 1; i + 1 < shape->n_children; i++)
    put (out, "<ref name=\"%s\"/>", lw_shape (shape->children[i].element)->name);
  put_open (out, "group");
  start.needed = TRUE;
  put_attr (out, &start);
  hours.least = 1;
  put_child (out, &hours);
  put_close (out, "group");
  put_close (out, "choice");
}

static void
put_comment (Out      *out,
             LwElement element)
{
  static const char *const comments[LW_N_ELEMENTS] = {
    [LW_E_SEASON] = "Ids of leaves, ids of weathers, names of batches and names of lessons are used once.",
    [LW_E_NOTE] = "What the maker wants to remember.",
    [LW_E_SIGN] = "What the maker looks for in this step, whenever it is done.",
    [LW_E_LEAF] = "The shares of the parts add up to 1.",
    [LW_E_LAW] = "Parameters of the leaf model that differ from their start.",
    [LW_E_WEATHER] = "Always the same, a day that repeats, or one hour after another from the start.",
    [LW_E_DAY] = "“low-c” is not above “high-c”, nor at the same hour.",
    [LW_E_BATCH] = "“leaf” and “weather” are ids in this season. Its aims: the finished tea.",
    [LW_E_PLAN] = "What was planned when the run began. Its steps follow logs of its own.",
    [LW_E_STEP] = "Settings not given stand where the kind starts, or follow the weather. Logs are ids in this batch.",
    [LW_E_AIM] = "“low” is below “high”.",
    [LW_E_WEIGH_IN] = "“minute” counts from the step's start. One past its end is kept, and not shown. A note has text.",
    [LW_E_CORRECTION] = "As many “shift” as its leaf has parts.",
    [LW_E_LOG] = "Its id is used once in the batch. “minute” counts from the start of what holds it. The numbers of rows and"
                 " lines are whole.",
    [LW_E_CURVE] = "Points: seconds from the log's begin, which rise, and temperature, each a number; at most 10000.",
    [LW_E_SHOW] = "“batch” is the name of a batch in this season, and shown once in a lesson.",
    [LW_E_MOMENT] = "“step” is a whole number, of a step of the batch shown first. One that asks nothing has text.",
  };

  if (comments[element] != NULL)
    put (out, "<!-- %s -->", comments[element]);
}

static void
put_element (Out      *out,
             LwElement element)
{
  const LwShape *shape = lw_shape (element);

  g_string_append_c (out->text, '\n');
  put_comment (out, element);
  put (out, "<define name=\"%s\">", shape->name);
  out->depth++;
  put (out, "<element name=\"%s\">", shape->name);
  out->depth++;

  if (element == LW_E_WEATHER)
    put_weather (out);
  else if (shape->choice >= 0)
    put_choice (out, element);
  else
    put_attrs (out, element, -1);
  for (guint i = 0; element != LW_E_WEATHER && i < shape->n_children; i++)
    put_child (out, &shape->children[i]);
  if (shape->text)
    put (out, "<ref name=\"text\"/>");
  else if (shape->points)
    put (out, "<data type=\"string\"><param name=\"minLength\">3</param></data>");
  else if (shape->n_children == 0)
    put (out, "<empty/>");

  put_close (out, "element");
  put_close (out, "define");
}

static void
put_type (Out        *out,
          const char *name,
          const char *facet,
          const char *value)
{
  put (out, "<define name=\"%s\">", name);
  out->depth++;
  put_open (out, "data type=\"string\"");
  if (facet != NULL)
    put (out, "<param name=\"%s\">%s</param>", facet, value);
  else
    put (out, "<param name=\"minLength\">1</param>");
  if (g_strcmp0 (facet, "pattern") != 0)
    put (out, "<param name=\"maxLength\">%d</param>", LW_MAX_TEXT);
  put_close (out, "data");
  put_close (out, "define");
}

char *
schema_text (void)
{
  Out out = { .text = g_string_new ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n") };

  put (&out, "<!-- Leafwend's season document. Made by tests/season/schema.c from the program's");
  put (&out, "     tables; `test-schema update` makes it anew. Comments say what it cannot. -->");
  put (&out, "<!-- SPDX-License-Identifier: GPL-3.0-or-later -->");
  put (&out, "<grammar xmlns=\"http://relaxng.org/ns/structure/1.0\" ns=\"%s\"", LW_SEASON_NS);
  put (&out, "         datatypeLibrary=\"http://www.w3.org/2001/XMLSchema-datatypes\">");
  out.depth++;
  put (&out, "<start><ref name=\"season\"/></start>");
  for (int i = 0; i < LW_N_ELEMENTS; i++)
    put_element (&out, (LwElement) i);

  g_string_append_c (out.text, '\n');
  put (&out, "<!-- By the place's own clock. Not every year has a 29 February. -->");
  put_type (&out, "time", "pattern", YEAR "-" DAY "T" CLOCK);
  put_type (&out, "id", "pattern", LW_ID_PATTERN);
  put_type (&out, "name", NULL, NULL);
  put_type (&out, "text", "minLength", "0");
  put_close (&out, "grammar");

  return g_string_free (out.text, FALSE);
}

/* docs/document.md says what the program's tables say: every element, attribute, range and start. A
 * section of the page is what stands below "### `element`"; its tables' rows begin as made here. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <string.h>

#include "sample.h"

#include "season/notation.h"
#include "season/shape.h"

static char *page;

static void
load_page (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "..", "docs", "document.md", NULL);

  if (!g_file_get_contents (path, &page, NULL, NULL))
    g_error ("there is no %s", path);
}

/* (transfer full) what stands below the heading, up to the next one of its level or above. */
static char *
section_of (const char *whole,
            const char *marks,
            const char *name)
{
  g_autofree char *heading = g_strdup_printf ("\n%s `%s`\n", marks, name);
  const char *begin = strstr (whole, heading);
  const char *end = NULL;

  if (begin == NULL)
    g_error ("the page has no heading “%s `%s`”", marks, name);

  begin += strlen (heading);
  for (gsize level = strlen (marks); level >= 2; level--)
    {
      g_autofree char *next = g_strdup_printf ("\n%.*s ", (int) level, "######");
      const char *found = strstr (begin - 1, next);

      if (found != NULL && (end == NULL || found < end))
        end = found;
    }

  return end != NULL ? g_strndup (begin, (gsize) (end + 1 - begin)) : g_strdup (begin);
}

/* The section has the text; else the test fails, and goes on to find what else is amiss. */
static void
expect (const char *section,
        const char *name,
        const char *text)
{
  if (strstr (section, text) != NULL)
    return;

  g_test_message ("the page's section “%s” lacks: %s", name, text);
  g_test_fail ();
}

static void
expect_rows (const char *section,
             const char *name,
             guint       n)
{
  guint found = 0;

  for (const char *at = section; (at = strstr (at, "\n| `")) != NULL; at++)
    found++;

  if (found == n)
    return;

  g_test_message ("the page's section “%s” has %u rows, not %u", name, found, n);
  g_test_fail ();
}

/* (transfer full) "-500 to 9000". */
static char *
range_text (double low,
            double high)
{
  g_autofree char *from = lw_number_text (low), *to = lw_number_text (high);

  return g_strdup_printf ("%s to %s", from, to);
}

/* (transfer full) what may stand in the attribute. */
static char *
holds_text (const LwAttrRow *row)
{
  static const char *const types[] = { [LW_ATTR_TEXT] = "text", [LW_ATTR_ID] = "id", [LW_ATTR_TIME] = "time" };
  GString *text;

  if (row->type == LW_ATTR_NUMBER)
    return range_text (row->low, row->high);
  if (row->type != LW_ATTR_WORD)
    return g_strdup (types[row->type]);

  text = g_string_new (NULL);
  for (guint i = 0; row->word (i) != NULL; i++)
    g_string_append_printf (text, "%s`%s`", i > 0 ? ", " : "", row->word (i));

  return g_string_free (text, FALSE);
}

/* (transfer full) "one `place`; at most one `note`; up to 200 `leaf`". */
static char *
children_text (const LwShape *shape)
{
  GString *text = g_string_new ("Holds, in this order: ");

  for (guint i = 0; i < shape->n_children; i++)
    {
      const LwChildRow *row = &shape->children[i];
      g_autofree char *many = row->most == 1 ? g_strdup (row->least == 1 ? "one" : "at most one")
                              : row->least > 0 ? g_strdup_printf ("%u to %u", row->least, row->most)
                                               : g_strdup_printf ("up to %u", row->most);

      g_string_append_printf (text, "%s%s `%s`", i > 0 ? "; " : "", many, lw_shape (row->element)->name);
    }
  g_string_append (text, ".\n");

  return g_string_free (text, FALSE);
}

static void
test_element (gconstpointer data)
{
  LwElement element = (LwElement) GPOINTER_TO_INT (data);
  const LwShape *shape = lw_shape (element);
  g_autofree char *section = section_of (page, "###", shape->name);
  g_autofree char *children = children_text (shape);
  LwAttrRow rows[LW_MAX_ATTRS];
  guint n = lw_shape_attrs (element, -1, rows);

  if (shape->n_children > 0)
    expect (section, shape->name, children);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *holds = (int) i == shape->choice ? g_strdup ("see below") : holds_text (&rows[i]);
      gboolean pair = rows[i].instead || (i + 1 < n && rows[i + 1].instead);
      g_autofree char *row = g_strdup_printf ("\n| `%s` | %s | %s |", rows[i].name,
                                              pair ? "one of two" : rows[i].needed ? "yes" : "no", holds);

      expect (section, shape->name, row);
    }
  if (shape->choice < 0)
    expect_rows (section, shape->name, n);
}

static void
test_law (void)
{
  g_autofree char *section = section_of (page, "###", "law");

  for (guint i = 0; i < LW_N_LAW; i++)
    {
      const LwLawField *field = &lw_law_fields ()[i];
      g_autofree char *range = range_text (field->low, field->high);
      g_autofree char *row = g_strdup_printf ("\n| `%s` | no | %s | %s | %s |\n", field->symbol, range, field->unit,
                                              field->meaning);

      expect (section, "law", row);
    }
}

/* Each kind has a table of exactly its settings. */
static void
test_kinds (void)
{
  g_autofree char *steps = section_of (page, "###", "step");
  guint n = 3 + LW_N_SETTINGS;

  expect (steps, "step", "\n| `wall-log` | no | id |");
  expect (steps, "step", "\n| `air-log` | no | id |");

  for (int kind = 0; kind < LW_N_KINDS; kind++)
    {
      const LwKindRow *row = lw_kind_row ((LwKind) kind);
      g_autofree char *section = section_of (steps, "####", row->id);

      for (guint i = 0; i < row->n_settings; i++)
        {
          const LwKindSetting *at = &row->settings[i];
          g_autofree char *range = range_text (at->low, at->high), *start = lw_number_text (at->start);
          g_autofree char *text = g_strdup_printf ("\n| `%s` | %s | %s%s |\n", lw_setting_row (at->setting)->id,
                                                   range, start, at->weather ? ", or the weather" : "");

          expect (section, row->id, text);
        }
      expect_rows (section, row->id, row->n_settings);
      n += row->n_settings;
    }

  for (int i = 0; i < LW_N_SETTINGS; i++)
    {
      const LwSettingRow *row = lw_setting_row ((LwSetting) i);
      g_autofree char *text = g_strdup_printf ("\n| `%s` | %s | %s | %s |\n", row->id, row->label, row->unit,
                                               row->effect);

      expect (steps, "step", text);
    }
  expect_rows (steps, "step", n);
}

static void
test_aims (void)
{
  g_autofree char *section = section_of (page, "###", "aim");

  for (int i = 0; i < LW_N_QUANTITIES; i++)
    {
      const LwQuantityRow *row = lw_quantity_row ((LwQuantity) i);
      g_autofree char *range = range_text (row->low, row->high);
      g_autofree char *text = g_strdup_printf ("\n| `%s` | %s | %s | %s |\n", row->id, row->label,
                                               *row->unit != '\0' ? row->unit : "1", range);

      expect (section, "aim", text);
    }
  expect (section, "aim", "\n| `low` | no | see below |");
  expect (section, "aim", "\n| `high` | no | see below |");
  expect (section, "aim", "\n| `weight` | no | 0.001 to 1000 |");
  expect_rows (section, "aim", 4 + LW_N_QUANTITIES);
}

static void
test_weigh_ins (void)
{
  g_autofree char *section = section_of (page, "###", "weigh-in");

  for (int i = 0; i < LW_NOTED; i++)
    {
      const LwMeasureRow *row = lw_measure_row ((LwMeasure) i);
      g_autofree char *range = range_text (row->low, row->high), *sd = lw_number_text (row->sd);
      g_autofree char *text = g_strdup_printf ("\n| `%s` | %s | %s | %s | %s |\n", row->id, row->label, row->unit,
                                               range, sd);

      expect (section, "weigh-in", text);
    }
  expect (section, "weigh-in", "\n| `note` | note | none | none | none |\n");
  expect (section, "weigh-in", "\n| `value` | yes | see below |");
  expect (section, "weigh-in", "\n| `sd` | yes | see below |");
  expect (section, "weigh-in", "\n| `tare-kg` | no | see below |");
  expect_rows (section, "weigh-in", 5 + LW_N_MEASURES);
}

static void
test_limits (void)
{
  g_autofree char *bytes = g_strdup_printf ("larger than %d MiB", LW_MAX_FILE_BYTES / 1024 / 1024);
  g_autofree char *text = g_strdup_printf ("1 to %d characters", LW_MAX_TEXT);
  g_autofree char *id = g_strdup_printf ("1 to %d lower-case", LW_MAX_ID);

  expect (page, "whole", bytes);
  expect (page, "whole", text);
  expect (page, "whole", id);
  expect (page, "whole", "xmlns=\"" LW_SEASON_NS "\" version=\"" LW_SEASON_VERSION "\"");
  expect (page, "whole", LW_SEASON_MIME);
  expect (page, "whole", "`" LW_SEASON_SUFFIX "`");
}

/* The example is read, and written as it stands on the page. */
static void
test_example (void)
{
  const char *begin = strstr (page, "```xml\n"), *end = begin != NULL ? strstr (begin + 7, "```\n") : NULL;
  g_autofree char *example = NULL, *written = NULL;
  g_autoptr (LwSeason) season = NULL;
  gsize length;

  g_assert_nonnull (end);
  example = g_strndup (begin + 7, (gsize) (end - begin - 7));
  season = sample_read (example);
  written = lw_document_write (season, &length);
  g_assert_cmpstr (written, ==, example);
}

int
main (int    argc,
      char **argv)
{
  int result;

  g_test_init (&argc, &argv, NULL);
  load_page ();

  for (int i = 0; i < LW_N_ELEMENTS; i++)
    {
      g_autofree char *name = g_strconcat ("/page/element/", lw_shape ((LwElement) i)->name, NULL);

      g_test_add_data_func (name, GINT_TO_POINTER (i), test_element);
    }
  g_test_add_func ("/page/law", test_law);
  g_test_add_func ("/page/kinds", test_kinds);
  g_test_add_func ("/page/aims", test_aims);
  g_test_add_func ("/page/weigh-ins", test_weigh_ins);
  g_test_add_func ("/page/limits", test_limits);
  g_test_add_func ("/page/example", test_example);

  result = g_test_run ();
  g_free (page);

  return result;
}

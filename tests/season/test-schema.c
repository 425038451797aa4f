/* The schema says what the reader says: made from the same tables, it is run by an engine of
 * its own over every attribute at, inside and outside its limits, and over broken files. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <libxml/relaxng.h>
#include <string.h>

#include "broken.h"
#include "schema.h"
#include "specimen.h"

#include "season/document.h"
#include "season/notation.h"
#include "season/xml.h"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlRelaxNG, xmlRelaxNGFree)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlRelaxNGParserCtxt, xmlRelaxNGFreeParserCtxt)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (xmlRelaxNGValidCtxt, xmlRelaxNGFreeValidCtxt)

static xmlRelaxNG *schema;

static char *
schema_path (void)
{
  return g_test_build_filename (G_TEST_DIST, "..", "..", "data", "leafwend-season.rng", NULL);
}

static void G_GNUC_PRINTF (2, 3)
ignore (void       *data,
        const char *format,
        ...)
{
}

static gboolean
schema_takes (const char *text,
              gsize       length)
{
  g_autoptr (xmlRelaxNGValidCtxt) valid = xmlRelaxNGNewValidCtxt (schema);
  const int options = XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING;
  g_autoptr (xmlDoc) doc = xmlReadMemory (text, (int) length, NULL, NULL, options);

  xmlRelaxNGSetValidErrors (valid, ignore, ignore, NULL);

  return doc != NULL && xmlRelaxNGValidateDoc (valid, doc) == 0;
}

static gboolean
reader_takes (const char *text,
              gsize       length)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_read (text, length, problems);

  return season != NULL;
}

static void
test_up_to_date (void)
{
  g_autofree char *path = schema_path ();
  g_autofree char *text = schema_text ();
  g_autofree char *found = NULL;

  g_assert_true (g_file_get_contents (path, &found, NULL, NULL));
  g_assert_cmpstr (found, ==, text);
}

static void
assert_agree (const Specimen *specimen,
              gboolean       *taken)
{
  g_autofree char *text = specimen_text (specimen);
  gboolean reader = reader_takes (text, strlen (text));
  gboolean by_schema = schema_takes (text, strlen (text));

  if (reader != by_schema)
    g_error ("“%s” of “%s” as “%.80s”: reader %d, schema %d in\n%s", specimen->name,
             lw_shape (specimen->element)->name, specimen->value, reader, by_schema, text);

  *taken = reader;
}

/* Both say the same of `value`, and it is that it is right or wrong. */
static void
expect (Specimen    specimen,
        const char *value,
        gboolean    right)
{
  gboolean taken;

  specimen.value = value;
  assert_agree (&specimen, &taken);
  if (taken != right)
    g_error ("“%s” of “%s” as “%.80s” is %s", specimen.name,
             lw_shape (specimen.element)->name, value, taken ? "taken" : "refused");
}

static void
check_number (Specimen         specimen,
              const LwAttrRow *row)
{
  static const char *const wrong[] = {
    "", "x", "1,5", "NaN", "INF", "-INF", "nan", "inf", " 1", "1 ", "+1", ".5", "1.", "0x1",
    "1e999", "1 2", "1e",
  };
  double span = row->high - row->low;
  g_autofree char *low = lw_number_text (row->low), *high = lw_number_text (row->high);
  g_autofree char *below = lw_number_text (row->low - 1e-9 * span);
  g_autofree char *above = lw_number_text (row->high + 1e-9 * span);
  g_autofree char *middle = lw_number_text (row->low + span / 3);
  gboolean whole = strchr (low, '.') == NULL && strchr (low, 'e') == NULL;
  g_autofree char *longer = g_strconcat (low, whole ? ".000" : "", NULL);

  expect (specimen, low, TRUE);
  expect (specimen, high, TRUE);
  expect (specimen, middle, TRUE);
  expect (specimen, longer, TRUE);
  expect (specimen, below, FALSE);
  expect (specimen, above, FALSE);
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    expect (specimen, wrong[i], FALSE);
}

static void
check_text (Specimen         specimen,
            const LwAttrRow *row)
{
  g_autofree char *most = g_strnfill (LW_MAX_TEXT, 'a');
  g_autofree char *more = g_strnfill (LW_MAX_TEXT + 1, 'a');
  g_autoptr (GString) wide = g_string_new (NULL);

  for (int i = 0; i < LW_MAX_TEXT; i++)
    g_string_append (wide, "葉");

  expect (specimen, "a", TRUE);
  expect (specimen, " ", TRUE);
  expect (specimen, "Ün &amp; &#10; «b»", TRUE);
  expect (specimen, most, TRUE);
  expect (specimen, wide->str, TRUE);
  expect (specimen, more, FALSE);
  expect (specimen, "", FALSE);
}

static void
check_id (Specimen         specimen,
          const LwAttrRow *row)
{
  static const char *const wrong[] = { "", "A", "a b", " a", "a_b", "é", "a.b", "a&#10;" };
  g_autofree char *most = g_strnfill (LW_MAX_ID, 'z');
  g_autofree char *more = g_strnfill (LW_MAX_ID + 1, 'z');

  expect (specimen, "a-0", TRUE);
  expect (specimen, "-", TRUE);
  expect (specimen, most, TRUE);
  expect (specimen, more, FALSE);
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    expect (specimen, wrong[i], FALSE);
}

static void
check_time (Specimen         specimen,
            const LwAttrRow *row)
{
  static const char *const right[] = {
    "2026-04-12T10:30", "2026-04-12T10:30:15", "0001-01-01T00:00", "9999-12-31T23:59:59",
    "2024-02-29T00:00", "1000-10-31T09:00", "0100-11-30T19:59",
  };
  static const char *const wrong[] = {
    "", "2026-04-12", "2026-04-12 10:30", "2026-13-12T10:30", "2026-00-12T10:30",
    "2026-04-31T10:30", "2026-02-30T10:30", "2026-04-00T10:30", "2026-04-12T24:00",
    "2026-04-12T10:60", "2026-04-12T10:30:60", "0000-01-01T00:00", "26-04-12T10:30",
    "2026-04-12T10:30Z", " 2026-04-12T10:30", "2026-04-12T10:30:15.5",
  };

  for (guint i = 0; i < G_N_ELEMENTS (right); i++)
    expect (specimen, right[i], TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    expect (specimen, wrong[i], FALSE);
}

static void
check_word (Specimen         specimen,
            const LwAttrRow *row)
{
  expect (specimen, row->word ((guint) MAX (specimen.word, 0)), TRUE);
  expect (specimen, "", FALSE);
  expect (specimen, "Made", FALSE);
  expect (specimen, "no-such-word", FALSE);
}

static void
check_attrs (LwElement element,
             int       word)
{
  static void (*const checks[]) (Specimen, const LwAttrRow *) = {
    [LW_ATTR_TEXT] = check_text, [LW_ATTR_ID] = check_id, [LW_ATTR_TIME] = check_time,
    [LW_ATTR_NUMBER] = check_number, [LW_ATTR_WORD] = check_word,
  };
  LwAttrRow rows[LW_MAX_ATTRS];
  guint n = lw_shape_attrs (element, word, rows);

  for (guint i = 0; i < n; i++)
    {
      Specimen specimen = { element, word, rows[i].name, NULL };
      gboolean side = element == LW_E_AIM && (i == 1 || i == 2);
      gboolean pair = rows[i].instead || (i + 1 < n && rows[i + 1].instead);
      gboolean start = element == LW_E_WEATHER && rows[i].type == LW_ATTR_TIME;

      checks[rows[i].type] (specimen, &rows[i]);
      /* Without the side, or the one of two, under test the specimen has none; its hours need a start. */
      expect (specimen, NULL, !rows[i].needed && !side && !pair && !start);
    }
}

/* Every attribute of every element, of every kind, outcome and measurement. */
static void
test_attributes (gconstpointer data)
{
  LwElement element = (LwElement) GPOINTER_TO_INT (data);
  const LwShape *shape = lw_shape (element);
  const LwAttrRow *choice = shape->choice >= 0 ? &shape->attrs[shape->choice] : NULL;

  if (choice == NULL)
    check_attrs (element, -1);
  for (guint i = 0; choice != NULL && choice->word (i) != NULL; i++)
    check_attrs (element, (int) i);
}

#define ONE_STEP                                                              \
  "<season xmlns='" LW_SEASON_NS "' version='1' name='a'>"                    \
  "<place altitude-m='0' latitude-deg='0'/>"                                  \
  "<leaf id='a' name='a' green='0' fresh-moisture-pct='77'>"                  \
  "<part name='p' share='1' exposure='1' area='1' cuticle='1' ruptured='0'/>" \
  "</leaf>"                                                                   \
  "<batch name='a' start='2026-04-12T10:30' state='planned' leaf='a' fresh-kg='1'>" \
  "<step kind='%s' minutes='%s' %s='%s'/>"                                    \
  "</batch></season>"

/* A setting of another kind, of all that there are, is refused. */
static void
test_foreign_settings (void)
{
  for (int kind = 0; kind < LW_N_KINDS; kind++)
    for (int i = 0; i < LW_N_SETTINGS; i++)
      {
        const LwKindSetting *range = lw_kind_setting ((LwKind) kind, (LwSetting) i);
        const LwKindSetting *time = lw_kind_setting ((LwKind) kind, LW_SET_MINUTES);
        g_autofree char *minutes = lw_number_text (time->low);
        g_autofree char *value = lw_number_text (range != NULL ? range->low : 1);
        g_autofree char *text = NULL;

        if (i == LW_SET_MINUTES)
          continue;

        text = g_strdup_printf (ONE_STEP, lw_kind_row ((LwKind) kind)->id, minutes,
                                lw_setting_row ((LwSetting) i)->id, value);
        g_assert_cmpint (reader_takes (text, strlen (text)), ==, range != NULL);
        g_assert_cmpint (schema_takes (text, strlen (text)), ==, range != NULL);
      }
}

/* A weigh-in may be anywhere in the longest step there is. */
static void
test_longest_step (void)
{
  double longest = 0;

  for (int kind = 0; kind < LW_N_KINDS; kind++)
    longest = MAX (longest, lw_kind_setting ((LwKind) kind, LW_SET_MINUTES)->high);

  g_assert_cmpfloat (lw_shape (LW_E_WEIGH_IN)->attrs[0].high, ==, longest);
}

static void
test_broken (gconstpointer data)
{
  const Broken *row = data;
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "broken", row->name, NULL);
  g_autofree char *text = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  g_assert_false (reader_takes (text, length));
  if (row->seen == SCHEMA)
    g_assert_false (schema_takes (text, length));
  if (row->seen == READER)
    g_assert_true (schema_takes (text, length));
}

static void
test_good (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "canonical.leafwend", NULL);
  g_autofree char *text = NULL;
  gsize length;

  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  g_assert_true (reader_takes (text, length));
  g_assert_true (schema_takes (text, length));
}

static void
load_schema (const char *path)
{
  g_autoptr (xmlRelaxNGParserCtxt) parser = xmlRelaxNGNewParserCtxt (path);

  schema = xmlRelaxNGParse (parser);
  g_assert_nonnull (schema);
}

int
main (int    argc,
      char **argv)
{
  g_autofree char *path = NULL;
  int result;

  g_test_init (&argc, &argv, NULL);
  path = schema_path ();

  if (argc > 1 && strcmp (argv[1], "update") == 0)
    {
      g_autofree char *text = schema_text ();

      return g_file_set_contents (path, text, -1, NULL) ? 0 : 1;
    }

  load_schema (path);
  g_test_add_func ("/schema/up-to-date", test_up_to_date);
  for (int i = 0; i < LW_N_ELEMENTS; i++)
    {
      const char *element = lw_shape ((LwElement) i)->name;
      g_autofree char *name = g_strconcat ("/schema/attributes/", element, NULL);

      g_test_add_data_func (name, GINT_TO_POINTER (i), test_attributes);
    }
  g_test_add_func ("/schema/foreign-settings", test_foreign_settings);
  g_test_add_func ("/schema/longest-step", test_longest_step);
  for (guint i = 0; i < n_broken; i++)
    {
      g_autofree char *name = g_strconcat ("/schema/broken/", broken[i].name, NULL);

      g_test_add_data_func (name, &broken[i], test_broken);
    }
  g_test_add_func ("/schema/good", test_good);

  result = g_test_run ();
  xmlRelaxNGFree (schema);

  return result;
}

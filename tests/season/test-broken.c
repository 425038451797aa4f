/* Broken files, one kind each: the reader must say in which line what is wrong. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "broken.h"

#include <string.h>

#include "season/document.h"

static gboolean
tells (GPtrArray    *problems,
       const Broken *row)
{
  for (guint i = 0; i < problems->len; i++)
    {
      const LwProblem *problem = g_ptr_array_index (problems, i);
      g_autofree char *text = lw_problem_text (problem, row->name);

      if (problem->line == row->line && strstr (text, row->phrase) != NULL)
        return TRUE;
    }

  return FALSE;
}

static void
test_broken (gconstpointer data)
{
  const Broken *row = data;
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "broken", row->name, NULL);
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  g_autoptr (LwSeason) season = lw_document_load (path, problems);

  g_assert_null (season);
  g_assert_cmpuint (problems->len, >=, 1);
  for (guint i = 0; i < problems->len; i++)
    {
      const LwProblem *problem = g_ptr_array_index (problems, i);
      g_autofree char *text = lw_problem_text (problem, row->name);

      g_test_message ("%s", text);
      g_assert_true (g_utf8_validate (text, -1, NULL));
      g_assert_cmpuint (strlen (problem->what), >, 0);
      g_assert_cmpuint (strlen (problem->remedy), >, 0);
    }

  g_assert_true (tells (problems, row));
}

/* A file without a row would never be looked at. */
static void
test_all_listed (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "broken", NULL);
  g_autoptr (GDir) folder = g_dir_open (path, 0, NULL);
  const char *name;
  guint found = 0;

  while ((name = g_dir_read_name (folder)) != NULL)
    {
      guint i = 0;

      while (i < n_broken && strcmp (broken[i].name, name) != 0)
        i++;
      if (i == n_broken)
        g_error ("%s is in no row", name);
      found++;
    }

  g_assert_cmpuint (found, ==, n_broken);
}

static void
assert_one_problem (const char *text,
                    gsize       length,
                    const char *phrase)
{
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  const LwProblem *first;

  g_assert_null (lw_document_read (text, length, problems));
  first = g_ptr_array_index (problems, 0);
  g_assert_nonnull (strstr (first->what, phrase));
}

/* Files too large to keep beside the tests. One that is not refused soon runs into the test's time limit. */
static void
test_huge (void)
{
  g_autofree char *blanks = g_strnfill (LW_MAX_FILE_BYTES + 1, ' ');
  g_autoptr (GString) crowded = g_string_new ("<season ");
  g_autoptr (GString) unclosed = g_string_new (NULL);
  g_autoptr (GString) names = g_string_new ("<season xmlns='" LW_SEASON_NS "'>");
  g_autoptr (GString) entities = g_string_new ("<season xmlns='" LW_SEASON_NS "'>");
  g_autoptr (GString) long_name = g_string_new ("<season xmlns='urn:leafwend:season' ");

  for (int i = 0; crowded->len < LW_MAX_FILE_BYTES - 100; i++)
    g_string_append_printf (crowded, "a%d='>' ", i);
  for (int i = 0; names->len < LW_MAX_FILE_BYTES - 100; i++)
    g_string_append_printf (names, "<a%d/>", i);
  for (int i = 0; entities->len < LW_MAX_FILE_BYTES - 100; i++)
    g_string_append_printf (entities, "&a%d;", i);
  while (unclosed->len < LW_MAX_FILE_BYTES - 100)
    g_string_append (unclosed, "<a b=''>");
  while (long_name->len < LW_MAX_FILE_BYTES - 100)
    g_string_append (long_name, "longlonglong");
  g_string_append (long_name, "=''/>");

  assert_one_problem (blanks, LW_MAX_FILE_BYTES + 1, "larger than 8 MiB");
  assert_one_problem (blanks, LW_MAX_FILE_BYTES, "not well-formed XML");
  assert_one_problem (crowded->str, crowded->len, "more than 100 attributes");
  assert_one_problem (unclosed->str, unclosed->len, "nested too deeply");
  assert_one_problem (names->str, names->len, "too many different names");
  assert_one_problem (entities->str, entities->len, "not well-formed XML");
  assert_one_problem (long_name->str, long_name->len, "not well-formed XML");
}

/* A file wrong in every line does not fill the screen or the memory. */
static void
test_many_problems (void)
{
  g_autoptr (GString) text = g_string_new ("<season xmlns='" LW_SEASON_NS "' version='1'>\n");
  g_autoptr (GPtrArray) problems = lw_problems_new ();
  const LwProblem *last;

  for (int i = 0; i < 100000; i++)
    g_string_append (text, "<!--a--><seasn/>b\n");
  g_string_append (text, "</season>\n");

  g_assert_null (lw_document_read (text->str, text->len, problems));
  g_assert_cmpuint (problems->len, ==, 201);
  last = g_ptr_array_index (problems, problems->len - 1);
  g_assert_nonnull (strstr (last->what, "more problems"));
}

static void
test_load (void)
{
  static const struct
  {
    const char *path;
    const char *phrase;
  } rows[] = {
    { "/no/such/file.leafwend", "No such file" },
    { "/dev/zero", "a device" },
    { "/", "a folder" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GPtrArray) problems = lw_problems_new ();
      const LwProblem *problem;

      g_assert_null (lw_document_load (rows[i].path, problems));
      g_assert_cmpuint (problems->len, ==, 1);
      problem = g_ptr_array_index (problems, 0);
      g_assert_cmpuint (problem->line, ==, 0);
      g_assert_nonnull (strstr (problem->what, rows[i].phrase));
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);

  for (guint i = 0; i < n_broken; i++)
    {
      g_autofree char *name = g_strconcat ("/broken/", broken[i].name, NULL);

      g_test_add_data_func (name, &broken[i], test_broken);
    }
  g_test_add_func ("/broken/all-listed", test_all_listed);
  g_test_add_func ("/broken/huge", test_huge);
  g_test_add_func ("/broken/many-problems", test_many_problems);
  g_test_add_func ("/broken/load", test_load);

  return g_test_run ();
}

/* The model beside published figures, and docs/model.md beside both.
 *   test-published PAGE CLI           checks (TAP)
 *   test-published update PAGE CLI    writes the page's tables anew */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <stdio.h>
#include <string.h>

#include "checks.h"
#include "claim.h"
#include "page.h"

static const char *page_path, *cli_path;

static const struct
{
  const char *name;
  void (*check) (void);
} checks[] = {
  { "/published/sorption", check_sorption },   { "/published/finished", check_finished },
  { "/published/wither", check_wither },       { "/published/spreading", check_spreading },
  { "/published/skin", check_skin },           { "/published/area", check_area },
  { "/published/drying", check_drying },       { "/published/sun", check_sun },
  { "/published/speeds", check_speeds },       { "/published/enzyme", check_enzyme },
  { "/published/fixing", check_fixing },       { "/published/oxidation", check_oxidation },
  { "/published/rupture", check_rupture },     { "/published/laws", check_laws },
};

static char *
read_page (void)
{
  g_autoptr (GError) error = NULL;
  char *page;

  g_file_get_contents (page_path, &page, NULL, &error);
  g_assert_no_error (error);

  return page;
}

static char *
from_cli (const char *option)
{
  const char *argv[] = { cli_path, "model", option, NULL };
  g_autoptr (GError) error = NULL;
  char *said;
  int status;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &said, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);

  return said;
}

static char *
table_now (const char *name)
{
  if (strcmp (name, "comparisons") == 0)
    return claims_table ();

  return from_cli (strcmp (name, "steps") == 0 ? "--steps" : NULL);
}

static void
check_table (gconstpointer name)
{
  g_autofree char *page = read_page ();
  g_autofree char *found = page_table (page, name);
  g_autofree char *expected = table_now (name);
  g_autofree char *differs = NULL;

  g_assert_nonnull (found);
  differs = page_differs (found, expected);
  if (differs != NULL)
    {
      g_test_message ("%s: %s", (const char *) name, differs);
      g_test_fail ();
    }
}

/* The comparison of tables must see a change that matters, and only that. */
static void
check_comparing (void)
{
  const char *row = "| a | 1.25 | 3 to 4 h |\n";
  g_autofree char *same = page_differs (row, "| a | 1.26 | 3 to 4 h |\n");
  g_autofree char *number = page_differs (row, "| a | 1.27 | 3 to 4 h |\n");
  g_autofree char *word = page_differs (row, "| a | 1.25 | 3 to 5 h |\n");
  g_autofree char *longer = page_differs (row, "| a | 1.25 | 3 to 4 h |\n| b | 1 | 2 |\n");
  g_autofree char *page = page_with ("x\n<!-- begin t -->\nold\n<!-- end t -->\ny\n", "t", "new\n");

  g_assert_null (same);
  g_assert_nonnull (number);
  g_assert_nonnull (word);
  g_assert_nonnull (longer);
  g_assert_cmpstr (page, ==, "x\n<!-- begin t -->\nnew\n<!-- end t -->\ny\n");
}

static const char *const tables[] = { "parameters", "steps", "comparisons" };

static int
update (void)
{
  g_autofree char *page = NULL;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (checks); i++)
    checks[i].check ();

  page = read_page ();
  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      g_autofree char *table = table_now (tables[i]);
      char *changed = page_with (page, tables[i], table);

      g_assert_nonnull (changed);
      g_free (page);
      page = changed;
    }
  g_file_set_contents (page_path, page, -1, &error);
  g_assert_no_error (error);
  if (!claims_hold ())
    fprintf (stderr, "test-published: a verdict is not as the checks state it; see above\n");

  return claims_hold () ? 0 : 1;
}

int
main (int argc, char **argv)
{
  gboolean updating = argc > 1 && strcmp (argv[1], "update") == 0;

  g_test_init (&argc, &argv, NULL);
  if (argc != (updating ? 4 : 3))
    {
      fprintf (stderr, "usage: test-published [update] PAGE CLI\n");
      return 2;
    }

  page_path = argv[argc - 2];
  cli_path = argv[argc - 1];
  if (updating)
    return update ();

  /* In this order: the table of comparisons is what the checks before it claimed. */
  for (guint i = 0; i < G_N_ELEMENTS (checks); i++)
    g_test_add_func (checks[i].name, checks[i].check);
  g_test_add_func ("/published/page/comparing", check_comparing);
  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    {
      g_autofree char *name = g_strconcat ("/published/page/", tables[i], NULL);

      g_test_add_data_func (name, tables[i], check_table);
    }

  return g_test_run ();
}

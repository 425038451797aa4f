/* The parameter table holds together: starts in range, symbols once, set and get. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "leaf/law.h"
#include "near.h"

static void
test_rows (void)
{
  const LwLawField *row = lw_law_fields ();

  for (guint i = 0; i < LW_N_LAW; i++)
    {
      g_assert_cmpuint (row[i].offset, ==, i * sizeof (double));
      g_assert_cmpfloat (row[i].low, <, row[i].high);
      g_assert_cmpfloat (row[i].value, >=, row[i].low);
      g_assert_cmpfloat (row[i].value, <=, row[i].high);
      g_assert_cmpint (lw_law_find (row[i].symbol), ==, (int) i);
      g_assert_cmpuint (strlen (row[i].source), >, 5);
      g_assert_cmpuint (strlen (row[i].meaning), >, 5);
    }

  g_assert_cmpint (lw_law_find ("no-such"), ==, -1);
}

static void
test_set (void)
{
  LwLaw law = lw_law_start ();

  for (guint i = 0; i < LW_N_LAW; i++)
    {
      assert_within (lw_law_get (&law, i), lw_law_fields ()[i].value, 0, "start");
      lw_law_set (&law, i, 3.5 + i);
    }
  for (guint i = 0; i < LW_N_LAW; i++)
    assert_within (lw_law_get (&law, i), 3.5 + i, 0, "set");

  assert_within (law.sla_m2_kg, 3.5, 0, "first member");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_test_add_func ("/law/rows", test_rows);
  g_test_add_func ("/law/set", test_set);

  return g_test_run ();
}

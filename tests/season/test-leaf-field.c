/* A leaf's fields and edits: what fits, what is refused and why, shares that add up, and the next season. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "season/leaf-field.h"

#include <math.h>
#include <string.h>

#include "season/edit.h"

static void
assert_refused (const LwProfile *leaf,
                const char      *why)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (lw_profile_check (leaf, &error));
  g_assert_nonnull (strstr (error->message, why));
}

static void
test_check (void)
{
  g_autoptr (LwProfile) leaf = lw_profile_start (), bare = lw_profile_copy_bare (leaf);
  g_autoptr (GError) error = NULL;

  g_assert_true (lw_profile_check (leaf, &error));
  g_assert_no_error (error);
  assert_refused (bare, "1 to 64 parts");

  leaf->parts[1].share += 0.05;
  assert_refused (leaf, "The shares add up to 1.05; they must add up to 1.");
  leaf->parts[1].share = NAN;
  assert_refused (leaf, "“share” of “surface” must be a number: 0.000001 to 1.");
  leaf->parts[1].share = 0.25;
  leaf->parts[3].ruptured = 1;
  assert_refused (leaf, "“torn cells” of “stem” must be a number: 0 to 0.99.");
  leaf->parts[3].ruptured = 0;
  leaf->fresh_moisture_pct = 30;
  assert_refused (leaf, "“fresh moisture” of “Large leaf” must be a number: 50 to 92.");
  leaf->fresh_moisture_pct = 77;
  leaf->part_names[0][0] = '\0';
  assert_refused (leaf, "need a name");
}

static void
test_fields (void)
{
  for (int field = 0; field < LW_N_LEAF_FIELDS; field++)
    {
      double low, high;

      lw_leaf_field_range ((LwLeafField) field, &low, &high);
      g_assert_true (lw_leaf_field_fits ((LwLeafField) field, low));
      g_assert_true (lw_leaf_field_fits ((LwLeafField) field, high));
      g_assert_false (lw_leaf_field_fits ((LwLeafField) field, low - 1e-9));
      g_assert_false (lw_leaf_field_fits ((LwLeafField) field, high + 1e-9));
      g_assert_false (lw_leaf_field_fits ((LwLeafField) field, NAN));
    }
}

static void
test_add_up (void)
{
  double some[] = { 0.55, 0.9, 0.08, 0.12 }, few[] = { 1e-4, 5, 1 }, one[] = { 0.3 };
  double sum = 0;

  lw_shares_add_up (some, 4);
  g_assert_cmpfloat (some[0], ==, 0.3333);
  g_assert_cmpfloat_with_epsilon (some[0] + some[1] + some[2] + some[3], 1, 1e-12);
  lw_shares_add_up (few, 3);
  for (guint i = 0; i < 3; i++)
    {
      g_assert_true (lw_leaf_field_fits (LW_PART_SHARE, few[i]));
      sum += few[i];
    }
  g_assert_cmpfloat_with_epsilon (sum, 1, 1e-11);
  lw_shares_add_up (one, 1);
  g_assert_cmpfloat (one[0], ==, 1);
}

static void
test_edits (void)
{
  g_autoptr (LwSeason) season = lw_edit_new_season (0), next = NULL, wetter = NULL;
  const LwProfile *old = season->profiles[0];
  LwProfile *leaf = lw_profile_copy_bare (old);

  lw_profile_set_law (leaf, 0, old->law.sla_m2_kg + 1);
  lw_profile_add_part (leaf, "all", (LwPart) { 1, 1, 1, 1, 0 });
  next = lw_edit_put_profile (season, leaf);
  g_assert_cmpuint (next->n_profiles, ==, 1);
  g_assert_true (next->profiles[0] == leaf);
  g_assert_true (season->profiles[0] == old);
  g_assert_cmpuint (old->n_parts, ==, 4);
  g_assert_true (next->batches[0] == season->batches[0]);

  wetter = lw_edit_set_fresh_moisture (next, 0, 80);
  g_assert_cmpfloat (wetter->batches[0]->fresh_moisture_pct, ==, 80);
  g_assert_true (isnan (next->batches[0]->fresh_moisture_pct));
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/leaf-field/fields", test_fields);
  g_test_add_func ("/leaf-field/check", test_check);
  g_test_add_func ("/leaf-field/add-up", test_add_up);
  g_test_add_func ("/leaf-field/edits", test_edits);

  return g_test_run ();
}

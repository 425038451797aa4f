/* Items are told apart by label, action and target. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/menu.h"

void
lw_menu_add_choice (GMenu      *menu,
                    const char *label,
                    const char *action,
                    const char *target)
{
  g_auto (GStrv) parts = g_strsplit (label, "_", -1);
  g_autofree char *plain = g_strjoinv ("__", parts); /* no letter to reach it by */
  g_autoptr (GMenuItem) item = g_menu_item_new (plain, NULL);

  g_menu_item_set_action_and_target (item, action, "s", target);
  g_menu_append_item (menu, item);
}

static gboolean
same_item (GMenuModel *a,
           GMenuModel *b,
           int         at)
{
  static const char *const names[] = { G_MENU_ATTRIBUTE_LABEL, G_MENU_ATTRIBUTE_ACTION, G_MENU_ATTRIBUTE_TARGET };
  gboolean same = TRUE;

  for (guint i = 0; i < G_N_ELEMENTS (names) && same; i++)
    {
      g_autoptr (GVariant) one = g_menu_model_get_item_attribute_value (a, at, names[i], NULL);
      g_autoptr (GVariant) other = g_menu_model_get_item_attribute_value (b, at, names[i], NULL);

      same = one == NULL || other == NULL ? one == other : g_variant_equal (one, other);
    }

  return same;
}

void
lw_menu_refill (GMenu *menu,
                GMenu *fresh)
{
  GMenuModel *is = G_MENU_MODEL (menu), *shall = G_MENU_MODEL (fresh);
  int n = g_menu_model_get_n_items (shall);
  gboolean same = g_menu_model_get_n_items (is) == n;

  for (int i = 0; i < n && same; i++)
    same = same_item (is, shall, i);
  if (same)
    return;

  g_menu_remove_all (menu);
  for (int i = 0; i < n; i++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new_from_model (shall, i);

      g_menu_append_item (menu, item);
    }
}

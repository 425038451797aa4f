/* The panels in the settings. Quantities go by the name they have in a season document. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/panel-memory.h"

#include <math.h>

#include "bench/heights.h"

#define SHOWN "panels"
#define HEIGHTS "panel-heights"

void
lw_panel_memory_heights (GSettings *settings,
                         double     ratios[LW_N_QUANTITIES])
{
  g_autoptr (GVariant) all = settings != NULL ? g_settings_get_value (settings, HEIGHTS) : NULL;
  GVariantIter iter;
  const char *id;
  double ratio;

  for (guint i = 0; i < LW_N_QUANTITIES; i++)
    ratios[i] = 1;
  if (all == NULL)
    return;

  g_variant_iter_init (&iter, all);
  while (g_variant_iter_next (&iter, "{&sd}", &id, &ratio))
    {
      int quantity = lw_quantity_find (id);

      if (quantity >= 0 && isfinite (ratio))
        ratios[quantity] = CLAMP (ratio, 1, LW_HEIGHTS_MOST_RATIO);
    }
}

void
lw_panel_memory_keep_heights (GSettings   *settings,
                              const double ratios[LW_N_QUANTITIES])
{
  GVariantBuilder builder;

  if (settings == NULL)
    return;

  g_variant_builder_init (&builder, G_VARIANT_TYPE ("a{sd}"));
  for (guint i = 0; i < LW_N_QUANTITIES; i++)
    if (ratios[i] > 1)
      g_variant_builder_add (&builder, "{sd}", lw_quantity_row (i)->id, ratios[i]);
  g_settings_set_value (settings, HEIGHTS, g_variant_builder_end (&builder));
}

gboolean
lw_panel_memory_shows (GSettings *settings,
                       LwQuantity quantity)
{
  g_auto (GStrv) ids = settings != NULL ? g_settings_get_strv (settings, SHOWN) : NULL;

  return ids != NULL && g_strv_contains ((const char *const *) ids, lw_quantity_row (quantity)->id);
}

void
lw_panel_memory_keep_shown (GSettings        *settings,
                            const LwQuantity *quantities,
                            guint             n)
{
  const char *ids[LW_N_QUANTITIES + 1] = { NULL };

  if (settings == NULL)
    return;

  for (guint i = 0; i < n; i++)
    ids[i] = lw_quantity_row (quantities[i])->id;
  g_settings_set_strv (settings, SHOWN, ids);
}

/* Short words for values. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw/words.h"

#include <math.h>

#include "season/text.h"

static gboolean
is_percent (const LwQuantityRow *row)
{
  return g_str_has_prefix (row->unit, "%");
}

static gboolean
is_celsius (const LwQuantityRow *row)
{
  return g_str_equal (row->unit, "°C");
}

char *
lw_words_value (LwQuantity quantity,
                double     value)
{
  const LwQuantityRow *row = lw_quantity_row (quantity);

  if (is_percent (row))
    /* Translators: a percentage */
    return g_strdup_printf (_ ("%.*f %%"), row->digits, value);
  if (is_celsius (row))
    /* Translators: a temperature */
    return g_strdup_printf (_ ("%.*f °C"), row->digits, value);

  return g_strdup_printf ("%.*f", row->digits, value);
}

gboolean
lw_words_say_unit (LwQuantity quantity)
{
  const LwQuantityRow *row = lw_quantity_row (quantity);

  return row->unit[0] == '\0' || g_str_equal (row->unit, "%") || is_celsius (row);
}

gboolean
lw_words_change_rounds_off (LwQuantity quantity,
                            double     change)
{
  return fabs (change) < 0.5 * pow (10, -lw_quantity_row (quantity)->digits);
}

char *
lw_words_change (LwQuantity quantity,
                 double     change)
{
  int digits = lw_quantity_row (quantity)->digits;

  if (isnan (change))
    return g_strdup ("–");
  if (change == 0)
    return g_strdup ("0");
  if (lw_words_change_rounds_off (quantity, change))
    return g_strdup_printf ("%.*f", digits, 0.0);

  return g_strdup_printf ("%s%.*f", change < 0 ? "−" : "+", digits, fabs (change));
}

const char *
lw_words_change_unit (LwQuantity quantity)
{
  const LwQuantityRow *row = lw_quantity_row (quantity);

  if (is_percent (row))
    return _ ("% points");

  return lw_unit_words (row->unit);
}

gboolean
lw_words_from_right (void)
{
  /* Translators: write default:RTL if your language is read from the right, else leave it */
  return g_str_equal (_ ("default:LTR"), "default:RTL");
}

/* A row of the difference table, as words. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "study/compare-table.h"

typedef enum
{
  LW_OVER_WHERE,
  LW_OVER_OUTCOME,
  LW_OVER_THIS,
  LW_OVER_THAT,
  LW_OVER_DIFFERENCE,
  LW_OVER_N_COLUMNS
} LwOverColumn;

#define LW_TYPE_OVER_ITEM (lw_over_item_get_type ())
G_DECLARE_FINAL_TYPE (LwOverItem, lw_over_item, LW, OVER_ITEM, GObject)

/* `finished`: the row is that of the finished teas. `of` is an LwQuantity or LW_COMPARE_MINUTES. */
LwOverItem *lw_over_item_new   (const LwCompareRow *row,
                                const LwSide        sides[2],
                                gboolean            finished,
                                int                 of);
const char *lw_over_item_words (LwOverItem         *self,
                                LwOverColumn        column);

/* "Moisture, after 1 wither: this 70.40, that 68.20, difference −2.20". */
const char *lw_over_item_all   (LwOverItem         *self);

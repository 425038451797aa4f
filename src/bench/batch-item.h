/* A batch as a row of the list. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "season/season.h"

#define LW_TYPE_BATCH_ITEM (lw_batch_item_get_type ())
G_DECLARE_FINAL_TYPE (LwBatchItem, lw_batch_item, LW, BATCH_ITEM, GObject)

LwBatchItem *lw_batch_item_new    (const LwSeason *season,
                                   guint           batch);

guint        lw_batch_item_index  (LwBatchItem    *self);
const char  *lw_batch_item_name   (LwBatchItem    *self);
/* "12 Apr 2026 · Upper Terrace". */
const char  *lw_batch_item_detail (LwBatchItem    *self);
/* "made · drum green", without a kind of tea "made". */
const char  *lw_batch_item_state  (LwBatchItem    *self);

/* Whether every word of `words` stands somewhere in the row, in any case. */
gboolean     lw_batch_item_matches (LwBatchItem   *self,
                                    const char    *words);

/* Whether two rows show the same. */
gboolean     lw_batch_item_same   (LwBatchItem    *self,
                                   LwBatchItem    *other);

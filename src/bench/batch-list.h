/* The season's batches at the window's edge: name, date, leaf and kind of tea, with
 * a search over all of these. Choosing one takes it in hand. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_BATCH_LIST (lw_batch_list_get_type ())
G_DECLARE_FINAL_TYPE (LwBatchList, lw_batch_list, LW, BATCH_LIST, GtkBox)

GtkWidget *lw_batch_list_new (LwSession *session);

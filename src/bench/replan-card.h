/* What a new plan of the rest of a batch looks like: what was weighed, expected and taken together; each setting that
 * changes, as it was, is now, and why; and the aims ahead. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "study/replan.h"

/* `batch` is the one that was asked about. Borrows nothing. */
GtkWidget *lw_replan_card_new (const LwReplan *replan,
                               const LwBatch  *batch);

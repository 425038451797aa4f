/* A row of the result: one outcome with its lock. Return or a click opens its aim, Space locks it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"
#include "draw/outcome.h"

#define LW_TYPE_RESULT_ROW (lw_result_row_get_type ())
G_DECLARE_FINAL_TYPE (LwResultRow, lw_result_row, LW, RESULT_ROW, GtkWidget)

GtkWidget *lw_result_row_new  (LwSession           *session,
                               LwQuantity           quantity);

/* Shows the outcome at the end of `step` (-1: the finished tea), which is also where its aim and lock are. `more` and `why` are
 * copied. */
void       lw_result_row_show (LwResultRow         *self,
                               int                  step,
                               const LwOutcomeLook *look);

/* Draws what it shows, but for the lock. */
void       lw_result_row_draw (LwResultRow         *self,
                               cairo_t             *cr);

/* Tells a screen reader what the row shows, and the pointer where its aim comes from. */
void       lw_result_row_tell (LwResultRow         *self);

/* The lane of step blocks: lays them out on the session's columns, lets them be
 * dragged, and stands the "+" buttons between them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

#define LW_TYPE_LANE (lw_lane_get_type ())
G_DECLARE_FINAL_TYPE (LwLane, lw_lane, LW, LANE, GtkWidget)

GtkWidget *lw_lane_new         (LwSession  *session);

/* Puts the keyboard on a step's block. */
void       lw_lane_focus       (LwLane     *self,
                                guint       step);

/* Opens the settings of a step beside its block. */
void       lw_lane_settings    (LwLane     *self,
                                guint       step);

/* Opens the choice of a step to add before `at`. */
void       lw_lane_offer_step  (LwLane     *self,
                                guint       at);

/* Ends a drag and puts everything back; FALSE if nothing is being dragged. */
gboolean   lw_lane_drop_drag   (LwLane     *self);


/* A leaf-state panel: one quantity's curves, the reading line over them, the reading
 * beside the name. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"
#include "season/quantity.h"

#define LW_TYPE_STATE_PANEL (lw_state_panel_get_type ())
G_DECLARE_FINAL_TYPE (LwStatePanel, lw_state_panel, LW, STATE_PANEL, GtkWidget)

GtkWidget *lw_state_panel_new   (LwSession    *session,
                                 LwQuantity    quantity);

/* To be called when the session's columns were laid out anew. */
void       lw_state_panel_moved (LwStatePanel *self);

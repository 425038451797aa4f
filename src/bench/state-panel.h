/* A leaf-state panel: one quantity's curves, the reading line over them, the reading
 * beside the name. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"
#include "draw/panel.h"

#define LW_TYPE_STATE_PANEL (lw_state_panel_get_type ())
G_DECLARE_FINAL_TYPE (LwStatePanel, lw_state_panel, LW, STATE_PANEL, GtkWidget)

/* What it shows and how: as long as the session stays as it is. */
LwPanelLook lw_state_panel_look (LwStatePanel *self);
LwAxis     lw_state_panel_axis  (LwStatePanel *self);

/* Holds the axis where it is, so that what is dragged on it stays under the pointer; and lets it go. */
void       lw_state_panel_hold_axis (LwStatePanel *self,
                                     gboolean      hold);

/* Words in the reading's place; NULL: the reading again. */
void       lw_state_panel_say   (LwStatePanel *self,
                                 const char   *words);

GtkWidget *lw_state_panel_new   (LwSession    *session,
                                 LwQuantity    quantity);

/* To be called when the session's columns were laid out anew. */
void       lw_state_panel_moved (LwStatePanel *self);

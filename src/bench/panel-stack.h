/* The panels over one another with gaps between them: which are shown, how high each is.
 * Both are remembered. Moisture, oxidation and rupture are always there. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"
#include "season/quantity.h"

#define LW_TYPE_PANEL_STACK (lw_panel_stack_get_type ())
G_DECLARE_FINAL_TYPE (LwPanelStack, lw_panel_stack, LW, PANEL_STACK, GtkWidget)

/* `settings` (nullable) remembers; without them nothing is. */
GtkWidget        *lw_panel_stack_new   (LwSession    *session,
                                        GSettings    *settings);

/* The quantities that can be added. */
const LwQuantity *lw_panel_stack_extra (guint        *n);

void              lw_panel_stack_show  (LwPanelStack *self,
                                        LwQuantity    quantity,
                                        gboolean      shown);
gboolean          lw_panel_stack_shows (LwPanelStack *self,
                                        LwQuantity    quantity);

/* Makes all panels alike. */
void              lw_panel_stack_even  (LwPanelStack *self);

/* To be called when the session's columns were laid out anew. */
void              lw_panel_stack_moved (LwPanelStack *self);

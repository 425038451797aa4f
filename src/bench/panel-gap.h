/* The gap between two panels: dragged, or moved by keys, it shares out their heights. It
 * only tells of that; the stack they stand in does it. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#define LW_GAP_HEIGHT 8 /* its height */

#define LW_TYPE_PANEL_GAP (lw_panel_gap_get_type ())
G_DECLARE_FINAL_TYPE (LwPanelGap, lw_panel_gap, LW, PANEL_GAP, GtkWidget)

/* Signals:
 * "grab": a move begins; "move" (double): so many px down from where it was at the grab;
 * "settle": the move is over; "even": all panels should be alike. */
GtkWidget *lw_panel_gap_new  (void);

/* What a screen reader says: `label` of which panels, `words` how high they are. */
void       lw_panel_gap_tell (LwPanelGap *self,
                              const char *label,
                              const char *words);

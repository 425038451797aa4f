/* What a panel shows of the batches laid over. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/overlays.h"

typedef struct _LwPanelOver LwPanelOver;

/* Calls `changed` with `panel`, which outlives it, when others lie over. */
LwPanelOver *lw_panel_over_new  (LwSession         *session,
                                 GtkWidget         *panel,
                                 LwQuantity         of,
                                 GCallback          changed);
void         lw_panel_over_free (LwPanelOver       *over);

/* Fills in the look's overlays. They are the panel's until the next call. */
void         lw_panel_over_look (LwPanelOver       *over,
                                 LwPanelLook       *look);

/* (transfer full) `words` of the panel and what lies over it, for a screen reader. */
char        *lw_panel_over_tell (LwPanelOver       *over,
                                 const char        *words);

/* Room to leave beside the columns, which need at least `columns` of `width`, for the names of what lies over, px; 0 if
 * nothing does. */
double       lw_panel_over_gutter (LwSession       *session,
                                   double           width,
                                   double           columns);

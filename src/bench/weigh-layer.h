/* The points of a panel's weigh-ins as things that can be pointed at, chosen and reached by key. The panel draws them. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/state-panel.h"

#define LW_TYPE_WEIGH_LAYER (lw_weigh_layer_get_type ())
G_DECLARE_FINAL_TYPE (LwWeighLayer, lw_weigh_layer, LW, WEIGH_LAYER, GtkWidget)

/* Over all of the panel, which must hold it as its child; between its points the pointer goes through to the panel. A
 * chosen point opens by the action "win.weigh-in-change", a secondary click beside them by "win.weigh-in-at". */
GtkWidget *lw_weigh_layer_new (LwStatePanel *panel,
                               LwSession    *session);

/* The columns moved, or walls are shown or no more: its points go where they belong. */
void       lw_weigh_layer_moved (LwWeighLayer *self);

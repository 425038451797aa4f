/* Aims of a panel's quantity by the pointer: a bracket's sides and the whole of it are dragged, and a drag along a
 * column's end edge makes a new one. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bench/state-panel.h"

/* Lets the panel's aims be dragged, for as long as it lives. */
void lw_aim_drag_add (LwStatePanel *panel,
                      LwSession    *session);

/* The window on the leaf of the batch in hand: its name, water, green note and parts. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

/* Opens over `parent`; nothing changes before Apply, which is one edit. There must be a batch in hand. */
void lw_leaf_window_open (GtkWindow *parent,
                          LwSession *session);

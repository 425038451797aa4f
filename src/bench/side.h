/* The side column: what the steps come to and what follows from what, one page at a time. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/lane.h"

/* What is chosen in the knock-on table puts the keyboard on its block on `lane`. */
GtkWidget *lw_side_new (LwSession *session,
                        LwLane    *lane);

/* The popover in which an aim is typed, taken from what the batch gives now, or removed. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

/* Opens it on `widget` for the aim at `of` at the end of `step` (-1: the finished tea) of the batch in hand. */
void lw_aim_field_open (GtkWidget  *widget,
                        LwSession  *session,
                        int         step,
                        LwQuantity  of);

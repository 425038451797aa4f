/* A small window that saves the batch's blocks and curves as a picture of any size, or its curves as a table. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

void lw_picture_window_open (GtkWindow *parent,
                             LwSession *session);

/* The window that fits the leaf: batches and what may differ are ticked, and the answer is shown and kept. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

/* Opens beside `parent`, or shows the one that is open. Nothing changes before Save, which is one edit. */
void lw_fit_window_open (GtkWindow *parent,
                         LwSession *session);

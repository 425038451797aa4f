/* In the settings of a step: what its wall or its air follows. */
/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bench/session.h"

/* Adds a line to the grid at `y` where the batch has a log that the setting can follow; `entry` is its field. */
void lw_settings_add_log    (GtkGrid   *grid,
                             int        y,
                             LwSession *session,
                             guint      step,
                             LwSetting  setting,
                             GtkWidget *entry);

/* A button that asks for one more log, to begin with the step. */
void lw_settings_add_import (GtkGrid   *grid,
                             int        y,
                             guint      step);
